import { describe, expect, it } from 'vitest';
import { exampleJob } from '../../src/job/exampleJob';
import { addPart } from '../../src/job/edit/addPart';
import { addStock } from '../../src/job/edit/addStock';
import { setPlainUnit } from '../../src/job/edit/setPlainUnit';
import { checkReferences } from '../../src/job/references';
import { STARTING_SHAPES } from '../../src/job/startingShapes';
import type { Job } from '../../src/job/schema';
import { canGoOut, whyNot, workOut } from '../../src/job/workOut';

describe('the example', () => {
  it.each(exampleJob.parts.map(({ id }) => id))('%s can go out', (id) => {
    const worked = workOut(exampleJob, id);
    expect(whyNot(worked)).toEqual([]);
    expect(canGoOut(worked)).toBe(true);
  });

  it('has metric and inch stocks, four rules or so, and the quantities of a small batch', () => {
    expect(checkReferences(exampleJob)).toEqual([]);
    expect(exampleJob.parts.map(({ quantity }) => quantity)).toEqual(['12', '12', '12', '6']);
    expect(new Set(exampleJob.stocks.map(({ rule }) => rule.kind))).toEqual(new Set(['fixedK', 'din6935', 'handbook']));
    expect(JSON.stringify(exampleJob)).toContain('full 6in');
  });

  // Worked by hand from the sizes of the strap: straights 24.509, 15.680, 106.909, 10.000 and allowances 2.091, 2.091, 4.182.
  it('has the strap of the guide: 165.462 long', () => {
    const blank = workOut(exampleJob, 'strap').shape?.blank;
    expect(blank?.developedLength).toBeCloseTo(165.462, 3);
    expect(blank?.bends.map(({ figures }) => figures.allowance.toFixed(3))).toEqual(['2.091', '2.091', '4.182']);
    expect(workOut(exampleJob, 'strap').shape?.layout.legs.map(({ straight }) => straight.toFixed(3))).toEqual(['24.509', '15.680', '106.909', '10.000']);
  });

  it('has holes in the back plate for the foot and all seven pegs of the bent strap', () => {
    const folded = workOut(exampleJob, 'strap').shape?.folded.cutouts ?? [];
    const plate = workOut(exampleJob, 'back-plate').shape?.folded.cutouts.filter(({ cutout }) => cutout === 1 || cutout === 2) ?? [];
    expect(folded).toHaveLength(8);
    expect(plate).toHaveLength(8);
    const from = (list: typeof folded) => list.map(({ centre }) => centre.x - (list[0]?.centre.x ?? 0));
    from(folded).forEach((x, i) => expect(Math.abs(x - (from(plate)[i] ?? Infinity))).toBeLessThan(0.001));
  });
});

describe('every starting shape', () => {
  const { id: _, ...steel } = exampleJob.stocks[1] ?? exampleJob.stocks[0]!;
  const thick = addStock(exampleJob, { ...steel, name: 'Steel 3', thickness: '3' });
  const jobs: [string, Job][] = [
    ['mm', thick],
    ['in', setPlainUnit(thick, 'in')],
  ];

  it.each(jobs.flatMap(([unit, job]) => STARTING_SHAPES.flatMap((shape) => job.stocks.map((stock) => [shape, stock.name, unit, addPart(job, shape, stock.id)] as const))))(
    '%s from %s in %s can be made',
    (_shape, _stock, _unit, job) => {
      expect(checkReferences(job)).toEqual([]);
      const worked = workOut(job, 'part-1');
      expect(whyNot(worked)).toEqual([]);
      expect(worked.shape?.layout.legs.length).toBe(job.parts.at(-1)?.legs.length);
    },
  );

  it('bends by the word radius, so that it follows its stock', () => {
    for (const shape of STARTING_SHAPES) {
      const legs = addPart(exampleJob, shape, 'brass').parts.at(-1)?.legs ?? [];
      expect(legs.flatMap(({ bend }) => (bend ? [bend.radius] : [])).every((radius) => radius === 'radius')).toBe(true);
      expect(legs.length > 1).toBe(shape !== 'flat');
    }
  });
});
