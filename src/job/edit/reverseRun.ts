import type { Job, JobBend, JobCutout, JobLeg } from '../schema';
import { changeLegs } from './change';
import { turned } from './entryText';
import { hung, mainRun } from './tree';

const SWAPPED = { start: 'end', end: 'start', middle: 'middle', left: 'right', right: 'left', centre: 'centre' } as const;

type Along = JobCutout['along'];

function alongTurned(along: Along): Along | undefined {
  const distance = along.from === 'middle' ? turned(along.distance) : along.distance;
  return distance === undefined ? undefined : { ...along, from: SWAPPED[along.from], distance };
}

function cutoutTurned(cutout: JobCutout): JobCutout | undefined {
  const along = alongTurned(cutout.along);
  const across = cutout.across.from === 'centre' ? turned(cutout.across.distance) : cutout.across.distance;
  if (!along || across === undefined) return undefined;
  return { ...cutout, along, across: { from: SWAPPED[cutout.across.from], distance: across } };
}

/** A leg of the main run turned end for end in its own plane: start and end, left and right change places. */
function legTurned(leg: JobLeg): JobLeg | undefined {
  const cutouts = leg.cutouts.map(cutoutTurned).filter((cutout) => cutout !== undefined);
  if (cutouts.length < leg.cutouts.length) return undefined;
  const { startBasis, endBasis, startWidth, endWidth, startShape, endShape } = leg;
  return {
    ...leg,
    startBasis: endBasis,
    endBasis: startBasis,
    startWidth: endWidth,
    endWidth: startWidth,
    startShape: endShape,
    endShape: startShape,
    cutouts,
  };
}

/** A lug on a leg that was turned keeps its place on the metal: the other edge by the new names, counted from the other end. */
function seatTurned(bend: JobBend): JobBend | undefined {
  if (!bend.seat || bend.edge === 'end') return bend;
  const along = alongTurned(bend.seat.along);
  return along && { ...bend, edge: SWAPPED[bend.edge], seat: { ...bend.seat, along } };
}

function reversed(legs: JobLeg[]): JobLeg[] | undefined {
  const run = mainRun(legs);
  const ids = new Set(run.map(({ id }) => id));
  const out: JobLeg[] = [];
  let before: JobLeg | undefined;
  for (const leg of run.toReversed()) {
    const other = legTurned(leg);
    if (!other) return undefined;
    out.push(hung(other, before?.bend && { ...before.bend, parent: before.id }));
    before = leg;
  }
  for (const lug of legs) {
    if (ids.has(lug.id) || !lug.bend) continue;
    const bend = ids.has(lug.bend.parent) ? seatTurned(lug.bend) : lug.bend;
    if (!bend) return undefined;
    out.push(hung(lug, bend));
  }
  return out;
}

/**
 * The main run counted from its other end: the last leg becomes the first. The metal stays the same, marked face and all: bends
 * keep their angle and way, side lugs and cut-outs stay where they are. The run comes first in the list, then the lugs; a part
 * already in that order is the same again when reversed twice. The same job where an entry would grow too long.
 */
export const reverseRun = (job: Job, partId: string): Job => changeLegs(job, partId, (legs) => reversed(legs) ?? legs);
