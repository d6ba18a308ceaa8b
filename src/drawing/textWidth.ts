/**
 * How much room a piece of lettering takes. The drawings are laid out where no browser is, so widths come from a table.
 *
 * Advance widths in thousandths of the letter size, measured once in Chromium 156 by setting each character ten times at
 * 1000 px, tabular lining figures, no kerning: Atkinson Hyperlegible Next, for each character the widest of the weights 400, 600
 * and 700, since a chosen dimension goes bold; Besley 600 for the capitals that letter the legs.
 */
import type { Point } from '../core/geometry/types';
import { box, type Box } from './boxes';
import type { Role, TextEntity } from './entities';
import { OTHER_SCRIPTS } from './otherScripts';

const READING: Readonly<Record<string, number>> = {
  '0': 632, '1': 632, '2': 632, '3': 632, '4': 632, '5': 632, '6': 632, '7': 632, '8': 632, '9': 632, ' ': 312,
  '!': 303, '"': 390, '#': 765, '$': 610, '%': 969, '&': 731, "'": 210, '(': 335, ')': 335, '*': 485, '+': 606,
  ',': 271, '-': 373, '.': 272, '/': 440, ':': 272, ';': 272, '<': 569, '=': 628, '>': 569, '?': 547, '@': 781,
  'A': 678, 'B': 643, 'C': 658, 'D': 688, 'E': 597, 'F': 566, 'G': 718, 'H': 701, 'I': 424, 'J': 561, 'K': 663,
  'L': 552, 'M': 858, 'N': 717, 'O': 746, 'P': 629, 'Q': 756, 'R': 650, 'S': 610, 'T': 607, 'U': 690, 'V': 644,
  'W': 886, 'X': 685, 'Y': 650, 'Z': 618, '[': 340, '\\': 440, ']': 344, '^': 582, '_': 400, '`': 288, 'a': 552,
  'b': 596, 'c': 510, 'd': 596, 'e': 563, 'f': 365, 'g': 593, 'h': 571, 'i': 300, 'j': 259, 'k': 555, 'l': 318,
  'm': 882, 'n': 571, 'o': 576, 'p': 596, 'q': 599, 'r': 376, 's': 508, 't': 376, 'u': 567, 'v': 530, 'w': 740,
  'x': 539, 'y': 521, 'z': 505, '{': 381, '|': 254, '}': 381, '~': 555, '°': 394, '×': 536, '−': 606, 'ø': 576,
  '±': 611, '½': 852, '¼': 846, '¾': 921, '⅛': 750, '–': 504, '′': 281, '″': 552,
};

const CAPITALS: Readonly<Record<string, number>> = {
  'A': 887, 'B': 778, 'C': 823, 'D': 852, 'E': 782, 'F': 750, 'G': 893, 'H': 923, 'I': 459, 'J': 627, 'K': 902,
  'L': 743, 'M': 1086, 'N': 899, 'O': 854, 'P': 723, 'Q': 854, 'R': 805, 'S': 693, 'T': 786, 'U': 869, 'V': 887,
  'W': 1213, 'X': 885, 'Y': 815, 'Z': 771,
};

/** For a character that is in no table: wider than all but M and W. */
const UNKNOWN = 800;

export type TextRole = Extract<
  Role,
  'dimension text' | 'basis text' | 'running text' | 'running total' | 'tangent text' | 'bend text' | 'note text' | 'leg letter' | 'bend number' | 'part name' | 'tile name'
  | 'sheet title' | 'sheet heading' | 'sheet text' | 'sheet figure' | 'sheet caption' | 'sheet warning' | 'difference letter'
>;

/** Letter sizes, px (guide, "Type"; balloons and letters as in its picture). */
export const LETTER_PX: Readonly<Record<TextRole, number>> = {
  'dimension text': 18,
  'basis text': 15,
  'running text': 16,
  'running total': 16,
  'tangent text': 15,
  'bend text': 16,
  'note text': 15,
  'leg letter': 18,
  'bend number': 15,
  'part name': 18,
  'tile name': 30,
  'sheet title': 27,
  'sheet heading': 18,
  'sheet text': 15,
  'sheet figure': 16,
  'sheet caption': 14,
  'sheet warning': 40,
  'difference letter': 16,
};

/** Names on paper are bold, which is this much wider at the most. */
const BOLD_WIDER: Partial<Record<TextRole, number>> = {
  'part name': 1.08, 'tile name': 1.08, 'sheet title': 1.08, 'sheet heading': 1.08, 'sheet warning': 1.08, 'difference letter': 1.08,
};

/** px between a figure and its suffix. */
export const SUFFIX_GAP_PX = 5;

/** Heights as shares of the letter size: of a figure or capital, and how far a text box reaches above and below the base line. */
export const CAP_HEIGHT = 0.668;
const ABOVE = 0.76;
const BELOW = 0.26;

/** px that a text takes along its base line. */
export function textWidth(text: string, role: TextRole, suffix = ''): number {
  const table = role === 'leg letter' ? CAPITALS : READING;
  let sum = 0;
  for (const character of text) sum += table[character] ?? OTHER_SCRIPTS[character] ?? UNKNOWN;
  const figure = (sum * LETTER_PX[role] * (BOLD_WIDER[role] ?? 1)) / 1000;
  return suffix === '' ? figure : figure + SUFFIX_GAP_PX + textWidth(suffix, 'basis text');
}

/** The box a text entity takes on the drawing, mm, for letters of `px` mm to a reference px. */
export function textBox(entity: TextEntity, px: number): Box {
  const role = entity.role as TextRole;
  return letteringBox(textWidth(entity.text, role, entity.suffix), role, entity.at, entity.align, entity.rotation, px);
}

/** The same for a text that is not an entity yet, whose width (px) is known. */
export function letteringBox(widthPx: number, role: TextRole, at: Point, align: TextEntity['align'], rotation: number, px: number): Box {
  const size = LETTER_PX[role] * px;
  const width = widthPx * px;
  const along = align === 'start' ? width / 2 : align === 'end' ? -width / 2 : 0;
  // A ringed number is figures alone, and figures have nothing below the base line: its box stays within its ring.
  const [above, below] = role === 'bend number' ? [CAP_HEIGHT, 0] : [ABOVE, BELOW];
  const up = ((above - below) / 2) * size;
  const cos = rotation === 0 ? 1 : Math.cos(rotation);
  const sin = rotation === 0 ? 0 : Math.sin(rotation);
  const middle = { x: at.x + along * cos - up * sin, y: at.y + along * sin + up * cos };
  return box('text', middle, cos, sin, width / 2, ((above + below) / 2) * size);
}
