import type { Job } from '../schema';
import { moveItem } from './change';

/** Moves a part to another place in the job, counted from 0. */
export function movePart(job: Job, partId: string, to: number): Job {
  const parts = moveItem(job.parts, partId, to);
  return parts === job.parts ? job : { ...job, parts };
}
