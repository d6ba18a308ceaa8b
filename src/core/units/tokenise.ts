import { continuesName, DOUBLE_MARK, startsName, unitCalled, unitMarked, type Unit } from './unitWords';

export interface Span {
  readonly start: number;
  /** One past the last character. */
  readonly end: number;
}

export type Token = Span & {
  /** As typed; operators and brackets in their plain form. */
  readonly text: string;
  readonly spaceBefore: boolean;
} & (
    | { readonly kind: 'number' | 'word' | 'operator' | 'open' | 'close' | 'separator' | 'strange' | 'end' }
    | { readonly kind: 'glyph'; readonly value: number }
    | { readonly kind: 'unit'; readonly unit: Unit }
  );

const GLYPHS: ReadonlyMap<string, number> = new Map([
  ['½', 1 / 2], ['⅓', 1 / 3], ['⅔', 2 / 3], ['¼', 1 / 4], ['¾', 3 / 4],
  ['⅕', 1 / 5], ['⅖', 2 / 5], ['⅗', 3 / 5], ['⅘', 4 / 5], ['⅙', 1 / 6], ['⅚', 5 / 6],
  ['⅛', 1 / 8], ['⅜', 3 / 8], ['⅝', 5 / 8], ['⅞', 7 / 8],
]);

const OPERATORS: ReadonlyMap<string, string> = new Map([
  ['+', '+'],
  ...[...'-−–‐‑'].map((sign): [string, string] => [sign, '-']),
  ...[...'*×·⋅∙'].map((sign): [string, string] => [sign, '*']),
  ...[...'/÷⁄∕'].map((sign): [string, string] => [sign, '/']),
]);

/** Digits, points, and commas that have a digit on both sides. Whether they make one number is for the parser to say. */
const NUMBER_RUN = /(?:\d|\.)(?:[\d.]|,(?=\d))*/y;

/**
 * Cuts a text into numbers, words, units and signs. Never refuses: a character that means nothing becomes a `strange`
 * token, so that the parser can name it. The last token is always `end`.
 */
export function tokenise(text: string): readonly Token[] {
  const tokens: Token[] = [];
  let at = 0;
  let spaceBefore = false;
  while (at < text.length) {
    const character = String.fromCodePoint(text.codePointAt(at) ?? 0);
    if (/\s/u.test(character)) {
      spaceBefore = true;
      at += character.length;
      continue;
    }
    const token = tokenAt(text, at, character, spaceBefore, tokens[tokens.length - 1]);
    tokens.push(token);
    at = token.end;
    spaceBefore = false;
  }
  tokens.push({ kind: 'end', text: '', start: text.length, end: text.length, spaceBefore });
  return tokens;
}

function tokenAt(text: string, start: number, character: string, spaceBefore: boolean, before: Token | undefined): Token {
  const one = { text: character, start, end: start + character.length, spaceBefore };
  const operator = OPERATORS.get(character);
  if (operator !== undefined) return { ...one, kind: 'operator', text: operator };
  const value = GLYPHS.get(character);
  if (value !== undefined) return { ...one, kind: 'glyph', value };
  const unit = unitMarked(character);
  if (unit !== undefined) {
    const next = unitMarked(text.charAt(one.end));
    return unit.word === 'ft' && next?.word === 'ft'
      ? { ...one, kind: 'unit', text: text.slice(start, one.end + 1), end: one.end + 1, unit: DOUBLE_MARK }
      : { ...one, kind: 'unit', unit };
  }
  if (character === '(') return { ...one, kind: 'open' };
  if (character === ')') return { ...one, kind: 'close' };
  NUMBER_RUN.lastIndex = start;
  const run = NUMBER_RUN.exec(text)?.[0];
  if (run !== undefined) return { kind: 'number', text: run, start, end: start + run.length, spaceBefore };
  if (character === ',' || character === ';') return { ...one, kind: 'separator' };
  if (!startsName(character)) return { ...one, kind: 'strange' };
  const afterNumber = !spaceBefore && (before?.kind === 'number' || before?.kind === 'glyph');
  let end = afterNumber ? start + lettersBeforeDigit(text, start) : start;
  if (unitCalled(text.slice(start, end)) === undefined) {
    end = one.end;
    for (const next of text.slice(end)) {
      if (!continuesName(next)) break;
      end += next.length;
    }
  }
  const word = text.slice(start, end);
  const called = unitCalled(word);
  const whole = { text: word, start, end, spaceBefore };
  return called === undefined ? { ...whole, kind: 'word' } : { ...whole, kind: 'unit', unit: called };
}

/** In `1ft3in` the unit ends where the next number begins, although a name could go on: how many letters stand before a digit. */
const lettersBeforeDigit = (text: string, start: number): number => /^[a-z]+(?=\d)/i.exec(text.slice(start))?.[0].length ?? 0;
