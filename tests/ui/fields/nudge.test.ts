import { describe, expect, it } from 'vitest';
import { plainNumber } from '../../../src/core/units/plainNumber';
import { nudged, nudgeStep, plainText } from '../../../src/ui/fields/nudge';

describe('stepping an entry with the arrow keys', () => {
  it.each([
    ['26', 0.1, '26.1'],
    ['26.00', 0.1, '26.10'],
    ['0.3', -0.1, '0.2'],
    ['0.1', -0.1, '0.0'],
    ['-0.05', 0.1, '0.05'],
    ['7,5', 0.01, '7.51'],
    ['45', 1, '46'],
    ['.5', -1, '-0.5'],
  ])('%s by %f is %s', (text, step, next) => expect(nudged(text, step)).toBe(next));

  it.each(['6*pitch + 22', '3/8in', '', '12 mm', '1.2.3', '-'])('leaves "%s" alone', (text) => expect(nudged(text, 0.1)).toBeUndefined());

  it('goes by 0.1, 1 or 0.01, and by whole numbers in a count', () => {
    expect([nudgeStep('length', { shift: false, alt: false }), nudgeStep('length', { shift: true, alt: false }), nudgeStep('angle', { shift: false, alt: true }), nudgeStep('count', { shift: false, alt: true })]).toEqual([0.1, 1, 0.01, 1]);
  });

  it('reads plain numbers only', () => {
    expect(['12', '-3.5', '−2', '+4', '6.', 'x', '1e3'].map(plainNumber)).toEqual([12, -3.5, -2, 4, 6, undefined, undefined]);
  });

  it('writes no minus nought and no empty decimals', () => {
    expect([plainText(-0.0001, 2), plainText(12.5, 3), plainText(12, 3), plainText(12, 3, 2)]).toEqual(['0', '12.5', '12', '12.00']);
  });
});
