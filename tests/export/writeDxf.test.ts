import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pathBounds } from '../../src/core/geometry/bounds';
import { arcAbout, line } from '../../src/core/geometry/segments';
import type { ClosedPath, Contour } from '../../src/core/geometry/types';
import { cutDrawing } from '../../src/drawing/cutDrawing';
import type { Drawing, Entity } from '../../src/drawing/entities';
import { writeDxf } from '../../src/export/dxf/writeDxf';
import { must } from './must';
import { at, blankOf, frontStrap, polygon, settings } from './sampleBlanks';
import { strictTags } from './strictTags';

const strap = must(cutDrawing(frontStrap(), { bendLines: 'layer', thickness: 1.6 })).drawing;
const square = polygon([at(0, 0), at(10, 0), at(10, 10), at(0, 10)]);
const drawingOf = (outline: ClosedPath, contours: readonly Contour[] = []): Drawing => {
  const blank = blankOf(outline, contours);
  return must(cutDrawing({ ...blank, bounds: pathBounds(square) }, { bendLines: 'none', thickness: 1 })).drawing;
};
const problemOf = (drawing: Drawing, layers: Partial<typeof settings.layers> | Record<string, string> = {}) => {
  const written = writeDxf(drawing, { ...settings, layers: { ...settings.layers, ...layers } });
  if (written.ok) throw new Error('It was written, and should not have been.');
  return written.problem;
};

describe('what a DXF is made of', () => {
  it('is the same bytes each time', () => {
    expect(must(writeDxf(strap, settings))).toBe(must(writeDxf(structuredClone(strap), settings)));
  });

  it('holds no lettering, no unused layer and nothing but polylines, circles and lines', () => {
    const text = must(writeDxf(drawingOf(square), settings));
    expect(text).not.toMatch(/\r\n(TEXT|MTEXT|INSERT|DIMENSION|HATCH)\r\n/);
    expect(text).not.toContain('BENDS');
    expect(text).not.toContain('CUT-OUTS');
  });

  it('writes tiny and huge numbers without an exponent and no minus nought', () => {
    const text = must(writeDxf(drawingOf(polygon([at(-1e-12, 1e-7), at(999_999, 0.1 + 0.2), at(500_000, 1e5 / 3)])), settings));
    expect(strictTags(text)).toEqual([]);
    expect(text).toContain('\r\n0.0000001\r\n');
    expect(text).toContain('\r\n0.3\r\n');
    expect(text).not.toContain('-0.0\r\n');
  });

  it('makes no two equal points of a line shorter than the last place', () => {
    const text = must(writeDxf(drawingOf(polygon([at(0, 0), at(10, 0), at(10, 1e-11), at(0, 10)])), settings));
    expect(strictTags(text)).toEqual([]);
    expect(text).toContain('AcDbPolyline\r\n 90\r\n3\r\n');
  });

  it('takes 20 000 holes and stays clean', () => {
    const holes = Array.from({ length: 20_000 }, (_, i): Contour => ({ kind: 'circle', centre: at(i % 200, Math.floor(i / 200)), radius: 0.3 }));
    const text = must(writeDxf(drawingOf(square, holes), settings));
    expect(text.match(/\r\nCIRCLE\r\n/g)).toHaveLength(20_000);
    expect(strictTags(text)).toEqual([]);
  });
});

describe('layer names', () => {
  it.each(['outline', 'cutouts', 'bends'] as const)('names the field of a wrong %s layer and says what would be right', (use) => {
    const problem = problemOf(strap, { [use]: 'A/B' });
    expect(problem.field).toBe(`dxf.layers.${use}`);
    expect(problem.says).toContain('/');
    expect(problem.says).toContain('Use letters');
  });

  it.each([...'<>/\\":;?*|=,`^'])('refuses %s', (c) => {
    expect(problemOf(strap, { outline: `cut${c}` }).field).toBe('dxf.layers.outline');
  });

  it.each([
    ['an empty name', ''],
    ['spaces alone', '   '],
    ['a line break', 'CUT\r\n  0\r\nEOF'],
    ['a line feed', 'CUT\n'],
    ['a control character', 'CUT\u0007'],
    ['a next-line character', 'CUT\u0085'],
    ['a line separator', 'CUT\u2028'],
    ['half a character', 'CUT\uD83D'],
    ['a space at the end', 'CUT '],
    ['256 characters', 'x'.repeat(256)],
    ['the layer that is never plotted', 'DefPoints'],
  ])('refuses %s', (_, name) => {
    const { field, says } = problemOf(strap, { outline: name });
    expect(field).toBe('dxf.layers.outline');
    expect(says).toMatch(/^The layer name for the outline .*\.$/);
  });

  it('does not mind a wrong name that the file has no use for', () => {
    const drawing = must(cutDrawing(frontStrap(), { bendLines: 'none', thickness: 1 })).drawing;
    expect(writeDxf(drawing, { ...settings, layers: { ...settings.layers, bends: '///' } }).ok).toBe(true);
  });

  it.each([
    ['all on one', { outline: 'CUT', cutouts: 'CUT', bends: 'CUT' }, ['CUT']],
    ['one but for capitals', { outline: 'Cut', cutouts: 'CUT', bends: 'Bends' }, ['Cut', 'Bends']],
    ['the layer that every file has', { outline: '0', cutouts: '0', bends: 'Bends' }, ['Bends']],
    ['names of built-in properties', { outline: '__proto__', cutouts: 'constructor', bends: 'toString' }, ['__proto__', 'constructor', 'toString']],
    ['a name of the stand-in kind', { outline: 'LAYER 1', cutouts: 'LAYER 0', bends: '$1$&' }, ['LAYER 1', 'LAYER 0', '$1$&']],
    ['figures', { outline: '12', cutouts: '3', bends: '7' }, ['12', '3', '7']],
    ['255 characters', { outline: 'x'.repeat(255), cutouts: 'b', bends: 'c' }, ['x'.repeat(255), 'b', 'c']],
    ['every script', { outline: 'Außen-Ω', cutouts: 'Отверстия', bends: '曲げ 🔧' }, ['Außen-Ω', 'Отверстия', '曲げ 🔧']],
  ] as const)('takes %s', (_, layers, wanted) => {
    const text = must(writeDxf(strap, { ...settings, layers }));
    expect(strictTags(text)).toEqual([]);
    const names = [...text.matchAll(/AcDbLayerTableRecord\r\n {2}2\r\n(.*)\r\n/g)].map((m) => m[1]);
    expect(names).toEqual(['0', ...wanted]);
    expect(text.match(/\r\n(LWPOLYLINE|CIRCLE|LINE)\r\n/g)).toHaveLength(8);
  });

  it('either refuses a name or writes a clean file, whatever the name', () => {
    let written = 0;
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.string({ unit: 'grapheme' }), fc.string({ unit: fc.constantFrom(...'aZ09 -_$%#0') })), (name) => {
        const result = writeDxf(strap, { ...settings, layers: { ...settings.layers, outline: name } });
        written += result.ok ? 1 : 0;
        expect(result.ok ? strictTags(result.value) : [result.problem.field]).toEqual(result.ok ? [] : ['dxf.layers.outline']);
      }),
      { numRuns: 300, seed: 20261125 },
    );
    expect(written).toBeGreaterThan(50);
  });
});

describe('what cannot be written', () => {
  const withEntity = (entity: Entity): Drawing => ({ ...strap, entities: [...strap.entities, entity] });
  const outlineOf = (...segments: ClosedPath): Drawing => ({
    ...strap,
    entities: [{ kind: 'path', role: 'outline', key: 'outline', runs: [{ segments, closed: true }] }],
  });

  it.each([
    ['NaN', outlineOf(...polygon([at(0, 0), at(NaN, 0), at(5, 5)])), 'not a number'],
    ['Infinity', outlineOf(...polygon([at(0, 0), at(Infinity, 0), at(5, 5)])), 'not a number'],
    ['2 km', outlineOf(...polygon([at(0, 0), at(2e6, 0), at(5, 5)])), '1 km'],
    ['a gap', outlineOf(line(at(0, 0), at(5, 0)), line(at(5, 0.01), at(0, 5)), line(at(0, 5), at(0, 0))), 'gap of 0.010000 mm'],
    ['an open outline', outlineOf(line(at(0, 0), at(5, 0)), line(at(5, 0), at(0, 5))), 'gap of 5.000000 mm'],
    ['an empty path', outlineOf(), 'nothing in it'],
    ['an arc that misses its ends', outlineOf({ ...arcAbout(at(0, 0), 5, 0, 2 * Math.PI), radius: 5.1 }), 'misses its own ends by 0.100000 mm'],
    ['an arc of endless sweep', outlineOf({ ...arcAbout(at(0, 0), 5, 0, 1), sweep: Infinity }), 'angle that cannot be written'],
    ['an arc of two turns', outlineOf({ ...arcAbout(at(0, 0), 5, 0, 1), sweep: 4 * Math.PI }), 'angle that cannot be written'],
    ['a path too small', outlineOf(...polygon([at(0, 0), at(1e-11, 0), at(0, 1e-11)])), 'too small to be cut'],
    ['a hole of radius 0', withEntity({ kind: 'contours', role: 'hole', key: 'h', contours: [{ kind: 'circle', centre: at(1, 1), radius: 0 }] }), 'above 0'],
    ['a hole of radius NaN', withEntity({ kind: 'contours', role: 'hole', key: 'h', contours: [{ kind: 'circle', centre: at(1, 1), radius: NaN }] }), 'above 0'],
    ['a hole of negative radius', withEntity({ kind: 'contours', role: 'hole', key: 'h', contours: [{ kind: 'circle', centre: at(1, 1), radius: -2 }] }), 'above 0'],
    ['lettering', withEntity({ kind: 'text', role: 'outline', key: 't', at: at(0, 0), text: 'A', align: 'start', rotation: 0 }), 'no lettering'],
    ['a hatch', withEntity({ kind: 'path', role: 'hatch', key: 'x', runs: [] }), 'a hatch in it'],
    ['no size', { ...strap, bounds: { ...strap.bounds, maxX: NaN } }, 'size of this drawing is not known'],
    ['nothing', { ...strap, entities: [] }, 'nothing to cut'],
  ])('refuses %s with a sentence', (_, drawing, says) => {
    expect(problemOf(drawing).says).toContain(says);
  });
});
