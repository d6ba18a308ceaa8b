import { bad, good, unreachable, type Problem, type Result } from '../result';
import type { Expression } from './parse';
import { shown, shownNumber } from './refuse';
import { suggestName } from './suggestName';
import { inUnit, PLAIN_ANGLE, PLAIN_UNITS, RAD_PER_DEGREE, type FunctionName, type PlainUnit } from './unitWords';

/** A named size worked out: mm, rad, or a plain number. */
export interface SizeValue {
  readonly value: number;
  readonly dimension: 'length' | 'angle' | 'number';
}

export interface EntryContext {
  /** What a number without a unit means where a length is wanted. */
  readonly plain: PlainUnit;
  /** The job's scale: full size divided by model size, above 0. */
  readonly scale: number;
  readonly sizes: ReadonlyMap<string, SizeValue>;
}

/** A value with the powers of length and angle in it: an area is mm², so length 2. Values are in mm and rad. */
export interface Amount {
  readonly value: number;
  readonly length: number;
  readonly angle: number;
}

/** An amount, and the pieces that were plain numbers and were taken as lengths, in the order met. */
export interface Reckoned {
  readonly amount: Amount;
  readonly takenAsLength: readonly Expression[];
}

/** tan grows past any use within this much (rad) of a right angle; there 1 mm would become a kilometre. */
const TAN_HAS_NO_VALUE = 1e-6;

export const isPlain = (amount: Amount): boolean => amount.length === 0 && amount.angle === 0;
export const isLength = (amount: Amount): boolean => amount.length === 1 && amount.angle === 0;
export const isAngle = (amount: Amount): boolean => amount.length === 0 && amount.angle === 1;

/** What to call an amount in a sentence. */
export function kindOf(amount: Amount): string {
  if (isPlain(amount)) return 'a plain number';
  if (isAngle(amount)) return 'an angle';
  if (amount.angle === 0 && amount.length === 1) return 'a length';
  if (amount.angle === 0 && amount.length === 2) return 'an area';
  if (amount.angle === 0 && amount.length === 3) return 'a volume';
  return 'a mixture of units';
}

/** A plain number as a length (mm) by the job's rule for plain numbers. */
export const plainAsLength = (amount: Amount, plain: PlainUnit): Amount => ({ value: inUnit(amount.value, PLAIN_UNITS[plain]), length: 1, angle: 0 });

/** A plain number as an angle: degrees. */
export const plainAsAngle = (amount: Amount): Amount => ({ value: inUnit(amount.value, PLAIN_ANGLE), length: 0, angle: 1 });

/**
 * Works out an expression. A plain number that is added to, taken from or compared with a length counts in the plain unit, with an
 * angle in degrees. Amounts that do not go together, unknown names, division by zero, roots of what is below 0 and figures too big
 * for a double are refused; never NaN, never Infinity.
 * @param text the text the expression was read from, for the sentences
 * @param known every name there is, for "Did you mean"; those with a value are in context.sizes
 */
export function reckon(expression: Expression, text: string, context: EntryContext, known: Iterable<string>): Result<Reckoned> {
  const takenAsLength: Expression[] = [];
  let problem: Problem | null = null;
  let insideFullSize = false;

  const fail = (says: string): null => {
    problem ??= bad('', says).problem;
    return null;
  };
  const read = (part: Expression): string => shown(text.slice(part.start, part.end));
  const checked = (amount: Amount): Amount | null => (Number.isFinite(amount.value) ? amount : fail('this comes to more than can be worked out. Use smaller figures.'));

  const asLength = (part: Expression, amount: Amount): Amount => {
    takenAsLength.push(part);
    return plainAsLength(amount, context.plain);
  };

  /** Gives a plain amount the kind of the other, so that the two can be added or compared. */
  const alike = (part: Expression, amount: Amount, other: Amount): Amount => {
    if (!isPlain(amount)) return amount;
    if (isLength(other)) return asLength(part, amount);
    return isAngle(other) ? plainAsAngle(amount) : amount;
  };
  const sameKind = (a: Amount, b: Amount): boolean => a.length === b.length && a.angle === b.angle;
  const unlike = (a: Expression, kindA: Amount, b: Expression, kindB: Amount, together: string): null =>
    fail(`${read(a)} is ${kindOf(kindA)} and ${read(b)} is ${kindOf(kindB)}. Only two of one kind can be ${together}.`);

  function binary(part: Expression & { readonly kind: 'binary' }): Amount | null {
    const left = work(part.left);
    const right = left && work(part.right);
    if (left === null || right === null) return null;
    switch (part.operator) {
      case '*':
        return checked({ value: left.value * right.value, length: left.length + right.length, angle: left.angle + right.angle });
      case '/':
        if (right.value === 0) return fail(part.right.kind === 'number' ? 'this divides by zero.' : `this divides by zero: ${read(part.right)} is 0.`);
        return checked({ value: left.value / right.value, length: left.length - right.length, angle: left.angle - right.angle });
      case '+':
      case '-': {
        const a = alike(part.left, left, right);
        const b = alike(part.right, right, left);
        if (!sameKind(a, b)) return unlike(part.left, left, part.right, right, part.operator === '+' ? 'added' : 'taken one from the other');
        return checked({ ...a, value: part.operator === '+' ? a.value + b.value : a.value - b.value });
      }
      default:
        return unreachable(part.operator);
    }
  }

  function leastOrGreatest(part: Expression & { readonly kind: 'call' }): Amount | null {
    const amounts: Amount[] = [];
    for (const value of part.values) {
      const amount = work(value);
      if (amount === null) return null;
      amounts.push(amount);
    }
    const lead = amounts.findIndex((amount) => !isPlain(amount));
    const model = amounts[Math.max(lead, 0)];
    const modelPart = part.values[Math.max(lead, 0)];
    if (model === undefined || modelPart === undefined) return fail(`${part.called} needs two values or more.`);
    const values: number[] = [];
    for (const [index, value] of part.values.entries()) {
      const amount = amounts[index] ?? model;
      const same = alike(value, amount, model);
      if (!sameKind(same, model)) return unlike(modelPart, model, value, amount, 'compared');
      values.push(same.value);
    }
    return { ...model, value: part.called === 'min' ? Math.min(...values) : Math.max(...values) };
  }

  function call(part: Expression & { readonly kind: 'call' }): Amount | null {
    if (part.called === 'min' || part.called === 'max') return leastOrGreatest(part);
    const argument = part.values[0];
    if (argument === undefined) return fail(`${part.called} needs a value in its brackets.`);
    const amount = work(argument);
    if (amount === null) return null;
    if (part.called === 'abs') return { ...amount, value: Math.abs(amount.value) };
    return part.called === 'sqrt' ? squareRoot(argument, amount) : ofAngle(part.called, argument, amount);
  }

  function squareRoot(argument: Expression, amount: Amount): Amount | null {
    if (amount.value < 0) return fail(`sqrt needs 0 or more, and ${read(argument)} is below 0.`);
    if (amount.length % 2 !== 0 || amount.angle % 2 !== 0) return fail(`sqrt needs a plain number or an area, and ${read(argument)} is ${kindOf(amount)}.`);
    return { value: Math.sqrt(amount.value), length: amount.length / 2, angle: amount.angle / 2 };
  }

  function ofAngle(called: Exclude<FunctionName, 'min' | 'max' | 'abs' | 'sqrt'>, argument: Expression, amount: Amount): Amount | null {
    const turn = isPlain(amount) ? plainAsAngle(amount) : amount;
    if (!isAngle(turn)) return fail(`${called} needs an angle, and ${read(argument)} is ${kindOf(amount)}.`);
    const plain = { length: 0, angle: 0 };
    switch (called) {
      case 'sin':
        return { ...plain, value: Math.sin(turn.value) };
      case 'cos':
        return { ...plain, value: Math.cos(turn.value) };
      case 'tan':
        if (Math.abs(Math.cos(turn.value)) < TAN_HAS_NO_VALUE) return fail(`tan has no value at ${shownNumber(turn.value / RAD_PER_DEGREE)}°.`);
        return { ...plain, value: Math.tan(turn.value) };
      default:
        return unreachable(called);
    }
  }

  function fullSize(part: Expression & { readonly kind: 'fullSize' }): Amount | null {
    if (insideFullSize) return fail('full stands twice for one dimension. Keep one.');
    if (!(Number.isFinite(context.scale) && context.scale > 0)) return fail('full divides by the scale of the job, which is to be above 0. Set the scale first.');
    insideFullSize = true;
    const of = work(part.of);
    insideFullSize = false;
    if (of === null) return null;
    const length = isPlain(of) ? asLength(part.of, of) : of;
    return isLength(length) ? checked({ ...length, value: length.value / context.scale }) : fail(`full needs a length, and ${read(part.of)} is ${kindOf(of)}.`);
  }

  function named(part: Expression & { readonly kind: 'name' }): Amount | null {
    const size = context.sizes.get(part.name);
    if (size === undefined) {
      const near = suggestName(part.name, known);
      return fail(`there is no size called ${shown(part.name)}.${near === null ? '' : ` Did you mean ${near}?`}`);
    }
    if (!Number.isFinite(size.value)) return fail(`${shown(part.name)} has no value yet. Put its own text right first.`);
    return { value: size.value, length: size.dimension === 'length' ? 1 : 0, angle: size.dimension === 'angle' ? 1 : 0 };
  }

  function work(part: Expression): Amount | null {
    switch (part.kind) {
      case 'number':
        return { value: part.value, length: 0, angle: 0 };
      case 'name':
        return named(part);
      case 'bracket':
        return work(part.of);
      case 'negative': {
        const of = work(part.of);
        return of && { ...of, value: -of.value };
      }
      case 'withUnit': {
        const of = work(part.of);
        if (of === null) return null;
        if (!isPlain(of)) return fail(`${read(part.of)} is already ${kindOf(of)}. Take the unit after it out.`);
        return checked({ value: inUnit(of.value, part.unit), length: part.unit.dimension === 'length' ? 1 : 0, angle: part.unit.dimension === 'angle' ? 1 : 0 });
      }
      case 'feetAndInches': {
        const feet = work(part.feet);
        const inches = feet && work(part.inches);
        return feet && inches && checked({ ...feet, value: feet.value + inches.value });
      }
      case 'binary':
        return binary(part);
      case 'call':
        return call(part);
      case 'fullSize':
        return fullSize(part);
      default:
        return unreachable(part);
    }
  }

  const amount = work(expression);
  if (amount !== null) return good({ amount, takenAsLength });
  return { ok: false, problem: problem ?? bad('', 'this cannot be worked out.').problem };
}
