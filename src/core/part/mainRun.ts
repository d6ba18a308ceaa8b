import type { Layout } from './layoutTypes';

/** Indices of the legs joined end to end, from the first one on; side lugs are not among them. */
export function mainRun(layout: Pick<Layout, 'part'>): number[] {
  const { legs } = layout.part;
  const run: number[] = [];
  for (let i = 0; i >= 0 && i < legs.length; i = legs.findIndex((leg) => leg.bend?.parent === i && leg.bend.edge === 'end')) run.push(i);
  return run;
}
