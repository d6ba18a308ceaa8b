import { describe, expect, it } from 'vitest';
import { addLug } from '../../../src/job/edit/addLug';
import { splitLeg } from '../../../src/job/edit/splitLeg';
import { exampleJob } from '../../../src/job/exampleJob';
import { writeField } from '../../../src/job/fields';
import { cutout, roundHole } from '../../../src/job/pieces';
import { checkReferences } from '../../../src/job/references';
import { openJob } from '../../../src/job/openJob';
import { saveJob } from '../../../src/job/saveJob';
import type { Job, JobCutout } from '../../../src/job/schema';
import { workOut } from '../../../src/job/workOut';
import { chainOf, cutoutOf, partOf } from './sampleJob';

const bend = { angle: '30', way: 'down' } as const;

/** Every cut-out of a part by id and item, as mm from the start of the flat metal along the blank, less the bends before it. */
function onMetal(job: Job, part: string): Map<string, number> {
  const { shape, problems } = workOut(job, part);
  if (!shape) throw new Error(problems.map(({ says }) => says).join(' '));
  const found = new Map<string, number>();
  const { legs } = partOf(job, part);
  for (const { leg, cutout: index, item, centre } of shape.blank.cutouts) {
    const before = shape.blank.bends.filter((each) => each.leg <= leg).reduce((sum, each) => sum + each.figures.allowance, 0);
    found.set(`${legs[leg]?.cutouts[index]?.id}/${item}`, centre.x - before);
  }
  return found;
}

describe('splitLeg', () => {
  it('makes two legs and a bend; the entries live on', () => {
    const job = splitLeg(exampleJob, 'strap', 'peg-leg', { distance: '3*pitch', ...bend });
    expect(chainOf(job, 'strap')).toBe('foot crank<foot peg-leg<crank leg-1<peg-leg lip<leg-1');
    const [, , first, second, lip] = partOf(job, 'strap').legs;
    expect(first).toMatchObject({ length: '3*pitch', startBasis: 'outside', endBasis: 'straight', name: 'Peg leg', bend: { angle: '45', way: 'down' } });
    expect(second).toMatchObject({ length: '(6*pitch + 22) - (3*pitch)', startBasis: 'straight', endBasis: 'outside', bend: { angle: '30', way: 'down', radius: 'radius' } });
    expect(lip?.bend).toMatchObject({ parent: 'leg-1', angle: '90' });
    // The row goes whole, by its middle, which stands at 52.5.
    expect(first?.cutouts).toEqual([]);
    expect(second?.cutouts[0]?.along).toEqual({ from: 'start', basis: 'straight', distance: '7.5 - (3*pitch)' });
    expect(checkReferences(job)).toEqual([]);
  });

  it('adds the bend to the flat metal and moves no hole on it', () => {
    const bases = ['outside', 'inside', 'centre line', 'straight'] as const;
    const holes: JobCutout[] = [];
    for (const from of ['start', 'end', 'middle'] as const) {
      for (const basis of bases) {
        for (const distance of from === 'middle' ? ['-20', '15'] : ['12', '70']) {
          const id = `${from}-${basis.slice(0, 3)}-${distance}`;
          holes.push(roundHole(id, '', '2', distance, { along: { from, basis, distance } }));
          holes.push(roundHole(`${id}-row`, '', '2', distance, { along: { from, basis, distance }, pattern: { kind: 'row', direction: 'along', count: '3', pitch: '4' } }));
        }
      }
    }
    holes.push(cutout('grid', '', { kind: 'slot', length: '4', width: '2', turn: '0' }, '8', { pattern: { kind: 'grid', alongCount: '2', alongPitch: '5', acrossCount: '2', acrossPitch: '5' } }));
    const job = writeField(exampleJob, 'parts.strap.legs.peg-leg.cutouts', holes);
    const before = onMetal(job, 'strap');
    let halves = 0;
    for (const at of ['9', '37.3', '55', '100 - 10/3']) {
      const split = splitLeg(job, 'strap', 'peg-leg', { distance: at, ...bend });
      expect(split).not.toBe(job);
      expect(openJob(saveJob(split)).ok).toBe(true);
      const after = onMetal(split, 'strap');
      expect([...after.keys()].toSorted()).toEqual([...before.keys()].toSorted());
      // Figures that can no longer be put together as text are written to 1e-6 mm.
      for (const [id, place] of before) {
        expect(Math.abs((after.get(id) ?? Infinity) - place), `${id} cut at ${at}`).toBeLessThan(1e-6);
      }
      const [, , first, second] = partOf(split, 'strap').legs;
      expect((first?.cutouts.length ?? 0) + (second?.cutouts.length ?? 0)).toBe(holes.length);
      halves += Math.min(first?.cutouts.length ?? 0, second?.cutouts.length ?? 0);
    }
    expect(halves).toBeGreaterThan(20);
  });

  it('takes side lugs with their half', () => {
    const lugged = addLug(exampleJob, 'strap', 'peg-leg', 'left');
    expect(chainOf(splitLeg(lugged, 'strap', 'peg-leg', { distance: '40', ...bend }), 'strap')).toContain('leg-1<leg-2.left');
    expect(chainOf(splitLeg(lugged, 'strap', 'peg-leg', { distance: '80', ...bend }), 'strap')).toContain('leg-1<peg-leg.left');
    const { problems, shape } = workOut(splitLeg(lugged, 'strap', 'peg-leg', { distance: '80', ...bend }), 'strap');
    expect(problems).toEqual([]);
    const old = workOut(lugged, 'strap').shape?.layout.legs[4]?.bend?.seat.x;
    expect(shape?.layout.legs[5]?.bend?.seat.x).toBeCloseTo(old ?? Number.NaN, 5);
  });

  it('keeps the width at the cut', () => {
    const job = splitLeg(exampleJob, 'lever', 'lever', { distance: '42', ...bend });
    expect(partOf(job, 'lever').legs.map(({ startWidth, endWidth }) => [startWidth, endWidth])).toEqual([['14', '11.5'], ['11.5', '9']]);
    expect(partOf(job, 'lever').legs.map(({ startShape, endShape }) => [startShape.kind, endShape.kind])).toEqual([['round', 'square'], ['square', 'round']]);
    expect(cutoutOf(job, 'lever', 'leg-1', 'slot')?.along).toEqual({ from: 'end', basis: 'outside', distance: '18' });
  });

  it('of an inch leg, and of one full size', () => {
    const job = splitLeg(exampleJob, 'bracket', 'arm', { distance: '3/4in', ...bend });
    expect(partOf(job, 'bracket').legs[2]?.length).toBe('(full 6in) - (3/4in)');
    expect(workOut(job, 'bracket').resolved.part?.legs[2]?.length).toBeCloseTo(38.1 - 19.05, 12);
  });

  it.each(['0', '-3', '112', '200', '1', '110', 'x', ''])('at %s, off the flat of the leg: the same job', (distance) =>
    expect(splitLeg(exampleJob, 'strap', 'peg-leg', { distance, ...bend })).toBe(exampleJob));

  it('of what is not there, or does not work out: the same job', () => {
    expect(splitLeg(exampleJob, 'knob', 'peg-leg', { distance: '40', ...bend })).toBe(exampleJob);
    expect(splitLeg(exampleJob, 'strap', 'knee', { distance: '40', ...bend })).toBe(exampleJob);
    const broken = writeField(exampleJob, 'parts.strap.legs.lip.length', 'x');
    expect(splitLeg(broken, 'strap', 'peg-leg', { distance: '40', ...bend })).toBe(broken);
  });
});
