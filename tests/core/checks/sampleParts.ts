/** Parts for the tests of the checks, written out in numbers. mm and degrees here, rad in the part. */
import type { Bend, Cutout, CutoutShape, Leg, Part, Pattern } from '../../../src/core/part/types';

const RAD = Math.PI / 180;

export const bend = (parent: number, degrees: number, way: 'up' | 'down', radius = 2): Bend => ({ parent, edge: 'end', turn: degrees * RAD, way, radius });

export const lug = (parent: number, degrees: number, from: number, side: 'left' | 'right' = 'left'): Bend => ({
  ...bend(parent, degrees, 'up'),
  edge: side,
  seat: { along: { from: 'start', basis: 'straight', distance: from }, basis: 'straight', relief: { kind: 'none' } },
});

export const leg = (length: number, joined?: Bend, rest: Partial<Leg> = {}): Leg => ({
  id: `leg-${length}`,
  name: '',
  length,
  startBasis: 'straight',
  endBasis: 'straight',
  startWidth: 16,
  endWidth: 16,
  startShape: { kind: 'square' },
  endShape: { kind: 'square' },
  cutouts: [],
  ...rest,
  ...(joined ? { bend: joined } : {}),
});

export const cutout = (shape: CutoutShape, along: number, across = 0, pattern: Pattern = { kind: 'single' }): Cutout => ({
  id: `at-${along}-${across}`,
  name: '',
  shape,
  along: { from: 'start', basis: 'straight', distance: along },
  across: { from: 'centre', distance: across },
  pattern,
});

export const round = (diameter: number): CutoutShape => ({ kind: 'round', diameter });

export const part = (legs: readonly Leg[], thickness = 1.6): Part => ({ thickness, rule: { kind: 'fixedK', k: 0.4 }, legs });
