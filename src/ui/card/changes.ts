/** The changes that the job card offers as words, each one step of undo. */
import { plainNumber } from '../../core/units/plainNumber';
import { addCutout } from '../../job/edit/addCutout';
import { addLeg, type LegPlace } from '../../job/edit/addLeg';
import { addLug } from '../../job/edit/addLug';
import { copyCutout } from '../../job/edit/copyCutout';
import { splitLeg } from '../../job/edit/splitLeg';
import type { Pick } from '../../drawing/entities';
import type { Job, JobCutout, JobLeg } from '../../job/schema';
import { apply, bench } from '../../store/bench';
import { plainText } from '../fields/nudge';
import { say } from '../screen';

const legsOf = (job: Job, part: string): readonly JobLeg[] => job.parts.find(({ id }) => id === part)?.legs ?? [];

/** Makes a change that brings a new leg or cut-out, and takes hold of what is new. */
function applyAndHold(edit: (job: Job) => Job, part: string, label: string, refusal: string): void {
  const before = bench.getState().job;
  const after = edit(before);
  if (after === before) {
    say(refusal);
    return;
  }
  apply(edit, { label, chosen: newIn(legsOf(before, part), legsOf(after, part)) });
  say(`Done: ${label}.`);
}

function newIn(before: readonly JobLeg[], after: readonly JobLeg[]): Pick | null {
  for (const leg of after) {
    const was = before.find(({ id }) => id === leg.id);
    if (!was) return { kind: 'leg', leg: leg.id };
    const cutout = leg.cutouts.find(({ id }) => !was.cutouts.some((other) => other.id === id));
    if (cutout) return { kind: 'cutout', leg: leg.id, cutout: cutout.id };
  }
  return null;
}

export const addLegAt = (part: string, place: LegPlace): void => applyAndHold((job) => addLeg(job, part, place), part, 'adding a leg', 'There is no room for another leg here.');

export const addLugOn = (part: string, leg: string, edge: 'left' | 'right'): void =>
  applyAndHold((job) => addLug(job, part, leg, edge), part, `adding a lug on the ${edge} edge`, 'This leg takes no lug.');

/** Splits a leg in its middle by a right-angle bend; both can be changed afterwards. */
export function splitInMiddle(part: string, leg: JobLeg): void {
  const length = plainNumber(leg.length);
  const distance = length === undefined ? `(${leg.length})/2` : plainText(length / 2, 4);
  applyAndHold(
    (job) => splitLeg(job, part, leg.id, { distance, angle: '90', way: 'up' }),
    part,
    `splitting ${leg.name.trim() || 'the leg'}`,
    'This leg cannot be split in its middle while its sizes do not work out.',
  );
}

/** A 4 mm hole 10 mm from the start, or the nearest inch figures. */
export function addHole(part: string, leg: string): void {
  const metric = bench.getState().job.units.plain === 'mm';
  const hole: Omit<JobCutout, 'id'> = {
    name: '',
    shape: { kind: 'round', diameter: metric ? '4' : '5/32' },
    along: { from: 'start', basis: 'outside', distance: metric ? '10' : '3/8' },
    across: { from: 'centre', distance: '0' },
    pattern: { kind: 'single' },
  };
  applyAndHold((job) => addCutout(job, part, leg, hole), part, 'adding a hole', 'There is no such leg.');
}

export const copyHole = (part: string, leg: string, cutout: string): void =>
  applyAndHold((job) => copyCutout(job, part, leg, cutout), part, 'copying a hole', 'The place of the copy would be too long to write.');
