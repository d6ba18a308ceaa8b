import { evaluate, type EntryContext, type Wanted } from './evaluate';
import { parse, type Expression } from './parse';
import { isPlain, plainAsLength, reckon, type Amount } from './reckon';
import type { PlainUnit } from './unitWords';

/** Two values that differ by less than this share of themselves are one: only the order of roundings differs. */
const SAME_SHARE = 1e-12;

/**
 * Rewrites an entry so that its value stays when plain numbers come to mean another unit. What was taken as a length only because
 * of the plain-number rule gets the old unit after it: `12 + gap` becomes `12 mm + gap`, `2+1/4` becomes `(2+1/4) mm`.
 *
 * The new text is read again before it is handed back. If it reads differently, every rewritten piece goes into brackets; if it
 * has grown past the longest text, the worked-out value is written instead. A text that cannot be worked out stays as it is.
 * @param wanted what the field wants; 'size' for the text of a named size, where a plain number alone stays plain
 * @param context how the text reads now; `context.plain` is the old unit
 */
export function changePlainUnit(text: string, wanted: Wanted | 'size', context: EntryContext, to: PlainUnit): string {
  if (to === context.plain) return text;
  const before = amountOf(text, wanted, context);
  if (before === null || before.takenAsLength.length === 0) return text;
  const after = { ...context, plain: to };
  for (const everyBracket of [false, true]) {
    const rewritten = writeUnits(text, before.takenAsLength, context.plain, everyBracket);
    const again = amountOf(rewritten, wanted, after);
    if (again !== null && sameAmount(again.amount, before.amount)) return rewritten;
  }
  return valueAlone(before.amount);
}

interface Read {
  readonly amount: Amount;
  readonly takenAsLength: readonly Expression[];
}

/** The entry worked out, a plain number where a length is wanted already counted as taken for one. Null where it is refused. */
function amountOf(text: string, wanted: Wanted | 'size', context: EntryContext): Read | null {
  const read = parse(text, (name) => context.sizes.has(name));
  if (!read.ok) return null;
  const worked = reckon(read.value, text, context, []);
  if (!worked.ok) return null;
  const { amount, takenAsLength } = worked.value;
  if (wanted !== 'size' && !evaluate(text, wanted, context).ok) return null;
  if (wanted !== 'length' || !isPlain(amount)) return { amount, takenAsLength };
  return { amount: plainAsLength(amount, context.plain), takenAsLength: [...takenAsLength, read.value] };
}

function sameAmount(a: Amount, b: Amount): boolean {
  const most = Math.max(Math.abs(a.value), Math.abs(b.value));
  return a.length === b.length && a.angle === b.angle && Math.abs(a.value - b.value) <= SAME_SHARE * most;
}

/** Writes the unit after each piece, from the last to the first so that the places before stay right. */
function writeUnits(text: string, pieces: readonly Expression[], unit: PlainUnit, everyBracket: boolean): string {
  return [...pieces]
    .toSorted((a, b) => b.start - a.start)
    .reduce((written, { start, end, kind }) => {
      const piece = text.slice(start, end);
      const whole = kind === 'binary' || everyBracket ? `(${piece})` : piece;
      return `${written.slice(0, start)}${whole} ${unit}${written.slice(end)}`;
    }, text);
}

/** The value in figures, for a text too long to carry its units. */
function valueAlone({ value, length, angle }: Amount): string {
  const figures = Math.abs(value) < 1e-6 ? value.toFixed(20) : String(value);
  return length === 1 ? `${figures} mm` : angle === 1 ? `${figures} rad` : figures;
}
