/** `--compare`: a part in other stocks of its job, as rows for the report and as a table for a spreadsheet. */
import { comparisonCsv } from '../export/csv/comparisonCsv';
import { compareStocks } from '../job/compare/compareStocks';
import { whyNot } from '../job/workOut';
import type { Job } from '../job/schema';

/** Ids asked for, those of every stock for `all`. */
const wantedIds = (job: Job, wanted: string): readonly string[] =>
  wanted === 'all' ? job.stocks.map(({ id }) => id) : wanted.split(',').map((id) => id.trim());

/** Ids asked for that are no stock of the job. */
export const strangers = (job: Job, wanted: string): readonly string[] => wantedIds(job, wanted).filter((id) => job.stocks.every((stock) => stock.id !== id));

interface ReportRow {
  readonly letter: string | null;
  readonly what: string;
  readonly called: string;
  readonly unit: string;
  /** By stock id; null where the part cannot be made of that stock. */
  readonly values: Readonly<Record<string, number | null>>;
  readonly differences: Readonly<Record<string, number | null>>;
}

export interface ComparedPart {
  /** Text of the CSV file. */
  readonly csv: string;
  /** What stands under `compare` in the report. */
  readonly report: { readonly stocks: readonly object[]; readonly rows: readonly ReportRow[] };
}

/**
 * @param wanted ids of stocks, or `all` for every stock of the job
 * @returns undefined where the part is made of the only stock named already
 */
export function comparePart(job: Job, partId: string, wanted: string): ComparedPart | undefined {
  const comparison = compareStocks(job, partId, wantedIds(job, wanted));
  if (comparison.stocks.length < 2) return undefined;
  const stocks = comparison.stocks.map(({ stock }) => stock);
  const byStock = <Value>(values: readonly Value[]) => Object.fromEntries(stocks.map((id, i) => [id, values[i] ?? null]));
  return {
    csv: comparisonCsv(job, comparison),
    report: {
      stocks: comparison.stocks.map(({ stock, mass, worked }) => ({
        id: stock,
        mass: mass ?? null,
        errors: whyNot(worked),
        checks: worked.findings.map(({ level, says }) => ({ level, says })),
      })),
      rows: comparison.rows.map(({ letter, what, called, unit, values }) => {
        const [first] = values;
        return {
          letter: letter ?? null,
          what,
          called,
          unit,
          values: byStock(values),
          differences: byStock(values.map((value) => (value === undefined || first === undefined ? null : value - first))),
        };
      }),
    },
  };
}
