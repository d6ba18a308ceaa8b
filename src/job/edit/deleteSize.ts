import type { Job } from '../schema';

/** Deletes a named size. Entries that use it keep their text and say that it is gone. */
export function deleteSize(job: Job, sizeId: string): Job {
  const sizes = job.sizes.filter(({ id }) => id !== sizeId);
  return sizes.length === job.sizes.length ? job : { ...job, sizes };
}
