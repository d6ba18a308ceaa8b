import type { Job } from '../schema';
import { changeLeg } from './change';

export const deleteCutout = (job: Job, partId: string, legId: string, cutoutId: string): Job =>
  changeLeg(job, partId, legId, (leg) => {
    const cutouts = leg.cutouts.filter(({ id }) => id !== cutoutId);
    return cutouts.length === leg.cutouts.length ? leg : { ...leg, cutouts };
  });
