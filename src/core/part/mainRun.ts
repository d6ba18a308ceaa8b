import type { Part } from './types';

/** Index of the leg at the far end of leg `index`; undefined at a free end. */
export function mainChild(part: Pick<Part, 'legs'>, index: number): number | undefined {
  const found = part.legs.findIndex((leg) => leg.bend?.parent === index && leg.bend.edge === 'end');
  return found < 0 ? undefined : found;
}

/** Indices of the legs joined end to end, from the first one on; side lugs are not among them. */
export function mainRun({ part }: { readonly part: Pick<Part, 'legs'> }): number[] {
  const run: number[] = [];
  for (let i: number | undefined = part.legs.length > 0 ? 0 : undefined; i !== undefined; i = mainChild(part, i)) run.push(i);
  return run;
}
