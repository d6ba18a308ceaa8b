import type { Job, JobStock } from '../schema';
import { freeId } from './ids';

/** Adds a stock, last in the list, under the next free id. */
export const addStock = (job: Job, stock: Omit<JobStock, 'id'>): Job => ({
  ...job,
  stocks: [...job.stocks, { ...stock, id: freeId(job.stocks, 'stock') }],
});
