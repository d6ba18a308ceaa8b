import { describe, expect, it } from 'vitest';
import { exampleJob } from '../../src/job/exampleJob';
import { openJob } from '../../src/job/openJob';
import { plainBend, plainLeg, roundHole } from '../../src/job/pieces';
import { checkReferences } from '../../src/job/references';
import type { Job } from '../../src/job/schema';

const spoilt = (spoil: (job: any) => void): string[] => {
  const job = structuredClone<Job>(exampleJob);
  spoil(job);
  return checkReferences(job).map(({ where, says }) => `${where}: ${says}`);
};

const STRAP = 'parts.1 (part 2 "Front strap")';

describe('references', () => {
  it('finds nothing in the example', () => expect(checkReferences(exampleJob)).toEqual([]));

  it.each<[string, (job: any) => void, string]>([
    ['a part twice', (job) => (job.parts[3].id = 'strap'), '"strap" is already the id of part 2; each needs an id of its own.'],
    ['a stock twice', (job) => job.stocks.push({ ...job.stocks[0] }), '"brass" is already the id of stock 1'],
    ['a size twice', (job) => job.sizes.push({ ...job.sizes[0] }), '"pitch" is already the id of size 1'],
    ['a cut-out twice', (job) => job.parts[1].legs[0].cutouts.push(job.parts[1].legs[0].cutouts[0]), '"rivet" is already the id of cut-out 1'],
    ['a stock that is not there', (job) => (job.parts[1].stock = 'gold'), 'there is no stock "gold" in this job; name one of its stocks.'],
    ['a bend on the first leg', (job) => (job.parts[0].legs[0].bend = plainBend('plate', '90')), 'the first leg hangs on nothing, so it has no bend; leave it out.'],
    ['no bend on another leg', (job) => delete job.parts[1].legs[3].bend, 'has no bend; every leg but the first needs one that says on which leg it hangs.'],
    ['a parent that is not there', (job) => (job.parts[1].legs[1].bend.parent = 'knee'), 'there is no leg "knee" in this part'],
    ['a leg that hangs on itself', (job) => (job.parts[1].legs[3].bend.parent = 'lip'), 'a leg cannot hang on itself'],
    ['a seat on an end', (job) => (job.parts[1].legs[1].bend.seat = {}), 'a leg that hangs on an end has no seat; leave it out.'],
    ['no seat on an edge', (job) => (job.parts[1].legs[3].bend.edge = 'left'), 'a leg that hangs on the left edge needs a seat that says where along the edge it sits.'],
  ])('%s', (_, spoil, sentence) => {
    const faults = spoilt(spoil);
    expect(faults).toHaveLength(1);
    expect(faults[0]).toContain(sentence);
  });

  it('a leg twice, which leaves two on one end', () => {
    const faults = spoilt((job) => job.parts[1].legs.splice(2, 0, job.parts[1].legs[1]));
    expect(faults.join('\n')).toContain('"crank" is already the id of leg 2');
    expect(faults.join('\n')).toContain('another leg, number 2, already hangs on the end of "foot"; only one can.');
  });

  it('a child before its parent', () => {
    const faults = spoilt((job) => job.parts[1].legs.push(...job.parts[1].legs.splice(1, 1)));
    expect(faults.join('\n')).toContain('"crank" stands after the leg that hangs on it');
  });

  it('legs in a circle', () => {
    const faults = spoilt((job) => {
      job.parts[1].legs[1].bend.parent = 'lip';
    });
    expect(faults.join('\n')).toContain('"lip" stands after the leg that hangs on it');
  });

  it('limits', () => {
    const chain = (n: number) => Array.from({ length: n }, (_, i) => plainLeg(`l${i}`, '', '9', '9', i ? { bend: plainBend(`l${i - 1}`, '9') } : {}));
    const holes = (n: number) => Array.from({ length: n }, (_, i) => roundHole(`h${i}`, '', '1', '1'));
    const parts = (n: number) => Array.from({ length: n }, (_, i) => ({ ...exampleJob.parts[3], id: `p${i}` }));
    expect(spoilt((job) => (job.parts[1].legs = chain(200)))).toEqual([]);
    expect(spoilt((job) => (job.parts[1].legs = chain(201)))).toEqual([
      'parts.1.legs (part 2 "Front strap", legs): 201 legs are too many for one part; 200 is the most.',
    ]);
    expect(spoilt((job) => (job.parts[1].legs[2].cutouts = holes(1999)))).toEqual([]);
    expect(spoilt((job) => (job.parts[1].legs[2].cutouts = holes(2000)))).toEqual([
      `${STRAP}: 2001 cut-outs are too many for one part; 2000 is the most. A row or a grid counts as one.`,
    ]);
    expect(spoilt((job) => (job.parts = parts(500)))).toEqual([]);
    expect(spoilt((job) => (job.parts = parts(501)))).toEqual(['parts (parts): 501 parts are too many for one job; 500 is the most.']);
  });

  it('are looked at when a job is opened', () => {
    const job = { ...exampleJob, parts: exampleJob.parts.map((part) => ({ ...part, stock: 'gold' })) };
    const opened = openJob(JSON.stringify(job));
    expect(opened.ok ? 0 : opened.faults.length).toBe(4);
  });
});
