import { describe, expect, it } from 'vitest';
import { sayInUnits } from '../../../src/core/units/sayInUnits';

describe('sentences in the unit that is read', () => {
  const sentence = 'Peg hole 1 starts 4.41 mm from bend 2. Nearer than 5.20 mm it may pull oval.';
  it('stay as they are in millimetres', () => expect(sayInUnits(sentence, { show: 'mm' })).toBe(sentence));
  it('have every figure in inches: 4.41 / 25.4 = 0.174, 5.20 / 25.4 = 0.205; counts and ringed numbers stay', () =>
    expect(sayInUnits(sentence, { show: 'inch' })).toBe('Peg hole 1 starts 0.174 in from bend 2. Nearer than 0.205 in it may pull oval.'));
  it('or in fractions', () => expect(sayInUnits('It leaves 3.175 mm.', { show: 'fraction', denominator: 16 })).toBe('It leaves 1/8 in.'));
  it('leave alone what the maker typed', () =>
    expect(sayInUnits('"12 mm + gp": there is no size called gp.', { show: 'inch' })).toBe('"12 mm + gp": there is no size called gp.'));
});
