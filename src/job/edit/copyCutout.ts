import type { Job } from '../schema';
import { changeLeg } from './change';
import { plus } from './entryText';
import { copyName, freeId } from './ids';

/**
 * Copies a cut-out within its leg, 10 mm (3/8 in) further from where it is measured, so that the copy can be seen. The same job
 * where the place would be too long to write.
 */
export function copyCutout(job: Job, partId: string, legId: string, cutoutId: string): Job {
  const step = job.units.plain === 'mm' ? '10' : '3/8';
  return changeLeg(job, partId, legId, (leg) => {
    const at = leg.cutouts.findIndex(({ id }) => id === cutoutId);
    const cutout = leg.cutouts[at];
    const distance = cutout && plus(cutout.along.distance, step);
    if (!cutout || distance === undefined) return leg;
    const copy = { ...cutout, id: freeId(leg.cutouts, 'hole'), name: copyName(cutout.name), along: { ...cutout.along, distance } };
    return { ...leg, cutouts: leg.cutouts.toSpliced(at + 1, 0, copy) };
  });
}
