import { SQUARE } from '../pieces';
import type { Job, JobLeg } from '../schema';
import { changeLegs, moveItem } from './change';
import { hung, mainRun } from './tree';

/**
 * Moves a leg to another place of the main run, counted from 0. Bends keep their place in the order: bend 1 stays bend 1 with its
 * angle, way and radius, whichever legs it now joins. So do the shapes of the two free ends. Side lugs go with their leg. A side
 * lug itself cannot be moved so: the same job.
 */
export const moveLeg = (job: Job, partId: string, legId: string, to: number): Job =>
  changeLegs(job, partId, (legs) => {
    const run = mainRun(legs);
    const order = moveItem(run, legId, to);
    return order === run ? legs : [...rehung(run, order), ...legs.filter((leg) => !run.includes(leg))];
  });

function rehung(run: readonly JobLeg[], order: readonly JobLeg[]): JobLeg[] {
  const last = order.length - 1;
  return order.map((leg, i) => {
    const before = order[i - 1];
    const slot = run[i]?.bend;
    const shaped = {
      ...leg,
      startShape: i === 0 ? (run[0]?.startShape ?? SQUARE) : SQUARE,
      endShape: i === last ? (run[last]?.endShape ?? SQUARE) : SQUARE,
    };
    return hung(shaped, before && slot ? { ...slot, parent: before.id } : undefined);
  });
}
