import type { Job, JobLeg } from '../schema';
import { changeLegs } from './change';
import { hung, onEndOf, withAllOn } from './tree';

function without(legs: JobLeg[], leg: JobLeg): JobLeg[] {
  const next = onEndOf(legs, leg.id);
  if (!leg.bend && !next) return legs;
  const lugs = legs.filter(({ bend }) => bend?.parent === leg.id && bend.edge !== 'end').map(({ id }) => id);
  const gone = withAllOn(legs, lugs).add(leg.id);
  const nowFree = !next && leg.bend?.edge === 'end' ? leg.bend.parent : undefined;
  return legs
    .filter(({ id }) => !gone.has(id))
    .map((other) => {
      if (other === next) return hung(leg.bend ? other : { ...other, startShape: leg.startShape }, leg.bend);
      return other.id === nowFree ? { ...other, endShape: leg.endShape } : other;
    });
}

/**
 * Deletes a leg and joins its neighbours: the leg on its end is hung in its place, by the bend that led to the deleted leg; the
 * bend behind goes. Its side lugs, and all that hangs on them, are deleted with it. Where it was an end of the run, its neighbour
 * takes over its end shape. The last leg of the main run cannot be deleted: the same job.
 */
export const deleteLeg = (job: Job, partId: string, legId: string): Job =>
  changeLegs(job, partId, (legs) => {
    const leg = legs.find(({ id }) => id === legId);
    return leg ? without(legs, leg) : legs;
  });
