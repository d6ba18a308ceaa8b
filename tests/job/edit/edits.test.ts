import { describe, expect, it } from 'vitest';
import { addCutout } from '../../../src/job/edit/addCutout';
import { addPart } from '../../../src/job/edit/addPart';
import { addSize } from '../../../src/job/edit/addSize';
import { addStock } from '../../../src/job/edit/addStock';
import { copyCutout } from '../../../src/job/edit/copyCutout';
import { copyPart } from '../../../src/job/edit/copyPart';
import { copyStock } from '../../../src/job/edit/copyStock';
import { deleteCutout } from '../../../src/job/edit/deleteCutout';
import { deletePart } from '../../../src/job/edit/deletePart';
import { deleteSize } from '../../../src/job/edit/deleteSize';
import { deleteStock } from '../../../src/job/edit/deleteStock';
import { minus, plus, turned } from '../../../src/job/edit/entryText';
import { moveCutout } from '../../../src/job/edit/moveCutout';
import { movePart } from '../../../src/job/edit/movePart';
import { setPlainUnit } from '../../../src/job/edit/setPlainUnit';
import { exampleJob } from '../../../src/job/exampleJob';
import { readField, writeField } from '../../../src/job/fields';
import { cutout } from '../../../src/job/pieces';
import { resolvePart } from '../../../src/job/resolve';
import { STARTING_SHAPES } from '../../../src/job/startingShapes';
import type { Job } from '../../../src/job/schema';
import { cutoutOf, deepJob, partOf } from './sampleJob';

const holes = (job: Job, leg: string) => partOf(job, 'strap').legs.find(({ id }) => id === leg)?.cutouts.map(({ id }) => id);
const { id: _, ...slot } = cutout('', 'Slot', { kind: 'slot', length: '5', width: '2', turn: '0' }, '4');

describe('cut-outs', () => {
  it('are added last under a free id', () => {
    const job = addCutout(addCutout(exampleJob, 'strap', 'foot', slot), 'strap', 'foot', slot);
    expect(holes(job, 'foot')).toEqual(['rivet', 'hole-1', 'hole-2']);
    expect(cutoutOf(job, 'strap', 'foot', 'hole-1')).toEqual({ ...slot, id: 'hole-1' });
    expect(addCutout(exampleJob, 'strap', 'knee', slot)).toBe(exampleJob);
  });

  it('are copied behind themselves, a step further along', () => {
    const job = copyCutout(exampleJob, 'strap', 'peg-leg', 'pegs');
    expect(holes(job, 'peg-leg')).toEqual(['pegs', 'hole-1']);
    expect(cutoutOf(job, 'strap', 'peg-leg', 'hole-1')).toMatchObject({ name: 'Peg hole, copy', along: { distance: '17.5' } });
    expect(copyCutout(exampleJob, 'strap', 'peg-leg', 'none')).toBe(exampleJob);
    const long = writeField(exampleJob, 'parts.strap.legs.foot.cutouts.rivet.along.distance', '1'.repeat(198));
    expect(copyCutout(long, 'strap', 'foot', 'rivet')).toBe(long);
  });

  it('are deleted', () => {
    expect(holes(deleteCutout(exampleJob, 'strap', 'foot', 'rivet'), 'foot')).toEqual([]);
    expect(deleteCutout(exampleJob, 'strap', 'foot', 'none')).toBe(exampleJob);
  });

  it('are moved to another leg, with a new id where theirs is taken', () => {
    const job = moveCutout(exampleJob, 'strap', 'foot', 'rivet', 'lip');
    expect([holes(job, 'foot'), holes(job, 'lip')]).toEqual([[], ['rivet']]);
    const twice = moveCutout(addCutout(addCutout(exampleJob, 'strap', 'foot', slot), 'strap', 'lip', slot), 'strap', 'foot', 'hole-1', 'lip');
    expect(holes(twice, 'lip')).toEqual(['hole-1', 'hole-2']);
    for (const [from, what, to] of [['foot', 'rivet', 'foot'], ['foot', 'rivet', 'knee'], ['foot', 'none', 'lip'], ['knee', 'rivet', 'lip']] as const) {
      expect(moveCutout(exampleJob, 'strap', from, what, to)).toBe(exampleJob);
    }
  });
});

describe('parts', () => {
  it.each(STARTING_SHAPES)('are added as %s', (shape) => {
    const job = addPart(exampleJob, shape, 'brass');
    expect(job.parts.at(-1)).toMatchObject({ id: 'part-1', stock: 'brass' });
    expect(addPart(exampleJob, shape, 'gold')).toBe(exampleJob);
  });

  it('are copied behind themselves', () => {
    const job = copyPart(exampleJob, 'strap');
    expect(job.parts.map(({ id }) => id)).toEqual(['back-plate', 'strap', 'part-1', 'bracket', 'lever']);
    expect(job.parts[2]).toEqual({ ...exampleJob.parts[1], id: 'part-1', name: 'Front strap, copy' });
    expect(copyPart(exampleJob, 'knob')).toBe(exampleJob);
  });

  it('keep a name within its limit when copied again and again', () => {
    let job = exampleJob;
    for (let i = 0; i < 40; i += 1) job = copyPart(job, job.parts[i + 1]?.id ?? '');
    expect(Math.max(...job.parts.map(({ name }) => name.length))).toBeLessThanOrEqual(120);
  });

  it('are deleted, never the last', () => {
    const one = ['back-plate', 'strap', 'bracket'].reduce(deletePart, exampleJob);
    expect(one.parts.map(({ id }) => id)).toEqual(['lever']);
    expect(deletePart(one, 'lever')).toBe(one);
    expect(deletePart(exampleJob, 'knob')).toBe(exampleJob);
  });

  it('are moved', () => {
    expect(movePart(exampleJob, 'lever', 0).parts.map(({ id }) => id)).toEqual(['lever', 'back-plate', 'strap', 'bracket']);
    expect(movePart(exampleJob, 'back-plate', 2).parts.map(({ id }) => id)).toEqual(['strap', 'bracket', 'back-plate', 'lever']);
    expect(movePart(exampleJob, 'lever', 3)).toBe(exampleJob);
    expect(movePart(exampleJob, 'knob', 0)).toBe(exampleJob);
  });
});

describe('stocks and sizes', () => {
  const { id: __, ...brass } = exampleJob.stocks[0] ?? exampleJob.stocks[0]!;

  it('are added and copied', () => {
    expect(addStock(exampleJob, brass).stocks.at(-1)).toEqual({ ...brass, id: 'stock-1' });
    expect(copyStock(exampleJob, 'brass').stocks[1]).toEqual({ ...brass, id: 'stock-1', name: 'Brass, half hard, 1.6 sheet, copy' });
    expect(copyStock(exampleJob, 'gold')).toBe(exampleJob);
    expect(addSize(exampleJob, { name: 'gap', text: '2', note: '' }).sizes.at(-1)).toEqual({ id: 'size-1', name: 'gap', text: '2', note: '' });
  });

  it('are deleted: a stock only where no part is cut from it', () => {
    expect(deleteStock(exampleJob, 'brass')).toBe(exampleJob);
    const free = deletePart(exampleJob, 'strap');
    expect(deleteStock(free, 'brass').stocks.map(({ id }) => id)).toEqual(['steel', 'steel-inch', 'stainless']);
    expect(deleteStock(exampleJob, 'gold')).toBe(exampleJob);
    expect(deleteSize(exampleJob, 'pitch').sizes).toHaveLength(5);
    expect(deleteSize(exampleJob, 'gap')).toBe(exampleJob);
    expect(resolvePart(deleteSize(exampleJob, 'pitch'), 'strap').problems.map(({ field }) => field)).toEqual([
      'parts.strap.legs.peg-leg.length',
      'parts.strap.legs.peg-leg.cutouts.pegs.pattern.pitch',
    ]);
  });
});

describe('setPlainUnit', () => {
  it('changes no size of anything, there and back', () => {
    const measured = writeField(deepJob, 'stocks.steel.rule', { kind: 'measured', rows: [{ angle: '90', radius: '1.5', deduction: '3' }] });
    const opening = writeField(measured, 'parts.strap.legs.foot.cutouts.rivet.shape', { kind: 'rectangle', length: '6', width: '4', corner: '1', turn: '5' });
    const job = writeField(opening, 'parts.strap.legs.foot.startShape', { kind: 'chamfer', size: '2' });
    const inches = setPlainUnit(job, 'in');
    const back = setPlainUnit(inches, 'mm');
    for (const { id } of job.parts) {
      const before = resolvePart(job, id);
      expect(before.problems).toEqual([]);
      for (const other of [inches, back]) {
        const after = resolvePart(other, id);
        expect(after.problems).toEqual([]);
        expect([...after.values.keys()]).toEqual([...before.values.keys()]);
        for (const [field, value] of before.values) expect(after.values.get(field), field).toBeCloseTo(value, 9);
      }
    }
    expect(inches.units.plain).toBe('in');
    expect(inches.step).toEqual({ length: '0.5 mm', angle: '5' });
  });

  it('leaves what has its own unit, needs none, or does not work out', () => {
    const broken = writeField(exampleJob, 'parts.strap.legs.lip.length', '12 +');
    const inches = setPlainUnit(broken, 'in');
    expect(readField(inches, 'parts.bracket.legs.wall.length')).toBe('1 3/8in');
    expect(readField(inches, 'parts.strap.legs.foot.length')).toBe('26 mm');
    expect(readField(inches, 'parts.strap.legs.lip.length')).toBe('12 +');
    expect(readField(inches, 'parts.strap.quantity')).toBe('12');
    expect(readField(inches, 'parts.strap.legs.lip.bend.angle')).toBe('90');
    expect(readField(inches, 'stocks.brass.density')).toBe('8470');
  });

  it('to the unit it is: the same job', () => expect(setPlainUnit(exampleJob, 'mm')).toBe(exampleJob));
});

describe('putting entries together', () => {
  it.each([
    [plus('7.5', '10'), '17.5'],
    [plus('0.1', '0.2'), '0.3'],
    [plus('pitch', '10'), 'pitch + 10'],
    [plus('a + b', '-3'), '(a + b) + (-3)'],
    [plus('1/2', '3/8'), '(1/2) + (3/8)'],
    [plus('5', '0'), '5'],
    [minus('100', '30.5'), '69.5'],
    [minus('3', '5'), '-2'],
    [minus('full 6in', '1'), '(full 6in) - 1'],
    [minus('1'.repeat(150), '2'.repeat(50)), undefined],
    [turned('-(a) + (b)'), '-(-(a) + (b))'],
    [turned('-(a + (b))'), 'a + (b)'],
    [turned('0.0'), '0.0'],
  ])('%s is %s', (made, wanted) => expect(made).toBe(wanted));
});
