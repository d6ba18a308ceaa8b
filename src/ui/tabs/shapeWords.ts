import type { StartingShape } from '../../job/startingShapes';

/** What a starting shape is called, and what it is. */
export const SHAPE_WORDS: Readonly<Record<StartingShape, readonly [name: string, is: string]>> = {
  flat: ['Flat', 'a plate with four holes'],
  angle: ['Angle', 'two legs, one bend'],
  channel: ['Channel', 'a base, two upstands'],
  crank: ['Crank', 'two opposite bends'],
  'strap with feet': ['Strap with feet', 'stands off on two feet'],
  'free chain': ['Free chain', 'legs and bends at will'],
};
