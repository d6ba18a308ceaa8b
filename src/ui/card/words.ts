/** Words and choices of the job card. */
import { legLetter } from '../../core/part/names';
import type { JobCutout, JobLeg, JobPart } from '../../job/schema';

export const BASES = [
  ['outside', 'outside'],
  ['inside', 'inside'],
  ['centre line', 'centre line'],
  ['straight', 'straight'],
] as const;

export const WAYS = [
  ['up', 'up'],
  ['down', 'down'],
] as const;

export const legIndex = (part: JobPart, leg: string): number => part.legs.findIndex(({ id }) => id === leg);

/** `leg C`, for a label. */
export const legWord = (part: JobPart, leg: string): string => `leg ${legLetter(legIndex(part, leg))}`;

/** `Peg leg`, or `Leg C` where it has no name. */
export const legTitle = (part: JobPart, leg: JobLeg): string => leg.name.trim() || `Leg ${legLetter(legIndex(part, leg.id))}`;

export const cutoutTitle = (cutout: JobCutout, index: number): string =>
  cutout.name.trim() || `${{ round: 'Hole', slot: 'Slot', rectangle: 'Opening' }[cutout.shape.kind]} ${index + 1}`;
