import type { Result } from '../result';
import { good } from '../result';
import { leftOver, nothingToRead } from './parseRefusals';
import { isWhole, readNumber } from './readNumber';
import { refuse } from './refuse';
import { tokenise, type Span, type Token } from './tokenise';
import { functionCalled, isFullSizeMark, sameSpelling, type FunctionName, type Unit } from './unitWords';

/** What a text says, with the place of each piece in it. */
export type Expression = Span &
  (
    | { readonly kind: 'number'; readonly value: number }
    | { readonly kind: 'name'; readonly name: string }
    | { readonly kind: 'withUnit'; readonly of: Expression; readonly unit: Unit }
    | { readonly kind: 'feetAndInches'; readonly feet: Expression; readonly inches: Expression }
    | { readonly kind: 'negative'; readonly of: Expression }
    | { readonly kind: 'binary'; readonly operator: Operator; readonly left: Expression; readonly right: Expression }
    | { readonly kind: 'call'; readonly called: FunctionName; readonly values: readonly Expression[] }
    | { readonly kind: 'fullSize'; readonly of: Expression }
    | { readonly kind: 'bracket'; readonly of: Expression }
  );

export type Operator = '+' | '-' | '*' | '/';

/** The longest text that is read; it also bounds how deep brackets can go, so the parser cannot run out of stack. */
export const LONGEST_TEXT = 200;

/**
 * Reads an entry into an expression. What it means with its sizes and units is worked out by `reckon`.
 *
 * Where a text could be read in two ways, this is the rule:
 * - whole/whole with a unit after it is a fraction of that unit: `3/8in` is three eighths of an inch.
 * - a whole number, a space and a fraction are one number: `1 3/8`.
 * - `3-1/2"`: a hyphen with no space on either side, between a whole number and a fraction with an inch or foot unit after
 *   it, joins them: three and a half inches. With spaces on both sides (`3 - 1/2"`), or with another unit or none after it
 *   (`3-1/2 mm`, `3-1/2`), it takes away. With a space on one side only it is refused.
 * - feet and inches join in the same way: `1' 3"`, `1'3"` and `1'-3"` are 15 in, `1' - 3"` is 9 in, `1' -3"` is refused.
 * - `1,5` is a decimal comma; `1,500` is refused, and so is a comma between digits in the brackets of min or max.
 * @param text as typed; at most 200 characters
 * @param isSize whether there is a size of this name; used only to word a refusal
 */
export function parse(text: string, isSize: (name: string) => boolean): Result<Expression> {
  if (text.length > LONGEST_TEXT) {
    return refuse(text, `this is ${text.length} characters long and the most is ${LONGEST_TEXT}. Give part of it a name and use that.`);
  }
  const tokens = tokenise(text);
  const end = tokens[tokens.length - 1] as Token;
  let position = 0;
  let says: string | null = null;

  const peek = (ahead = 0): Token => tokens[position + ahead] ?? end;
  const take = (): Token => {
    const token = peek();
    position += 1;
    return token;
  };
  const fail = (sentence: string): null => {
    says ??= sentence;
    return null;
  };
  const isSign = (token: Token, sign: Operator): boolean => token.kind === 'operator' && token.text === sign;
  const isWholeNumber = (token: Token): boolean => token.kind === 'number' && isWhole(token.text);
  const unitOf = (token: Token): Unit | undefined => (token.kind === 'unit' ? token.unit : undefined);
  const isFootOrInch = (token: Token): boolean => ['in', 'ft'].includes(unitOf(token)?.word ?? '');
  const startsNumber = (token: Token): boolean => token.kind === 'number' || token.kind === 'glyph';
  /** Spaces beside the hyphen at `ahead`. */
  const spacesBeside = (ahead: number): number => Number(peek(ahead).spaceBefore) + Number(peek(ahead + 1).spaceBefore);
  /** How many tokens from `ahead` on make a fraction: a glyph, or whole/whole; 0 if they do not. */
  const fractionLength = (ahead: number): number => {
    if (peek(ahead).kind === 'glyph') return 1;
    return isWholeNumber(peek(ahead)) && isSign(peek(ahead + 1), '/') && isWholeNumber(peek(ahead + 2)) ? 3 : 0;
  };

  function fraction(): number | null {
    const first = take();
    if (first.kind === 'glyph') return first.value;
    take();
    const under = Number(take().text);
    return under === 0 ? fail('this divides by zero.') : Number(first.text) / under;
  }

  function wholeAndFraction(whole: Token): Expression | null {
    const part = fraction();
    if (part === null) return null;
    const { end: last } = tokens[position - 1] as Token;
    if (part >= 1) return fail(`the fraction after ${whole.text} is one or more. Write ${whole.text} + ${text.slice((tokens[position - 3] as Token).start, last)} if that is meant.`);
    return { kind: 'number', value: Number(whole.text) + part, start: whole.start, end: last };
  }

  function number(inList: boolean, afterDivide: boolean): Expression | null {
    const first = peek();
    if (first.kind === 'glyph') {
      take();
      return { kind: 'number', value: first.value, start: first.start, end: first.end };
    }
    if (isWholeNumber(first)) {
      if (fractionLength(1) > 0) {
        take();
        return wholeAndFraction(first);
      }
      const joined = isSign(peek(1), '-') ? fractionLength(2) : 0;
      if (joined > 0 && isFootOrInch(peek(2 + joined)) && spacesBeside(1) < 2) {
        if (spacesBeside(1) === 1) return fail('the hyphen could join or take away. Close it up to join (3-1/2") or put a space on both sides to take away (3 - 1/2").');
        take();
        take();
        return wholeAndFraction(first);
      }
      if (fractionLength(0) === 3 && peek(3).kind === 'unit') {
        if (afterDivide) return fail(`put brackets round ${text.slice(first.start, peek(3).end)} to divide by it.`);
        const value = fraction();
        return value === null ? null : { kind: 'number', value, start: first.start, end: (tokens[position - 1] as Token).end };
      }
    }
    take();
    const read = readNumber(first.text, inList);
    return read.ok ? { kind: 'number', value: read.value, start: first.start, end: first.end } : fail(read.problem.says);
  }

  function withUnit(of: Expression): Expression {
    const unit = unitOf(peek());
    return unit === undefined ? of : { kind: 'withUnit', of, unit, start: of.start, end: take().end };
  }

  /** Inches that belong to the feet just read, if any follow. */
  function inchesAfter(feet: Expression): Expression | null {
    const mark = position;
    const hyphen = isSign(peek(), '-');
    if (hyphen ? !startsNumber(peek(1)) || spacesBeside(0) === 2 : !startsNumber(peek())) return feet;
    const spaces = hyphen ? spacesBeside(0) : 0;
    if (hyphen) take();
    const count = number(false, false);
    if (count === null) return null;
    const unit = unitOf(peek());
    const feetText = text.slice(feet.start, feet.end);
    const inchText = text.slice(count.start, count.end);
    if (unit?.word === 'in' && spaces === 0) {
      const inches = withUnit(count);
      return { kind: 'feetAndInches', feet, inches, start: feet.start, end: inches.end };
    }
    if (!hyphen) return fail(`${inchText} after ${feetText} needs an inch mark: ${feetText} ${inchText}".`);
    if (unit === undefined || unit.word === 'in') {
      return fail(`the hyphen could join or take away. Write ${feetText} ${inchText}" to join, or ${feetText} - ${inchText} with spaces to take away.`);
    }
    position = mark;
    return feet;
  }

  function call(called: FunctionName, word: Token): Expression | null {
    if (peek().kind !== 'open') return fail(`${called} needs brackets, such as ${called}(${called === 'min' || called === 'max' ? 'gap; 3' : '30'}).`);
    take();
    const inList = called === 'min' || called === 'max';
    const values: Expression[] = [];
    for (;;) {
      const value = sum(inList);
      if (value === null) return null;
      values.push(value);
      if (peek().kind !== 'separator' || !inList) break;
      take();
    }
    if (peek().kind !== 'close') return fail(leftOver(tokens, position, text, isSize, true));
    if (inList && values.length < 2) return fail(`${called} needs two values or more, with ; between them: ${called}(gap; 3).`);
    return { kind: 'call', called, values, start: word.start, end: take().end };
  }

  function primary(inList: boolean, afterDivide: boolean): Expression | null {
    const first = peek();
    if (startsNumber(first)) {
      const value = number(inList, afterDivide);
      if (value === null) return null;
      const whole = withUnit(value);
      return whole.kind === 'withUnit' && whole.unit.word === 'ft' ? inchesAfter(whole) : whole;
    }
    if (first.kind === 'open') {
      take();
      const inside = sum(false);
      if (inside === null) return null;
      if (peek().kind !== 'close') return fail(leftOver(tokens, position, text, isSize, true));
      return withUnit({ kind: 'bracket', of: inside, start: first.start, end: take().end });
    }
    if (first.kind !== 'word') return fail(nothingToRead(tokens, position));
    take();
    const called = functionCalled(first.text);
    if (called !== undefined) {
      const made = call(called, first);
      return made === null ? null : withUnit(made);
    }
    return withUnit({ kind: 'name', name: sameSpelling(first.text), start: first.start, end: first.end });
  }

  function signed(inList: boolean, afterDivide: boolean): Expression | null {
    const first = peek();
    if (isSign(first, '+')) {
      take();
      return signed(inList, afterDivide);
    }
    const minus = isSign(first, '-');
    if (!minus && !(first.kind === 'word' && isFullSizeMark(first.text))) return primary(inList, afterDivide);
    take();
    if (!minus && peek().kind === 'end') return fail('full needs a length after it, such as full 3\' 6".');
    const of = signed(inList, afterDivide);
    if (of === null) return null;
    return { kind: minus ? 'negative' : 'fullSize', of, start: first.start, end: of.end };
  }

  function chain(signs: readonly Operator[], next: (afterDivide: boolean) => Expression | null): Expression | null {
    let left = next(false);
    while (left !== null) {
      const operator = signs.find((sign) => isSign(peek(), sign));
      if (operator === undefined) break;
      take();
      const right = next(operator === '/');
      left = right && { kind: 'binary', operator, left, right, start: left.start, end: right.end };
    }
    return left;
  }

  const product = (inList: boolean): Expression | null => chain(['*', '/'], (afterDivide) => signed(inList, afterDivide));

  function sum(inList: boolean): Expression | null {
    return chain(['+', '-'], () => product(inList));
  }

  const whole = sum(false);
  if (whole !== null && peek().kind === 'end') return good(whole);
  return refuse(text, says ?? leftOver(tokens, position, text, isSize, false));
}
