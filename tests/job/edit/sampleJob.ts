import { addLug } from '../../../src/job/edit/addLug';
import { addLeg } from '../../../src/job/edit/addLeg';
import { exampleJob } from '../../../src/job/exampleJob';
import type { Job, JobCutout, JobPart } from '../../../src/job/schema';

/** The example with side lugs on the wall bracket: one on each leg, and a leg on the end of the first lug. */
export const luggedJob: Job = ['left', 'right'].reduce<Job>((job, edge) => addLug(job, 'bracket', edge === 'left' ? 'wall' : 'arm', edge as 'left'), exampleJob);
export const deepJob: Job = addLeg(luggedJob, 'bracket', { at: 'after', leg: 'leg-1' });

export const partOf = (job: Job, id: string): JobPart => {
  const part = job.parts.find((each) => each.id === id);
  if (!part) throw new Error(`The job has no part ${id}.`);
  return part;
};

/** `foot crank<foot peg-leg<crank`, lugs with their edge: `leg-1<wall.left`. */
export const chainOf = (job: Job, id: string): string =>
  partOf(job, id)
    .legs.map(({ id: leg, bend }) => (bend ? `${leg}<${bend.parent}${bend.edge === 'end' ? '' : `.${bend.edge}`}` : leg))
    .join(' ');

export const cutoutOf = (job: Job, part: string, leg: string, id: string): JobCutout | undefined =>
  partOf(job, part)
    .legs.find((each) => each.id === leg)
    ?.cutouts.find((each) => each.id === id);
