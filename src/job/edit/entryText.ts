/** Putting entries together as text, so that the names and fractions typed in them live on. */
import { LONGEST_ENTRY } from '../limits';

/** A figure alone, without unit: the only thing that is added up on the spot. */
const FIGURE = /^\d{1,9}(?:\.\d{1,6})?$/;

const inWhole = (text: string): string => (/^[\w.]+$/.test(text.trim()) ? text.trim() : `(${text.trim()})`);

function together(a: string, sign: '+' | '-', b: string): string | undefined {
  const left = a.trim();
  const right = b.trim();
  if (/^0(?:\.0*)?$/.test(right)) return left;
  if (FIGURE.test(left) && FIGURE.test(right)) {
    const value = sign === '+' ? Number(left) + Number(right) : Number(left) - Number(right);
    return String(Number(value.toFixed(6)));
  }
  const text = `${inWhole(left)} ${sign} ${inWhole(right)}`;
  return text.length <= LONGEST_ENTRY ? text : undefined;
}

/** `a + b` as an entry; undefined where it would be longer than an entry may be. */
export const plus = (a: string, b: string): string | undefined => together(a, '+', b);

/** `a - b` as an entry; undefined where it would be longer than an entry may be. */
export const minus = (a: string, b: string): string | undefined => together(a, '-', b);

/** Whether every bracket that opens is closed again, and none closes that was not open. */
function inPairs(text: string): boolean {
  let open = 0;
  for (const character of text) {
    if (character === '(') open += 1;
    else if (character === ')') open -= 1;
    if (open < 0) return false;
  }
  return open === 0;
}

/** Whether `text` is `-( … )` with that bracket closing at the very end. */
const isTakenAway = (text: string): boolean => text.startsWith('-(') && text.endsWith(')') && inPairs(text.slice(2, -1));

/**
 * The entry with its sign turned. Brackets `-( … )` are put on or taken off in pairs, so that turned twice it is the same text
 * again, whatever was typed. Nought, and what cannot be read because its brackets are not in pairs, stay as they are. Undefined
 * where it would be too long.
 */
export function turned(text: string): string | undefined {
  let core = text;
  let layers = 0;
  for (; isTakenAway(core); layers += 1) core = core.slice(2, -1);
  if (/^[\s0.]*$/.test(core) || !inPairs(core)) return text;
  if (layers % 2 === 1) return text.slice(2, -1);
  return text.length + 3 <= LONGEST_ENTRY ? `-(${text})` : undefined;
}
