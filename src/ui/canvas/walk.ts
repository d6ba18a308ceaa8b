/** Going about a part by keys: leg to bend to leg, down to the holes of a leg and back up; and what each thing is called. */
import { formatAngle } from '../../core/units/formatLength';
import { legLetter } from '../../core/part/names';
import type { Pick } from '../../drawing/entities';
import type { Job, JobPart } from '../../job/schema';
import { fieldName } from '../fields/fieldName';
import { showValue } from '../fields/fieldReading';

export type Step = 'left' | 'right' | 'up' | 'down';

/** Legs and bends in the order in which they follow one another. */
const chain = (part: JobPart): readonly Pick[] =>
  part.legs.flatMap((leg, i): readonly Pick[] => (i === 0 ? [{ kind: 'leg', leg: leg.id }] : [{ kind: 'bend', leg: leg.id }, { kind: 'leg', leg: leg.id }]));

/** What is chosen after a key; the same where there is nothing that way. */
export function stepped(part: JobPart, chosen: Pick | null, step: Step): Pick | null {
  const first = part.legs[0];
  if (!chosen) return first ? { kind: 'leg', leg: first.id } : null;
  const leg = part.legs.find(({ id }) => id === chosen.leg);
  if (!leg) return chosen;
  if (chosen.kind === 'cutout') {
    if (step === 'up') return { kind: 'leg', leg: leg.id };
    const at = leg.cutouts.findIndex(({ id }) => id === chosen.cutout);
    const next = leg.cutouts[step === 'left' ? at - 1 : at + 1];
    return next ? { kind: 'cutout', leg: leg.id, cutout: next.id } : chosen;
  }
  if (step === 'up') return chosen;
  if (step === 'down') {
    const hole = chosen.kind === 'leg' ? leg.cutouts[0] : undefined;
    return hole ? { kind: 'cutout', leg: leg.id, cutout: hole.id } : chosen;
  }
  const all = chain(part);
  const at = all.findIndex((pick) => pick.kind === chosen.kind && pick.leg === chosen.leg);
  return all[step === 'left' ? at - 1 : at + 1] ?? chosen;
}

/** The leg that goes by a letter (A to H). */
export function legByLetter(part: JobPart, key: string): Pick | undefined {
  if (!/^[a-h]$/i.test(key)) return undefined;
  const leg = part.legs[key.toUpperCase().charCodeAt(0) - 65];
  return leg && { kind: 'leg', leg: leg.id };
}

/** The field that Enter opens. */
export function mainField(part: string, pick: Pick): string {
  const leg = `parts.${part}.legs.${pick.leg}`;
  return pick.kind === 'leg' ? `${leg}.length` : pick.kind === 'bend' ? `${leg}.bend.angle` : `${leg}.cutouts.${pick.cutout}.along.distance`;
}

/** What is chosen, as a sentence for the ear: `Leg C, peg leg, 112.00 outside`. */
export function spoken(job: Job, part: JobPart, pick: Pick, values: ReadonlyMap<string, number>): string {
  const index = part.legs.findIndex(({ id }) => id === pick.leg);
  const leg = part.legs[index];
  if (!leg) return '';
  const field = mainField(part.id, pick);
  const value = values.get(field);
  if (pick.kind === 'bend') return [`Bend ${index}`, value === undefined ? leg.bend?.angle : formatAngle(value), leg.bend?.way].filter(Boolean).join(', ');
  const length = value === undefined ? 'not worked out' : showValue(job.units, 'length', value);
  if (pick.kind === 'leg') {
    const after = fieldName(job, field)?.after;
    return [`Leg ${legLetter(index)}`, leg.name.trim().toLowerCase(), after && value !== undefined ? `${length} ${after.replaceAll('CL', 'centre line')}` : length].filter(Boolean).join(', ');
  }
  const cutout = leg.cutouts.find(({ id }) => id === pick.cutout);
  return [cutout?.name.trim() || 'Cut-out', `leg ${legLetter(index)}`, `${length} from the ${cutout?.along.from ?? 'start'}`].join(', ');
}
