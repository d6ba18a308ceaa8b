/** A bend's ringed number with its words, and the letter of a leg. */
import { line } from '../core/geometry/segments';
import type { Point } from '../core/geometry/types';
import { box, lineBox, type Box } from './boxes';
import type { Entity, Pick, TextEntity } from './entities';
import { CAP_HEIGHT, LETTER_PX, textBox, textWidth, type TextRole } from './textWidth';

/** px: radius of the ring, and from its middle to the words. */
export const RING_PX = 11;
export const RING_TO_WORDS_PX = 17;
const DOT_PX = 2.4;

/** Base line that puts figures or capitals of this role level with `middle`. */
export const centredBase = (middle: Point, role: TextRole, px: number): Point => ({ x: middle.x, y: middle.y - (CAP_HEIGHT / 2) * LETTER_PX[role] * px });

/** The ring and its number about `middle`. */
export function ring(key: string, middle: Point, number: number, pick: Pick, px: number): { readonly boxes: readonly Box[]; readonly entities: readonly Entity[] } {
  return {
    boxes: [box('text', middle, 1, 0, (RING_PX + 1) * px, (RING_PX + 1) * px)],
    entities: [
      { kind: 'contours', key: `${key} ring`, role: 'balloon', pick, contours: [{ kind: 'circle', centre: middle, radius: RING_PX * px }] },
      { kind: 'text', key: `${key} number`, role: 'bend number', pick, at: centredBase(middle, 'bend number', px), text: String(number), align: 'middle', rotation: 0 },
    ],
  };
}

/** Words such as `45° up` to the right (`start`) or the left (`end`) of a ring about `middle`, `up` mm above its middle. */
export function ringWords(key: string, middle: Point, words: string, side: 'start' | 'end', up: number, pick: Pick, field: string, px: number): TextEntity {
  const out = RING_TO_WORDS_PX * px * (side === 'start' ? 1 : -1);
  const at = centredBase({ x: middle.x + out, y: middle.y + up }, 'bend text', px);
  return { kind: 'text', key: `${key} words`, role: 'bend text', pick, field, at, text: words, align: side, rotation: 0 };
}

/** A leader from a dot at `from` to the edge of the ring about `middle`. */
export function leader(key: string, from: Point, middle: Point, pick: Pick, px: number): { readonly boxes: readonly Box[]; readonly entities: readonly Entity[] } {
  const length = Math.hypot(middle.x - from.x, middle.y - from.y);
  const share = length > 0 ? Math.max(0, 1 - (RING_PX * px) / length) : 0;
  const to = { x: from.x + (middle.x - from.x) * share, y: from.y + (middle.y - from.y) * share };
  // The box begins a little off the dot, so that it is not charged for the metal that it points at.
  const off = Math.min(share, length > 0 ? (3 * px) / length : 0);
  const begin = { x: from.x + (middle.x - from.x) * off, y: from.y + (middle.y - from.y) * off };
  return {
    boxes: [lineBox('line', begin, to, px)],
    entities: [
      { kind: 'path', key: `${key} leader`, role: 'leader', pick, runs: [{ segments: [line(from, to)], closed: false }] },
      { kind: 'contours', key: `${key} dot`, role: 'arrow', pick, contours: [{ kind: 'circle', centre: from, radius: DOT_PX * px }] },
    ],
  };
}

/** px of the square in which a leg's letter stands, which a sink may fill when the leg is chosen. */
export const LETTER_BOX_PX = 24;

/** The letter of a leg about `middle`. */
export function letter(key: string, middle: Point, text: string, leg: string, px: number): { readonly boxes: readonly Box[]; readonly entity: TextEntity } {
  const entity: TextEntity = { kind: 'text', key, role: 'leg letter', pick: { kind: 'leg', leg }, at: centredBase(middle, 'leg letter', px), text, align: 'middle', rotation: 0 };
  const half = (Math.max(LETTER_BOX_PX, textWidth(text, 'leg letter') + 6) / 2) * px;
  return { boxes: [box('text', middle, 1, 0, half, (LETTER_BOX_PX / 2) * px), textBox(entity, px)], entity };
}
