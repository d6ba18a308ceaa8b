import { describe, expect, it } from 'vitest';
import { exampleJob } from '../../../src/job/exampleJob';
import { writeField } from '../../../src/job/fields';
import type { Job } from '../../../src/job/schema';
import { workOut } from '../../../src/job/workOut';
import { dragPlan, dragTo, snapped, type DragPlan, type DragSource, type Snapping } from '../../../src/ui/canvas/dragging';
import type { FigureName } from '../../../src/ui/canvas/view';

const job = exampleJob;
const STRAP = 'parts.strap.legs';
const ZOOM = 5;
const usual: Snapping = { step: 0.5, unit: 1, zoom: ZOOM, free: false };
const free: Snapping = { ...usual, free: true };

function source(figure: FigureName, from: Job = job, part = 'strap'): DragSource {
  const worked = workOut(from, part);
  if (!worked.shape) throw new Error('the example must have a shape');
  return { figure, job: from, part, shape: worked.shape, values: worked.resolved.values };
}

const planned = (plan: DragPlan | undefined): DragPlan => {
  expect(plan).toBeDefined();
  return plan as DragPlan;
};

describe('dragging a bend or a free end', () => {
  it('changes the leg before the bend, along that leg', () => {
    const plan = planned(dragPlan(source('section'), { kind: 'bend', leg: 'peg-leg' }, { x: 40, y: 10 }, ZOOM));
    expect(plan.axes.map((axis) => axis.field)).toEqual([`${STRAP}.crank.length`]);
    // The crank rises at 45°: 4 mm to the right and 4 mm up are √32 along it.
    expect(dragTo(plan, 4, 4, free)[0]?.value).toBeCloseTo(18 + Math.sqrt(32), 2);
    expect(dragTo(plan, 4, -4, free)[0]?.value).toBeCloseTo(18, 9);
  });

  it('lengthens the part on the blank by what it was dragged, to the same basis', () => {
    const plan = planned(dragPlan(source('blank'), { kind: 'bend', leg: 'lip' }, { x: 153, y: 8 }, ZOOM));
    const moved = dragTo(plan, 6.1, 2, usual)[0];
    expect(moved?.text).toBe('118');
    const before = workOut(job, 'strap').shape?.blank.developedLength ?? NaN;
    const after = workOut(writeField(job, moved?.axis.field ?? '', moved?.text), 'strap').shape?.blank.developedLength ?? NaN;
    expect(after - before).toBeCloseTo(6, 9);
  });

  it('takes hold of the last leg by its free end only', () => {
    const onBlank = source('blank');
    expect(dragPlan(onBlank, { kind: 'leg', leg: 'lip' }, { x: 165, y: 8 }, ZOOM)?.axes[0]?.field).toBe(`${STRAP}.lip.length`);
    expect(dragPlan(onBlank, { kind: 'leg', leg: 'lip' }, { x: 157, y: 8 }, ZOOM)).toBeUndefined();
    expect(dragPlan(onBlank, { kind: 'leg', leg: 'peg-leg' }, { x: 151, y: 8 }, ZOOM)).toBeUndefined();
  });

  it('does not go below nought', () => {
    const plan = planned(dragPlan(source('blank'), { kind: 'leg', leg: 'lip' }, { x: 165, y: 8 }, ZOOM));
    expect(dragTo(plan, -500, 0, usual)[0]?.value).toBeCloseTo(0.1, 12);
  });
});

describe('dragging a hole', () => {
  const pick = { kind: 'cutout', leg: 'peg-leg', cutout: 'pegs' } as const;
  const field = `${STRAP}.peg-leg.cutouts.pegs`;

  it('moves the row along, and across once it is pulled across', () => {
    const plan = planned(dragPlan(source('blank'), pick, { x: 65.4, y: 8 }, ZOOM));
    expect(dragTo(plan, 5.1, 0.6, usual).map((m) => m.text)).toEqual(['12.5', '0']);
    expect(dragTo(plan, 0.3, 3.1, usual).map((m) => [m.axis.field, m.text])).toEqual([
      [`${field}.along.distance`, '7.5'],
      [`${field}.across.distance`, '3'],
    ]);
  });

  it('turns the sign for a place that counts from the end, and from the left edge', () => {
    const turned = writeField(writeField(writeField(job, `${field}.along`, { from: 'end', basis: 'outside', distance: '20' }), `${field}.across`, { from: 'left', distance: '4' }), `${field}.pattern`, { kind: 'single' });
    const at = workOut(turned, 'strap').shape?.blank.cutouts.find((c) => c.leg === 2)?.centre ?? { x: NaN, y: NaN };
    const plan = planned(dragPlan(source('blank', turned), pick, at, ZOOM));
    const moved = dragTo(plan, 3, 2, usual);
    expect(moved.map((m) => m.text)).toEqual(['17', '2']);
    const next = moved.reduce((held, m) => writeField(held, m.axis.field, m.text), turned);
    const now = workOut(next, 'strap').shape?.blank.cutouts.find((c) => c.leg === 2)?.centre ?? { x: NaN, y: NaN };
    expect(now.x - at.x).toBeCloseTo(3, 9);
    expect(now.y - at.y).toBeCloseTo(2, 9);
  });

  it('lines up with another hole and says with which', () => {
    const plate = source('blank', job, 'back-plate');
    const rivet = plate.shape.blank.cutouts.find((c) => c.cutout === 1)?.centre ?? { x: NaN, y: NaN };
    const plan = planned(dragPlan(plate, { kind: 'cutout', leg: 'plate', cutout: 'rivet' }, rivet, ZOOM));
    const pegs = plate.shape.blank.cutouts.find((c) => c.cutout === 2 && c.item === 0)?.centre ?? { x: NaN, y: NaN };
    const [along] = dragTo(plan, pegs.x - rivet.x + 0.9, 0, usual);
    expect(along?.value).toBeCloseTo(14 + 37.565, 9);
    expect(along?.says).toBe('same as peg hole 1');
    expect(dragTo(plan, pegs.x - rivet.x + 0.9, 0, free)[0]?.says).toBeUndefined();
  });

  it('in the section moves along its leg only', () => {
    const plan = planned(dragPlan(source('section'), pick, { x: 60, y: 13 }, ZOOM));
    expect(plan.axes.map((axis) => axis.field)).toEqual([`${field}.along.distance`]);
  });

  it('puts a number in the place of an expression', () => {
    const typed = writeField(job, `${field}.along.distance`, 'pitch/2');
    const plan = planned(dragPlan(source('blank', typed), pick, { x: 65.4, y: 8 }, ZOOM));
    expect(dragTo(plan, 2, 0, usual).map((m) => m.text)).toEqual(['9.5', '0']);
    expect(dragTo(plan, 0.2, 0, usual).map((m) => m.text)).toEqual(['pitch/2', '0']);
  });
});

describe('snapping', () => {
  it('makes a leg as long as another and says so', () => {
    const plan = planned(dragPlan(source('blank'), { kind: 'leg', leg: 'lip' }, { x: 165, y: 8 }, ZOOM));
    expect(dragTo(plan, 6.6, 0, usual)[0]).toMatchObject({ text: '18', says: 'same as crank' });
  });

  const near = [{ value: 10.3, says: 'same as hole 2' }];

  it('goes to another thing within 7 px, else to the step', () => {
    expect(snapped(11.6, near, usual)).toEqual({ value: 10.3, says: 'same as hole 2' });
    expect(snapped(11.8, near, usual)).toEqual({ value: 12, says: undefined });
  });

  it('goes nowhere with Alt', () => {
    expect(snapped(11.6237, near, free).value).toBeCloseTo(11.62, 9);
  });

  it('writes inches in the plain unit', () => {
    const plan = planned(dragPlan(source('blank'), { kind: 'leg', leg: 'lip' }, { x: 165, y: 8 }, ZOOM));
    const inch: Snapping = { step: 25.4 / 16, unit: 25.4, zoom: ZOOM, free: false };
    const value = Math.round((12 + 8) / (25.4 / 16)) / 16;
    expect(dragTo(plan, 8, 0, inch)[0]?.text).toBe(String(Number(value.toFixed(4))));
  });
});
