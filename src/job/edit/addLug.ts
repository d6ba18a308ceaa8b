import { plainBend, plainLeg } from '../pieces';
import type { Job } from '../schema';
import { changeLegs } from './change';
import { freeId } from './ids';

/**
 * Adds a side lug in the middle of a leg's long edge: bent up at a right angle, its outside face level with the edge, with
 * square reliefs as wide and as deep beyond the bend as the metal is thick. It stands last, so no leg changes its letter.
 */
export function addLug(job: Job, partId: string, legId: string, edge: 'left' | 'right'): Job {
  const length = job.units.plain === 'mm' ? '12' : '1/2';
  const width = job.units.plain === 'mm' ? '10' : '3/8';
  return changeLegs(job, partId, (legs) => {
    if (!legs.some(({ id }) => id === legId)) return legs;
    const bend = {
      ...plainBend(legId, '90'),
      edge,
      seat: {
        along: { from: 'middle' as const, basis: 'outside' as const, distance: '0' },
        basis: 'outside' as const,
        relief: { kind: 'square' as const, width: 'thickness', depth: 'thickness' },
      },
    };
    return [...legs, plainLeg(freeId(legs, 'leg'), '', length, width, { bend })];
  });
}
