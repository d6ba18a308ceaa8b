import { describe, expect, it } from 'vitest';
import { addLeg } from '../../../src/job/edit/addLeg';
import { addLug } from '../../../src/job/edit/addLug';
import { deleteLeg } from '../../../src/job/edit/deleteLeg';
import { moveLeg } from '../../../src/job/edit/moveLeg';
import { exampleJob } from '../../../src/job/exampleJob';
import { checkReferences } from '../../../src/job/references';
import { workOut } from '../../../src/job/workOut';
import { chainOf, deepJob, partOf } from './sampleJob';

const legOf = (job: typeof exampleJob, part: string, id: string) => partOf(job, part).legs.find((leg) => leg.id === id);

describe('addLeg', () => {
  it('at the end: 90° up, as wide as its neighbour, with its end shape', () => {
    const job = addLeg(exampleJob, 'strap', { at: 'end' });
    expect(chainOf(job, 'strap')).toBe('foot crank<foot peg-leg<crank lip<peg-leg leg-1<lip');
    expect(legOf(job, 'strap', 'leg-1')).toMatchObject({ length: '20', startWidth: '16', endShape: { kind: 'radius', radius: '2' }, bend: { angle: '90', way: 'up', radius: 'radius' } });
    expect(legOf(job, 'strap', 'lip')?.endShape).toEqual({ kind: 'square' });
    expect(workOut(job, 'strap').problems).toEqual([]);
    expect(exampleJob.parts[1]?.legs).toHaveLength(4);
  });

  it('at the start: it becomes the first, with the start shape', () => {
    const job = addLeg(exampleJob, 'strap', { at: 'start' });
    expect(chainOf(job, 'strap')).toBe('leg-1 foot<leg-1 crank<foot peg-leg<crank lip<peg-leg');
    expect(legOf(job, 'strap', 'leg-1')?.startShape).toEqual({ kind: 'round' });
    expect(legOf(job, 'strap', 'foot')?.startShape).toEqual({ kind: 'square' });
  });

  it('after a leg: the bend that was there stays behind the new leg', () => {
    const job = addLeg(exampleJob, 'strap', { at: 'after', leg: 'crank' });
    expect(chainOf(job, 'strap')).toBe('foot crank<foot leg-1<crank peg-leg<leg-1 lip<peg-leg');
    expect(legOf(job, 'strap', 'peg-leg')?.bend).toMatchObject({ angle: '45', way: 'down' });
  });

  it('takes the smallest free number, and inches where a plain number means inches', () => {
    const job = addLeg(addLeg(exampleJob, 'strap', { at: 'end' }), 'strap', { at: 'end' });
    const gap = deleteLeg(job, 'strap', 'leg-1');
    expect(chainOf(addLeg(gap, 'strap', { at: 'end' }), 'strap')).toContain('leg-2<lip leg-1<leg-2');
    const inches = { ...exampleJob, units: { ...exampleJob.units, plain: 'in' as const } };
    expect(legOf(addLeg(inches, 'strap', { at: 'end' }), 'strap', 'leg-1')?.length).toBe('3/4');
  });

  it('nowhere: the same job', () => {
    expect(addLeg(exampleJob, 'knob', { at: 'end' })).toBe(exampleJob);
    expect(addLeg(exampleJob, 'strap', { at: 'after', leg: 'knee' })).toBe(exampleJob);
  });
});

describe('addLug', () => {
  it('hangs a lug on the middle of an edge, and it can be made', () => {
    expect(chainOf(deepJob, 'bracket')).toBe('wall arm<wall leg-1<wall.left leg-3<leg-1 leg-2<arm.right');
    expect(checkReferences(deepJob)).toEqual([]);
    expect(workOut(deepJob, 'bracket').problems).toEqual([]);
  });

  it('on no leg: the same job', () => expect(addLug(exampleJob, 'strap', 'knee', 'left')).toBe(exampleJob));
});

describe('deleteLeg', () => {
  it('joins its neighbours by the bend that led to it', () => {
    const job = deleteLeg(exampleJob, 'strap', 'crank');
    expect(chainOf(job, 'strap')).toBe('foot peg-leg<foot lip<peg-leg');
    expect(legOf(job, 'strap', 'peg-leg')?.bend).toMatchObject({ parent: 'foot', angle: '45', way: 'up' });
  });

  it('at an end: the neighbour takes over the shape of the free end', () => {
    const end = deleteLeg(exampleJob, 'strap', 'lip');
    expect(legOf(end, 'strap', 'peg-leg')?.endShape).toEqual({ kind: 'radius', radius: '2' });
    const start = deleteLeg(exampleJob, 'strap', 'foot');
    expect(chainOf(start, 'strap')).toBe('crank peg-leg<crank lip<peg-leg');
    expect(legOf(start, 'strap', 'crank')).not.toHaveProperty('bend');
    expect(legOf(start, 'strap', 'crank')?.startShape).toEqual({ kind: 'round' });
  });

  it('takes its side lugs, and what hangs on them, with it', () => {
    expect(chainOf(deleteLeg(deepJob, 'bracket', 'wall'), 'bracket')).toBe('arm leg-2<arm.right');
    expect(chainOf(deleteLeg(deepJob, 'bracket', 'arm'), 'bracket')).toBe('wall leg-1<wall.left leg-3<leg-1');
    expect(chainOf(deleteLeg(deepJob, 'bracket', 'leg-1'), 'bracket')).toBe('wall arm<wall leg-3<wall.left leg-2<arm.right');
  });

  it('never the last leg of the run, nor one that is not there: the same job', () => {
    expect(deleteLeg(exampleJob, 'lever', 'lever')).toBe(exampleJob);
    const onlyLugs = deleteLeg(deepJob, 'bracket', 'arm');
    expect(deleteLeg(onlyLugs, 'bracket', 'wall')).toBe(onlyLugs);
    expect(deleteLeg(exampleJob, 'strap', 'knee')).toBe(exampleJob);
  });
});

describe('moveLeg', () => {
  it('moves the leg; bends and free ends keep their place in the order', () => {
    const job = moveLeg(exampleJob, 'strap', 'lip', 0);
    expect(chainOf(job, 'strap')).toBe('lip foot<lip crank<foot peg-leg<crank');
    expect(partOf(job, 'strap').legs.map(({ bend }) => bend && [bend.angle, bend.way])).toEqual([undefined, ['45', 'up'], ['45', 'down'], ['90', 'up']]);
    expect(partOf(job, 'strap').legs.map(({ startShape, endShape }) => [startShape.kind, endShape.kind])).toEqual([
      ['round', 'square'],
      ['square', 'square'],
      ['square', 'square'],
      ['square', 'radius'],
    ]);
    expect(moveLeg(job, 'strap', 'lip', 3)).toEqual(exampleJob);
  });

  it('takes side lugs along', () => expect(chainOf(moveLeg(deepJob, 'bracket', 'arm', 0), 'bracket')).toBe('arm wall<arm leg-1<wall.left leg-3<leg-1 leg-2<arm.right'));

  it('to where it is, or of a lug: the same job', () => {
    expect(moveLeg(exampleJob, 'strap', 'lip', 3)).toBe(exampleJob);
    expect(moveLeg(exampleJob, 'strap', 'lip', 99)).toBe(exampleJob);
    expect(moveLeg(exampleJob, 'strap', 'foot', -5)).toBe(exampleJob);
    expect(moveLeg(exampleJob, 'strap', 'foot', Number.NaN)).toBe(exampleJob);
    expect(moveLeg(deepJob, 'bracket', 'leg-1', 0)).toBe(deepJob);
  });
});
