import type { Job } from '../schema';
import { copyName, freeId } from './ids';

/** Copies a stock; the copy stands behind it and no part is cut from it yet. */
export function copyStock(job: Job, stockId: string): Job {
  const at = job.stocks.findIndex(({ id }) => id === stockId);
  const stock = job.stocks[at];
  if (!stock) return job;
  return { ...job, stocks: job.stocks.toSpliced(at + 1, 0, { ...stock, id: freeId(job.stocks, 'stock'), name: copyName(stock.name) }) };
}
