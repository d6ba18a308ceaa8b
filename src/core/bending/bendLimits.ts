import { bad, good, type Result } from '../result';
import { sayDegrees, sayMm } from './say';

/** mm. Sheet-metal fittings are bent tighter than this; a curve beyond it is rolled. Common practice, no source. */
export const LARGEST_RADIUS_MM = 1000;

/** mm. Thicker plate is outside what a small workshop bends cold. Common practice, no source. */
export const LARGEST_THICKNESS_MM = 50;

/**
 * Within these a K-factor is believed. The neutral line itself lies inside the metal (0 to 1); the half thickness to either
 * side leaves room for a true radius that differs from the stated one, which measured deductions carry in their K.
 * Common practice, no source.
 */
export const LOWEST_K = -0.5;
export const HIGHEST_K = 1.5;

/**
 * Looks at the three sizes of a bend, in the order thickness, radius, turn, and names the first that cannot be worked with.
 * @param turn rad turned from flat, above 0, to π
 * @param radius mm at the inside face, 0 to 1000
 * @param thickness mm, above 0, to 50
 */
export function checkBend(turn: number, radius: number, thickness: number): Result<true> {
  if (!Number.isFinite(thickness)) return bad('thickness', 'The thickness is not a number. Give it in mm, above 0.');
  if (thickness <= 0) {
    return bad('thickness', `The thickness must be above 0; it is ${sayMm(thickness)}.`, -thickness);
  }
  if (thickness > LARGEST_THICKNESS_MM) {
    return bad(
      'thickness',
      `The thickness is ${sayMm(thickness)}. Bends are worked out for metal up to ${sayMm(LARGEST_THICKNESS_MM)}.`,
      thickness - LARGEST_THICKNESS_MM,
    );
  }
  if (!Number.isFinite(radius)) return bad('radius', 'The inside radius is not a number. Give it in mm, 0 or more.');
  if (radius < 0) return bad('radius', `The inside radius cannot be below 0; it is ${sayMm(radius)}.`, -radius);
  if (radius > LARGEST_RADIUS_MM) {
    return bad(
      'radius',
      `The inside radius is ${sayMm(radius)}. Bends are worked out for radii up to ${sayMm(LARGEST_RADIUS_MM)}.`,
      radius - LARGEST_RADIUS_MM,
    );
  }
  if (!Number.isFinite(turn)) return bad('turn', 'The angle turned is not a number. Give it above 0° and up to 180°.');
  if (turn <= 0) {
    return bad('turn', `A bend turns more than 0°; this one turns ${sayDegrees(turn)}. Leave the bend out if the metal stays flat.`, -turn);
  }
  if (turn > Math.PI) {
    return bad('turn', `A bend turns 180° at most; this one turns ${sayDegrees(turn)}. Split it into two bends.`, turn - Math.PI);
  }
  return good(true);
}
