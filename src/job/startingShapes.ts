/**
 * What a new part can begin as. All sizes are entries to be typed over; they are round figures in the job's own unit, chosen so
 * that each shape can be bent from any usual sheet up to 3 mm. Bend radii are the word `radius`, so they follow the stock.
 */
import { unreachable } from '../core/result';
import { plainBend, plainLeg, roundHole } from './pieces';
import type { Job, JobLeg, JobPart } from './schema';

export type StartingShape = 'flat' | 'angle' | 'channel' | 'crank' | 'strap with feet' | 'free chain';

/** In the order in which they are offered. */
export const STARTING_SHAPES: readonly StartingShape[] = ['flat', 'angle', 'channel', 'crank', 'strap with feet', 'free chain'];

/** What the new part must know of the job it goes into. */
export interface Setting {
  readonly id: string;
  readonly stock: string;
  readonly plain: Job['units']['plain'];
}

const part = (name: string, setting: Setting, legs: JobLeg[]): JobPart => ({ id: setting.id, name, stock: setting.stock, quantity: '1', legs });

/** The metric or the inch figure, whichever a plain number means in the job. */
const figures = (setting: Setting) => (mm: string, inches: string): string => (setting.plain === 'mm' ? mm : inches);

/** A plate with a hole in each corner. */
function flat(setting: Setting): JobPart {
  const size = figures(setting);
  const edge = size('6', '1/4');
  const corners = roundHole('hole-1', 'Corner hole', size('4.2', '5/32'), '0', {
    along: { from: 'middle', basis: 'outside', distance: '0' },
    pattern: {
      kind: 'grid',
      alongCount: '2',
      alongPitch: `${size('80', '3')} - 2*${edge}`,
      acrossCount: '2',
      acrossPitch: `${size('50', '2')} - 2*${edge}`,
    },
  });
  return part('Plate', setting, [plainLeg('leg-1', 'Plate', size('80', '3'), size('50', '2'), { cutouts: [corners] })]);
}

/** Two legs and a right-angle bend. */
function angle(setting: Setting): JobPart {
  const size = figures(setting);
  const width = size('20', '3/4');
  return part('Angle', setting, [
    plainLeg('leg-1', 'Wall leg', size('30', '1 1/4'), width),
    plainLeg('leg-2', 'Shelf leg', size('30', '1 1/4'), width, { bend: plainBend('leg-1', '90') }),
  ]);
}

/** A base with two upstands. */
function channel(setting: Setting): JobPart {
  const size = figures(setting);
  const width = size('40', '1 1/2');
  return part('Channel', setting, [
    plainLeg('leg-1', 'Left upstand', size('20', '3/4'), width),
    plainLeg('leg-2', 'Base', size('40', '1 1/2'), width, { bend: plainBend('leg-1', '90') }),
    plainLeg('leg-3', 'Right upstand', size('20', '3/4'), width, { bend: plainBend('leg-2', '90') }),
  ]);
}

/** Two opposite bends: the last leg lies parallel to the first. */
function crank(setting: Setting): JobPart {
  const size = figures(setting);
  const width = size('16', '5/8');
  return part('Crank', setting, [
    plainLeg('leg-1', 'Foot', size('30', '1 1/4'), width),
    plainLeg('leg-2', 'Crank', size('20', '3/4'), width, { startBasis: 'centre line', endBasis: 'centre line', bend: plainBend('leg-1', '45') }),
    plainLeg('leg-3', 'Arm', size('60', '2 1/2'), width, { bend: plainBend('leg-2', '45', 'down') }),
  ]);
}

/** A strap that stands off the wall on two feet, with a screw hole in each. */
function strapWithFeet(setting: Setting): JobPart {
  const size = figures(setting);
  const width = size('16', '5/8');
  const screw = size('4.2', '5/32');
  const first = roundHole('hole-1', 'Screw hole', screw, size('8', '5/16'));
  const last = { ...first, along: { ...first.along, from: 'end' as const } };
  return part('Strap', setting, [
    plainLeg('leg-1', 'Left foot', size('20', '3/4'), width, { cutouts: [first] }),
    plainLeg('leg-2', 'Left riser', size('20', '3/4'), width, { bend: plainBend('leg-1', '90') }),
    plainLeg('leg-3', 'Bridge', size('50', '2'), width, { bend: plainBend('leg-2', '90', 'down') }),
    plainLeg('leg-4', 'Right riser', size('20', '3/4'), width, { bend: plainBend('leg-3', '90', 'down') }),
    plainLeg('leg-5', 'Right foot', size('20', '3/4'), width, { bend: plainBend('leg-4', '90'), cutouts: [last] }),
  ]);
}

/** Legs and bends to be made into anything. */
function freeChain(setting: Setting): JobPart {
  const size = figures(setting);
  const width = size('20', '3/4');
  const length = size('30', '1 1/4');
  return part('Part', setting, [
    plainLeg('leg-1', '', length, width),
    plainLeg('leg-2', '', length, width, { bend: plainBend('leg-1', '60') }),
    plainLeg('leg-3', '', length, width, { bend: plainBend('leg-2', '60', 'down') }),
    plainLeg('leg-4', '', length, width, { bend: plainBend('leg-3', '60') }),
  ]);
}

export function startingPart(shape: StartingShape, setting: Setting): JobPart {
  switch (shape) {
    case 'flat':
      return flat(setting);
    case 'angle':
      return angle(setting);
    case 'channel':
      return channel(setting);
    case 'crank':
      return crank(setting);
    case 'strap with feet':
      return strapWithFeet(setting);
    case 'free chain':
      return freeChain(setting);
    default:
      return unreachable(shape);
  }
}
