import type { Job, JobCutout } from '../schema';
import { changeLeg } from './change';
import { freeId } from './ids';

/** Adds a cut-out to a leg, last in its list, under the next free id. */
export const addCutout = (job: Job, partId: string, legId: string, cutout: Omit<JobCutout, 'id'>): Job =>
  changeLeg(job, partId, legId, (leg) => ({ ...leg, cutouts: [...leg.cutouts, { ...cutout, id: freeId(leg.cutouts, 'hole') }] }));
