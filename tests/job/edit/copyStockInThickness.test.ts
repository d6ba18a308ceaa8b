import { describe, expect, it } from 'vitest';
import { copyStockInThickness } from '../../../src/job/edit/copyStockInThickness';
import { exampleJob } from '../../../src/job/exampleJob';
import { writeField } from '../../../src/job/fields';
import { settingOf } from '../../../src/job/stockSetting';
import type { Job } from '../../../src/job/schema';

const copied = (stock: string, thickness: string, job: Job = exampleJob) => {
  const result = copyStockInThickness(job, stock, thickness);
  if (!result.ok) throw new Error(result.problem.says);
  const at = result.value.job.stocks.findIndex(({ id }) => id === result.value.stock);
  return { at, stock: result.value.job.stocks[at], job: result.value.job };
};

describe('a stock in another thickness', () => {
  it('keeps all else and stands behind the stock it came from', () => {
    const { at, stock, job } = copied('brass', '1.0');
    expect(at).toBe(1);
    expect(stock).toEqual({ ...exampleJob.stocks[0], id: 'stock-1', name: 'Brass, half hard, 1.0 sheet', thickness: '1.0' });
    expect(job.parts).toBe(exampleJob.parts);
  });
  it('lets a radius that is given by the thickness go with it', () => {
    const { stock, job } = copied('stainless', '1.2');
    // 1.5 × 1.2
    expect(settingOf(job, stock).values).toContainEqual([`stocks.${stock?.id}.radius`, expect.closeTo(1.8, 12)]);
  });
  it.each([
    ['stainless', '1.2', 'Stainless, 1.2 sheet'],
    ['steel-inch', '1/8in', 'Mild steel, 1/8 in strip'],
    ['steel-inch', '1.2', 'Mild steel, 1.2 strip'],
    ['brass', '1/16in', 'Brass, half hard, 1/16 in sheet'],
  ])('calls %s in %s "%s"', (id, thickness, name) => expect(copied(id, thickness).stock?.name).toBe(name));
  it('puts the thickness behind a name that does not tell it, and never makes a name too long', () => {
    expect(copied('brass', '1.0', writeField(exampleJob, 'stocks.brass.name', 'Offcuts')).stock?.name).toBe('Offcuts, 1.0 thick');
    const long = copied('brass', '1.0', writeField(exampleJob, 'stocks.brass.name', 'x'.repeat(120))).stock?.name;
    expect(long?.length).toBeLessThanOrEqual(120);
    expect(long).toMatch(/, 1\.0 thick$/);
  });
  it.each([['', 'Type a thickness first'], ['thik', 'no size called thik'], ['0', 'must be above 0'], ['-1', 'must be above 0'], ['thickness', 'cannot be worked out from'], ['45°', 'length']])('refuses %j', (typed, says) => {
    const result = copyStockInThickness(exampleJob, 'brass', typed);
    expect(result.ok ? 'made' : result.problem.says).toContain(says);
  });
  it('refuses a stock that is not there', () => expect(copyStockInThickness(exampleJob, 'gold', '1').ok).toBe(false));
});
