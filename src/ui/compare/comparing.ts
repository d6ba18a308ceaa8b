/** What the maker compares: stocks and what is held. No part of the job; kept while the page is open. */
import { createStore } from 'zustand/vanilla';
import { useStore } from 'zustand';
import type { Keep } from '../../job/compare/keepSizes';
import type { Job, JobPart } from '../../job/schema';
import { settingOf } from '../../job/stockSetting';

/** The overlay has this many kinds of line to tell stocks apart by. */
export const MOST_STOCKS = 5;

interface Comparing {
  /** Stocks ticked, by id; null until the maker has ticked any. */
  readonly stocks: readonly string[] | null;
  /** By part and leg; as typed where nothing stands. */
  readonly keep: Readonly<Record<string, Readonly<Record<string, Keep>>>>;
}

export const comparing = createStore<Comparing>()(() => ({ stocks: null, keep: {} }));

export const useComparing = <Slice>(read: (state: Comparing) => Slice): Slice => useStore(comparing, read);

/** To begin with: the first other stock of the same metal, else of the thickness furthest off. */
function firstOther(job: Job, part: JobPart): string | undefined {
  const others = job.stocks.filter(({ id }) => id !== part.stock);
  const own = job.stocks.find(({ id }) => id === part.stock);
  const alike = others.find(({ metal }) => metal === own?.metal);
  if (alike) return alike.id;
  const thick = settingOf(job, own).thickness ?? 0;
  const off = (stock: (typeof others)[number]): number => Math.abs((settingOf(job, stock).thickness ?? thick) - thick);
  return others.toSorted((a, b) => off(b) - off(a))[0]?.id;
}

/** The stocks compared: that of the part first, then the ticked ones in the order of the job. */
export function stocksCompared(job: Job, part: JobPart, ticked: readonly string[] | null): readonly string[] {
  const others = job.stocks.map(({ id }) => id).filter((id) => id !== part.stock && ticked?.includes(id));
  if (others.length > 0) return [part.stock, ...others.slice(0, MOST_STOCKS - 1)];
  const first = firstOther(job, part);
  return first === undefined ? [part.stock] : [part.stock, first];
}

/**
 * Ticks or unticks one of the others; the part's own is always there.
 * @param shown the stocks compared so far, by id
 */
export const tick = (shown: readonly string[], stock: string, on: boolean): void =>
  comparing.setState({ stocks: on ? [...shown, stock] : shown.filter((id) => id !== stock) });

export const keepOf = (keep: Comparing['keep'], part: JobPart): readonly Keep[] => part.legs.map(({ id }) => keep[part.id]?.[id] ?? 'as typed');

export function holdLegs(part: JobPart, legs: readonly string[], to: Keep): void {
  comparing.setState(({ keep }) => ({ keep: { ...keep, [part.id]: { ...keep[part.id], ...Object.fromEntries(legs.map((leg) => [leg, to])) } } }));
}
