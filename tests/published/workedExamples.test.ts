/** Worked examples with printed answers from textbooks and teaching pages, all read. Values: data/worked-examples.json. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { developedByDeductions, developedByStraights } from '../../src/core/bending/developedLength';
import type { AllowanceRule } from '../../src/core/bending/types';
import { answer, apart, bend, radians, ROUNDING, workedExample } from './bend';
import worked from './data/worked-examples.json';

/** Which test file works which example. */
const WORKED_IN = {
  'we-01': 'faaAirframeHandbook',
  'we-02': 'sheetMetalWorkbook',
  'we-03': 'din6935',
  'we-04': 'machinerysHandbook',
  'we-05': 'navyManuals',
  'we-06': 'workedExamples',
  'we-07': 'workedExamples',
  'we-08': 'workedExamples',
};

it('no example went missing, and each is worked in one of these files', () => {
  expect(worked.values.examples.map(({ id }) => id)).toEqual(Object.keys(WORKED_IN));
  for (const [id, file] of Object.entries(WORKED_IN)) {
    const text = readFileSync(new URL(`${file}.test.ts`, import.meta.url), 'utf8');
    expect(text).toMatch(new RegExp(`workedExample<.*>\\('${id}'\\)`));
  }
});

describe('stirrup, four right angles in 2 mm aluminium (we-06, German teaching page; how the straights split is inferred)', () => {
  type Inputs = { T: number; R: number; turned_deg: number[]; straights_total: number };
  const { inputs, printed_answer } = workedExample<Inputs, { BA: number; developed: number }>('we-06');
  const allowances = inputs.turned_deg.map((turned) => bend({ kind: 'fixedK', k: 0.5 }, turned, inputs.R, inputs.T).allowance);
  const straights = [9, 24, 16, 24, 9];

  it('has the printed arc and developed length', () => {
    expect(straights.reduce((sum, straight) => sum + straight)).toBe(inputs.straights_total);
    expect(allowances).toHaveLength(4);
    for (const allowance of allowances) expect(apart(allowance, printed_answer.BA)).toBeLessThanOrEqual(0.0005 + ROUNDING); // printed to 0.001
    expect(apart(answer(developedByStraights(straights, allowances)), printed_answer.developed)).toBeLessThanOrEqual(0.00005 + ROUNDING); // to 0.0001
  });
});

describe('Z-section 50, 40, 30 (we-07, Austrian vocational textbook, rule of thumb v = 0.5 r + 1.5 t)', () => {
  type Inputs = { t: number; r: number; legs: number[]; turned_deg: number[] };
  const { inputs, printed_answer } = workedExample<Inputs, { v: number; developed: number }>('we-07');
  const developed = (rule: AllowanceRule): number =>
    answer(developedByDeductions(inputs.legs, inputs.turned_deg.map((turned) => bend(rule, turned, inputs.r, inputs.t).deduction)));

  it('comes out as printed when the printed deduction is entered as a measured one', () => {
    const rows = [{ turn: radians(90), radius: inputs.r, deduction: printed_answer.v }];
    expect(apart(developed({ kind: 'measured', rows }), printed_answer.developed)).toBeLessThan(ROUNDING);
  });

  it('is 0.16 mm longer by DIN 6935: the rule of thumb is that rough', () => {
    expect(apart(developed({ kind: 'din6935' }), 116.163)).toBeLessThanOrEqual(0.0005 + ROUNDING); // recomputed in the reference, three places
    expect(apart(developed({ kind: 'din6935' }), printed_answer.developed)).toBeLessThanOrEqual(0.2);
  });
});

describe('wide U in 3.18 mm sheet (we-08, school spreadsheet, rule v = 0.43 r + 1.48 s; trust fair)', () => {
  type Inputs = { s: number; r: number; legs_sum: number; turned_deg: number[] };
  const { inputs, printed_answer } = workedExample<Inputs, { v: number; developed: number; rounded: number }>('we-08');
  /** The K that the reference works out from the rule: data/din-6935.json, rules of thumb. */
  const RULE: AllowanceRule = { kind: 'fixedK', k: 0.331 };
  const deductions = (rule: AllowanceRule): number[] => inputs.turned_deg.map((turned) => bend(rule, turned, inputs.r, inputs.s).deduction);

  it('has the printed deduction and length by the K of its rule', () => {
    const ours = deductions(RULE);
    expect(ours).toHaveLength(2);
    for (const v of ours) expect(apart(v, printed_answer.v)).toBeLessThanOrEqual(0.01); // v is cut, and the rule rounds 0.4292 to 0.43
    // Only the sum of the legs is legible; how it splits does not matter to the total.
    const developed = answer(developedByDeductions([inputs.legs_sum, 0, 0], ours));
    expect(apart(developed, printed_answer.developed)).toBeLessThanOrEqual(0.02); // two of the above
    expect(Math.ceil(developed)).toBe(printed_answer.rounded);
  });

  it('deducts 7.313 by DIN 6935', () => {
    for (const v of deductions({ kind: 'din6935' })) expect(apart(v, 7.313)).toBeLessThanOrEqual(0.0005 + ROUNDING); // recomputed in the reference
  });
});
