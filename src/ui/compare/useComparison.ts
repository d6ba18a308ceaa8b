import { useMemo } from 'react';
import { compareStocks, type Comparison } from '../../job/compare/compareStocks';
import type { Keep } from '../../job/compare/keepSizes';
import type { Job, JobPart, JobStock } from '../../job/schema';
import { useThePart } from '../card/useThePart';
import { keepOf, stocksCompared, useComparing } from './comparing';

export interface Compared {
  readonly job: Job;
  readonly part: JobPart;
  readonly comparison: Comparison;
  /** In the order of the comparison. */
  readonly stocks: readonly JobStock[];
  /** By leg index. */
  readonly keep: readonly Keep[];
}

/** The part in view in the stocks that are ticked. */
export function useComparison(): Compared | undefined {
  const held = useThePart();
  const ticked = useComparing((state) => state.stocks);
  const keeping = useComparing((state) => state.keep);
  return useMemo(() => {
    if (!held) return undefined;
    const { job, part } = held;
    const keep = keepOf(keeping, part);
    const comparison = compareStocks(job, part.id, stocksCompared(job, part, ticked), keep);
    const stocks = comparison.stocks.flatMap(({ stock }) => job.stocks.find(({ id }) => id === stock) ?? []);
    return { job, part, comparison, stocks, keep };
    // The part and the job say all that `held` holds, and are the same objects while nothing has changed.
    // oxlint-disable-next-line react-hooks/exhaustive-deps
  }, [held?.job, held?.part, ticked, keeping]);
}
