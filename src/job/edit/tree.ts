/** The legs of a part as a tree. Every list keeps parents before children. */
import type { JobBend, JobLeg } from '../schema';

/** The leg on the far end of another, if there is one. */
export const onEndOf = (legs: readonly JobLeg[], id: string): JobLeg | undefined =>
  legs.find((leg) => leg.bend?.parent === id && leg.bend.edge === 'end');

/** The first leg and those joined to it end to end. */
export function mainRun(legs: readonly JobLeg[]): JobLeg[] {
  const run: JobLeg[] = [];
  for (let leg = legs[0]; leg !== undefined; leg = onEndOf(legs, leg.id)) run.push(leg);
  return run;
}

/** The ids of the legs given and of all that hang on them. */
export function withAllOn(legs: readonly JobLeg[], roots: readonly string[]): Set<string> {
  const found = new Set(roots);
  // Parents stand before children, so one pass finds them all.
  for (const leg of legs) if (leg.bend && found.has(leg.bend.parent)) found.add(leg.id);
  return found;
}

/** The leg hung by this bend; with none it stands first. */
export function hung(leg: JobLeg, bend: JobBend | undefined): JobLeg {
  if (bend) return leg.bend === bend ? leg : { ...leg, bend };
  if (!leg.bend) return leg;
  const { bend: _, ...rest } = leg;
  return rest;
}
