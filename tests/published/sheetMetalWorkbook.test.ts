/** Sheet Metal Workbook, 6th edition, read. Values: data/sheet-metal-workbook.json. */
import { describe, expect, it } from 'vitest';
import { developedByDeductions, developedByStraights } from '../../src/core/bending/developedLength';
import type { AllowanceRule } from '../../src/core/bending/types';
import { answer, apart, bendInInches, INCH, ROUNDING, workedExample } from './bend';
import workbook from './data/sheet-metal-workbook.json';

const AVIATION: AllowanceRule = { kind: 'aviation' };
const { aviation_formula, neutral_line_fractions } = workbook.values;

it('no sample of the reference went missing', () => {
  expect(Object.keys(workbook.values)).toEqual(['aviation_formula', 'neutral_line_fractions']);
});

it('prints the aviation formula as we use it, from 1° to 180°', () => {
  const [, ofRadius, ofThickness] = /\(([\d.]+) R \+ ([\d.]+) T\) N/.exec(aviation_formula.formula) ?? [];
  for (const turned of [...aviation_formula.range_deg, 45, 90, 133]) {
    for (const [R, T] of [[0, 0.05], [0.032, 0.05], [0.25, 0.064]] as const) {
      expect(apart(bendInInches(AVIATION, turned, R, T).allowance, (Number(ofRadius) * R + Number(ofThickness) * T) * turned)).toBeLessThan(ROUNDING);
    }
  }
  // The reference divides 0.0078 by 0.01743, we by π/180: 0.13 per cent of 0.45, and its four places.
  expect(apart(bendInInches(AVIATION, 90, 0, 0.05).k, aviation_formula.K_equivalent)).toBeLessThanOrEqual(0.0007);
});

describe('chapter 90 Degree Bends (we-02): four legs, three bends', () => {
  type Inputs = { T: number; R: number; legs_outside: number[]; turned_deg: number[] };
  const { inputs, printed_answer } = workedExample<Inputs, { BA: number; BD: number; developed: number }>('we-02');
  const figures = inputs.turned_deg.map((turned) => bendInInches(AVIATION, turned, inputs.R, inputs.T));

  it('has the printed allowance and deduction', () => {
    expect(figures).toHaveLength(3);
    for (const { allowance, deduction } of figures) {
      expect(apart(allowance, printed_answer.BA)).toBeLessThanOrEqual(0.0005 + ROUNDING); // printed to 0.001
      expect(apart(deduction, printed_answer.BD)).toBeLessThanOrEqual(0.0005 + ROUNDING); // printed to 0.001
    }
  });

  it('has the printed developed length', () => {
    const legs = inputs.legs_outside.map((leg) => leg * INCH);
    const printed = answer(developedByDeductions(legs, inputs.turned_deg.map(() => printed_answer.BD * INCH))) / INCH;
    expect(apart(printed, printed_answer.developed)).toBeLessThan(ROUNDING); // with the deduction as printed, exactly
    const ours = answer(developedByDeductions(legs, figures.map(({ deduction }) => deduction * INCH))) / INCH;
    expect(apart(ours, printed_answer.developed)).toBeLessThanOrEqual(3 * 0.0005 + ROUNDING); // three deductions, each rounded to 0.001
  });

  it('is the same by straights', () => {
    const straights = inputs.legs_outside.map((leg, index) => (leg - (figures[index - 1]?.outsideSetback ?? 0) - (figures[index]?.outsideSetback ?? 0)) * INCH);
    const ours = answer(developedByStraights(straights, figures.map(({ allowance }) => allowance * INCH))) / INCH;
    expect(apart(ours, printed_answer.developed)).toBeLessThanOrEqual(3 * 0.0005 + ROUNDING);
  });
});

describe('neutral line of mild cold-rolled steel, 0.45 of the thickness when air-bent', () => {
  // Three rules of different origin for one metal; printed to 0.01, so half of that.
  it.each([{ rule: AVIATION }, { rule: { kind: 'handbook', metal: 'hard' } as const }])('is what $rule.kind gives at R = T', ({ rule }) => {
    expect(apart(bendInInches(rule, 90, 0.05, 0.05).k, neutral_line_fractions.mild_cold_rolled_steel_air_bending)).toBeLessThanOrEqual(0.005);
  });

  it('and 0.43 when bottomed lies between what the handbook gives for soft and for cold-rolled steel', () => {
    const [soft, coldRolled] = (['half-hard', 'hard'] as const).map((metal) => bendInInches({ kind: 'handbook', metal }, 90, 0.05, 0.05).k);
    expect(soft).toBeLessThan(neutral_line_fractions.mild_cold_rolled_steel_bottoming);
    expect(coldRolled).toBeGreaterThan(neutral_line_fractions.mild_cold_rolled_steel_bottoming);
  });
});
