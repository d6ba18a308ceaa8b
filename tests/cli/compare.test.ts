import { describe, expect, it } from 'vitest';
import { comparePart, strangers } from '../../src/cli/compareFiles';
import { readArguments } from '../../src/cli/readArguments';
import { compareStocks } from '../../src/job/compare/compareStocks';
import { exampleJob } from '../../src/job/exampleJob';

describe('--compare', () => {
  it('gives every row of the comparison with values and differences by stock', () => {
    const told = comparePart(exampleJob, 'strap', 'stainless')?.report;
    const own = compareStocks(exampleJob, 'strap', ['stainless']);
    expect(told?.rows).toHaveLength(own.rows.length);
    const developed = told?.rows.find((row) => row.called === 'Developed length');
    // By hand: brass 165.462 as in the guide of the example; the difference is what the two stocks' rows differ by.
    expect(developed?.values['brass']).toBeCloseTo(165.462, 3);
    expect(developed?.differences['stainless']).toBeCloseTo((developed?.values['stainless'] ?? 0) - (developed?.values['brass'] ?? 0), 12);
    expect(developed?.letter).toBe('a');
  });
  it('writes the same figures as CSV, one line a row under one head', () => {
    const compared = comparePart(exampleJob, 'strap', 'stainless');
    const lines = compared?.csv.trimEnd().split('\r\n') ?? [];
    expect(lines).toHaveLength(compareStocks(exampleJob, 'strap', ['stainless']).rows.length + 1);
    expect(lines[1]).toContain('165.46');
  });
  it('compares with every stock of the job when asked for all, and with none that is not there', () => {
    expect(comparePart(exampleJob, 'strap', 'all')?.report.stocks).toHaveLength(exampleJob.stocks.length);
    expect(strangers(exampleJob, 'stainless,lead')).toEqual(['lead']);
    // The lever is made of it already.
    expect(comparePart(exampleJob, 'lever', 'stainless')).toBeUndefined();
  });
  it('is read from the command, and refused without a stock', () => {
    expect(readArguments(['a.json', '--out', 'x', '--compare', 'thin,thick'], '2026-11-05')).toMatchObject({ ok: true, compare: 'thin,thick' });
    expect(readArguments(['a.json', '--out', 'x', '--compare'], '2026-11-05')).toMatchObject({ ok: false });
  });
});
