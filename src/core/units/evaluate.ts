import { good, unreachable, type Result } from '../result';
import { parse, type Expression } from './parse';
import { isAngle, isLength, isPlain, kindOf, plainAsAngle, plainAsLength, reckon, type Amount, type EntryContext, type SizeValue } from './reckon';
import { refuse, shownNumber } from './refuse';
import { RAD_PER_DEGREE } from './unitWords';

export type { EntryContext, SizeValue } from './reckon';

/** What the field wants. */
export type Wanted = 'length' | 'angle' | 'number' | 'count';

/** The most a length can be, mm: a kilometre is far beyond any sheet, so a bigger figure is a slip of the hand. */
export const MOST_MM = 1e6;
/** The most an angle can be: a hundred turns. */
export const MOST_DEGREES = 36_000;
/** The most a plain number can be. */
export const MOST_NUMBER = 1e9;
/** The most a count can be. */
export const MOST_COUNT = 1e6;

/** A count worked out by division may miss its whole number by rounding; nearer than this it is that number. */
const WHOLE_WITHIN = 1e-9;

const EMPTY: Readonly<Record<Wanted | 'size', string>> = {
  length: 'Type a length, such as 12.5, 3/8in or gap + 2*thickness.',
  angle: 'Type an angle, such as 45, 22.5° or 0.5 rad.',
  number: 'Type a number, such as 0.44 or 1/3.',
  count: 'Type a whole number, such as 6.',
  size: 'Type a size, such as 12.5, 3/8in or 2*thickness.',
};

/**
 * The value of an entry as people type it; how it is read is set out at `parse`, how it is worked out at `reckon`.
 *
 * A whole entry that comes out as a plain number is taken in the plain unit where a length is wanted and in degrees where an
 * angle is wanted. Limits: lengths to 1 km, angles to 36 000°, numbers to 1e9, counts to 1e6.
 * @returns mm, rad, a plain number, or a whole number of 0 or more; or one plain sentence. Never NaN, never Infinity, never −0.
 * `problem.field` is '': the caller knows the field.
 */
export function evaluate(text: string, wanted: Wanted, context: EntryContext): Result<number> {
  if (text.trim() === '') return { ok: false, problem: { field: '', says: EMPTY[wanted] } };
  const read = parse(text, (name) => context.sizes.has(name));
  if (!read.ok) return read;
  const worked = reckon(read.value, text, context, context.sizes.keys());
  return worked.ok ? fit(worked.value.amount, text, wanted, context) : refuse(text, worked.problem.says);
}

/**
 * The value of a named size, which may be a length, an angle or a plain number, whichever its text comes out as.
 * A plain number stays one and is taken in the plain unit where it is used.
 * @param known every name there is, for "Did you mean"
 */
export function evaluateSize(text: string, expression: Expression, context: EntryContext, known: Iterable<string>): Result<SizeValue> {
  const worked = reckon(expression, text, context, known);
  if (!worked.ok) return refuse(text, worked.problem.says);
  const { amount } = worked.value;
  const dimension = isLength(amount) ? 'length' : isAngle(amount) ? 'angle' : isPlain(amount) ? 'number' : null;
  if (dimension === null) return refuse(text, `this comes out as ${kindOf(amount)}. A size is a length, an angle or a plain number.`);
  const fitted = fit(amount, text, dimension, context);
  return fitted.ok ? good({ value: fitted.value, dimension }) : fitted;
}

/** The sentence for an entry with nothing in it. */
export const emptyEntry = (wanted: Wanted | 'size'): string => EMPTY[wanted];

/** An amount as the field wants it, or why it does not fit. */
function fit(amount: Amount, text: string, wanted: Wanted, context: EntryContext): Result<number> {
  switch (wanted) {
    case 'length': {
      const length = isPlain(amount) ? plainAsLength(amount, context.plain) : amount;
      if (!isLength(length)) return refuse(text, `this comes out as ${kindOf(amount)} and a length is wanted, such as 12.5 or 3/8in.`);
      return within(length.value, MOST_MM, text, `this comes to ${shownNumber(length.value)} mm. The most is ${MOST_MM} mm (1 km) either way.`);
    }
    case 'angle': {
      const angle = isPlain(amount) ? plainAsAngle(amount) : amount;
      if (!isAngle(angle)) return refuse(text, `this comes out as ${kindOf(amount)} and an angle is wanted, such as 45 or 22.5°.`);
      const degrees = angle.value / RAD_PER_DEGREE;
      return within(angle.value, MOST_DEGREES * RAD_PER_DEGREE, text, `this comes to ${shownNumber(degrees)}°. The most is ${MOST_DEGREES}° either way.`);
    }
    case 'number':
      if (!isPlain(amount)) return refuse(text, `this comes out as ${kindOf(amount)} and a plain number is wanted, such as 0.44.`);
      return within(amount.value, MOST_NUMBER, text, `this comes to ${shownNumber(amount.value)}. The most is ${MOST_NUMBER} either way.`);
    case 'count': {
      if (!isPlain(amount)) return refuse(text, `this comes out as ${kindOf(amount)} and a whole number is wanted, such as 6.`);
      const whole = Math.round(amount.value);
      if (Math.abs(amount.value - whole) > WHOLE_WITHIN) return refuse(text, `this comes to ${shownNumber(amount.value)} and a whole number is wanted, such as ${Math.max(0, Math.min(whole, MOST_COUNT))}.`);
      if (whole < 0) return refuse(text, `this comes to ${whole}. A count cannot be below 0.`);
      return within(whole, MOST_COUNT, text, `this comes to ${shownNumber(whole)}. The most is ${MOST_COUNT}.`);
    }
    default:
      return unreachable(wanted);
  }
}

/** Adding 0 turns −0 into 0. */
const within = (value: number, most: number, text: string, says: string): Result<number> => (Math.abs(value) <= most ? good(value + 0) : refuse(text, says));
