import { plainLeg, SQUARE, plainBend } from '../pieces';
import type { Job, JobLeg } from '../schema';
import { changeLegs } from './change';
import { freeId } from './ids';
import { hung, mainRun, onEndOf } from './tree';

/** At an end of the main run, or between a leg and the one on its end (at its end where it has none). */
export type LegPlace = { readonly at: 'start' } | { readonly at: 'end' } | { readonly at: 'after'; readonly leg: string };

function atStart(legs: JobLeg[], length: string): JobLeg[] {
  const [first, ...rest] = legs;
  if (!first) return legs;
  const added = plainLeg(freeId(legs, 'leg'), '', length, first.startWidth, { startShape: first.startShape });
  return [added, { ...first, startShape: SQUARE, bend: plainBend(added.id, '90') }, ...rest];
}

function after(legs: JobLeg[], neighbour: JobLeg, length: string): JobLeg[] {
  const added = plainLeg(freeId(legs, 'leg'), '', length, neighbour.endWidth, {
    endShape: neighbour.endShape,
    bend: plainBend(neighbour.id, '90'),
  });
  const next = onEndOf(legs, neighbour.id);
  return legs.flatMap((leg) => {
    if (leg === neighbour) return [{ ...leg, endShape: SQUARE }, added];
    return leg === next && leg.bend ? [hung(leg, { ...leg.bend, parent: added.id })] : [leg];
  });
}

/**
 * Adds a leg with a right-angle bend upwards, as wide as its neighbour, 20 mm (3/4 in) long. A new end takes over the end shape;
 * a leg put in between keeps the bend that was there behind it. The same job where there is no such part or leg.
 */
export function addLeg(job: Job, partId: string, place: LegPlace): Job {
  const length = job.units.plain === 'mm' ? '20' : '3/4';
  return changeLegs(job, partId, (legs) => {
    if (place.at === 'start') return atStart(legs, length);
    const neighbour = place.at === 'end' ? mainRun(legs).at(-1) : legs.find(({ id }) => id === place.leg);
    return neighbour ? after(legs, neighbour, length) : legs;
  });
}
