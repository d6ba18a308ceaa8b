import { SAME_LENGTH_MM } from '../geometry/tolerance';
import { bad, good, type Result } from '../result';
import { checkBend, HIGHEST_K, LOWEST_K } from './bendLimits';
import { sayFigure, sayMm } from './say';

/**
 * Length along the neutral line of one bend, mm on the blank: θ (r + K t).
 * @param turn θ, rad turned from flat, above 0, to π. The included angle on a drawing is π − θ.
 * @param radius r, mm at the inside face, 0 to 1000
 * @param thickness t, mm, above 0, to 50
 * @param k depth of the neutral line from the inside face as a share of t, −0.5 to 1.5 (see `bendLimits.ts`)
 * Refuses the first of these that is out of range, and a K so low that the bend would take up less than nothing.
 * Source: definition. The rules that supply K cite their own in `kFactor.ts`.
 */
export function bendAllowance(turn: number, radius: number, thickness: number, k: number): Result<number> {
  const fit = checkBend(turn, radius, thickness);
  if (!fit.ok) return fit;
  if (!(k >= LOWEST_K && k <= HIGHEST_K)) {
    return bad('k', `K must lie between ${LOWEST_K} and ${HIGHEST_K}; ${Number.isFinite(k) ? `it is ${sayFigure(k)}` : 'this is not a number'}.`);
  }
  const allowance = turn * (radius + k * thickness);
  if (allowance < -SAME_LENGTH_MM) {
    return bad(
      'k',
      `With K ${sayFigure(k)} this bend would take up ${sayMm(-allowance)} less than nothing. K must be ${sayFigure(-radius / thickness)} or more here.`,
      -allowance,
    );
  }
  // A measured bend that takes up nothing comes back as 0 give or take a rounding.
  return good(Math.max(0, allowance));
}
