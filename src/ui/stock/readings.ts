/** Readings of fields that belong to no part: of stocks, sizes, the scale and the step. Each is kept, so that a field sees the same function. */
import { evaluate, type SizeValue } from '../../core/units/evaluate';
import { bad, good, type Result } from '../../core/result';
import type { Job } from '../../job/schema';
import { settingOf, type Setting } from '../../job/stockSetting';

type Reading = (job: Job) => Result<number>;

const kept = new Map<string, Reading>();

function remembered(key: string, make: () => Reading): Reading {
  const before = kept.get(key);
  if (before) return before;
  const made = make();
  kept.set(key, made);
  return made;
}

/** Stands for an entry that waits for another to be put right. The fault is told where it is, and nowhere else. */
const WAITS = good(Number.NaN);

const settingFor = (job: Job, stock?: string): Setting => settingOf(job, job.stocks.find(({ id }) => id === stock) ?? job.stocks[0]);

function inSetting(setting: Setting, field: string): Result<number> {
  const problem = setting.problems.find((each) => each.field === field);
  if (problem) return { ok: false, problem };
  const value = setting.values.find(([path]) => path === field)?.[1];
  return value === undefined ? WAITS : good(value);
}

/** A field of a stock, by its path in the job. */
export const stockReading = (stock: string, field: string): Reading => remembered(field, () => (job) => inSetting(settingFor(job, stock), field));

export const scaleReading: Reading = (job) => inSetting(settingFor(job), 'scale');

/** A named size worked out, with the first stock's thickness and radius; or what is wrong with its name or its text. */
export function sizeValue(job: Job, id: string): Result<SizeValue> {
  const size = job.sizes.find((each) => each.id === id);
  const setting = settingFor(job);
  const problem = setting.problems.find(({ field }) => field === `sizes.${id}.text` || field === `sizes.${id}.name`);
  if (problem) return { ok: false, problem };
  const value = setting.context.sizes.get(size?.name.normalize('NFC') ?? '');
  return good(value ?? { value: Number.NaN, dimension: 'number' });
}

export const sizeReading = (id: string): Reading =>
  remembered(`size ${id}`, () => (job) => {
    const worked = sizeValue(job, id);
    // A fault of the name stands under the name.
    if (!worked.ok && worked.problem.field.endsWith('.name')) return WAITS;
    return worked.ok ? good(worked.value.value) : worked;
  });

export const stepReading = (what: 'length' | 'angle'): Reading =>
  remembered(`step ${what}`, () => (job) => {
    const worked = evaluate(job.step[what], what, settingFor(job).context);
    if (!worked.ok) return worked;
    return worked.value > 0 ? worked : bad(`step.${what}`, 'A step must be above 0.');
  });
