import { describe, expect, it } from 'vitest';
import { suggestName } from '../../../src/core/units/suggestName';

describe('the nearest name', () => {
  const known = ['gap', 'pitch', 'thickness', 'radius', 'strap_width'];

  it.each([
    ['gp', 'gap'], ['gpa', 'gap'], ['gaap', 'gap'], ['GAP', 'gap'], ['ptich', 'pitch'], ['thikness', 'thickness'], ['thicknes', 'thickness'], ['strapwidth', 'strap_width'], ['tihckenss', 'thickness'],
    ['lever', null], ['x', null], ['gxx', null], ['', null],
  ])('%s: %s', (typed, near) => {
    expect(suggestName(typed, known)).toBe(near);
  });

  it('does not hang on the order of the list', () => {
    expect(suggestName('gab', ['gaz', 'gap', 'gay'])).toBe('gap');
    expect(suggestName('gab', ['gay', 'gap', 'gaz'])).toBe('gap');
  });

  it('another single letter is not near', () => {
    expect(suggestName('x', ['y'])).toBeNull();
  });

  it('an empty list has nothing near', () => {
    expect(suggestName('gap', [])).toBeNull();
  });
});
