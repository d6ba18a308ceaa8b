/** A bend's ringed number with its words, and the letter of a leg. Boxes come first, entities only once a place is taken. */
import { line } from '../core/geometry/segments';
import type { Point } from '../core/geometry/types';
import { box, lineBox, type Box } from './boxes';
import type { Entity, Pick, TextEntity } from './entities';
import type { Plan } from './placement';
import { CAP_HEIGHT, LETTER_PX, letteringBox, textWidth, type TextRole } from './textWidth';

/** px: radius of the ring, and from its middle to the words. */
export const RING_PX = 11;
export const RING_TO_WORDS_PX = 17;
const DOT_PX = 2.4;

/** Base line that puts figures or capitals of this role level with `middle`. */
const centredBase = (middle: Point, role: TextRole, px: number): Point => ({ x: middle.x, y: middle.y - (CAP_HEIGHT / 2) * LETTER_PX[role] * px });

/** The ring and its number about `middle`. */
export function ring(key: string, middle: Point, number: number, pick: Pick, px: number): readonly Entity[] {
  return [
    { kind: 'contours', key: `${key} ring`, role: 'balloon', pick, contours: [{ kind: 'circle', centre: middle, radius: RING_PX * px }] },
    { kind: 'text', key: `${key} number`, role: 'bend number', pick, at: centredBase(middle, 'bend number', px), text: String(number), align: 'middle', rotation: 0 },
  ];
}

export const ringBox = (middle: Point, px: number): Box => box('text', middle, 1, 0, (RING_PX + 1) * px, (RING_PX + 1) * px);

export interface Balloon {
  readonly key: string;
  readonly number: number;
  /** `45° up`, and its width in px. */
  readonly words: string;
  readonly width: number;
  readonly field: string;
  readonly pick: Pick;
}

export const balloon = (key: string, number: number, words: string, field: string, pick: Pick): Balloon => ({ key, number, words, width: textWidth(words, 'bend text'), field, pick });

/** A balloon about `middle`, its words to the right (`start`) or the left (`end`), with a leader from a dot at `from`. */
export function standingBalloon(said: Balloon, from: Point, middle: Point, side: 'start' | 'end', px: number): Plan {
  const { key, pick } = said;
  const length = Math.hypot(middle.x - from.x, middle.y - from.y);
  const at = (mm: number): Point => (length > 0 ? { x: from.x + ((middle.x - from.x) * mm) / length, y: from.y + ((middle.y - from.y) * mm) / length } : from);
  const to = at(Math.max(0, length - RING_PX * px));
  const words = centredBase({ x: middle.x + RING_TO_WORDS_PX * px * (side === 'start' ? 1 : -1), y: middle.y }, 'bend text', px);
  return {
    // The leader's box begins a little off the dot, so that it is not charged for the metal that it points at.
    boxes: [ringBox(middle, px), letteringBox(said.width, 'bend text', words, side, 0, px), lineBox('leader', at(Math.min(length, 3 * px)), to, px)],
    entities: () => [
      { kind: 'path', key: `${key} leader`, role: 'leader', pick, runs: [{ segments: [line(from, to)], closed: false }] },
      { kind: 'contours', key: `${key} dot`, role: 'arrow', pick, contours: [{ kind: 'circle', centre: from, radius: DOT_PX * px }] },
      ...ring(key, middle, said.number, pick, px),
      { kind: 'text', key: `${key} words`, role: 'bend text', pick, field: said.field, at: words, text: said.words, align: side, rotation: 0 },
    ],
  };
}

/** px of the square in which a leg's letter stands, which a sink may fill when the leg is chosen. */
export const LETTER_BOX_PX = 24;

/** The letter of a leg, ready to stand anywhere. */
export function letter(leg: string, text: string, px: number): (middle: Point) => Plan {
  const half = (Math.max(LETTER_BOX_PX, textWidth(text, 'leg letter') + 6) / 2) * px;
  return (middle) => ({
    boxes: [box('text', middle, 1, 0, half, (LETTER_BOX_PX / 2) * px)],
    entities: (): readonly TextEntity[] => [
      { kind: 'text', key: `${leg} letter`, role: 'leg letter', pick: { kind: 'leg', leg }, at: centredBase(middle, 'leg letter', px), text, align: 'middle', rotation: 0 },
    ],
  });
}
