/** Machinery's Handbook, 31st edition, Bending Sheet Metal, page 1421, read. Values: data/machinerys-handbook.json. */
import { describe, expect, it } from 'vitest';
import { developedByStraights } from '../../src/core/bending/developedLength';
import type { AllowanceRule } from '../../src/core/bending/types';
import { answer, apart, bend, bendInInches, INCH, ROUNDING, workedExample } from './bend';
import handbook from './data/machinerys-handbook.json';

const { formulas_90, worked_example } = handbook.values;
const METALS = ['soft', 'half-hard', 'hard'] as const; // formulas (32), (33), (34)
const ruleOf = (number: number): AllowanceRule => ({ kind: 'handbook', metal: METALS[number - 32] ?? 'soft' });

it('no sample of the reference went missing', () => {
  expect(formulas_90.map(({ number }) => number)).toEqual([32, 33, 34]);
  expect(worked_example.bends).toHaveLength(2);
});

describe.each(formulas_90)('formula ($number), $material: $formula', ({ number, formula, a, K_equivalent }) => {
  const [, ofThickness, ofRadius] = /L = ([\d.]+) T \+ ([\d.]+) R/.exec(formula) ?? [];

  it('gives the allowance of a right angle exactly', () => {
    for (const [R, T] of [[0, 1], [1, 1], [2.5, 1.6], [30, 0.5]] as const) {
      expect(apart(bend(ruleOf(number), 90, R, T).allowance, Number(ofThickness) * T + Number(ofRadius) * R)).toBeLessThan(ROUNDING);
    }
    expect(Number(ofThickness)).toBe(a);
  });

  it('gives other angles in proportion to the angle turned', () => {
    const right = bend(ruleOf(number), 90, 2, 1).allowance;
    for (const turned of [1, 30, 60, 120, 180]) {
      expect(apart(bend(ruleOf(number), turned, 2, 1).allowance, (right * turned) / 90)).toBeLessThan(ROUNDING);
    }
  });

  it('means a K of its own in a sharp bend', () => {
    // The reference divides a by 1.57, we by π/2: 0.05 per cent of 0.45, and its four places.
    expect(apart(bend(ruleOf(number), 90, 0, 1).k, K_equivalent)).toBeLessThanOrEqual(0.0003);
  });
});

describe('worked example (we-04): hook in soft steel, a half turn and 60°', () => {
  const SOFT_STEEL = ruleOf(33);
  type Inputs = { T: number; straights_total: number; bends: { R: number; turned_deg: number }[] };
  const { inputs, printed_answer } = workedExample<Inputs, { bends: number[]; developed: number }>('we-04');
  const allowances = inputs.bends.map(({ R, turned_deg }) => bendInInches(SOFT_STEEL, turned_deg, R, inputs.T).allowance);

  it('is the same example in both files', () => {
    expect(inputs.bends).toEqual(worked_example.bends.map(({ R, turned_deg }) => ({ R, turned_deg })));
    expect(printed_answer.bends).toEqual(worked_example.bends.map(({ L_printed }) => L_printed));
    expect([inputs.T, inputs.straights_total, printed_answer.developed]).toEqual([worked_example.T, worked_example.straight_total, worked_example.total_printed]);
  });

  it('gives both bends as printed', () => {
    for (const [index, printed] of printed_answer.bends.entries()) {
      expect(apart(allowances[index] ?? NaN, printed)).toBeLessThanOrEqual(0.0005 + ROUNDING); // 1.3375 rounded up, 0.7075 cut
    }
  });

  it('gives the developed length as printed', () => {
    // The source prints the sum of the three straights only; how it splits does not matter to the total.
    const straights = [inputs.straights_total, 0, 0].map((length) => length * INCH);
    const developed = answer(developedByStraights(straights, allowances.map((allowance) => allowance * INCH))) / INCH;
    expect(apart(developed, printed_answer.developed)).toBeLessThanOrEqual(0.0005 + ROUNDING); // printed to 0.001
  });
});
