import { changePlainUnit } from '../../core/units/changePlainUnit';
import { mapPartEntries, mapStepEntries, mapStockEntries } from '../mapEntries';
import { resolvePart } from '../resolve';
import { settingOf } from '../stockSetting';
import type { Job } from '../schema';

/** Everything the parts and their stocks come to, without the sizes themselves. */
function outcome(job: Job): string {
  const parts = job.parts.map(({ id }) => {
    const { values, problems } = resolvePart(job, id);
    return [[...values].filter(([field]) => !field.startsWith('sizes.')), problems.map(({ field, says }) => [field, says])];
  });
  return JSON.stringify(parts);
}

const withText = (job: Job, id: string, text: string): Job => ({ ...job, sizes: job.sizes.map((size) => (size.id === id ? { ...size, text } : size)) });

/**
 * Sizes that are plain numbers, but stand only for lengths, get the unit they were taken in: `pitch` 15 becomes 15 mm, so that it
 * means the same wherever it is used next. A count stays a number, since as a length it would not work out or not to the same;
 * so does a size that nothing uses.
 */
function sizesWithUnits(job: Job): Job {
  const before = outcome(job);
  const { context } = settingOf(job, job.stocks[0]);
  return job.sizes.reduce((soFar, { id, name, text }) => {
    if (context.sizes.get(name.normalize('NFC'))?.dimension !== 'number') return soFar;
    if (outcome(withText(soFar, id, `(${text})*2 + 1`)) === before) return soFar;
    const whole = /^[\d.,\s]+$/.test(text) ? text.trim() : `(${text.trim()})`;
    const united = withText(soFar, id, `${whole} ${job.units.plain}`);
    return outcome(united) === before ? united : soFar;
  }, job);
}

/**
 * Changes what a number without a unit means, and writes the old unit into every entry that relied on it, so that nothing changes
 * size. An entry that does not work out is left as it is. Named sizes are read with the first stock's thickness and radius.
 */
export function setPlainUnit(given: Job, to: Job['units']['plain']): Job {
  if (to === given.units.plain) return given;
  const job = sizesWithUnits(given);
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
