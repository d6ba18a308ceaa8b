import type { Basis } from '../part/types';
import { unreachable } from '../result';

/**
 * How far beyond the tangent line a dimension reaches at a bent end, mm. Straight length = given length − setback.
 *
 * Up to 90° a dimension runs to the corner where the two faces (or centre lines) would meet: tan(θ/2) times the radius of that
 * face. Above 90° that corner runs away, to infinity at 180°, so the dimension is taken to the tangent of the curve that is
 * square to the leg: the radius itself. At 90° the two agree.
 *
 * Source: corner to 90°, FAA-H-8083-31 chapter 4 and AC 43.13-1B table 4-7 (setback = tan(θ/2) (R + T)); tangent above 90°,
 * DIN 6935 as reprinted in Tabellenbuch Metall. That the inside face and the centre line follow suit is our own rule.
 *
 * @param basis to which face the dimension runs; `straight` is the tangent line itself, so 0
 * @param turn θ, rad turned from flat
 * @param radius mm at the inside face
 * @param thickness mm
 * The sizes must have passed `checkBend`; within its limits the answer is finite and not negative.
 */
export function setback(basis: Basis, turn: number, radius: number, thickness: number): number {
  const reach = turn <= Math.PI / 2 ? Math.tan(turn / 2) : 1;
  switch (basis) {
    case 'outside':
      return (radius + thickness) * reach;
    case 'inside':
      return radius * reach;
    case 'centre line':
      return (radius + thickness / 2) * reach;
    case 'straight':
      return 0;
    default:
      return unreachable(basis);
  }
}
