import { describe, expect, it } from 'vitest';
import { chooseStock } from '../../../src/job/compare/chooseStock';
import { compareStocks, type Comparison } from '../../../src/job/compare/compareStocks';
import type { Keep } from '../../../src/job/compare/keepSizes';
import { exampleJob } from '../../../src/job/exampleJob';
import { writeField } from '../../../src/job/fields';
import { plainBend, plainLeg, roundHole } from '../../../src/job/pieces';
import { workOut } from '../../../src/job/workOut';
import type { Job } from '../../../src/job/schema';

/**
 * An angle worked by hand in two thicknesses. K 0.4, inside radius = thickness, 90°.
 * t 1.0: r 1.0, BA = π/2 (1.0 + 0.4 × 1.0) = 2.199115; outside setback 2.0.
 * t 1.6: r 1.6, BA = π/2 (1.6 + 0.4 × 1.6) = 3.518584; outside setback 3.2.
 * Legs 40 and 30 outside: straights 38 + 28 at 1.0, 36.8 + 26.8 at 1.6.
 * Developed: 66 + 2.199115 = 68.199115; 63.6 + 3.518584 = 67.118584.
 * Hole in the second leg 20 from its start outside: on the blank at 38 + 2.199115 + 20 − 2 = 58.199115, resp. 36.8 + 3.518584 + 20 − 3.2 = 57.118584.
 */
const BA = { thin: (Math.PI / 2) * 1.4, thick: (Math.PI / 2) * 1.6 * 1.4 };

const job: Job = {
  ...exampleJob,
  stocks: [
    { id: 'thick', name: 'Brass 1.6', metal: 'brass', thickness: '1.6', radius: 'thickness', density: '8500', rule: { kind: 'fixedK', k: '0.4' } },
    { id: 'thin', name: 'Brass 1.0', metal: 'brass', thickness: '1', radius: 'thickness', density: '8500', rule: { kind: 'fixedK', k: '0.4' } },
  ],
  parts: [
    {
      id: 'angle',
      name: 'Angle',
      stock: 'thick',
      quantity: '1',
      legs: [
        plainLeg('a', 'A', '40', '16'),
        plainLeg('b', 'B', '30', '16', { bend: plainBend('a', '90', 'up'), cutouts: [roundHole('h', 'Hole', '4', '20')] }),
      ],
    },
  ],
};

const row = (c: Comparison, called: string) => c.rows.find((r) => r.called === called)?.values;

describe('two stocks compared, as typed', () => {
  const c = compareStocks(job, 'angle', ['thin']);
  it('puts the present stock first', () => expect(c.stocks.map((s) => s.stock)).toEqual(['thick', 'thin']));
  it('gives the hand-worked developed lengths, bend lines and hole', () => {
    expect(row(c, 'Developed length')).toEqual([expect.closeTo(63.6 + BA.thick, 9), expect.closeTo(66 + BA.thin, 9)]);
    expect(row(c, 'Bend 1, centre line')).toEqual([expect.closeTo(36.8 + BA.thick / 2, 9), expect.closeTo(38 + BA.thin / 2, 9)]);
    expect(row(c, 'Hole, along the blank')).toEqual([expect.closeTo(57.118584, 6), expect.closeTo(58.199115, 6)]);
  });
  it('gives the mass by area × thickness × density', () => {
    const area = (length: number) => length * 16 - Math.PI * 4;
    expect(row(c, 'Mass of one')).toEqual([expect.closeTo(area(63.6 + BA.thick) * 1.6 * 8.5e-3, 6), expect.closeTo(area(66 + BA.thin) * 8.5e-3, 6)]);
  });
  it('says how far the hole moves in the bent part', () => {
    // Marked face of leg B stands at x = 36.8 + 1.6 = 38.4 (1.6) and 38 + 1 = 39 (1.0) from the start; the hole stands 20 − 1.6 = 18.4, resp. 19 above the marked face of leg A.
    expect(row(c, 'Hole, moved in the bent part')).toEqual([0, expect.closeTo(Math.hypot(0.6, 0.6), 9)]);
  });
  it('agrees with the core run for each stock apart', () => {
    for (const [i, stock] of ['thick', 'thin'].entries()) {
      const alone = workOut(writeField(job, 'parts.angle.stock', stock), 'angle');
      expect(c.stocks[i]?.worked.shape?.blank).toEqual(alone.shape?.blank);
    }
  });
  it('letters what differs and nothing else', () => {
    expect(c.rows.filter((r) => r.letter).map((r) => r.called)).not.toContain('Blank, width');
    expect(c.rows.find((r) => r.called === 'Developed length')?.letter).toBe('a');
    expect(new Set(c.rows.flatMap((r) => r.letter ?? [])).size).toBe(c.rows.filter((r) => r.letter).length);
  });
});

describe('what is held', () => {
  const inside: Keep[] = ['inside', 'inside'];
  it('holds inside sizes: legs 40 and 30 outside are 38.4 and 28.4 inside at 1.6', () => {
    const c = compareStocks(job, 'angle', ['thin'], inside);
    // Inside setback at 1.0 is r = 1: straights 37.4 and 27.4.
    expect(row(c, 'Leg A, straight')).toEqual([expect.closeTo(36.8, 9), expect.closeTo(37.4, 9)]);
    expect(row(c, 'Leg B, straight')).toEqual([expect.closeTo(26.8, 9), expect.closeTo(27.4, 9)]);
    // The hole is 20 − 1.6 = 18.4 from the inside face; at 1.0 that is 17.4 from the tangent line.
    expect(row(c, 'Hole, along the blank')?.[1]).toBeCloseTo(37.4 + BA.thin + 17.4, 9);
  });
  it('holds outside sizes whatever the basis was', () => {
    const onCentre = writeField(writeField(job, 'parts.angle.legs.a.endBasis', 'inside'), 'parts.angle.legs.a.length', '38.4');
    const c = compareStocks(onCentre, 'angle', ['thin'], ['outside', 'as typed']);
    expect(row(c, 'Leg A, straight')).toEqual([expect.closeTo(36.8, 9), expect.closeTo(38, 9)]);
  });
  it('holds the holes: along their leg they stay where they were in space', () => {
    const c = compareStocks(job, 'angle', ['thin'], ['as typed', 'holes']);
    const [now, then] = c.stocks.map((s) => s.worked.shape?.folded.cutouts[0]?.centre);
    // Leg B stands upright: along it is z.
    expect(then?.z).toBeCloseTo(now?.z ?? Number.NaN, 9);
    expect(then?.x).toBeCloseTo(39, 9);
  });
  it('holds holes that are given from the end or the middle just as well', () => {
    for (const from of ['end', 'middle']) {
      const moved = writeField(job, 'parts.angle.legs.b.cutouts.h.along.from', from);
      const c = compareStocks(writeField(moved, 'parts.angle.legs.b.cutouts.h.along.distance', '3'), 'angle', ['thin'], ['as typed', 'holes']);
      const [now, then] = c.stocks.map((s) => s.worked.shape?.folded.cutouts[0]?.centre.z);
      expect(then).toBeCloseTo(now ?? Number.NaN, 9);
    }
  });
});

describe('expressions and named sizes', () => {
  it('are worked out anew in each stock', () => {
    const c = compareStocks(writeField(job, 'parts.angle.legs.a.length', '40 + 2*thickness'), 'angle', ['thin']);
    expect(row(c, 'Leg A, straight')).toEqual([expect.closeTo(43.2 - 3.2, 9), expect.closeTo(42 - 2, 9)]);
  });
});

describe('a stock in which the part cannot be made', () => {
  it('leaves its figures out and gives the reasons', () => {
    const c = compareStocks(writeField(job, 'parts.angle.legs.b.length', '2.5'), 'angle', ['thin']);
    expect(c.stocks[0]?.worked.problems[0]?.says).toContain('too short for its bend by 0.70 mm');
    expect(row(c, 'Developed length')?.[0]).toBeUndefined();
    expect(row(c, 'Developed length')?.[1]).toBeCloseTo(38 + BA.thin + 0.5, 9);
  });
});

describe('choosing one', () => {
  it('changes only the stock where all is as typed', () => {
    const chosen = chooseStock(job, 'angle', 'thin');
    expect(chosen).toEqual(writeField(job, 'parts.angle.stock', 'thin'));
  });
  it('writes what was held into the entries, so that the part comes out as compared', () => {
    for (const keep of [['inside', 'inside'], ['outside', 'holes'], ['as typed', 'holes']] as Keep[][]) {
      const compared = compareStocks(job, 'angle', ['thin'], keep).stocks[1]?.worked.shape;
      const chosen = workOut(chooseStock(job, 'angle', 'thin', keep), 'angle').shape;
      expect(chosen?.blank.developedLength).toBeCloseTo(compared?.blank.developedLength ?? Number.NaN, 5);
      expect(chosen?.blank.cutouts[0]?.centre.x).toBeCloseTo(compared?.blank.cutouts[0]?.centre.x ?? Number.NaN, 5);
    }
  });
});
