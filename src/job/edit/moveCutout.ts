import type { Job } from '../schema';
import { changeLeg } from './change';
import { freeId } from './ids';

/**
 * Moves a cut-out to another leg of the part, last in its list, with its measures as typed. It keeps its id unless the other leg
 * has one like it.
 */
export function moveCutout(job: Job, partId: string, fromLeg: string, cutoutId: string, toLeg: string): Job {
  const legs = job.parts.find(({ id }) => id === partId)?.legs;
  const cutout = legs?.find(({ id }) => id === fromLeg)?.cutouts.find(({ id }) => id === cutoutId);
  if (!cutout || fromLeg === toLeg || !legs?.some(({ id }) => id === toLeg)) return job;
  const taken = changeLeg(job, partId, fromLeg, (leg) => ({ ...leg, cutouts: leg.cutouts.filter(({ id }) => id !== cutoutId) }));
  return changeLeg(taken, partId, toLeg, (leg) => {
    const id = leg.cutouts.some((other) => other.id === cutoutId) ? freeId(leg.cutouts, 'hole') : cutoutId;
    return { ...leg, cutouts: [...leg.cutouts, { ...cutout, id }] };
  });
}
