/** Fold after unfold: the bent part, measured by its faces, has every dimension that was given. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { developedByDeductions, developedByStraights } from '../../../src/core/bending/developedLength';
import { fold } from '../../../src/core/part/fold';
import { unfold } from '../../../src/core/part/unfold';
import type { Frame } from '../../../src/core/geometry/types';
import type { Part } from '../../../src/core/part/types';
import { laidOut } from './laidOut';
import { cross, dimensionLine, dot, long, measuredEnds, minus, plus, pointOf, scaled } from './measure';
import { randomPart } from './randomParts';

const SAME = 1e-9;

const expectFrame = (frame: Frame): void => {
  for (const axis of [frame.x, frame.y, frame.z]) expect(Math.abs(long(axis) - 1)).toBeLessThan(1e-12);
  expect(long(minus(cross(frame.x, frame.y), frame.z))).toBeLessThan(1e-12);
};

const whole = randomPart();

describe('the bent part', () => {
  it('has every leg at its given length', () => {
    fc.assert(
      fc.property(whole, (part) => {
        const layout = laidOut(part);
        const folded = fold(layout);
        part.legs.forEach((leg, i) => {
          const { start, end } = measuredEnds(layout, folded, i, leg.startBasis, leg.endBasis);
          expect(Math.abs(end - start - leg.length)).toBeLessThan(SAME);
        });
      }),
      { numRuns: 300 },
    );
  });

  it('turns each bend by its angle, its way, about a line square to the child', () => {
    fc.assert(
      fc.property(whole, (part) => {
        const folded = fold(laidOut(part));
        part.legs.forEach((leg, i) => {
          const bend = leg.bend;
          const own = folded.legs[i];
          const under = bend ? folded.legs[bend.parent] : undefined;
          if (!bend || !own || !under) return;
          expect(Math.abs(dot(own.z, under.z) - Math.cos(bend.turn))).toBeLessThan(1e-12);
          expect(Math.abs(dot(own.y, under.z))).toBeLessThan(1e-12);
          // Up: the leg climbs out of the parent's marked face.
          const climbs = dot(own.x, under.z);
          expect(Math.abs(climbs - (bend.way === 'up' ? 1 : -1) * Math.sin(bend.turn))).toBeLessThan(1e-12);
        });
      }),
      { numRuns: 200 },
    );
  });

  it('has every opening where it was dimensioned', () => {
    fc.assert(
      fc.property(whole, (part) => {
        const layout = laidOut(part);
        const folded = fold(layout);
        for (const hole of folded.cutouts) {
          const leg = part.legs[hole.leg];
          const cutout = leg?.cutouts[hole.cutout];
          const frame = folded.legs[hole.leg];
          const straight = layout.legs[hole.leg]?.straight;
          if (!leg || !cutout || !frame || straight === undefined) throw new Error('no such opening');
          expect(Math.abs(dot(minus(hole.centre, frame.origin), frame.z))).toBeLessThan(SAME);
          expect(long(minus(hole.axis, frame.z))).toBeLessThan(1e-12);
          const { start, end } = measuredEnds(layout, folded, hole.leg, cutout.along.basis, cutout.along.basis);
          const x = dot(minus(hole.centre, frame.origin), frame.x);
          const y = dot(minus(hole.centre, frame.origin), frame.y);
          const { pattern, along, across } = cutout;
          const nx = pattern.kind === 'grid' ? pattern.alongCount : pattern.kind === 'row' && pattern.direction === 'along' ? pattern.count : 1;
          const ny = pattern.kind === 'grid' ? pattern.acrossCount : pattern.kind === 'row' && pattern.direction === 'across' ? pattern.count : 1;
          const px = pattern.kind === 'grid' ? pattern.alongPitch : pattern.kind === 'row' ? pattern.pitch : 0;
          const py = pattern.kind === 'grid' ? pattern.acrossPitch : pattern.kind === 'row' ? pattern.pitch : 0;
          const ix = Math.floor(hole.item / ny);
          const iy = hole.item % ny;
          const wantX = {
            start: start + along.distance + ix * px,
            end: end - along.distance - ix * px,
            middle: (start + end) / 2 + along.distance + (ix - (nx - 1) / 2) * px,
          }[along.from];
          expect(Math.abs(x - wantX)).toBeLessThan(SAME);
          // Across: half the width there, by the straight taper between square or cornered ends (a round end tapers differently).
          if (leg.startShape.kind === 'round' || leg.endShape.kind === 'round') return;
          const half = (leg.startWidth + ((leg.endWidth - leg.startWidth) * x) / straight) / 2;
          const wantY = {
            centre: across.distance + (iy - (ny - 1) / 2) * py,
            left: half - across.distance - iy * py,
            right: -half + across.distance + iy * py,
          }[across.from];
          expect(Math.abs(y - wantY)).toBeLessThan(SAME);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('has every side lug flush with the edge it hangs on, by its own basis, and at its place along it', () => {
    let lugs = 0;
    fc.assert(
      fc.property(randomPart({ legs: 10 }), (part) => {
        const layout = laidOut(part);
        const folded = fold(layout);
        part.legs.forEach((leg, i) => {
          const bend = leg.bend;
          const own = folded.legs[i];
          const under = bend ? folded.legs[bend.parent] : undefined;
          const on = bend ? part.legs[bend.parent] : undefined;
          const straight = bend ? layout.legs[bend.parent]?.straight : undefined;
          if (!bend?.seat || !own || !under || !on || straight === undefined) return;
          lugs++;
          const left = bend.edge === 'left';
          const rise = (on.endWidth - on.startWidth) / 2;
          const edgeLong = Math.hypot(straight, rise);
          const along = plus(scaled(under.x, straight / edgeLong), under.y, ((left ? 1 : -1) * rise) / edgeLong);
          const outwards = plus(scaled(under.x, -rise / edgeLong), under.y, ((left ? 1 : -1) * straight) / edgeLong);
          const corner = pointOf(under, 0, ((left ? 1 : -1) * on.startWidth) / 2, 0);
          // The lug's dimension line, in the parent's plane, must be the parent's edge.
          const reach = dimensionLine(under, own, own, outwards, bend, part.thickness, bend.seat.basis);
          expect(Math.abs(reach - dot(minus(corner, under.origin), outwards))).toBeLessThan(SAME);
          expect(Math.abs(dot(own.y, outwards))).toBeLessThan(1e-12);
          // Its near side, middle or far side on the edge, back to x along the parent.
          const { basis, from, distance } = bend.seat.along;
          const ends = measuredEnds(layout, folded, bend.parent, basis, basis);
          const middle = dot(minus(own.origin, corner), along);
          const at = { start: middle - leg.startWidth / 2, middle, end: middle + leg.startWidth / 2 }[from];
          const x = at * (straight / edgeLong);
          const want = { start: ends.start + distance, end: ends.end - distance, middle: (ends.start + ends.end) / 2 + distance }[from];
          expect(Math.abs(x - want)).toBeLessThan(SAME);
        });
      }),
      { numRuns: 300 },
    );
    expect(lugs).toBeGreaterThan(200);
  });

  it('keeps its frames square and of unit length, however far each bend is made', () => {
    expect.hasAssertions();
    fc.assert(
      fc.property(whole, fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 40, maxLength: 40 }), (part, bent) => {
        const layout = laidOut(part);
        for (const folded of [fold(layout), fold(layout, bent)]) {
          folded.legs.forEach(expectFrame);
          folded.bends.forEach((bend) => expectFrame(bend.frame));
        }
      }),
      { numRuns: 150 },
    );
  });

  it('keeps the length of each neutral line while it is bent, and lies flat as the blank before', () => {
    fc.assert(
      fc.property(randomPart({ legs: 12 }), fc.double({ min: 1e-6, max: 1, noNaN: true }), (part, share) => {
        const layout = laidOut(part);
        const halfway = fold(layout, part.legs.map(() => share));
        for (const bend of halfway.bends) {
          const figures = layout.legs[bend.leg]?.bend?.figures;
          if (!figures) throw new Error('no bend');
          expect(Math.abs(bend.turn - figures.turn * share)).toBeLessThan(1e-12);
          expect(Math.abs(bend.turn * (bend.radius + figures.k * part.thickness) - figures.allowance)).toBeLessThan(SAME);
          expect(bend.radius).toBeGreaterThanOrEqual(figures.radius - SAME);
        }
        const flat = fold(layout, part.legs.map(() => 0));
        const blank = unfold(layout);
        const [first] = blank.legs;
        flat.legs.forEach((frame, i) => {
          const pose = blank.legs[i];
          if (!pose || !first) throw new Error('no pose');
          expect(Math.hypot(frame.origin.x - (pose.x - first.x), frame.origin.y - (pose.y - first.y))).toBeLessThan(SAME);
          expect(Math.hypot(frame.x.x - Math.cos(pose.heading), frame.x.y - Math.sin(pose.heading))).toBeLessThan(1e-12);
          expect(frame.z).toEqual({ x: 0, y: 0, z: 1 });
        });
      }),
      { numRuns: 150 },
    );
  });

  it('hardly moves when a bend has hardly begun', () => {
    fc.assert(
      fc.property(randomPart({ legs: 4 }), fc.double({ min: -320, max: -9, noNaN: true }), (part, places) => {
        const layout = laidOut(part);
        const begun = fold(layout, part.legs.map(() => 10 ** places));
        const flat = fold(layout, part.legs.map(() => 0));
        begun.legs.forEach((frame, i) => {
          const was = flat.legs[i];
          if (!was) throw new Error('no leg');
          expect(long(minus(frame.origin, was.origin))).toBeLessThan(1e-4);
          expectFrame(frame);
        });
      }),
      { numRuns: 150 },
    );
  });
});

describe('developed length of a chain', () => {
  it('is the same by straights and by deductions, and is the length of a square-ended blank', () => {
    fc.assert(
      fc.property(randomPart({ lugs: false }), (part) => {
        const outside: Part = { ...part, legs: part.legs.map((leg) => ({ ...leg, length: leg.length + 30, startBasis: 'outside', endBasis: 'outside', startShape: { kind: 'square' }, endShape: { kind: 'square' } })) };
        const layout = laidOut(outside);
        const blank = unfold(layout);
        const figures = layout.legs.flatMap((leg) => (leg.bend ? [leg.bend.figures] : []));
        const straights = developedByStraights(layout.legs.map((leg) => leg.straight), figures.map((f) => f.allowance));
        const deductions = developedByDeductions(outside.legs.map((leg) => leg.length), figures.map((f) => f.deduction));
        if (!straights.ok || !deductions.ok) throw new Error('no developed length');
        expect(Math.abs(straights.value - deductions.value)).toBeLessThan(SAME);
        expect(Math.abs(blank.developedLength - deductions.value)).toBeLessThan(SAME);
        expect(Math.abs(blank.bounds.maxX - blank.developedLength)).toBeLessThan(SAME);
      }),
      { numRuns: 200 },
    );
  });
});
