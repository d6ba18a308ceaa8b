import { afterEach, describe, expect, it } from 'vitest';
import { exampleJob } from '../../../src/job/exampleJob';
import { writeField } from '../../../src/job/fields';
import type { Job, JobPart } from '../../../src/job/schema';
import { comparing, holdLegs, keepOf, MOST_STOCKS, stocksCompared, tick } from '../../../src/ui/compare/comparing';

const partOf = (job: Job, id: string): JobPart => {
  const part = job.parts.find((each) => each.id === id);
  if (!part) throw new Error(`The example has no part ${id}.`);
  return part;
};
const strap = partOf(exampleJob, 'strap');
afterEach(() => comparing.setState({ stocks: null, keep: {} }));

describe('stocks compared', () => {
  it('begins with another of the same metal, else with the thickness furthest off', () => {
    expect(stocksCompared(exampleJob, partOf(exampleJob, 'back-plate'), null)).toEqual(['steel', 'steel-inch']);
    // Brass 1.6 has no other brass; 1.0 is further off than 1.5 and 1/16 in.
    expect(stocksCompared(exampleJob, strap, null)).toEqual(['brass', 'stainless']);
  });
  it('has the part’s own first, the others in the order of the job, and no stock that is gone', () => {
    expect(stocksCompared(exampleJob, strap, ['stainless', 'gold', 'steel'])).toEqual(['brass', 'steel', 'stainless']);
    const moved = writeField(exampleJob, 'parts.strap.stock', 'stainless');
    expect(stocksCompared(moved, partOf(moved, 'strap'), ['stainless', 'brass'])).toEqual(['stainless', 'brass']);
  });
  it('falls back on the beginning where none of the ticked is there, and stands alone where there is one stock', () => {
    expect(stocksCompared(exampleJob, strap, ['gold'])).toEqual(['brass', 'stainless']);
    expect(stocksCompared({ ...exampleJob, stocks: exampleJob.stocks.slice(0, 1) }, strap, null)).toEqual(['brass']);
  });
  it('never shows more than can be told apart', () => {
    const many = { ...exampleJob, stocks: [...exampleJob.stocks, ...exampleJob.stocks.map((stock) => ({ ...stock, id: `${stock.id}-2` }))] };
    expect(stocksCompared(many, strap, many.stocks.map(({ id }) => id))).toHaveLength(MOST_STOCKS);
  });
  it('keeps those shown when one is ticked', () => {
    tick(['brass', 'stainless'], 'steel', true);
    expect(comparing.getState().stocks).toEqual(['brass', 'stainless', 'steel']);
    tick(['brass', 'stainless', 'steel'], 'stainless', false);
    expect(comparing.getState().stocks).toEqual(['brass', 'steel']);
  });
});

describe('what is kept', () => {
  it('is held by part and leg, as typed where nothing was said', () => {
    holdLegs(strap, ['crank', 'lip'], 'inside');
    holdLegs(strap, ['lip'], 'holes');
    expect(keepOf(comparing.getState().keep, strap)).toEqual(['as typed', 'inside', 'as typed', 'holes']);
    expect(keepOf(comparing.getState().keep, partOf(exampleJob, 'bracket'))).toEqual(['as typed', 'as typed']);
  });
});
