import { describe, expect, it } from 'vitest';
import { compareStocks, type Row } from '../../../src/job/compare/compareStocks';
import { exampleJob } from '../../../src/job/exampleJob';
import { differenceText, eachOf, tableLines, valueText, type Line } from '../../../src/ui/compare/tableLines';

const row = (called: string, values: Row['values'], more: Partial<Row> = {}): Row => ({ letter: undefined, what: 'size', called, unit: 'mm', values, of: undefined, run: undefined, ...more });
const peg = (n: number, values: Row['values'], what: Row['what'] = 'hole'): Row =>
  row(`Peg ${n}, along`, values, { what, of: { kind: 'cutout', leg: 'a', cutout: 'p', item: n - 1 }, run: { key: 'a p along', called: 'Peg', says: 'along' } });
const line = (...rows: [Row, ...Row[]]): Line => ({ key: 'k', called: 'c', rows });

describe('lines of the table', () => {
  it('puts what differs under its heading and the rest aside', () => {
    const { differ, same } = tableLines([row('Length', [10, 11]), row('Width', [5, 5.001]), row('Mass', [3, 4], { what: 'mass', unit: 'g' }), row('Leg A', [1, 1.2], { what: 'leg' })]);
    expect(differ.map(({ title, lines }) => [title, lines.map(({ called }) => called)])).toEqual([
      ['The whole part', ['Length', 'Mass']],
      ['Legs', ['Leg A']],
    ]);
    expect(same.map(({ called }) => called)).toEqual(['Width']);
  });
  it('gathers the openings of a pattern, and opens it again', () => {
    const [block] = tableLines([peg(1, [10, 11]), row('Other', [1, 2], { what: 'hole' }), peg(2, [20, 21]), peg(3, [30, 31])]).differ;
    expect(block?.lines.map(({ called }) => called)).toEqual(['Peg 1 to 3, along', 'Other']);
    const [pegs] = block?.lines ?? [];
    expect(pegs && eachOf(pegs).map(({ called }) => called)).toEqual(['Peg 1, along', 'Peg 2, along', 'Peg 3, along']);
  });
  it('takes a figure that one stock alone has for a difference', () => {
    expect(tableLines([row('Length', [undefined, 10])]).differ).toHaveLength(1);
    expect(tableLines([row('Length', [10])]).same).toHaveLength(1);
    expect(tableLines([row('Length', [10, undefined, 10])]).same).toHaveLength(1);
  });
});

describe('figures', () => {
  it('says one figure, or the first and the last', () => {
    expect(valueText(line(row('x', [10, 11.004])), 1, exampleJob)).toBe('11.00');
    expect(valueText(line(peg(1, [10]), peg(2, [20]), peg(3, [30])), 0, exampleJob)).toBe('10.00 to 30.00');
    expect(valueText(line(row('x', [10, undefined])), 1, exampleJob)).toBe('–');
    expect(valueText(line(peg(1, [0, 0.6], 'bent hole')), 1, exampleJob)).toBe('');
    expect(valueText(line(row('x', [25.4])), 0, { ...exampleJob, units: { ...exampleJob.units, show: 'inch' } })).toBe('1.000');
    expect(valueText(line(row('x', [12.345], { unit: 'g' })), 0, exampleJob)).toBe('12.35 g');
  });
  it('says differences in mm with their sign, from the least to the most', () => {
    expect(differenceText(line(row('x', [10, 10.62])), 1)).toBe('+0.62');
    expect(differenceText(line(row('x', [10, 9.38])), 1)).toBe('−0.62');
    expect(differenceText(line(row('x', [10, 9.996])), 1)).toBe('same');
    expect(differenceText(line(row('x', [10, 8], { unit: 'g' })), 1)).toBe('−2.00 g');
    expect(differenceText(line(peg(1, [10, 10.1]), peg(2, [20, 20.3])), 1)).toBe('+0.10 to +0.30');
    expect(differenceText(line(peg(1, [0, 0.6], 'bent hole'), peg(2, [0, 0.2], 'bent hole')), 1)).toBe('0.20 to 0.60');
    expect(differenceText(line(row('x', [undefined, 8])), 1)).toBe('–');
    expect(differenceText(line(row('x', [8, undefined])), 1)).toBe('–');
  });
  it('every line of the example has a figure for every stock', () => {
    for (const part of exampleJob.parts) {
      const { rows, stocks } = compareStocks(exampleJob, part.id, exampleJob.stocks.map(({ id }) => id));
      const { differ, same } = tableLines(rows);
      const lines = [...differ.flatMap((block) => block.lines), ...same];
      expect(lines.flatMap((each) => each.rows)).toHaveLength(rows.length);
      for (const each of lines) for (const i of stocks.keys()) expect(valueText(each, i, exampleJob) + (i > 0 ? differenceText(each, i) : '')).not.toMatch(/NaN|Infinity|undefined|–/);
    }
  });
});
