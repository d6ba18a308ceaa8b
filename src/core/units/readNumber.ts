import { bad, good, type Result } from '../result';

/** A whole number as typed: digits and nothing else. */
export const isWhole = (text: string): boolean => /^\d+$/.test(text);

/**
 * Reads one run of digits, points and commas: `12`, `12.5`, `12,5`, `.5`, `5.`.
 *
 * Refused rather than guessed: `1,234` (1234 to one reader, 1.234 to the next), more than one point or comma, and any comma
 * between digits inside min( ) or max( ), where it might part two values.
 * @param inList whether the number stands directly in the brackets of min or max
 */
export function readNumber(text: string, inList: boolean): Result<number> {
  if (isWhole(text) || /^(\d+\.\d*|\.\d+)$/.test(text)) return good(Number(text));
  const commas = text.split(',').length - 1;
  if (commas > 0 && inList) {
    return bad('', `inside min( ) and max( ) the comma in ${text} could be a decimal comma or part two values. Write a point for decimals and ; between values.`);
  }
  const joined = text.replaceAll(',', '');
  if (commas > 0 && /^[1-9]\d{0,2}(,\d{3})+(\.\d*)?$/.test(text)) {
    return commas === 1 && isWhole(joined)
      ? bad('', `${text} could be ${joined} or ${text.replace(',', '.')}. Write the one you mean.`)
      : bad('', `leave the commas out of a long number: ${joined}.`);
  }
  if (commas === 1 && /^\d+,\d+$/.test(text)) return good(Number(text.replace(',', '.')));
  if (text === '.') return bad('', 'there is a point without a number. Write 0.5 or 12.');
  return bad('', `${text} has more than one decimal point or comma. Write it with one, such as 12.5.`);
}
