import type { Job } from '../schema';

/** Deletes a part. The only part of a job stays: the same job. */
export function deletePart(job: Job, partId: string): Job {
  const parts = job.parts.filter(({ id }) => id !== partId);
  return parts.length === 0 || parts.length === job.parts.length ? job : { ...job, parts };
}
