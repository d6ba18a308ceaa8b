/** Two US Navy training manuals: Aviation Structural Mechanic and NAVEDTRA 14119, both read. Values: data/navedtra.json. */
import { expect, it } from 'vitest';
import { apart, bendInInches, ROUNDING, workedExample } from './bend';
import navy from './data/navedtra.json';

const { aviation_formula, mid_thickness_rule } = navy.values;

it('no sample of the reference went missing', () => {
  expect(Object.keys(navy.values)).toEqual(['aviation_formula', 'mid_thickness_rule']);
  expect(navy.sources).toHaveLength(2);
});

/**
 * The manual prints 0.0173 R where the workbook prints 0.01743 R. That is a disagreement between sources, not a rounding: we keep
 * 0.01743, the nearer to π/180. At R = 1 inch a right angle differs by 0.0117 inch.
 */
it('differs from the manual\'s share of the radius by its missing figures, and lies nearer to π/180', () => {
  const perDegree = (radius: number): number => bendInInches({ kind: 'aviation' }, 1, radius, 0.04).allowance;
  const ours = perDegree(1.5) - perDegree(0.5);
  expect(apart(ours, aviation_formula.constant_of_R)).toBeLessThanOrEqual(0.00013 + ROUNDING);
  expect(apart(ours, aviation_formula.constant_of_R)).toBeGreaterThan(0.0001);
  expect(apart(ours, Math.PI / 180)).toBeLessThan(apart(aviation_formula.constant_of_R, Math.PI / 180));
});

it('bends the U-bolt of NAVEDTRA 14119, page 13-43 (we-05), along its middle', () => {
  const { inputs, printed_answer } = workedExample<{ T: number; R: number; turned_deg: number }, { BA: number }>('we-05');
  const { allowance } = bendInInches({ kind: 'fixedK', k: mid_thickness_rule.K }, inputs.turned_deg, inputs.R, inputs.T);
  expect(apart(allowance, printed_answer.BA)).toBeLessThanOrEqual(0.003); // printed with 3.14 for π
});
