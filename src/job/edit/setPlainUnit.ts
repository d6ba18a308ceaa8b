import { changePlainUnit } from '../../core/units/changePlainUnit';
import { mapPartEntries, mapStepEntries, mapStockEntries } from '../mapEntries';
import { settingOf } from '../stockSetting';
import type { Job } from '../schema';

/**
 * Changes what a number without a unit means, and writes the old unit into every entry that relied on it, so that nothing changes
 * size. An entry that does not work out is left as it is. Named sizes are read with the first stock's thickness and radius.
 */
export function setPlainUnit(job: Job, to: Job['units']['plain']): Job {
  if (to === job.units.plain) return job;
  const rewriter = (stockId: string | undefined) => {
    const { context } = settingOf(job, job.stocks.find(({ id }) => id === stockId));
    return (text: string, wanted: Parameters<typeof changePlainUnit>[1]): string => changePlainUnit(text, wanted, context, to);
  };
  const general = rewriter(job.stocks[0]?.id);
  return {
    ...job,
    units: { ...job.units, plain: to },
    step: mapStepEntries(job.step, general),
    sizes: job.sizes.map((size) => ({ ...size, text: general(size.text, 'size') })),
    stocks: job.stocks.map((stock) => mapStockEntries(stock, rewriter(stock.id))),
    parts: job.parts.map((part) => mapPartEntries(part, rewriter(part.stock))),
  };
}
