import type { Job } from '../schema';

/** Deletes a stock. One that a part is cut from stays: the same job. A job always has one left, since every part is cut from one. */
export function deleteStock(job: Job, stockId: string): Job {
  if (job.parts.some(({ stock }) => stock === stockId)) return job;
  const stocks = job.stocks.filter(({ id }) => id !== stockId);
  return stocks.length === job.stocks.length ? job : { ...job, stocks };
}
