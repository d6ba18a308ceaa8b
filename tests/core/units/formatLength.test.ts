import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evaluate } from '../../../src/core/units/evaluate';
import { formatAngle, formatLength, unitWord, type LengthStyle } from '../../../src/core/units/formatLength';
import { INCH_JOB, MM_JOB } from './entries';

// 1 in = 25.4 mm exactly (1959); the figures below are worked out by hand.
describe('lengths as text', () => {
  it.each<readonly [number, LengthStyle, string]>([
    [12.5, { show: 'mm' }, '12.50'],
    [12.5, { show: 'mm', places: 0 }, '13'],
    [12.3456, { show: 'mm', places: 3 }, '12.346'],
    [-0.001, { show: 'mm' }, '0.00'],
    [-0.2, { show: 'mm', places: 0 }, '0'],
    [-3, { show: 'mm', places: 1 }, '-3.0'],
    [12.5, { show: 'inch' }, '0.492'],
    [25.4, { show: 'inch', places: 1 }, '1.0'],
    [34.925, { show: 'fraction' }, '1 3/8'],
    [9.525, { show: 'fraction', denominator: 8 }, '3/8'],
    [12.7, { show: 'fraction', denominator: 128 }, '1/2'],
    [25.4, { show: 'fraction' }, '1'],
    [0, { show: 'fraction' }, '0'],
    [0.01, { show: 'fraction' }, '~0'],
    [-0.01, { show: 'fraction' }, '~0'],
    [35, { show: 'fraction' }, '~1 3/8'],
    [35, { show: 'fraction', denominator: 2 }, '~1 1/2'],
    [25.3, { show: 'fraction', denominator: 16 }, '~1'],
    [-34.925, { show: 'fraction' }, '-1 3/8'],
    [-35, { show: 'fraction' }, '~-1 3/8'],
    [Number.NaN, { show: 'mm' }, '–'],
    [Number.POSITIVE_INFINITY, { show: 'fraction' }, '–'],
    [12.5, { show: 'mm', places: Number.NaN }, '13'],
    [12.5, { show: 'mm', places: 99 }, '12.500000000'],
  ])('%f mm as %o is %s', (mm, style, text) => {
    expect(formatLength(mm, style)).toBe(text);
  });

  it('has the unit to write after it', () => {
    expect([unitWord({ show: 'mm' }), unitWord({ show: 'inch' }), unitWord({ show: 'fraction' })]).toEqual(['mm', 'in', 'in']);
  });

  const lengths = fc.double({ min: -5000, max: 5000, noNaN: true });

  it('a fraction read again is within half a step, and without ~ it is the length', () => {
    let rounded = 0;
    let exact = 0;
    const onAStep = fc.integer({ min: -20_000, max: 20_000 }).map((steps) => (steps * 25.4) / 128);
    fc.assert(
      fc.property(fc.oneof(lengths, onAStep), fc.constantFrom(2, 4, 8, 16, 32, 64, 128 as const), (mm, denominator) => {
        const text = formatLength(mm, { show: 'fraction', denominator });
        const again = evaluate(text.replace('~', ''), 'length', INCH_JOB);
        if (!again.ok) throw new Error(again.problem.says);
        const out = Math.abs(again.value - mm);
        if (text.startsWith('~')) rounded += 1;
        else exact += 1;
        expect(out).toBeLessThanOrEqual(text.startsWith('~') ? 12.7 / denominator + 1e-9 : 1e-6);
        // Lowest terms: the figure over the line is odd.
        expect(Number(/(\d+)\//.exec(text)?.[1] ?? '1') % 2).toBe(1);
      }),
      { numRuns: 1000 },
    );
    expect(rounded).toBeGreaterThan(100);
    expect(exact).toBeGreaterThan(100);
  });

  it('decimals read again are within half of the last place', () => {
    fc.assert(
      fc.property(lengths, fc.integer({ min: 0, max: 6 }), (mm, places) => {
        const metric = evaluate(formatLength(mm, { show: 'mm', places }), 'length', MM_JOB);
        const inches = evaluate(formatLength(mm, { show: 'inch', places }), 'length', INCH_JOB);
        const step = 10 ** -places;
        expect(metric.ok && Math.abs(metric.value - mm) <= step / 2 + 1e-9).toBe(true);
        expect(inches.ok && Math.abs(inches.value - mm) <= (25.4 * step) / 2 + 1e-9).toBe(true);
      }),
    );
  });
});

describe('angles as text', () => {
  it.each([[Math.PI / 4, '45°'], [(67.5 * Math.PI) / 180, '67.5°'], [0, '0°'], [-0.00001, '0°'], [-Math.PI / 2, '-90°'], [Math.PI / 1.8, '100°'], [1, '57.3°'], [Number.NaN, '–']])('%f rad is %s', (rad, text) => {
    expect(formatAngle(rad)).toBe(text);
  });

  it('takes the places asked for', () => {
    expect([formatAngle(1, 0), formatAngle(1, 4), formatAngle(Math.PI / 18, 0)]).toEqual(['57°', '57.2958°', '10°']);
  });

  it('is read again as the same angle', () => {
    fc.assert(
      fc.property(fc.integer({ min: -18_000, max: 18_000 }), (hundredths) => {
        const rad = ((hundredths / 100) * Math.PI) / 180;
        const again = evaluate(formatAngle(rad), 'angle', MM_JOB);
        expect(again.ok && Math.abs(again.value - rad) < 1e-12).toBe(true);
      }),
    );
  });
});
