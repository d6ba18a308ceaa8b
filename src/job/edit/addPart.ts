import type { Job } from '../schema';
import { startingPart, type StartingShape } from '../startingShapes';
import { freeId } from './ids';

/** Adds a part that begins as one of the starting shapes, last in the job, cut from the stock given. */
export function addPart(job: Job, shape: StartingShape, stock: string): Job {
  if (!job.stocks.some(({ id }) => id === stock)) return job;
  return { ...job, parts: [...job.parts, startingPart(shape, { id: freeId(job.parts, 'part'), stock, plain: job.units.plain })] };
}
