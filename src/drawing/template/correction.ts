/** The printer's own error: what the check bars measured, and how far the next print is stretched for it. */
import { bad, good } from '../../core/result';
import type { Result } from '../../core/result';

/** What the maker measured with a rule or a caliper; any of them may be left out. */
export interface Measured {
  readonly xMm?: number;
  readonly yMm?: number;
  readonly xIn?: number;
  readonly yIn?: number;
}

export interface Correction {
  readonly x: number;
  readonly y: number;
}

export const NO_CORRECTION: Correction = { x: 1, y: 1 };

/** True lengths of the bars. */
export const BAR_MM = 100;
export const BAR_IN = 4;

/** A printer that is out by more than this is fitting the page, not printing it. */
const MOST_OUT = 0.05;
/** The most that corrections made one after another may come to. */
export const MOST_STRETCH = 0.07;
/** mm in 100: two bars of one direction, measured with a steel rule, agree better than this. */
const BARS_AGREE_MM = 1;

type Field = keyof Measured;

/** How many times too long this bar came out; undefined where it was not measured. */
function share(measured: Measured, field: Field): Result<number | undefined> {
  const value = measured[field];
  if (value === undefined) return good(undefined);
  const inch = field.endsWith('In');
  const [bar, unit, places] = inch ? [BAR_IN, 'in', 2] as const : [BAR_MM, 'mm', 0] as const;
  const [least, most] = [bar * (1 - MOST_OUT), bar * (1 + MOST_OUT)];
  const across = field.startsWith('x') ? 'across' : 'up';
  if (value >= least && value <= most) return good(value / bar);
  const given = Number.isFinite(value) ? `${value} ${unit}` : 'no number';
  return bad(field, `The bar ${across} is ${bar} ${unit} long and was given as ${given}. It must measure ${least.toFixed(places)} to ${most.toFixed(places)} ${unit}; beyond that, print again at 100 %, no fit to page.`);
}

function direction(measured: Measured, mm: Field, inch: Field, inForce: number, across: string): Result<number> {
  const a = share(measured, mm);
  if (!a.ok) return a;
  const b = share(measured, inch);
  if (!b.ok) return b;
  const shares = [a.value, b.value].filter((s) => s !== undefined);
  if (a.value !== undefined && b.value !== undefined && Math.abs(a.value - b.value) * BAR_MM > BARS_AGREE_MM) {
    const apart = (Math.abs(a.value - b.value) * BAR_MM).toFixed(1);
    return bad(inch, `The two bars ${across} do not agree: they differ by ${apart} mm in 100. Measure both again.`, Math.abs(a.value - b.value) * BAR_MM);
  }
  if (shares.length === 0) return good(inForce);
  const factor = inForce / (shares.reduce((sum, s) => sum + s, 0) / shares.length);
  if (factor < 1 - MOST_STRETCH || factor > 1 + MOST_STRETCH) {
    return bad(mm, `Together with the correction in force this would stretch the page ${across} to ${(factor * 100).toFixed(1)} %. Take the correction off, print the bars and measure again.`);
  }
  return good(factor);
}

/**
 * The correction that makes the next print true: each direction stretched by true length over measured length.
 * @param measured mm and inches of the bars across (x) and up (y) the page; where both units are given their mean counts
 * @param inForce the correction that the measured print was made with
 * Refuses bars out by more than 5 in 100, two bars of one direction that differ by more than 1 mm, and a total of more than 7 in 100.
 */
export function correctionFrom(measured: Measured, inForce: Correction = NO_CORRECTION): Result<Correction> {
  const x = direction(measured, 'xMm', 'xIn', inForce.x, 'across');
  if (!x.ok) return x;
  const y = direction(measured, 'yMm', 'yIn', inForce.y, 'up');
  return y.ok ? good({ x: x.value, y: y.value }) : y;
}
