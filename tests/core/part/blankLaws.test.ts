/** Laws of the blank: closed and anticlockwise, its area the sum of its pieces, mirrored, reversed and scaled with the part. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { unfold } from '../../../src/core/part/unfold';
import { contourArea, signedArea } from '../../../src/core/geometry/area';
import { contourBounds } from '../../../src/core/geometry/bounds';
import { contourLength, pathLength } from '../../../src/core/geometry/segments';
import type { ClosedPath, Point } from '../../../src/core/geometry/types';
import type { Blank } from '../../../src/core/part/layoutTypes';
import type { Across, Along, Cutout, CutoutShape, EndShape, Leg, Part, Pattern } from '../../../src/core/part/types';
import { laidOut } from './laidOut';
import { greenArea, pathPoints } from './measure';
import { randomPart } from './randomParts';

const SAME = 1e-9;

/** What is wrong with a closed path, segment by segment: a gap, no length, an arc whose ends do not lie on it. */
function faultsOf(path: ClosedPath, shortest = 0): string[] {
  const faults = path.length > 1 ? [] : ['too few segments'];
  path.forEach((segment, i) => {
    const note = (says: string, wrong: boolean) => wrong && faults.push(`segment ${i}: ${says}`);
    const before = path.at(i - 1);
    note('a gap', segment.from.x !== before?.to.x || segment.from.y !== before.to.y);
    if (segment.kind === 'line') {
      note('no length', !(Math.hypot(segment.to.x - segment.from.x, segment.to.y - segment.from.y) > shortest));
      return;
    }
    const { centre, radius, sweep, from, to } = segment;
    note('no length', !(Math.abs(sweep) * radius > shortest));
    note('more than once round', !(Math.abs(sweep) <= 2 * Math.PI));
    for (const p of [from, to]) note('an end off the circle', !(Math.abs(Math.hypot(p.x - centre.x, p.y - centre.y) - radius) < SAME));
    const end = Math.atan2(from.y - centre.y, from.x - centre.x) + sweep;
    note('an end where the sweep does not lead', !(Math.hypot(centre.x + radius * Math.cos(end) - to.x, centre.y + radius * Math.sin(end) - to.y) < SAME));
  });
  return faults;
}

/** How far a path turns in all, rad: 2π for one that runs round once, anticlockwise, whatever its shape. */
function fullTurn(path: ClosedPath): number {
  const headings = path.map((s) => {
    if (s.kind === 'line') {
      const heading = Math.atan2(s.to.y - s.from.y, s.to.x - s.from.x);
      return { begin: heading, end: heading, sweep: 0 };
    }
    const quarter = (Math.sign(s.sweep) * Math.PI) / 2;
    const begin = Math.atan2(s.from.y - s.centre.y, s.from.x - s.centre.x) + quarter;
    return { begin, end: begin + s.sweep, sweep: s.sweep };
  });
  return headings.reduce((sum, h, i) => {
    const before = headings.at(i - 1);
    const corner = h.begin - (before?.end ?? 0);
    return sum + h.sweep + Math.atan2(Math.sin(corner), Math.cos(corner));
  }, 0);
}

/** No line doubles back along the line before it: a laser would cut a slit or leave a sliver of nothing. */
function expectNoDoublingBack(path: ClosedPath): void {
  path.forEach((b, i) => {
    const a = path.at(i - 1);
    if (a?.kind !== 'line' || b.kind !== 'line') return;
    const ux = a.to.x - a.from.x;
    const uy = a.to.y - a.from.y;
    const vx = b.to.x - b.from.x;
    const vy = b.to.y - b.from.y;
    const turn = Math.abs(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy));
    expect(turn).toBeLessThan(Math.PI - 1e-6);
  });
}

const whole = randomPart();

describe('the outline', () => {
  it('is closed to the last bit, without pieces of no length, and the bounds hold it', () => {
    fc.assert(
      fc.property(whole, (part) => {
        const blank = unfold(laidOut(part));
        expect(faultsOf(blank.outline, SAME)).toEqual([]);
        expectNoDoublingBack(blank.outline);
        const points = pathPoints(blank.outline);
        expect(Math.min(...points.map((p) => p.x))).toBeGreaterThanOrEqual(-SAME);
        expect(Math.min(...points.map((p) => p.y))).toBeGreaterThanOrEqual(-SAME);
        // A sampled arc stays within one sagitta of its extreme: r (1 − cos(π/64)) for a half turn in 64 chords.
        const sagitta = Math.max(0, ...blank.outline.map((s) => (s.kind === 'arc' ? s.radius * (1 - Math.cos(s.sweep / 128)) : 0))) + SAME;
        for (const [most, bound] of [
          [Math.max(...points.map((p) => p.x)), blank.bounds.maxX],
          [Math.max(...points.map((p) => p.y)), blank.bounds.maxY],
          [-Math.min(...points.map((p) => p.x)), -blank.bounds.minX],
          [-Math.min(...points.map((p) => p.y)), -blank.bounds.minY],
        ] as const) {
          expect(most).toBeLessThanOrEqual(bound + SAME);
          expect(most).toBeGreaterThan(bound - sagitta);
        }
      }),
      { numRuns: 120 },
    );
  });

  it('runs once round, anticlockwise', () => {
    fc.assert(
      fc.property(randomPart({ sound: true, legs: 12 }), (part) => {
        const layout = laidOut(part);
        const blank = unfold(layout);
        expect(Math.abs(fullTurn(blank.outline) - 2 * Math.PI)).toBeLessThan(1e-6);
        expect(signedArea(blank.outline)).toBeGreaterThan(0);
        // A leg of no straight length has no plan to speak of.
        blank.plans.forEach((plan, i) => {
          const turned = (layout.legs[i]?.straight ?? 0) > 0.01 ? fullTurn(plan) : 2 * Math.PI;
          expect(Math.abs(turned - 2 * Math.PI)).toBeLessThan(1e-6);
        });
      }),
      { numRuns: 200 },
    );
  });

  it('keeps each opening closed, anticlockwise and of its own size', () => {
    const sizeOf = (shape: CutoutShape): number => {
      switch (shape.kind) {
        case 'round':
          return (Math.PI * shape.diameter ** 2) / 4;
        case 'slot':
          return shape.width * (shape.length - shape.width) + (Math.PI * shape.width ** 2) / 4;
        case 'rectangle':
          return shape.length * shape.width - (4 - Math.PI) * shape.corner ** 2;
      }
    };
    fc.assert(
      fc.property(whole, (part) => {
        for (const { contour, shape, centre } of unfold(laidOut(part)).cutouts) {
          expect(Math.abs(contourArea(contour) - sizeOf(shape))).toBeLessThan(SAME);
          const path = contour.kind === 'path' ? contour.segments : undefined;
          expect(path ? faultsOf(path) : []).toEqual([]);
          expect(path ? signedArea(path) : 1).toBeGreaterThan(0);
          const box = contourBounds(contour);
          expect(Math.hypot((box.minX + box.maxX) / 2 - centre.x, (box.minY + box.maxY) / 2 - centre.y)).toBeLessThan(SAME);
        }
      }),
      { numRuns: 200 },
    );
  });

  it('encloses the plans and the bend zones, no more and no less, less the openings', () => {
    fc.assert(
      fc.property(whole, (part) => {
        const layout = laidOut(part);
        const blank = unfold(layout);
        const plans = blank.plans.reduce((sum, plan) => sum + greenArea(plan), 0);
        const zones = blank.bends.reduce((sum, bend) => sum + greenArea(bend.zone), 0);
        const byFigures = layout.legs.reduce((sum, leg) => sum + (leg.bend ? leg.bend.width * leg.bend.figures.allowance : 0), 0);
        const openings = blank.cutouts.reduce((sum, { contour }) => sum + (contour.kind === 'circle' ? Math.PI * contour.radius ** 2 : greenArea(contour.segments)), 0);
        expect(Math.abs(zones - byFigures)).toBeLessThan(SAME * Math.max(1, zones));
        expect(Math.abs(greenArea(blank.outline) - plans - zones)).toBeLessThan(SAME * Math.max(1, plans));
        expect(Math.abs(blank.area - (plans + zones - openings))).toBeLessThan(SAME * Math.max(1, plans));
        expect(Math.abs(blank.cutLength - pathLength(blank.outline) - blank.cutouts.reduce((sum, c) => sum + contourLength(c.contour), 0))).toBeLessThan(SAME * blank.cutLength);
      }),
      { numRuns: 200 },
    );
  });

  it('has its bend lines across the zone: two tangents an allowance apart and the centre line midway', () => {
    fc.assert(
      fc.property(whole, (part) => {
        const layout = laidOut(part);
        for (const bend of unfold(layout).bends) {
          const { startTangent: s, centreLine: c, endTangent: e, figures } = bend;
          const width = layout.legs[bend.leg]?.bend?.width ?? NaN;
          for (const end of [0, 1] as const) {
            expect(Math.abs(Math.hypot(e[end].x - s[end].x, e[end].y - s[end].y) - figures.allowance)).toBeLessThan(SAME);
            expect(Math.hypot(c[end].x - (s[end].x + e[end].x) / 2, c[end].y - (s[end].y + e[end].y) / 2)).toBeLessThan(SAME);
          }
          for (const l of [s, c, e]) expect(Math.abs(Math.hypot(l[1].x - l[0].x, l[1].y - l[0].y) - width)).toBeLessThan(SAME);
        }
      }),
      { numRuns: 100 },
    );
  });
});

const otherSide = { left: 'right', right: 'left', centre: 'centre', end: 'end' } as const;
const otherEnd = { start: 'end', end: 'start', middle: 'middle' } as const;

const mirroredAcross = (across: Across): Across => ({ from: otherSide[across.from], distance: across.from === 'centre' ? -across.distance : across.distance });
const turnedBack = (shape: CutoutShape): CutoutShape => (shape.kind === 'round' ? shape : { ...shape, turn: -shape.turn });

const mirroredPart = (part: Part): Part => ({
  ...part,
  legs: part.legs.map((leg) => ({
    ...leg,
    cutouts: leg.cutouts.map((c) => ({ ...c, across: mirroredAcross(c.across), shape: turnedBack(c.shape) })),
    ...(leg.bend ? { bend: { ...leg.bend, edge: otherSide[leg.bend.edge] } } : {}),
  })),
});

const seenFromEnd = (along: Along): Along => ({ ...along, from: otherEnd[along.from], distance: along.from === 'middle' ? -along.distance : along.distance });

/** A plain chain told from its other end. */
const reversedChain = (part: Part): Part => ({
  ...part,
  legs: part.legs.toReversed().map((leg, i): Leg => {
    const bend = part.legs[part.legs.length - i]?.bend;
    const { bend: _, ...plain } = leg;
    return {
      ...plain,
      startBasis: leg.endBasis,
      endBasis: leg.startBasis,
      startWidth: leg.endWidth,
      endWidth: leg.startWidth,
      startShape: leg.endShape,
      endShape: leg.startShape,
      cutouts: leg.cutouts.map((c): Cutout => ({ ...c, along: seenFromEnd(c.along), across: mirroredAcross(c.across) })),
      ...(bend ? { bend: { ...bend, parent: i - 1 } } : {}),
    };
  }),
});

const scaledShape = (shape: EndShape, by: number): EndShape =>
  shape.kind === 'radius' ? { kind: 'radius', radius: shape.radius * by } : shape.kind === 'chamfer' ? { kind: 'chamfer', size: shape.size * by } : shape;

function scaledCutout(c: Cutout, by: number): Cutout {
  const { shape, pattern } = c;
  const bigger: CutoutShape =
    shape.kind === 'round' ? { ...shape, diameter: shape.diameter * by }
    : shape.kind === 'slot' ? { ...shape, length: shape.length * by, width: shape.width * by }
    : { ...shape, length: shape.length * by, width: shape.width * by, corner: shape.corner * by };
  const wider: Pattern =
    pattern.kind === 'row' ? { ...pattern, pitch: pattern.pitch * by }
    : pattern.kind === 'grid' ? { ...pattern, alongPitch: pattern.alongPitch * by, acrossPitch: pattern.acrossPitch * by }
    : pattern;
  return { ...c, shape: bigger, pattern: wider, along: { ...c.along, distance: c.along.distance * by }, across: { ...c.across, distance: c.across.distance * by } };
}

const scaledPart = (part: Part, by: number): Part => ({
  ...part,
  thickness: part.thickness * by,
  legs: part.legs.map((leg) => ({
    ...leg,
    length: leg.length * by,
    startWidth: leg.startWidth * by,
    endWidth: leg.endWidth * by,
    startShape: scaledShape(leg.startShape, by),
    endShape: scaledShape(leg.endShape, by),
    cutouts: leg.cutouts.map((c) => scaledCutout(c, by)),
    ...(leg.bend
      ? {
          bend: {
            ...leg.bend,
            radius: leg.bend.radius * by,
            ...(leg.bend.seat
              ? {
                  seat: {
                    ...leg.bend.seat,
                    along: { ...leg.bend.seat.along, distance: leg.bend.seat.along.distance * by },
                    relief: leg.bend.seat.relief.kind === 'none' ? leg.bend.seat.relief : { ...leg.bend.seat.relief, width: leg.bend.seat.relief.width * by, depth: leg.bend.seat.relief.depth * by },
                  },
                }
              : {}),
          },
        }
      : {}),
  })),
});

/** Every point of one list has its own in the other, whatever the order. */
function expectSamePoints(found: readonly Point[], wanted: readonly Point[], within: number): void {
  expect(found.length).toBe(wanted.length);
  for (const [from, to] of [[found, wanted], [wanted, found]] as const)
    for (const p of from) expect(Math.min(...to.map((q) => Math.hypot(p.x - q.x, p.y - q.y)))).toBeLessThan(within);
}

/** The blank `found` is the blank `was` with every point moved. */
function expectMoved(found: Blank, was: Blank, move: (p: Point) => Point, by = 1): void {
  const within = SAME * Math.max(1, by);
  expectSamePoints(found.outline.map((s) => s.from), was.outline.map((s) => move(s.from)), within);
  expectSamePoints(found.cutouts.map((c) => c.centre), was.cutouts.map((c) => move(c.centre)), within);
  expectSamePoints(
    found.cutouts.flatMap(({ contour }) => (contour.kind === 'path' ? contour.segments.map((s) => s.from) : [])),
    was.cutouts.flatMap(({ contour }) => (contour.kind === 'path' ? contour.segments.map((s) => move(s.from)) : [])),
    within,
  );
  expectSamePoints(found.bends.flatMap((b) => b.centreLine), was.bends.flatMap((b) => b.centreLine.map(move)), within);
  expect(Math.abs(found.area / (by * by) - was.area)).toBeLessThan(SAME * Math.max(1, was.area));
  expect(Math.abs(found.cutLength / by - was.cutLength)).toBeLessThan(SAME * was.cutLength);
}

describe('the blank of', () => {
  const few = randomPart({ legs: 10 });

  it('a part bent the other way everywhere is the same', () => {
    fc.assert(
      fc.property(few, (part) => {
        const flipped: Part = { ...part, legs: part.legs.map((leg) => (leg.bend ? { ...leg, bend: { ...leg.bend, way: leg.bend.way === 'up' ? 'down' : 'up' } } : leg)) };
        const { bends: _, ...blank } = unfold(laidOut(flipped));
        const { bends: __, ...was } = unfold(laidOut(part));
        expect(blank).toEqual(was);
      }),
      { numRuns: 100 },
    );
  });

  it('a part mirrored left to right is mirrored', () => {
    expect.hasAssertions();
    fc.assert(
      fc.property(few, (part) => {
        const was = unfold(laidOut(part));
        expectMoved(unfold(laidOut(mirroredPart(part))), was, (p) => ({ x: p.x, y: was.bounds.maxY - p.y }));
      }),
      { numRuns: 150 },
    );
  });

  it('a chain told from its other end is turned round', () => {
    expect.hasAssertions();
    fc.assert(
      fc.property(randomPart({ lugs: false, legs: 12 }), (part) => {
        const was = unfold(laidOut(part));
        expectMoved(unfold(laidOut(reversedChain(part))), was, (p) => ({ x: was.bounds.maxX - p.x, y: was.bounds.maxY - p.y }));
      }),
      { numRuns: 150 },
    );
  });

  it('a part scaled in all its lengths is scaled, where K is fixed', () => {
    expect.hasAssertions();
    fc.assert(
      fc.property(randomPart({ legs: 10, rule: 'fixedK' }), fc.double({ min: 0.5, max: 20, noNaN: true }), (part, by) => {
        const was = unfold(laidOut(part));
        expectMoved(unfold(laidOut(scaledPart(part, by))), was, (p) => ({ x: p.x * by, y: p.y * by }), by);
      }),
      { numRuns: 150 },
    );
  });

});
