import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spread, type Reading } from '../../src/drawing/spread';

const readings = fc.array(fc.record({ at: fc.double({ min: -50, max: 300, noNaN: true }), before: fc.double({ min: 0, max: 20, noNaN: true }), behind: fc.double({ min: 0, max: 20, noNaN: true }) }), { maxLength: 30 })
  .map((list) => list.toSorted((a, b) => a.at - b.at));

const cost = (list: readonly Reading[], places: readonly number[]): number => list.reduce((sum, reading, i) => sum + (reading.at - (places[i] ?? NaN)) ** 2, 0);
const apart = (list: readonly Reading[], places: readonly number[], gap: number): boolean =>
  list.every((reading, i) => i === 0 || (places[i] ?? NaN) - (places[i - 1] ?? NaN) >= (list[i - 1]?.behind ?? NaN) + gap + reading.before - 1e-9);

describe('spreading of readings', () => {
  it('keeps them apart, and leaves them where they belong if there is room', () => {
    fc.assert(fc.property(readings, (list) => {
      const places = spread(list, 2);
      expect(places).toHaveLength(list.length);
      expect(apart(list, places, 2)).toBe(true);
      if (apart(list, list.map((r) => r.at), 2)) places.forEach((p, i) => expect(p).toBeCloseTo(list[i]?.at ?? NaN, 9));
    }));
  });

  it('moves them as little as can be: no neighbouring arrangement is better', () => {
    fc.assert(fc.property(readings, fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 30, maxLength: 30 }), (list, nudges) => {
      const places = spread(list, 2);
      const nudged = places.map((p, i) => p + (nudges[i] ?? 0));
      if (apart(list, nudged, 2)) expect(cost(list, nudged)).toBeGreaterThanOrEqual(cost(list, places) - 1e-6);
      const shifted = places.map((p) => p + (nudges[0] ?? 0));
      expect(cost(list, shifted)).toBeGreaterThanOrEqual(cost(list, places) - 1e-6);
    }));
  });

  it('holds the one that is held', () => {
    const places = spread([{ at: 0, before: 5, behind: 5, held: true }, { at: 1, before: 5, behind: 5 }], 0);
    expect(places[0]).toBeCloseTo(0, 6);
    expect(places[1]).toBeCloseTo(10, 6);
  });
});
