/** AC 43.13-1B, table 4-7, K-chart for setback, read. Values: data/ac-43-13-1b.json. Its K is tan(half the angle turned), not our K. */
import { describe, expect, it } from 'vitest';
import { setback } from '../../src/core/bending/setback';
import { apart, radians, ROUNDING } from './bend';
import chart from './data/ac-43-13-1b.json';

const { entries, misprints } = chart.values;
const upTo90 = entries.filter(({ deg }) => deg <= 90);
const above90 = entries.filter(({ deg }) => deg > 90);
const [RADIUS, THICKNESS] = [3.2, 1.6];

/** One unit in the last printed place: figures are cut or rounded, four places below 1, three below 10, two above. */
const lastPlace = (K: number): number => (K < 1 ? 0.0001 : K < 10 ? 0.001 : 0.01) + ROUNDING;

/** What the chart tabulates, by the program: setback per unit of R + T. */
const share = (degrees: number): number => setback('outside', radians(degrees), RADIUS, THICKNESS) / (RADIUS + THICKNESS);

it('no sample of the reference went missing', () => {
  expect(upTo90).toHaveLength(60);
  expect(above90).toHaveLength(55);
  expect(misprints.entries.map(({ deg }) => deg)).toEqual([86, 159, 176]); // kept but not tested against: see its note
});

describe('setback up to 90°', () => {
  it.each(upTo90)('$deg°: $K', ({ deg, K, tan_half }) => {
    expect(apart(share(deg), K)).toBeLessThanOrEqual(lastPlace(K));
    expect(apart(share(deg), tan_half)).toBeLessThanOrEqual(0.000005 + ROUNDING); // computed apart from the program, five places
  });
});

/**
 * Above 90° the chart still runs to the corner of the outside faces; we dimension to the tangent square to the leg, as DIN 6935 does,
 * so our setback is R + T there and a mould line from this chart is not an outside length of ours. The chart's corner can
 * be had from our setback of half the bend: with u = tan(θ/4) it stands at 2u/(1 − u²).
 */
describe('setback above 90°', () => {
  it.each(above90)('$deg°: R + T here, $K (R + T) to the corner', ({ deg, K, tan_half }) => {
    expect(share(deg)).toBe(1);
    const half = share(deg / 2);
    const corner = (2 * half) / (1 - half ** 2);
    expect(apart(corner, K)).toBeLessThanOrEqual(lastPlace(K));
    expect(apart(corner, tan_half)).toBeLessThanOrEqual(0.000005 + ROUNDING);
  });
});
