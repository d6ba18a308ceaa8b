/** A comparison of stocks as a table: every row of it, the letters of the overlay, and the differences to the first stock. */
import type { Comparison } from '../../job/compare/compareStocks';
import type { Job } from '../../job/schema';
import { writeCsv, type CsvOptions } from './writeCsv';

/** mm and g, as in the comparison. A stock in which the part cannot be made has empty cells. */
export function comparisonCsv(job: Job, { stocks, rows }: Comparison, options?: CsvOptions): string {
  const names = stocks.map(({ stock }) => job.stocks.find(({ id }) => id === stock)?.name ?? stock);
  const head = ['letter', 'what', 'unit', ...names, ...names.slice(1).map((name) => `${name}, difference`)];
  const body = rows.map(({ letter, called, unit, values }) => {
    const [first] = values;
    return [letter, called, unit, ...values, ...values.slice(1).map((value) => (value === undefined || first === undefined ? undefined : value - first))];
  });
  return writeCsv([head, ...body], options);
}
