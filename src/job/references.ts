/** What a schema cannot say: ids that are used twice or lead nowhere, legs that do not hang together, and limits. */
import { describePlace } from './describePlace';
import type { Fault } from './schemaFaults';
import type { Job, JobLeg, JobPart } from './schema';

/** Far above any real job; they keep a made-up file from hanging the program. */
const MOST_PARTS = 500;
const MOST_LEGS = 200;
const MOST_CUTOUT_ENTRIES = 2000;

type Path = readonly (string | number)[];
type Report = (path: Path, says: string) => void;

function uniqueIds(items: readonly { readonly id: string }[], path: Path, what: string, report: Report): void {
  const first = new Map<string, number>();
  items.forEach(({ id }, i) => {
    const before = first.get(id);
    if (before === undefined) first.set(id, i);
    else report([...path, i, 'id'], `"${id}" is already the id of ${what} ${before + 1}; each needs an id of its own.`);
  });
}

function checkBend(leg: JobLeg, index: number, path: Path, before: ReadonlyMap<string, number>, all: ReadonlySet<string>, report: Report): void {
  const { bend } = leg;
  if (index === 0) {
    if (bend) report([...path, 'bend'], 'the first leg hangs on nothing, so it has no bend; leave it out.');
    return;
  }
  if (!bend) {
    report(path, 'has no bend; every leg but the first needs one that says on which leg it hangs.');
    return;
  }
  if (!before.has(bend.parent)) {
    report(
      [...path, 'bend', 'parent'],
      bend.parent === leg.id
        ? 'a leg cannot hang on itself; name a leg that stands before it.'
        : all.has(bend.parent)
          ? `"${bend.parent}" stands after the leg that hangs on it; a leg must stand after the one it hangs on.`
          : `there is no leg "${bend.parent}" in this part; name a leg that stands before this one.`,
    );
  }
  if (bend.edge === 'end' && bend.seat) report([...path, 'bend', 'seat'], 'a leg that hangs on an end has no seat; leave it out.');
  if (bend.edge !== 'end' && !bend.seat) {
    report([...path, 'bend'], `a leg that hangs on the ${bend.edge} edge needs a seat that says where along the edge it sits.`);
  }
}

function checkPart(part: JobPart, index: number, stocks: ReadonlySet<string>, report: Report): void {
  const path: Path = ['parts', index];
  if (!stocks.has(part.stock)) report([...path, 'stock'], `there is no stock "${part.stock}" in this job; name one of its stocks.`);
  uniqueIds(part.legs, [...path, 'legs'], 'leg', report);
  if (part.legs.length > MOST_LEGS) report([...path, 'legs'], `${part.legs.length} legs are too many for one part; ${MOST_LEGS} is the most.`);
  const cutouts = part.legs.reduce((sum, leg) => sum + leg.cutouts.length, 0);
  if (cutouts > MOST_CUTOUT_ENTRIES) {
    report(path, `${cutouts} cut-outs are too many for one part; ${MOST_CUTOUT_ENTRIES} is the most. A row or a grid counts as one.`);
  }

  const all = new Set(part.legs.map((leg) => leg.id));
  const before = new Map<string, number>();
  const onEnd = new Map<string, number>();
  part.legs.forEach((leg, i) => {
    const legPath: Path = [...path, 'legs', i];
    checkBend(leg, i, legPath, before, all, report);
    if (leg.bend?.edge === 'end') {
      const other = onEnd.get(leg.bend.parent);
      if (other === undefined) onEnd.set(leg.bend.parent, i);
      else report([...legPath, 'bend'], `another leg, number ${other + 1}, already hangs on the end of "${leg.bend.parent}"; only one can.`);
    }
    uniqueIds(leg.cutouts, [...legPath, 'cutouts'], 'cut-out', report);
    before.set(leg.id, i);
  });
}

/**
 * Everything in a job that fits the schema but does not hang together; empty where all is well. Looks at each list once.
 */
export function checkReferences(job: Job): Fault[] {
  const faults: Fault[] = [];
  const report: Report = (path, says) => faults.push({ where: describePlace(job, path), says });
  uniqueIds(job.sizes, ['sizes'], 'size', report);
  uniqueIds(job.stocks, ['stocks'], 'stock', report);
  uniqueIds(job.parts, ['parts'], 'part', report);
  if (job.parts.length > MOST_PARTS) report(['parts'], `${job.parts.length} parts are too many for one job; ${MOST_PARTS} is the most.`);
  const stocks = new Set(job.stocks.map((stock) => stock.id));
  job.parts.forEach((part, i) => checkPart(part, i, stocks, report));
  return faults;
}
