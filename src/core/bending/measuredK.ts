import { SAME_LENGTH_MM } from '../geometry/tolerance';
import { bad, good, type Result } from '../result';
import { checkBend, HIGHEST_K, LOWEST_K } from './bendLimits';
import { sayDegrees, sayMm } from './say';
import { setback } from './setback';
import type { MeasuredDeduction } from './types';

/** Two measured angles are one, rad: 0.00006°, what is left over when degrees are typed with four places. */
export const SAME_TURN = 1e-6;

/** Two measured radii, or two deductions of one bend, are the same, mm: far below anything that can be measured. */
export const SAME_MEASURE_MM = 1e-6;

/** One row as the K it stands for. `row` counts from 0, as in the rule. */
interface MeasuredPoint {
  readonly row: number;
  readonly turn: number;
  readonly radius: number;
  readonly deduction: number;
  readonly k: number;
}

/** All rows measured at one radius, in order of angle, each angle once. Never empty. */
interface RadiusGroup {
  readonly radius: number;
  readonly points: readonly [MeasuredPoint, ...MeasuredPoint[]];
}

/**
 * K from a table of measured deductions: linear over the angle at each of the two neighbouring radii, then linear over the radius.
 * A measured bend gets its own deduction back, and at one angle the deduction is linear in the radius.
 *
 * K is interpolated over the angle, not the deduction, because the deduction 2 (r + t) tan(θ/2) − θ (r + K t) bends upwards with
 * tan(θ/2) and has a corner at 90°. For r = t = 1 mm and K = 0.4 a straight line between the deductions at 30° and 90° gives 1.07 mm
 * at 60° where the true one is 0.84 mm. K hardly changes with the angle, so a straight line through it is close.
 * Source: none; our own way to interpolate, pinned by tests.
 *
 * Refuses an empty table, a row that cannot be right for this thickness, rows that contradict each other, and any bend outside
 * what was measured. Where one radius or one angle alone was measured, only that one is answered (to SAME_MEASURE_MM, SAME_TURN).
 * Sizes must have passed `checkBend`.
 */
export function measuredK(rows: readonly MeasuredDeduction[], turn: number, radius: number, thickness: number): Result<number> {
  const groups = groupByRadius(rows, thickness);
  if (!groups.ok) return groups;
  const around = neighbours(groups.value, (group) => group.radius, radius, SAME_MEASURE_MM);
  if (around === undefined) return radiusNotMeasured(groups.value, radius);
  const below = overAngle(around.below, turn);
  if (!below.ok) return below;
  const above = overAngle(around.above, turn);
  if (!above.ok) return above;
  return good(between(below.value, above.value, around.share));
}

function overAngle(group: RadiusGroup, turn: number): Result<number> {
  const around = neighbours(group.points, (point) => point.turn, turn, SAME_TURN);
  return around === undefined ? turnNotMeasured(group, turn) : good(between(around.below.k, around.above.k, around.share));
}

/** `share` 0 gives `from` itself and 1 gives `to` itself, without rounding. */
const between = (from: number, to: number, share: number): number => from * (1 - share) + to * share;

interface Neighbours<Item> {
  readonly below: Item;
  readonly above: Item;
  /** How far the wanted size lies from `below` to `above`, 0 to 1. */
  readonly share: number;
}

/** The items on either side of `wanted` in a list sorted by `size`, twice the same where one is met, or nothing outside the list. */
function neighbours<Item>(items: readonly Item[], size: (item: Item) => number, wanted: number, same: number): Neighbours<Item> | undefined {
  let below: Item | undefined;
  for (const item of items) {
    if (Math.abs(size(item) - wanted) <= same) return { below: item, above: item, share: 0 };
    if (size(item) > wanted) {
      return below === undefined ? undefined : { below, above: item, share: (wanted - size(below)) / (size(item) - size(below)) };
    }
    below = item;
  }
  return undefined;
}

function groupByRadius(rows: readonly MeasuredDeduction[], thickness: number): Result<readonly [RadiusGroup, ...RadiusGroup[]]> {
  const points: MeasuredPoint[] = [];
  for (const [row, measured] of rows.entries()) {
    const point = pointOf(measured, row, thickness);
    if (!point.ok) return point;
    points.push(point.value);
  }
  points.sort((a, b) => a.radius - b.radius);
  const byRadius: [MeasuredPoint, ...MeasuredPoint[]][] = [];
  for (const point of points) {
    const last = byRadius.at(-1);
    if (last !== undefined && point.radius - last[0].radius <= SAME_MEASURE_MM) last.push(point);
    else byRadius.push([point]);
  }
  const groups: RadiusGroup[] = [];
  for (const atRadius of byRadius) {
    const once = eachAngleOnce(atRadius);
    if (!once.ok) return once;
    groups.push({ radius: atRadius[0].radius, points: once.value });
  }
  const [first, ...others] = groups;
  if (first === undefined) {
    return bad('rule.rows', 'The table of measured bends is empty. Bend and measure at least one test strip, or use another rule.');
  }
  return good([first, ...others]);
}

function eachAngleOnce(atRadius: readonly [MeasuredPoint, ...MeasuredPoint[]]): Result<readonly [MeasuredPoint, ...MeasuredPoint[]]> {
  const inOrder = atRadius.toSorted((a, b) => a.turn - b.turn || a.row - b.row);
  let last = inOrder[0] ?? atRadius[0];
  const kept: [MeasuredPoint, ...MeasuredPoint[]] = [last];
  for (const point of inOrder.slice(1)) {
    if (point.turn - last.turn > SAME_TURN) {
      kept.push(point);
      last = point;
      continue;
    }
    const apart = Math.abs(point.deduction - last.deduction);
    if (apart > SAME_MEASURE_MM) {
      return bad(
        `rule.rows.${Math.max(point.row, last.row)}.deduction`,
        `Rows ${Math.min(point.row, last.row) + 1} and ${Math.max(point.row, last.row) + 1} are the same bend, ${sayDegrees(last.turn)} at ${sayMm(last.radius)}, but one deducts ${sayMm(last.deduction)} and the other ${sayMm(point.deduction)}. Keep one, or their mean.`,
        apart,
      );
    }
  }
  return good(kept);
}

/** The K of one row, from BD = 2 So − BA at its own angle and radius and the stock's thickness. */
function pointOf(measured: MeasuredDeduction, row: number, thickness: number): Result<MeasuredPoint> {
  const { turn, radius, deduction } = measured;
  const fit = checkBend(turn, radius, thickness);
  if (!fit.ok) {
    const { field, says, amount } = fit.problem;
    return bad(`rule.rows.${row}.${field}`, `Row ${row + 1} of the measured bends: ${says}`, amount);
  }
  if (!Number.isFinite(deduction)) {
    return bad(`rule.rows.${row}.deduction`, `Row ${row + 1} of the measured bends: the deduction is not a number. Give it in mm.`);
  }
  const bothSetbacks = 2 * setback('outside', turn, radius, thickness);
  const allowance = bothSetbacks - deduction;
  const k = (allowance / turn - radius) / thickness;
  if (allowance >= -SAME_LENGTH_MM && k >= LOWEST_K && k <= HIGHEST_K) return good({ row, turn, radius, deduction, k });
  const least = bothSetbacks - turn * (radius + HIGHEST_K * thickness);
  const most = bothSetbacks - turn * Math.max(0, radius + LOWEST_K * thickness);
  return bad(
    `rule.rows.${row}.deduction`,
    `Row ${row + 1} of the measured bends deducts ${sayMm(deduction)} for ${sayDegrees(turn)} at ${sayMm(radius)} in ${sayMm(thickness)} metal, which puts the neutral line far outside the metal. Between ${sayMm(least)} and ${sayMm(most)} would be believable: measure it again, and check that it belongs to this thickness.`,
    deduction > most ? deduction - most : least - deduction,
  );
}

function radiusNotMeasured(groups: readonly [RadiusGroup, ...RadiusGroup[]], radius: number): Result<never> {
  const least = groups[0].radius;
  const most = groups.at(-1)?.radius ?? least;
  const measured = groups.length === 1 ? `only at ${sayMm(least)}` : `from ${sayMm(least)} to ${sayMm(most)}`;
  return bad(
    'radius',
    `The inside radius wanted is ${sayMm(radius)}; bends were measured ${measured}. Nothing is guessed beyond what was measured: bend a test strip at this radius, or use another rule.`,
    radius < least ? least - radius : radius - most,
  );
}

function turnNotMeasured(group: RadiusGroup, turn: number): Result<never> {
  const least = group.points[0].turn;
  const most = group.points.at(-1)?.turn ?? least;
  const measured = group.points.length === 1 ? `only ${sayDegrees(least)} was measured` : `${sayDegrees(least)} to ${sayDegrees(most)} were measured`;
  return bad(
    'turn',
    `The angle wanted is ${sayDegrees(turn)}; at ${sayMm(group.radius)} inside radius ${measured}. Nothing is guessed beyond what was measured: bend a test strip to this angle, or use another rule.`,
    turn < least ? least - turn : turn - most,
  );
}
