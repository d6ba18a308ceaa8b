import type { Job, JobSize } from '../schema';
import { freeId } from './ids';

/** Adds a named size, last in the list. A name that will not do is told when the sizes are worked out. */
export const addSize = (job: Job, size: Omit<JobSize, 'id'>): Job => ({
  ...job,
  sizes: [...job.sizes, { ...size, id: freeId(job.sizes, 'size') }],
});
