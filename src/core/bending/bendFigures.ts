import { good, type Result } from '../result';
import { bendAllowance } from './bendAllowance';
import { kFactor } from './kFactor';
import { setback } from './setback';
import type { AllowanceRule, BendFigures } from './types';

/**
 * All figures of one bend: K by the rule, allowance, setbacks, deduction. mm and rad.
 * @param turn rad turned from flat, above 0, to π
 * @param radius mm at the inside face, 0 to 1000
 * @param thickness mm, above 0, to 50
 * Refuses what `kFactor` refuses, naming the same fields.
 *
 * The deduction is negative where a wide bend turned far takes up more than its two setbacks cover: that is right, and happens
 * only above 2 rad (DIN 6935 says the same: its sign changes at an opening angle of 65.41°).
 */
export function bendFigures(rule: AllowanceRule, turn: number, radius: number, thickness: number): Result<BendFigures> {
  const k = kFactor(rule, turn, radius, thickness);
  if (!k.ok) return k;
  const allowance = bendAllowance(turn, radius, thickness, k.value);
  if (!allowance.ok) return allowance;
  const outsideSetback = setback('outside', turn, radius, thickness);
  return good({
    turn,
    radius,
    k: k.value,
    allowance: allowance.value,
    outsideSetback,
    insideSetback: setback('inside', turn, radius, thickness),
    centreLineSetback: setback('centre line', turn, radius, thickness),
    deduction: 2 * outsideSetback - allowance.value,
  });
}
