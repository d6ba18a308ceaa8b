/** Words broken and cut to the room there is on a sheet. Widths in px of paper. */
import { textWidth, type TextRole } from '../textWidth';

/** Characters that move or hide what stands beside them: controls, separators of lines, marks of reading direction, and half pairs. */
const NOT_FOR_PRINT = /[\p{Cc}\p{Zl}\p{Zp}\u200B-\u200F\u202A-\u202E\u2060-\u206F\uFEFF]|\p{Cs}/gu;

/** A name as it can be printed: on one line, in its own order, and never nothing. */
export function printed(name: string, otherwise = ''): string {
  const plain = name.replace(NOT_FOR_PRINT, ' ').replace(/\s+/g, ' ').trim();
  return plain === '' ? otherwise : plain;
}

const NO_BREAK = '\u00A0';
/** A figure such as 1 3/8 that no line is broken in. */
export const inOnePiece = (figure: string): string => figure.replaceAll(' ', NO_BREAK);

const DOTS = '…';

/** The text, or as much of its beginning as fits with dots behind it. */
export function cutTo(text: string, role: TextRole, room: number): string {
  if (textWidth(text, role) <= room) return text;
  const kept = [...text];
  while (kept.length > 0 && textWidth(`${kept.join('').trimEnd()}${DOTS}`, role) > room) kept.pop();
  return `${kept.join('').trimEnd()}${DOTS}`;
}

/** As many characters of a word as fit, at least one. */
function headThatFits(word: string, role: TextRole, room: number): string {
  let head = '';
  for (const character of word) {
    if (head !== '' && textWidth(head + character, role) > room) break;
    head += character;
  }
  return head;
}

/**
 * The text in lines that fit the room: broken between words, and within a word that is longer than a line. Of more than
 * `most` lines the last one kept ends in dots.
 */
export function brokenTo(text: string, role: TextRole, room: number, most = Infinity): readonly string[] {
  const lines: string[] = [];
  let current = '';
  for (const word of text.split(' ')) {
    const joined = current === '' ? word : `${current} ${word}`;
    if (textWidth(joined, role) <= room) {
      current = joined;
      continue;
    }
    if (current !== '') lines.push(current);
    current = word;
    while (textWidth(current, role) > room) {
      const head = headThatFits(current, role, room);
      if (head.length === current.length) break;
      lines.push(head);
      current = current.slice(head.length);
    }
  }
  lines.push(current);
  if (lines.length <= most) return lines;
  const last = lines.slice(most - 1).join(' ');
  return [...lines.slice(0, most - 1), cutTo(last, role, room)];
}
