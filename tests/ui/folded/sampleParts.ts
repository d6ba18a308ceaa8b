/** Parts of the greenhouse stay for the tests of the folded view. */
import { layOut } from '../../../src/core/part/layOut';
import type { Layout } from '../../../src/core/part/layoutTypes';
import type { Bend, Cutout, Leg, Part } from '../../../src/core/part/types';

const DEGREE = Math.PI / 180;

export const hole = (id: string, diameter: number, from: 'start' | 'end', distance: number, pattern: Cutout['pattern'] = { kind: 'single' }): Cutout => ({
  id, name: id, shape: { kind: 'round', diameter }, along: { from, basis: 'outside', distance }, across: { from: 'centre', distance: 0 }, pattern,
});

export const leg = (id: string, length: number, width: number, more: Partial<Leg> = {}): Leg => ({
  id, name: id, length, startBasis: 'outside', endBasis: 'outside', startWidth: width, endWidth: width,
  startShape: { kind: 'square' }, endShape: { kind: 'square' }, cutouts: [], ...more,
});

export const bend = (parent: number, degrees: number, way: 'up' | 'down', radius = 2): Bend => ({
  parent, edge: 'end', turn: degrees * DEGREE, way, radius,
});

const rule = { kind: 'fixedK', k: 0.414 } as const;

/** Foot, crank, peg leg with seven holes, lip. */
export const frontStrap: Part = {
  thickness: 1.6,
  rule,
  legs: [
    leg('foot', 26, 16, { startShape: { kind: 'round' }, cutouts: [hole('foot-hole', 4, 'start', 8)] }),
    leg('crank', 18, 16, { startBasis: 'centre line', endBasis: 'centre line', bend: bend(0, 45, 'up') }),
    leg('peg-leg', 112, 16, { bend: bend(1, 45, 'down'), cutouts: [hole('peg', 3, 'start', 7.5, { kind: 'row', direction: 'along', count: 7, pitch: 15 })] }),
    leg('lip', 12, 16, { startBasis: 'inside', endShape: { kind: 'radius', radius: 3 }, bend: bend(2, 90, 'up') }),
  ],
};

const lug = (edge: 'left' | 'right', way: 'up' | 'down'): Bend => ({
  parent: 1, edge, turn: 90 * DEGREE, way, radius: 2,
  seat: {
    along: { from: 'middle', basis: 'straight', distance: 0 }, basis: 'outside', relief: { kind: 'round', width: 2, depth: 3 },
  },
});

/** A slotted back between two feet, with a lug up on each long edge. */
export const wallBracket: Part = {
  thickness: 1.6,
  rule,
  legs: [
    leg('foot', 22, 30, { startShape: { kind: 'radius', radius: 5 }, cutouts: [hole('foot-hole', 5, 'start', 10)] }),
    leg('back', 70, 30, {
      bend: bend(0, 90, 'up'),
      cutouts: [
        { id: 'slot', name: 'slot', shape: { kind: 'slot', length: 26, width: 6, turn: 0 }, along: { from: 'middle', basis: 'outside', distance: 0 }, across: { from: 'centre', distance: 0 }, pattern: { kind: 'single' } },
        { id: 'window', name: 'window', shape: { kind: 'rectangle', length: 8, width: 10, corner: 1, turn: 0.3 }, along: { from: 'end', basis: 'outside', distance: 12 }, across: { from: 'centre', distance: 0 }, pattern: { kind: 'single' } },
      ],
    }),
    leg('top', 25, 30, { endWidth: 18, endShape: { kind: 'chamfer', size: 4 }, bend: bend(1, 60, 'down'), cutouts: [hole('top-hole', 4, 'end', 9)] }),
    leg('left-lug', 18, 20, { bend: lug('left', 'up'), endShape: { kind: 'round' }, cutouts: [hole('left-pin', 4, 'end', 9)] }),
    leg('right-lug', 18, 20, { bend: lug('right', 'up'), endShape: { kind: 'round' }, cutouts: [hole('right-pin', 4, 'end', 9)] }),
  ],
};

/** 13 legs, 12 bends, 300 holes, for measuring. @param length of the middle leg, mm */
export const longRack = (length = 60): Part => ({
  thickness: 1.6,
  rule,
  legs: Array.from({ length: 13 }, (_, i) =>
    leg(`leg-${i}`, i === 6 ? length : 60, 40, {
      ...(i > 0 ? { bend: bend(i - 1, 45, i % 4 < 2 ? 'up' : 'down') } : {}),
      cutouts: [{
        ...hole(`holes-${i}`, 3, 'start', 10, { kind: 'grid', alongCount: i === 12 ? 12 : 8, alongPitch: i === 12 ? 4 : 5, acrossCount: i === 12 ? 1 : 3, acrossPitch: 10 }),
        across: { from: 'right', distance: 10 },
      }],
    }),
  ),
});

/** The layout of a part that is known to be good. */
export function laidOut(part: Part): Layout {
  const result = layOut(part);
  if (!result.ok) throw new Error(result.problems.map((p) => p.says).join(' '));
  return result.value;
}
