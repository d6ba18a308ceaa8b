/** Putting entries together as text, so that the names and fractions typed in them live on. */
import { LONGEST_ENTRY } from '../schema';

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

/** Whether `text` is `-( … )` with that bracket closing at the very end. */
function isTakenAway(text: string): boolean {
  if (!text.startsWith('-(') || !text.endsWith(')')) return false;
  let open = 0;
  for (let i = 1; i < text.length; i += 1) {
    if (text[i] === '(') open += 1;
    else if (text[i] === ')') open -= 1;
    if (open === 0) return i === text.length - 1;
  }
  return false;
}

/** The entry with its sign turned; turned twice it is the same text again. Undefined where it would be too long. */
export function turned(text: string): string | undefined {
  if (isTakenAway(text)) return text.slice(2, -1);
  if (/^[\s0.]*$/.test(text)) return text;
  return text.length + 3 <= LONGEST_ENTRY ? `-(${text})` : undefined;
}
