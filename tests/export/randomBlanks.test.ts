/** Laws over many blanks: whatever the shape, the file is clean, and what readers find is what the core has. */
import Parser from 'dxf-parser';
import type { ICircleEntity, ILwpolylineEntity } from 'dxf-parser';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contourArea, signedArea } from '../../src/core/geometry/area';
import { line, segmentLength } from '../../src/core/geometry/segments';
import type { Arc, ClosedPath, Contour, Point, Segment } from '../../src/core/geometry/types';
import type { Blank } from '../../src/core/part/layoutTypes';
import { cutDrawing } from '../../src/drawing/cutDrawing';
import { writeDxf } from '../../src/export/dxf/writeDxf';
import { writeSvg } from '../../src/export/svg/writeSvg';
import { must } from './must';
import { readWithEzdxf } from './readers';
import { at, blankOf, roundedPath, settings, slotPath } from './sampleBlanks';
import { strictTags } from './strictTags';

const SEED = 20261125;

/** The arc from `from` to `to` that turns by `sweep`, its centre on the middle line of the chord. */
function arcBetween(from: Point, to: Point, sweep: number): Arc {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const chord = Math.hypot(dx, dy);
  const back = chord / 2 / Math.tan(sweep / 2);
  const centre = at((from.x + to.x) / 2 - (dy / chord) * back, (from.y + to.y) / 2 + (dx / chord) * back);
  return { kind: 'arc', from, to, centre, radius: Math.hypot(from.x - centre.x, from.y - centre.y), sweep };
}

/** Evenly spread: fc.double spreads over the bits of a double and so mostly gives values near its lower end. */
const even = (low: number, high: number): fc.Arbitrary<number> => fc.integer({ min: 0, max: 1_000_003 }).map((n) => low + ((high - low) * n) / 1_000_003);

const corner = fc.record({
  gap: even(0.1, 1),
  reach: even(30, 150),
  /** 0: a line. */
  sweep: fc.oneof(fc.constant(0), even(0.02, 1.9 * Math.PI), even(-2, -0.02), fc.constant(Math.PI)),
});
const place = fc.record({ x: even(0, 300), y: even(0, 300) });
const size = even(0.5, 12);
const opening = fc.oneof(
  fc.tuple(place, size).map(([centre, radius]): Contour => ({ kind: 'circle', centre, radius })),
  fc.tuple(place, size, size).map(([centre, width, more]): Contour => ({ kind: 'path', segments: slotPath(centre, width + more, width) })),
  fc.tuple(place, size, size).map(([low, w, h]): Contour => ({ kind: 'path', segments: roundedPath(low, at(low.x + w, low.y + h), Math.min(w, h) / 5) })),
);
const blanks: fc.Arbitrary<Blank> = fc.tuple(fc.array(corner, { minLength: 3, maxLength: 12 }), fc.array(opening, { minLength: 1, maxLength: 8 })).map(([corners, openings]) => {
  const whole = corners.reduce((sum, c) => sum + c.gap, 0);
  let turned = 0;
  const points = corners.map((c) => {
    turned += (c.gap / whole) * 2 * Math.PI;
    return at(150 + c.reach * Math.cos(turned), 150 + c.reach * Math.sin(turned));
  });
  const outline: ClosedPath = corners.map((c, i): Segment => {
    const [from, to] = [points[i] ?? at(0, 0), points[(i + 1) % points.length] ?? at(0, 0)];
    return c.sweep === 0 ? line(from, to) : arcBetween(from, to, c.sweep);
  });
  return blankOf(outline, openings);
});
const textOf = (blank: Blank, unit: 'mm' | 'in' = 'mm'): string =>
  must(writeDxf(must(cutDrawing(blank, { bendLines: 'none', thickness: 1 })).drawing, { ...settings, unit }));

describe('DXF of random blanks', () => {
  it('is clean, and dxf-parser finds every point, bulge and circle', () => {
    const reached = { arcs: 0, long: 0, slots: 0, circles: 0 };
    fc.assert(
      fc.property(blanks, (blank) => {
        const text = textOf(blank);
        expect(strictTags(text)).toEqual([]);
        const entities = new Parser().parseSync(text)?.entities ?? [];
        const outline = entities.find((e) => e.layer === 'OUTLINE') as unknown as ILwpolylineEntity;
        expect(outline.shape).toBe(true);
        // Every end of the core's is a vertex; arcs of more than half a turn add one in their middle.
        for (const { from } of blank.outline) {
          expect(outline.vertices.some((v) => Math.abs(v.x - from.x) < 1e-9 && Math.abs(v.y - from.y) < 1e-9)).toBe(true);
        }
        const arcs = blank.outline.filter((s) => s.kind === 'arc');
        const long = arcs.filter((a) => Math.abs(a.sweep) > Math.PI + 1e-9);
        expect(outline.vertices).toHaveLength(blank.outline.length + long.length);
        const swept = outline.vertices.reduce((sum, v) => sum + 4 * Math.atan(v.bulge ?? 0), 0);
        expect(Math.abs(swept - arcs.reduce((sum, a) => sum + a.sweep, 0))).toBeLessThan(1e-9);
        const circles = entities.filter((e) => e.type === 'CIRCLE') as unknown as ICircleEntity[];
        const round = blank.cutouts.flatMap((c) => (c.contour.kind === 'circle' ? [c.contour] : []));
        expect(circles).toHaveLength(round.length);
        round.forEach((c, i) => expect(Math.hypot((circles[i]?.center.x ?? NaN) - c.centre.x, (circles[i]?.center.y ?? NaN) - c.centre.y, (circles[i]?.radius ?? NaN) - c.radius)).toBeLessThan(2e-9));
        reached.arcs += arcs.length;
        reached.long += long.length;
        reached.circles += round.length;
        reached.slots += blank.cutouts.length - round.length;
      }),
      { numRuns: 150, seed: SEED },
    );
    // The generator must reach what it is for.
    for (const count of Object.values(reached)) expect(count).toBeGreaterThan(100);
  });

  it.each(['mm', 'in'] as const)('has the areas of the core as ezdxf reads them in %s', async (unit) => {
    const sample = fc.sample(blanks, { numRuns: 60, seed: SEED });
    const read = await readWithEzdxf(...sample.map((blank) => textOf(blank, unit)));
    const square = unit === 'mm' ? 1 : 25.4 ** 2;
    expect(read).toHaveLength(sample.length);
    for (const [i, blank] of sample.entries()) {
      expect(read[i]?.errors).toEqual([]);
      const had = read[i]?.entities.map((e) => (e.area ?? NaN) * square) ?? [];
      const wanted = [Math.abs(signedArea(blank.outline)), ...blank.cutouts.map((c) => contourArea(c.contour))];
      expect(had).toHaveLength(wanted.length);
      wanted.forEach((area, n) => expect(Math.abs((had[n] ?? NaN) - area)).toBeLessThan(1e-6 * area + 1e-6));
    }
  });
});

describe('SVG of random blanks', () => {
  /** Centre of an SVG arc by the formulas of the SVG standard, implementation notes, conversion from endpoint to centre. */
  function centreOf(from: Point, r: number, sweepFlag: number, to: Point): Point {
    const [x, y] = [(from.x - to.x) / 2, (from.y - to.y) / 2];
    const root = Math.sqrt(Math.max(0, (r * r - x * x - y * y) / (x * x + y * y))) * (sweepFlag === 0 ? -1 : 1);
    return at((from.x + to.x) / 2 + root * y, (from.y + to.y) / 2 - root * x);
  }

  it('has every arc about the centre that the core has', () => {
    fc.assert(
      fc.property(blanks, (blank) => {
        const { drawing } = must(cutDrawing(blank, { bendLines: 'none', thickness: 1 }));
        const text = must(writeSvg(drawing, { unit: 'mm', layers: settings.layers, title: '' }));
        const turned = (p: Point): Point => at(p.x, drawing.bounds.minY + drawing.bounds.maxY - p.y);
        const d = /<g id="outline"[^]*?<path d="([^"]*)"/.exec(text)?.[1] ?? '';
        let from = at(NaN, NaN);
        const centres: Point[] = [];
        const large: number[] = [];
        for (const [, letter, list] of d.matchAll(/([MLAZ])([^MLAZ]*)/g)) {
          const n = (list ?? '').trim().split(/\s+/).map(Number);
          const to = letter === 'Z' ? from : at(n.at(-2) ?? NaN, n.at(-1) ?? NaN);
          if (letter === 'A') large.push(n[3] ?? NaN);
          if (letter === 'A') centres.push(centreOf(from, n[0] ?? NaN, n[4] ?? NaN, to));
          from = to;
        }
        const wanted = blank.outline.flatMap((s) => (s.kind === 'arc' ? Array.from({ length: Math.abs(s.sweep) > Math.PI + 1e-9 ? 2 : 1 }, () => s) : []));
        expect(centres).toHaveLength(wanted.length);
        // Arcs of more than half a turn are written in pieces, so that this flag is never needed.
        expect(large.every((flag) => flag === 0)).toBe(true);
        wanted.forEach((arc, i) => {
          const off = Math.hypot((centres[i]?.x ?? NaN) - turned(arc.centre).x, (centres[i]?.y ?? NaN) - turned(arc.centre).y);
          // Near half a turn the centre is ill set by the ends: a last place of 1e-9 moves it by its square root.
          expect(off).toBeLessThan(Math.abs(Math.abs(arc.sweep) - Math.PI) < 0.05 ? 1e-3 * Math.max(1, Math.sqrt(segmentLength(arc))) : 1e-5 * Math.max(1, arc.radius / 100));
        });
      }),
      { numRuns: 150, seed: SEED },
    );
  });
});
