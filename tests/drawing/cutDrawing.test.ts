import { describe, expect, it } from 'vitest';
import { signedArea } from '../../src/core/geometry/area';
import { arcAbout, line, pathLength, withEnds } from '../../src/core/geometry/segments';
import type { ClosedPath, Contour } from '../../src/core/geometry/types';
import type { Blank } from '../../src/core/part/layoutTypes';
import { cutDrawing } from '../../src/drawing/cutDrawing';
import type { CutDrawing } from '../../src/drawing/cutDrawing';
import { must } from '../export/must';
import { at, bendAcross, blankOf, frontStrap, polygon, roundPlate } from '../export/sampleBlanks';

const cut = (blank: Blank, bendLines: 'none' | 'layer' | 'nicks', thickness = 1.6): CutDrawing => must(cutDrawing(blank, { bendLines, thickness }));
const outlineOf = ({ drawing }: CutDrawing): ClosedPath => {
  const entity = drawing.entities.find((e) => e.role === 'outline');
  return entity?.kind === 'path' ? (entity.runs[0]?.segments ?? []) : [];
};
/** Every segment begins where the one before ends. */
const joined = (path: ClosedPath): boolean => path.every((s, i) => s.from === path.at(i - 1)?.to || Math.hypot(s.from.x - (path.at(i - 1)?.to.x ?? NaN), s.from.y - (path.at(i - 1)?.to.y ?? NaN)) < 1e-12);
const strip = polygon([at(0, 0), at(60, 0), at(60, 12), at(0, 12)]);

describe('what is cut and marked', () => {
  it('is the outline and each opening, and no more, without bend lines', () => {
    const blank = frontStrap();
    const { drawing, area, cutLength, pierces, leftOut } = cut(blank, 'none');
    expect(drawing.entities.map((e) => e.role)).toEqual(['outline', 'hole', 'hole', 'hole', 'hole', 'hole']);
    expect(outlineOf(cut(blank, 'none'))).toEqual(blank.outline);
    expect([area, cutLength, pierces]).toEqual([blank.area, blank.cutLength, 6]);
    expect(leftOut).toEqual([]);
    expect(drawing.bounds).toEqual(blank.bounds);
  });

  it('keeps the openings of one row together', () => {
    const blank = frontStrap();
    const row = { ...blank, cutouts: blank.cutouts.map((c, item) => ({ ...c, cutout: 0, item })) };
    const holes = cut(row, 'none').drawing.entities.filter((e) => e.kind === 'contours');
    expect(holes.map((h) => h.contours.length)).toEqual([5]);
  });

  it('marks bend centre lines on a layer without cutting them', () => {
    const blank = frontStrap();
    const { drawing, area, cutLength } = cut(blank, 'layer');
    const lines = drawing.entities.filter((e) => e.role === 'bend centre line');
    expect(lines.map((e) => e.kind === 'path' && e.runs)).toEqual(
      blank.bends.map((b) => [{ closed: false, segments: [{ kind: 'line', from: b.centreLine[0], to: b.centreLine[1] }] }]),
    );
    expect([area, cutLength]).toEqual([blank.area, blank.cutLength]);
  });

  it('refuses a blank without an outline, and nicks without a thickness', () => {
    const empty = cutDrawing({ ...frontStrap(), outline: [] }, { bendLines: 'none', thickness: 1 });
    expect(!empty.ok && empty.problem.field).toBe('outline');
    for (const thickness of [0, -1, NaN, Infinity]) {
      const nicked = cutDrawing(frontStrap(), { bendLines: 'nicks', thickness });
      expect(!nicked.ok && nicked.problem.field).toBe('thickness');
    }
  });
});

describe('nicks', () => {
  it('are vees half the thickness wide and deep at both ends of the line, as part of the closed outline', () => {
    const outline = outlineOf(cut(blankOf(strip, [], [bendAcross(1, 20, 0, 12)]), 'nicks', 2));
    expect(outline.map((s) => s.from)).toEqual([
      at(0, 0), at(19.5, 0), at(20, 1), at(20.5, 0), at(60, 0), at(60, 12), at(20.5, 12), at(20, 11), at(19.5, 12), at(0, 12),
    ]);
    expect(joined(outline)).toBe(true);
  });

  it('take their area off and add their sides to the cut', () => {
    const blank = blankOf(strip, [], [bendAcross(1, 20, 0, 12), bendAcross(2, 45, 0, 12)]);
    const { area, cutLength, pierces, drawing } = cut(blank, 'nicks', 2);
    // By hand: each vee is a triangle 1 wide and 1 deep; two sides of √1.25 stand for 1 mm of edge.
    expect(area).toBeCloseTo(60 * 12 - 4 * 0.5, 10);
    expect(cutLength).toBeCloseTo(2 * (60 + 12) + 4 * (2 * Math.sqrt(1.25) - 1), 10);
    expect(pierces).toBe(1);
    expect(drawing.bounds).toEqual(blank.bounds);
  });

  it('stand across the joint of two segments, and on corners of the outline that lie in line', () => {
    const jointed = polygon([at(0, 0), at(20, 0), at(60, 0), at(60, 12), at(20.25, 12), at(19.9, 12), at(0, 12)]);
    const { area, leftOut } = cut(blankOf(jointed, [], [bendAcross(1, 20, 0, 12)]), 'nicks', 2);
    expect(leftOut).toEqual([]);
    expect(area).toBeCloseTo(60 * 12 - 2 * 0.5, 10);
  });

  it('bite into a round edge and keep what is left of it a true arc', () => {
    const disc: ClosedPath = [
      withEnds(arcAbout(at(0, 0), 20, -Math.PI / 2, Math.PI), at(0, -20), at(0, 20)),
      withEnds(arcAbout(at(0, 0), 20, Math.PI / 2, Math.PI), at(0, 20), at(0, -20)),
    ];
    const right = at(20 * Math.cos(-0.3), 20 * Math.sin(-0.3));
    const left = at(20 * Math.cos(0.9 + 2), 20 * Math.sin(0.9 + 2));
    const bend = { ...bendAcross(1, 0, 0, 1), centreLine: [right, left] as const };
    const nicked = cut(blankOf(disc, [], [bend]), 'nicks', 2);
    const outline = outlineOf(nicked);
    expect(nicked.leftOut).toEqual([]);
    expect(joined(outline)).toBe(true);
    const arcs = outline.filter((s) => s.kind === 'arc');
    expect(arcs.reduce((sum, a) => sum + a.sweep, 0)).toBeCloseTo(2 * Math.PI - 2 * (1 / 20), 12);
    expect(pathLength(outline)).toBeCloseTo(nicked.cutLength, 12);
    // Each bite: the circular segment of 1/20 rad, and the triangle under its chord to the tip, 1 mm down a line that may slant.
    const chord = 2 * 20 * Math.sin(1 / 40);
    const slant = Math.asin(Math.hypot(right.x + left.x, right.y + left.y) / 2 / 20);
    const sagitta = 20 * (1 - Math.cos(1 / 40));
    const bite = (20 * 20 * (1 / 20 - Math.sin(1 / 20))) / 2 + (chord * (Math.cos(slant) - sagitta)) / 2;
    expect(nicked.area).toBeCloseTo(Math.PI * 400 - 2 * bite, 9);
  });

  it.each<[string, Blank, number, string | RegExp]>([
    ['a line that ends off the outline', blankOf(strip, [], [bendAcross(3, 20, 0.4, 12)]), 1, /^Bend 3 has no nick at its right end: the bend line ends 0\.40 mm away from the outline\./],
    ['a line at a corner', blankOf(strip, [], [bendAcross(1, 0, 0, 12)]), 2, 'the edge turns a corner there'],
    ['two lines too close together', blankOf(strip, [], [bendAcross(1, 20, 0, 12), bendAcross(2, 20.6, 0, 12)]), 2, 'another nick is too near'],
    ['a strip too narrow', blankOf(polygon([at(0, 0), at(60, 0), at(60, 3), at(0, 3)]), [], [bendAcross(1, 20, 0, 3)]), 2, 'the bend is too short for it'],
    ['a line that runs out of the metal', blankOf(strip, [], [{ ...bendAcross(1, 20, 0, 12), centreLine: [at(20, 0), at(20, -12)] }]), 2, /right end: the bend line does not run into the metal|left end: the bend line ends 12\.00 mm away/],
    ['a hole at the edge', blankOf(strip, [{ kind: 'circle', centre: at(20, 1.5), radius: 0.8 }], [bendAcross(1, 20, 0, 12)]), 1, 'a cut-out is too near'],
    ['a slot at the edge', blankOf(strip, [{ kind: 'path', segments: polygon([at(15, 0.5), at(25, 0.5), at(25, 2), at(15, 2)]) }], [bendAcross(1, 20, 0, 12)]), 1, 'a cut-out is too near'],
    ['a recess behind the edge', blankOf(polygon([at(0, 0), at(60, 0), at(60, 12), at(10, 12), at(10, 11.5), at(40, 11.5), at(40, 0.6), at(10, 0.6), at(10, 0.5), at(0, 0.5)]), [], [bendAcross(1, 20, 0, 12)]), 2, 'another edge is too near'],
  ])('are left out, and said, for %s', (_, blank, count, says) => {
    const { leftOut, area } = cut(blank, 'nicks', 2);
    expect(leftOut).toHaveLength(count);
    for (const sentence of leftOut) expect(sentence).toMatch(says);
    expect(leftOut.every((s) => s.endsWith('Choose bend lines on a layer, or mark that end by hand.'))).toBe(true);
    expect(area).toBeLessThanOrEqual(blank.area);
  });

  it('leave a round plate without bends as it is', () => {
    expect(outlineOf(cut(roundPlate(), 'nicks'))).toEqual(roundPlate().outline);
  });

  it('keep the outline anticlockwise and its first point', () => {
    const outline = outlineOf(cut(frontStrap(), 'nicks'));
    expect(signedArea(outline)).toBeGreaterThan(0);
    expect(outline[0]?.from).toEqual(frontStrap().outline[0]?.from);
    expect(outline[0]).toEqual(line(at(0, 0), at(34.6, 0)));
  });

  it('do not meet a hole that is clear of them', () => {
    const hole: Contour = { kind: 'circle', centre: at(20, 2.5), radius: 1 };
    expect(cut(blankOf(strip, [hole], [bendAcross(1, 20, 0, 12)]), 'nicks', 2).leftOut).toEqual([]);
  });
});
