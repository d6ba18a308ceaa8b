import { bad, good, type Result } from '../result';
import { sayMm } from './say';

/**
 * Developed length of a strip, mm, from the straights between the tangent lines: Σ straight + Σ bend allowance.
 * @param straights mm, one for each leg, from 0
 * @param allowances mm, one for each bend, so one fewer than the legs, from 0
 * Refuses a list of the wrong length, a figure that is not a number and one below 0, naming it (`straights.2`).
 * Source: FAA-H-8083-31 chapter 4, total developed width = sum of flats + sum of bend allowances.
 */
export function developedByStraights(straights: readonly number[], allowances: readonly number[]): Result<number> {
  const counted = oneBendBetweenLegs(straights.length, 'straights', allowances.length, 'allowances');
  if (!counted.ok) return counted;
  const legs = sum(straights, 'straights', 'straight length of leg', 0);
  if (!legs.ok) return legs;
  const bends = sum(allowances, 'allowances', 'allowance of bend', 0);
  if (!bends.ok) return bends;
  return blank(legs.value + bends.value, 'straights');
}

/**
 * Developed length of a strip, mm, from the outside lengths: Σ outside length − Σ bend deduction.
 * @param outsides mm, one for each leg, to `setback('outside', …)` at each bent end, from 0
 * @param deductions mm, one for each bend, so one fewer than the legs; may be below 0 (see `bendFigures`)
 * Refuses a list of the wrong length, a figure that is not a number, an outside length below 0, and deductions that leave nothing.
 * Source: follows from the definitions of setback and deduction; Sheet Metal Workbook, 90 Degree Bends, works by it.
 */
export function developedByDeductions(outsides: readonly number[], deductions: readonly number[]): Result<number> {
  const counted = oneBendBetweenLegs(outsides.length, 'outsides', deductions.length, 'deductions');
  if (!counted.ok) return counted;
  const legs = sum(outsides, 'outsides', 'outside length of leg', 0);
  if (!legs.ok) return legs;
  const bends = sum(deductions, 'deductions', 'deduction of bend', -Infinity);
  if (!bends.ok) return bends;
  const length = legs.value - bends.value;
  if (Number.isFinite(length) && length < 0) {
    return bad('deductions', `The bends deduct ${sayMm(-length)} more than the legs are long. Lengthen the legs or use smaller radii.`, -length);
  }
  return blank(length, 'outsides');
}

function oneBendBetweenLegs(legs: number, legsField: string, bends: number, bendsField: string): Result<true> {
  if (legs === 0) return bad(legsField, 'A strip has at least one leg.');
  if (bends !== legs - 1) return bad(bendsField, `A strip of ${legs} legs has ${legs - 1} bends; ${bends} are given.`, Math.abs(bends - legs + 1));
  return good(true);
}

function sum(lengths: readonly number[], field: string, called: string, least: number): Result<number> {
  let total = 0;
  for (const [index, length] of lengths.entries()) {
    if (!Number.isFinite(length)) return bad(`${field}.${index}`, `The ${called} ${index + 1} is not a number. Give it in mm.`);
    if (length < least) return bad(`${field}.${index}`, `The ${called} ${index + 1} is ${sayMm(-length)} below 0.`, -length);
    total += length;
  }
  return good(total);
}

/** Only lengths that no sheet has, near the largest number there is, can add up to more than a number. */
const blank = (length: number, field: string): Result<number> =>
  Number.isFinite(length) ? good(length) : bad(field, 'The lengths add up to more than can be counted. Give them in mm.');
