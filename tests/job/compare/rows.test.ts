import { describe, expect, it } from 'vitest';
import { chooseStock } from '../../../src/job/compare/chooseStock';
import { compareStocks, rowDiffers, type Comparison } from '../../../src/job/compare/compareStocks';
import { newFindings } from '../../../src/job/compare/newFindings';
import { exampleJob } from '../../../src/job/exampleJob';
import { readField, writeField } from '../../../src/job/fields';
import { plainBend, plainLeg, roundHole } from '../../../src/job/pieces';
import type { Job, JobPart } from '../../../src/job/schema';
import { workOut } from '../../../src/job/workOut';

/**
 * K 0.4, inside radius = thickness, 90°, as in compareStocks.test.ts. BA = π/2 × 1.4 t; outside setback 2 t, inside setback t.
 */
const BA = (t: number): number => (Math.PI / 2) * 1.4 * t;
const stocks: Job['stocks'] = [
  { id: 'thick', name: 'Brass 1.6', metal: 'brass', thickness: '1.6', radius: 'thickness', density: '8500', rule: { kind: 'fixedK', k: '0.4' } },
  { id: 'thin', name: 'Brass 1.0', metal: 'brass', thickness: '1', radius: 'thickness', density: '8500', rule: { kind: 'fixedK', k: '0.4' } },
  { id: 'inch', name: 'Brass 1/16 in', metal: 'brass', thickness: '1/16in', radius: '1/32in', density: '8500', rule: { kind: 'fixedK', k: '0.4' } },
];
const jobOf = (part: Omit<JobPart, 'id' | 'name' | 'stock' | 'quantity'>, stock = 'thick'): Job => ({
  ...exampleJob, stocks, parts: [{ id: 'p', name: 'Part', stock, quantity: '1', ...part }],
});
const rowOf = (c: Comparison, called: string) => c.rows.find((r) => r.called === called);
const values = (c: Comparison, called: string) => rowOf(c, called)?.values;

/** Leg A 40 outside; leg B 30 outside with three holes 8, 14 and 20 from its start outside. */
const angle = jobOf({
  legs: [
    plainLeg('a', 'A', '40', '16'),
    plainLeg('b', 'B', '30', '16', { bend: plainBend('a', '90'), cutouts: [roundHole('pegs', 'Peg hole', '3', '8', { pattern: { kind: 'row', direction: 'along', count: '3', pitch: '6' } })] }),
  ],
});

describe('the openings of a pattern', () => {
  const c = compareStocks(angle, 'p', ['thin']);
  it('share a letter and a run for each thing that is said of them', () => {
    const along = c.rows.filter(({ run }) => run?.says === 'along the blank');
    expect(along.map(({ called }) => called)).toEqual([1, 2, 3].map((n) => `Peg hole ${n}, along the blank`));
    expect(new Set(along.map(({ letter }) => letter)).size).toBe(1);
    expect(along[0]).toMatchObject({ letter: expect.stringMatching(/^[a-z]$/), of: { kind: 'cutout', leg: 'b', cutout: 'pegs', item: 0 }, run: { called: 'Peg hole' } });
    const others = c.rows.filter(({ run }) => run?.says !== 'along the blank').flatMap(({ letter }) => letter ?? []);
    expect(others).not.toContain(along[0]?.letter);
  });
  it('takes no letter where none of them differs', () => {
    expect(c.rows.filter(({ run }) => run?.says === 'across the blank').every((row) => row.letter === undefined && !rowDiffers(row))).toBe(true);
  });
  it('is off its mate by the way across its own axis only', () => {
    // Hole 1 stands 8 from the outside face of leg A: 6.4 above its marked face at 1.6, 7 at 1.0. Leg B stands 0.6 further out as well,
    // along the axis of the hole, where a bolt does not mind.
    expect(values(c, 'Peg hole 1, off its mate')).toEqual([0, expect.closeTo(0.6, 9)]);
    expect(values(c, 'Peg hole 1, moved in the bent part')).toEqual([0, expect.closeTo(Math.SQRT2 * 0.6, 9)]);
  });
  it('takes no notice of a height that changes under a hole looking up', () => {
    // A crank of two right angles: leg C lies flat again, its holes look up, and the thickness changes both how high and how far out it stands.
    const crank = jobOf({
      legs: [
        plainLeg('a', 'A', '30', '16'),
        plainLeg('b', 'B', '20', '16', { bend: plainBend('a', '90') }),
        plainLeg('c', 'C', '30', '16', { bend: plainBend('b', '90', 'down'), cutouts: [roundHole('h', 'Hole', '3', '15')] }),
      ],
    });
    const two = compareStocks(crank, 'p', ['thin']);
    // 20 outside from the back of A to the marked face of C: 20 − t above the marked face of A. Out: 30 − t to the marked face of B, its back t
    // further, C's outside there, and 15 on from the marked face of B, which is outside to C's bend: 30 − t + 15.
    expect(two.stocks.map(({ worked }) => worked.shape?.folded.cutouts[0]?.centre)).toEqual([1.6, 1].map((t) => ({ x: expect.closeTo(30 - t + 15, 9), y: expect.closeTo(0, 9), z: expect.closeTo(20 - t, 9) })));
    expect(values(two, 'Hole, off its mate')?.[1]).toBeCloseTo(0.6, 9);
    expect(values(two, 'Hole, moved in the bent part')?.[1]).toBeCloseTo(Math.hypot(0.6, 0.6), 9);
  });
  it('may be more in one stock than in another', () => {
    const counted = compareStocks(writeField(angle, 'parts.p.legs.b.cutouts.pegs.pattern.count', '2/thickness*1mm + 1'), 'p', ['thin']);
    // A count of 2.25 is refused at 1.6; 3 at 1.0 will do.
    expect(values(counted, 'Developed length')).toEqual([undefined, expect.closeTo(66 + BA(1), 9)]);
    const rounded = compareStocks(writeField(angle, 'parts.p.legs.b.cutouts.pegs.pattern.count', '5 - 1.25*thickness/1mm'), 'p', ['inch', 'thin']);
    // 5 − 1.25 × 1.6 = 3 holes now; 3.75 at 1.0 and 3.016 at 1/16 in are no counts.
    expect(values(rounded, 'Peg hole 3, along the blank')?.[0]).toBeCloseTo(36.8 + BA(1.6) + 20 - 3.2, 9);
    expect(rounded.stocks.slice(1).every(({ worked }) => worked.shape === undefined && worked.problems.length > 0)).toBe(true);
  });
  it('has no value in a stock that has not got it', () => {
    const longer = writeField(angle, 'parts.p.legs.b.length', '60');
    const more = compareStocks(writeField(longer, 'parts.p.legs.b.cutouts.pegs.pattern.count', '11 - 5*thickness/1mm'), 'p', ['thin']);
    // 11 − 5 × 1.6 = 3 and 11 − 5 × 1.0 = 6.
    expect(values(more, 'Peg hole 3, along the blank')).toEqual([expect.closeTo(36.8 + BA(1.6) + 16.8, 9), expect.closeTo(38 + BA(1) + 18, 9)]);
    expect(values(more, 'Peg hole 4, along the blank')).toEqual([undefined, expect.closeTo(38 + BA(1) + 24, 9)]);
    expect(rowOf(more, 'Peg hole 4, off its mate')).toBeUndefined();
  });
});

describe('bends that run along the blank', () => {
  const lugged = jobOf({
    legs: [
      plainLeg('base', 'Base', '60', '30', { cutouts: [roundHole('h', 'Hole', '4', '30')] }),
      plainLeg('lug', 'Lug', '12', '20', {
        bend: { ...plainBend('base', '90'), edge: 'right', seat: { along: { from: 'start', basis: 'outside', distance: '20' }, basis: 'outside', relief: { kind: 'square', width: '3', depth: '3' } } },
      }),
    ],
  });
  it('are told from the lower edge, and a hole across the blank moves with it', () => {
    const c = compareStocks(lugged, 'p', ['thin']);
    expect(c.stocks.flatMap(({ worked }) => worked.problems)).toEqual([]);
    // The lug hangs on the right, lower edge. Its straight is 12 − 2 t, and half of BA lies below the line.
    const line = (t: number): number => 12 - 2 * t + BA(t) / 2;
    expect(values(c, 'Bend 1, centre line')).toEqual([expect.closeTo(line(1.6), 9), expect.closeTo(line(1), 9)]);
    // From the line up: the other half of BA, and the middle of the base, 15 from its edge once bent, less the setback 2 t.
    const hole = (t: number): number => line(t) + BA(t) / 2 + 15 - 2 * t;
    expect(values(c, 'Hole, across the blank')).toEqual([expect.closeTo(hole(1.6), 9), expect.closeTo(hole(1), 9)]);
    expect(rowOf(c, 'Hole, across the blank')?.letter).toBeDefined();
  });
});

describe('a lug on a leg whose sizes are held', () => {
  const onSecond = jobOf({
    legs: [
      plainLeg('a', 'A', '40', '16'),
      plainLeg('b', 'B', '50', '30', { bend: plainBend('a', '90') }),
      plainLeg('lug', 'Lug', '12', '20', {
        bend: { ...plainBend('b', '90'), edge: 'right', seat: { along: { from: 'start', basis: 'outside', distance: '15' }, basis: 'outside', relief: { kind: 'square', width: '2', depth: '2' } } },
      }),
    ],
  });
  it('keeps its place along that leg, and so do the entries once the stock is chosen', () => {
    const keep = ['as typed', 'inside', 'as typed'] as const;
    const c = compareStocks(onSecond, 'p', ['thin'], keep);
    // 15 outside is 13.4 from the inside face at 1.6. Kept inside at 1.0.
    expect(c.stocks[1]?.worked.shape?.layout.part.legs[2]?.bend?.seat?.along).toEqual({ from: 'start', basis: 'inside', distance: expect.closeTo(13.4, 9) });
    const chosen = chooseStock(onSecond, 'p', 'thin', keep);
    expect(readField(chosen, 'parts.p.legs.lug.bend.seat.along')).toEqual({ from: 'start', basis: 'inside', distance: '13.4' });
    expect(readField(chosen, 'parts.p.legs.b.length')).toBe('48.4');
    expect(workOut(chosen, 'p').shape?.blank.area).toBeCloseTo(c.stocks[1]?.worked.shape?.blank.area ?? Number.NaN, 5);
  });
});

describe('choosing a stock', () => {
  it('keeps an entry as typed where it comes to what is held', () => {
    const typed = writeField(angle, 'parts.p.legs.a.length', '2*pitch + 10');
    expect(readField(chooseStock(typed, 'p', 'thin', ['outside', 'inside']), 'parts.p.legs.a.length')).toBe('2*pitch + 10');
    // 30 outside is 28.4 inside at 1.6; the first hole, 8 outside, is 6.4 inside.
    const chosen = chooseStock(typed, 'p', 'thin', ['outside', 'inside']);
    expect(readField(chosen, 'parts.p.legs.b.length')).toBe('28.4');
    expect(readField(chosen, 'parts.p.legs.b.cutouts.pegs.along')).toEqual({ from: 'start', basis: 'inside', distance: '6.4' });
  });
  it('writes inches where a plain number is inches', () => {
    const inch = { ...writeField(writeField(angle, 'parts.p.legs.a.length', '40mm'), 'parts.p.legs.b.length', '30mm'), units: { ...angle.units, plain: 'in' as const } };
    const whole: Job = { ...inch, stocks: inch.stocks.map((s) => ({ ...s, thickness: { thick: '1.6mm', thin: '1mm' }[s.id] ?? s.thickness })), parts: inch.parts.map((p) => ({ ...p, legs: p.legs.map((l) => ({ ...l, startWidth: '16mm', endWidth: '16mm', cutouts: [] })) })) };
    const chosen = chooseStock(whole, 'p', 'thin', ['as typed', 'inside']);
    expect(Number(readField(chosen, 'parts.p.legs.b.length')) * 25.4).toBeCloseTo(28.4, 4);
  });
  it('does nothing where the part cannot be laid out in that stock', () => {
    const short = writeField(angle, 'parts.p.legs.b.length', '3.1');
    const without = writeField(short, 'parts.p.legs.b.cutouts', []);
    expect(compareStocks(writeField(without, 'parts.p.stock', 'thin'), 'p', ['thick']).stocks[1]?.worked.problems[0]?.says).toContain('0.10 mm');
    const thin = writeField(without, 'parts.p.stock', 'thin');
    expect(chooseStock(thin, 'p', 'thick', [])).toBe(writeField(thin, 'parts.p.stock', 'thin'));
    expect(chooseStock(thin, 'p', 'gold', [])).toBe(thin);
  });
});

describe('what another stock makes worse', () => {
  it('names the leg that becomes too short, and nothing that was there already', () => {
    const c = compareStocks(writeField(writeField(writeField(angle, 'parts.p.legs.b.cutouts', []), 'parts.p.legs.b.length', '2.5'), 'parts.p.stock', 'thin'), 'p', ['thick']);
    const [now, thick] = c.stocks;
    if (!now || !thick) throw new Error('Two stocks were asked for.');
    // 2.5 outside less 2 × 1.6 is 0.70 short.
    expect(newFindings(now.worked, thick.worked)).toEqual([{ level: 'stop', says: expect.stringContaining('too short for its bend by 0.70 mm') }]);
    expect(newFindings(thick.worked, thick.worked)).toEqual([]);
  });
  it('tells a hole that comes too near to a bend', () => {
    // Hole of 3 at 8 outside: its edge lies 8 − 1.5 − 3.2 = 3.3 from the bend at 1.6 and 8 − 1.5 − 2 = 4.5 at 1.0. Limit 2 t + r: 4.8 and 3.0.
    const c = compareStocks(writeField(angle, 'parts.p.stock', 'thin'), 'p', ['thick']);
    const [now, thick] = c.stocks;
    if (!now || !thick) throw new Error('Two stocks were asked for.');
    const worse = newFindings(now.worked, thick.worked);
    expect(worse.map(({ says }) => says).join(' ')).toMatch(/Peg hole.* 3\.30? mm from bend 1/);
    expect(worse.every(({ level }) => level === 'care')).toBe(true);
    expect(newFindings(thick.worked, now.worked)).toEqual([]);
  });
  it('tells what stops the part though it needed a look before, and nothing the other way round', () => {
    const care = { level: 'care', key: 'k', says: 'A hole is near the edge by 1.00 mm.' } as const;
    const stop = { level: 'stop', key: 'k', says: 'A hole breaks through the edge.' } as const;
    const { worked } = compareStocks(angle, 'p', []).stocks[0] ?? {};
    if (!worked) throw new Error('The stock of the part is always compared.');
    const having = (finding: typeof care | typeof stop) => ({ ...worked, findings: [finding] });
    expect(newFindings(having(care), having(stop))).toEqual([{ level: 'stop', says: stop.says }]);
    expect(newFindings(having(stop), having(care))).toEqual([]);
  });
  it('says nothing of what needs a look already, until more is wrong with it', () => {
    const told = (at: string): string => {
      const one = writeField(writeField(angle, 'parts.p.stock', 'thin'), 'parts.p.legs.b.cutouts', [roundHole('h', 'Hole', '3', at)]);
      const [now, thick] = compareStocks(one, 'p', ['thick']).stocks;
      if (!now || !thick) throw new Error('Two stocks were asked for.');
      expect(now.worked.findings.filter(({ level }) => level === 'care')).toHaveLength(1);
      return newFindings(now.worked, thick.worked).map(({ says }) => says).join(' ');
    };
    // 5 outside: its edge is 1.5 from the bend at 1.0, within 3.0, and 0.3 at 1.6, within 4.8. 4 outside: 0.5, and at 1.6 it lies in the bend.
    expect(told('5')).toBe('');
    expect(told('4')).toMatch(/^Hole reaches 0\.70 mm into bend 1\./);
  });
});

describe('parts of other kinds', () => {
  it('a flat part differs in mass alone', () => {
    const flat = compareStocks(jobOf({ legs: [plainLeg('a', 'A', '40', '16', { cutouts: [roundHole('h', 'Hole', '4', '20')] })] }), 'p', ['thin']);
    expect(flat.rows.filter(rowDiffers).map(({ called }) => called)).toEqual(['Mass of one']);
    expect(flat.rows.every(({ letter }) => letter === undefined)).toBe(true);
  });
  it('a stock in inches is worked out in mm', () => {
    const c = compareStocks(angle, 'p', ['inch']);
    // t 1.5875, r 0.79375: BA = π/2 (r + 0.4 t), outside setback r + t.
    const [t, r] = [25.4 / 16, 25.4 / 32];
    expect(values(c, 'Developed length')?.[1]).toBeCloseTo(70 - 2 * (r + t) + (Math.PI / 2) * (r + 0.4 * t), 9);
  });
  it('a part at fault in its own stock still comes out in the others', () => {
    const c = compareStocks(writeField(writeField(angle, 'parts.p.legs.b.cutouts', []), 'parts.p.legs.b.length', '2.5'), 'p', ['thin', 'inch'], ['inside', 'holes']);
    expect(values(c, 'Developed length')).toEqual([undefined, expect.closeTo(38 + 0.5 + BA(1), 9), expect.any(Number)]);
  });
  it('every row has a subject of its own or is of the whole part', () => {
    for (const { id } of exampleJob.parts) {
      const c = compareStocks(exampleJob, id, exampleJob.stocks.map((s) => s.id));
      expect(c.rows.length).toBeGreaterThan(3);
      for (const row of c.rows) {
        expect(row.values).toHaveLength(exampleJob.stocks.length);
        expect(row.of === undefined).toBe(row.what === 'size' || row.what === 'mass');
      }
      expect(new Set(c.rows.map(({ called }) => called)).size).toBe(c.rows.length);
    }
  });
});
