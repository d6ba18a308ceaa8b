/** What a field of a part is called, and what it wants. */
import type { Wanted } from '../../core/units/evaluate';
import { legLetter } from '../../core/part/names';
import { basisWord } from '../../drawing/words';
import type { Job, JobLeg } from '../../job/schema';

export interface FieldName {
  /** `Foot length`, `Bend 2 angle`, `Peg hole distance`. */
  readonly label: string;
  readonly wanted: Wanted;
  /** The basis, where the field is a length that has one. */
  readonly after?: string;
}

const KEYS: Readonly<Record<string, string>> = {
  startWidth: 'width at the start',
  endWidth: 'width at the end',
  'along.distance': 'distance along',
  'across.distance': 'distance across',
  'pattern.count': 'number in the row',
  'pattern.pitch': 'pitch',
  'pattern.alongCount': 'number along',
  'pattern.alongPitch': 'pitch along',
  'pattern.acrossCount': 'number across',
  'pattern.acrossPitch': 'pitch across',
  'startShape.radius': 'corner radius at the start',
  'endShape.radius': 'corner radius at the end',
  'startShape.size': 'chamfer at the start',
  'endShape.size': 'chamfer at the end',
  'seat.along.distance': 'place along',
  'seat.relief.width': 'relief width',
  'seat.relief.depth': 'relief depth',
};

const inWords = (keys: readonly string[]): string => KEYS[keys.join('.')] ?? keys.at(-1) ?? '';

function wantedBy(last: string | undefined): Wanted {
  if (last === 'angle' || last === 'turn') return 'angle';
  if (last !== undefined && /count$/i.test(last)) return 'count';
  return 'length';
}

/** Basis of a leg's length as its dimension says it; nothing where both ends are free. */
function basisOf(job: Job, partId: string, leg: JobLeg): string {
  const bentEnd = job.parts.find((part) => part.id === partId)?.legs.some((other) => other.bend?.parent === leg.id && other.bend.edge === 'end') ?? false;
  const used = [...(leg.bend ? [leg.startBasis] : []), ...(bentEnd ? [leg.endBasis] : [])];
  return [...new Set(used)].map(basisWord).join(' to ');
}

/** The name of a field below `parts.…legs.…`; undefined for any other path, or where it leads to no leg. */
export function fieldName(job: Job, field: string): FieldName | undefined {
  const [parts, partId, legs, legId, ...keys] = field.split('.');
  if (parts !== 'parts' || legs !== 'legs' || partId === undefined) return undefined;
  const all = job.parts.find((part) => part.id === partId)?.legs;
  const index = all?.findIndex((leg) => leg.id === legId) ?? -1;
  const leg = all?.[index];
  if (!leg) return undefined;
  const called = leg.name.trim() || `Leg ${legLetter(index)}`;
  const wanted = wantedBy(keys.at(-1));
  if (keys[0] === 'cutouts') {
    const cutout = leg.cutouts.find(({ id }) => id === keys[1]);
    const what = inWords(keys.slice(2));
    return { label: `${cutout?.name.trim() || `Cut-out of leg ${legLetter(index)}`} ${what}`, wanted };
  }
  if (keys[0] === 'bend') return { label: `Bend ${index} ${inWords(keys.slice(1))}`, wanted };
  const after = keys[0] === 'length' ? basisOf(job, partId, leg) : '';
  return { label: `${called} ${inWords(keys)}`, wanted, ...(after ? { after } : {}) };
}
