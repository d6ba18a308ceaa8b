import { bad } from '../result';

/** How much of a long text is repeated in a sentence. */
const SHOWN_CHARACTERS = 40;

/** A text fit to stand in a sentence: on one line, not too long, no half characters. */
export function shown(text: string): string {
  const tidy = text.replace(/\p{Cs}/gu, '\uFFFD').replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, ' ').trim();
  const characters = [...tidy];
  return characters.length <= SHOWN_CHARACTERS ? tidy : `${characters.slice(0, SHOWN_CHARACTERS).join('')}…`;
}

/** A figure short enough for a sentence: at most 6 figures that count. */
export const shownNumber = (value: number): string => String(Number(value.toPrecision(6)));

/** Refuses an entry: repeats the text, then says what is wrong and what would be right. The caller names the field. */
export const refuse = (text: string, says: string): ReturnType<typeof bad> => bad('', `"${shown(text)}": ${says}`);
