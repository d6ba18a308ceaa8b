import { describe, expect, it } from 'vitest';
import { reverseRun } from '../../../src/job/edit/reverseRun';
import { exampleJob } from '../../../src/job/exampleJob';
import { writeField } from '../../../src/job/fields';
import { roundHole } from '../../../src/job/pieces';
import { checkReferences } from '../../../src/job/references';
import { workOut } from '../../../src/job/workOut';
import { chainOf, cutoutOf, deepJob, partOf } from './sampleJob';

describe('reverseRun', () => {
  it('counts the strap from its lip', () => {
    const job = reverseRun(exampleJob, 'strap');
    expect(chainOf(job, 'strap')).toBe('lip peg-leg<lip crank<peg-leg foot<crank');
    expect(partOf(job, 'strap').legs.map(({ bend }) => bend && [bend.angle, bend.way])).toEqual([undefined, ['90', 'up'], ['45', 'down'], ['45', 'up']]);
    expect(partOf(job, 'strap').legs[0]?.startShape).toEqual({ kind: 'radius', radius: '2' });
    expect(partOf(job, 'strap').legs[3]?.endShape).toEqual({ kind: 'round' });
    expect(cutoutOf(job, 'strap', 'peg-leg', 'pegs')?.along).toEqual({ from: 'end', basis: 'outside', distance: '7.5' });
    expect(checkReferences(job)).toEqual([]);
  });

  it('turns what is measured from a middle or a centre line', () => {
    const job = reverseRun(exampleJob, 'back-plate');
    expect(cutoutOf(job, 'back-plate', 'plate', 'slot')?.across).toEqual({ from: 'centre', distance: '-(-12)' });
    expect(cutoutOf(job, 'back-plate', 'plate', 'corner')?.along).toEqual({ from: 'middle', basis: 'outside', distance: '0' });
  });

  // The blank of the same metal, turned end for end on the bed: every opening, bend and edge length is where it was.
  it.each(exampleJob.parts.map(({ id }) => id))('leaves the metal of %s as it is', (id) => {
    const leg = partOf(deepJob, id).legs[0]?.id ?? '';
    const edges = (['left', 'right', 'centre'] as const).map((from, i) => roundHole(`edge-${from}`, '', '1', `${5 + 2 * i}`, { across: { from, distance: `${2 + i}` } }));
    const source = writeField(deepJob, `parts.${id}.legs.${leg}.cutouts`, [...(partOf(deepJob, id).legs[0]?.cutouts ?? []), ...edges]);
    const before = workOut(source, id).shape?.blank;
    const after = workOut(reverseRun(source, id), id).shape?.blank;
    if (!before || !after) throw new Error('A blank is missing.');
    expect(after.area).toBeCloseTo(before.area, 9);
    expect(after.cutLength).toBeCloseTo(before.cutLength, 9);
    const { maxX, maxY } = before.bounds;
    const places = (blank: typeof before, turn: boolean) =>
      blank.cutouts
        .map(({ centre }) => (turn ? { x: maxX - centre.x, y: maxY - centre.y } : centre))
        .map(({ x, y }) => `${(x + 1e-9).toFixed(6)} ${(y + 1e-9).toFixed(6)}`)
        .toSorted();
    expect(places(after, true)).toEqual(places(before, false));
    const bends = (blank: typeof before, turn: boolean) =>
      blank.bends
        .map(({ centreLine: [a, b], way, figures }) => {
          const x = (a.x + b.x) / 2;
          const y = (a.y + b.y) / 2;
          return `${((turn ? maxX - x : x) + 1e-9).toFixed(6)} ${((turn ? maxY - y : y) + 1e-9).toFixed(6)} ${way} ${figures.turn}`;
        })
        .toSorted();
    expect(bends(after, true)).toEqual(bends(before, false));
  });

  it('twice is the same part again, whatever signs were typed', () => {
    for (const distance of ['0', '-5', '-(5)', '-(5) + (3)', '5', '-(-(2))', '', ' 4 ', '-()', '-(']) {
      const job = writeField(exampleJob, 'parts.strap.legs.foot.cutouts.rivet.across.distance', distance);
      expect(reverseRun(reverseRun(job, 'strap'), 'strap')).toEqual(job);
    }
    expect(reverseRun(reverseRun(deepJob, 'bracket'), 'bracket')).toEqual(deepJob);
  });

  it('of a part with an entry too long to turn, or of no part: the same job', () => {
    const long = writeField(exampleJob, 'parts.strap.legs.foot.cutouts.rivet.across.distance', '1'.repeat(198));
    expect(reverseRun(long, 'strap')).toBe(long);
    expect(reverseRun(exampleJob, 'knob')).toBe(exampleJob);
  });
});
