import type { Job } from '../schema';
import { copyName, freeId } from './ids';

/** Copies a part; the copy stands behind it. */
export function copyPart(job: Job, partId: string): Job {
  const at = job.parts.findIndex(({ id }) => id === partId);
  const part = job.parts[at];
  if (!part) return job;
  return { ...job, parts: job.parts.toSpliced(at + 1, 0, { ...part, id: freeId(job.parts, 'part'), name: copyName(part.name) }) };
}
