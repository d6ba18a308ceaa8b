import { isWhole } from './readNumber';
import { shown } from './refuse';
import { suggestName } from './suggestName';
import type { Token } from './tokenise';
import { FUNCTION_WORDS, sameSpelling } from './unitWords';

const UNITS_READ = 'Lengths are read in mm, cm, m, in, ft and thou, angles in deg and rad';

/** The sentence for a place where a number, a size or a bracket should begin and none does. */
export function nothingToRead(tokens: readonly Token[], position: number): string {
  const token = tokens[position];
  const before = tokens[position - 1];
  if (token === undefined || token.kind === 'end') {
    return before?.kind === 'open' ? 'a bracket is opened and not closed. Add ) where it ends.' : `there is nothing after ${before?.text ?? 'the start'}. Add a number or a size, or take ${before?.text ?? 'it'} out.`;
  }
  if (token.kind === 'strange') return strange(token);
  if (token.kind === 'unit') return `${token.text} needs a number before it, such as 12 ${token.unit.word}.`;
  if (token.kind === 'close') {
    return before?.kind === 'open' ? 'there is nothing between the brackets. Put a number or a size in them.' : before === undefined ? NEVER_OPENED : `there is nothing between ${before.text} and ). Add a number or a size.`;
  }
  if (token.kind === 'separator') {
    const next = tokens[position + 1];
    if (next?.kind === 'number' && token.text === ',') return `write a nought before the comma: 0,${next.text}.`;
    return `there is nothing before ${token.text} to read. Add a number or a size.`;
  }
  return before === undefined ? `there is nothing before ${token.text}. Add a number or a size.` : `there is nothing between ${before.text} and ${token.text}. Add a number or a size, or take one out.`;
}

const NEVER_OPENED = 'a bracket is closed that was never opened. Add ( where it begins, or take ) out.';

/**
 * The sentence for a token that cannot follow what was read before it.
 * @param inBracket whether a bracket is open there
 */
export function leftOver(tokens: readonly Token[], position: number, text: string, isSize: (name: string) => boolean, inBracket: boolean): string {
  const token = tokens[position];
  const before = tokens[position - 1];
  if (token === undefined || before === undefined || token.kind === 'end') return 'a bracket is opened and not closed. Add ) where it ends.';
  if (token.kind === 'strange') return strange(token);
  if (token.kind === 'close') return NEVER_OPENED;
  if (token.kind === 'unit') return `there are two units side by side, ${before.text} and ${token.text}. Keep one.`;
  if (token.kind === 'separator') {
    return before.kind === 'number' && tokens[position + 1]?.kind === 'number' && !inBracket
      ? `${before.text}${token.text} ${tokens[position + 1]?.text ?? ''} is two numbers. For a decimal write ${before.text}.${tokens[position + 1]?.text ?? ''}; values in a row belong in min( ) or max( ).`
      : `${token.text} belongs only between the values of min( ) and max( ).`;
  }
  if (token.kind === 'word') return strayWord(token.text, before, isSize, tokens[position + 1]?.kind === 'open');
  if (token.kind === 'number' && before.kind === 'number') {
    const joined = `${before.text}${token.text}`;
    if (/^\d{1,3}$/.test(before.text) && /^\d{3}(\D|$)/.test(token.text) && isWhole(token.text.slice(0, 3))) {
      return `${text.slice(before.start, token.end)} has a space in it. If it is one number, write ${joined}.`;
    }
  }
  if (before.kind === 'word' && token.kind === 'open') {
    const near = suggestName(before.text, FUNCTION_WORDS);
    if (!isSize(sameSpelling(before.text))) return `there is no function called ${shown(before.text)}.${near === null ? ` There are ${FUNCTION_WORDS.join(', ')}.` : ` Did you mean ${near}?`}`;
  }
  const both = (token.kind === 'number' || token.kind === 'glyph') && (before.kind === 'number' || before.kind === 'glyph');
  return `${both ? 'two numbers stand' : 'two things stand'} side by side, ${shown(before.text)} and ${shown(token.text)}. Put +, -, * or / between them.`;
}

function strayWord(word: string, before: Token, isSize: (name: string) => boolean, opensBracket: boolean): string {
  const read = shown(word);
  if (isSize(sameSpelling(word)) || opensBracket || before.kind === 'word') return `put +, -, * or / between ${shown(before.text)} and ${read}.`;
  if (word.toLowerCase() === 'x') return 'for times write * or ×.';
  if (['mil', 'mils'].includes(word.toLowerCase())) return `${read} could be a thou or a millimetre. Write thou or mm.`;
  return before.kind === 'unit' ? `${read} after ${before.text} means nothing here. Take it out.` : `there is no unit called ${read}. ${UNITS_READ}.`;
}

function strange(token: Token): string {
  if ('~≈'.includes(token.text)) return `${token.text} marks a rounded figure. Leave it out.`;
  if ('xX^²³'.includes(token.text)) return 'there are no powers here. Write gap*gap for a square.';
  return `the character ${shown(token.text)} means nothing here. Take it out.`;
}
