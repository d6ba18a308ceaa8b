import fc from 'fast-check';
import { execFileSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { exampleJob } from '../../../src/job/exampleJob';
import { writeField } from '../../../src/job/fields';
import { compareStocks } from '../../../src/job/compare/compareStocks';
import { workOut } from '../../../src/job/workOut';
import { comparisonCsv } from '../../../src/export/csv/comparisonCsv';
import { bendsCsv, holesCsv } from '../../../src/export/csv/partTables';
import { writeCsv } from '../../../src/export/csv/writeCsv';
import { readCsv } from './readCsv';

/** What the reader gives back for a cell: text as it was, or with the apostrophe where a spreadsheet would take it for a formula. */
const back = (text: string): string => (/^[=+\-@\t\r]/.test(text) ? `'${text}` : text);

describe('the writer', () => {
  it('writes rows that an independent reader gives back, whatever is in them', () => {
    fc.assert(
      fc.property(fc.array(fc.array(fc.oneof(fc.string(), fc.constantFrom('"', ',', '\r\n', '=1+1', '@x', '-5', 'ø½Ж', "'")), { minLength: 2, maxLength: 5 }), { minLength: 1, maxLength: 5 }), (rows) => {
        expect(readCsv(writeCsv(rows))).toEqual(rows.map((row) => row.map(back)));
      }),
    );
  });

  it('ends every row with CRLF, doubles quotes and quotes only what must be', () => {
    expect(writeCsv([['a', 'b,c'], ['say "so"', 'two\nlines']])).toBe('a,"b,c"\r\n"say ""so""","two\nlines"\r\n');
  });

  it('makes text that looks like a formula harmless and leaves numbers numbers', () => {
    expect(writeCsv([['=1+1', '+x', '-x', '@x', 'x=1', -5, 0.1 + 0.2, 1e-7, -1e-9, 1e7, NaN, Infinity, undefined]])).toBe("'=1+1,'+x,'-x,'@x,x=1,-5,0.3,0,0,10000000,,,\r\n");
  });

  it('keeps six places of a number and no exponent', () => {
    expect(writeCsv([[165.4624681, 1200, 0.000001]])).toBe('165.462468,1200,0.000001\r\n');
  });

  it('begins with the mark of UTF-8 only where asked for', () => {
    expect(writeCsv([['ø']], { mark: true })).toBe('\uFEFFø\r\n');
    expect(writeCsv([['ø']])).toBe('ø\r\n');
  });

  it('is read alike by the csv module of Python', () => {
    const rows = [['Łódź', 'say "so", then', 'two\r\nlines'], ['=1', '', 'Ж']];
    const script = 'import csv,io,json,sys; print(json.dumps(list(csv.reader(io.StringIO(sys.stdin.buffer.read().decode("utf-8-sig"), newline="")))))';
    const read: unknown = JSON.parse(execFileSync('/usr/bin/python3', ['-c', script], { input: writeCsv(rows, { mark: true }), encoding: 'utf8' }));
    expect(read).toEqual([['Łódź', 'say "so", then', 'two\r\nlines'], ["'=1", '', 'Ж']]);
  });
});

/** The strap with a lip that 1.0 stainless can be bent to and 1.6 brass cannot. */
const SHORT_LIP = writeField(writeField(exampleJob, 'parts.strap.legs.lip.length', '1.7'), 'parts.strap.legs.lip.endShape', { kind: 'square' });

const shapeOf = (partId: string) => {
  const { shape } = workOut(exampleJob, partId);
  if (!shape) throw new Error(`${partId} cannot be laid out`);
  return shape;
};

describe('tables of a part', () => {
  it.each(['back-plate', 'strap', 'bracket', 'lever'])('%s: every hole at the place that the core gives', (id) => {
    const shape = shapeOf(id);
    const [head, ...rows] = readCsv(holesCsv(shape));
    expect(rows).toHaveLength(shape.blank.cutouts.length);
    rows.forEach((row, i) => {
      expect(row).toHaveLength(head?.length ?? 0);
      const { centre } = shape.blank.cutouts[i] ?? { centre: { x: NaN, y: NaN } };
      const bent = shape.folded.cutouts[i]?.centre;
      expect(Number(row[8])).toBeCloseTo(centre.x - (shape.blank.legs[0]?.x ?? NaN), 5);
      expect(Number(row[9])).toBeCloseTo(centre.y, 5);
      expect(row.slice(10).map(Number)).toEqual([bent?.x, bent?.y, bent?.z].map((v) => expect.closeTo(v ?? NaN, 5)));
    });
  });

  it('strap: the first peg hole is Ø3.2 at 50.38 along the blank, named by its row', () => {
    // 50.38: printed in the picture of the main screen.
    const row = readCsv(holesCsv(shapeOf('strap'))).find(([name]) => name === 'Peg hole 1');
    expect(row?.slice(1, 4)).toEqual(['C', 'round', '3.2']);
    expect(Number(row?.[8])).toBeCloseTo(50.38, 2);
  });

  it('lever: a slot has length and width and no diameter', () => {
    const row = readCsv(holesCsv(shapeOf('lever'))).find(([name]) => name === 'Peg slot');
    expect(row?.slice(2, 8)).toEqual(['slot', '', '18', '3.2', '', '0']);
  });

  it('strap: bends in the order given, with the figures of the core', () => {
    const shape = shapeOf('strap');
    const [, ...rows] = readCsv(bendsCsv(shape, [3, 1]));
    expect(rows.map(([number]) => number)).toEqual(['3', '1', '2']);
    for (const row of rows) {
      const bend = shape.blank.bends.find(({ leg }) => String(leg) === row[0]);
      const { turn = NaN, radius, k, allowance, deduction } = bend?.figures ?? {};
      expect(row[6]).toBe(bend?.way);
      const degrees = (turn * 180) / Math.PI;
      expect([row[5], row[7], ...row.slice(8)].map(Number)).toEqual([degrees, 180 - degrees, radius, k, allowance, deduction].map((v) => expect.closeTo(v ?? NaN, 5)));
    }
  });
});

describe('the table of a comparison', () => {
  const comparison = compareStocks(exampleJob, 'strap', ['stainless']);
  const [head, ...rows] = readCsv(comparisonCsv(exampleJob, comparison));

  it('has a column for each stock and its difference to the first', () => {
    expect(head).toEqual(['letter', 'what', 'unit', 'Brass, half hard, 1.6 sheet', 'Stainless, 1.0 sheet', 'Stainless, 1.0 sheet, difference']);
  });

  it('has every row of the comparison, with its letter and its figures', () => {
    expect(rows).toHaveLength(comparison.rows.length);
    rows.forEach((row, i) => {
      const from = comparison.rows[i];
      const [first = NaN, second = NaN] = from?.values ?? [];
      expect(row.slice(0, 3)).toEqual([from?.letter ?? '', from?.called, from?.unit]);
      expect(row.slice(3).map(Number)).toEqual([expect.closeTo(first, 5), expect.closeTo(second, 5), expect.closeTo(second - first, 5)]);
    });
  });

  it('leaves cells empty for a stock in which the part cannot be made', () => {
    const [, ...body] = readCsv(comparisonCsv(SHORT_LIP, compareStocks(SHORT_LIP, 'strap', ['stainless'])));
    const developed = body.find(([, what]) => what === 'Developed length');
    expect(developed?.[3]).toBe('');
    expect(Number(developed?.[4])).toBeGreaterThan(100);
    expect(developed?.[5]).toBe('');
  });
});
