/** Blocks: the pieces that a sheet is put together from. Paper mm, y upwards; a block is placed by its upper left corner. */
import { line } from '../../core/geometry/segments';
import type { Point } from '../../core/geometry/types';
import type { Entity, PathEntity, TextEntity } from '../entities';
import { PAPER_PX_MM } from '../page';
import { LETTER_PX, textWidth, type TextRole } from '../textWidth';

/** A block at the width it has been given. */
export interface Laid {
  readonly height: number;
  readonly draw: (at: Point) => readonly Entity[];
  /** The block in two, the first at most this high; undefined where no part of it fits or it is not to be broken. */
  readonly split: (height: number) => readonly [Laid, Laid] | undefined;
}

export interface Block {
  /** mm: narrower it cannot be read. */
  readonly least: number;
  /** mm: narrower it has to break names and figures on to two lines. */
  readonly natural: number;
  /** mm: wider brings nothing. */
  readonly liked: number;
  readonly at: (width: number) => Laid;
}

/** mm of paper. */
export const mm = (px: number): number => px * PAPER_PX_MM;
export const widthOf = (text: string, role: TextRole): number => mm(textWidth(text, role));

/** mm from base line to base line, and from the top of a line to its base line. */
export const lineHeight = (role: TextRole): number => mm(LETTER_PX[role] * 1.3);
export const baseDrop = (role: TextRole): number => mm(LETTER_PX[role] * 0.96);

export const text = (key: string, role: TextRole, at: Point, said: string, align: TextEntity['align'] = 'start'): TextEntity => ({ kind: 'text', key, role, at, text: said, align, rotation: 0 });

export const rule = (key: string, role: PathEntity['role'], ...lines: readonly (readonly [Point, Point])[]): PathEntity => ({
  kind: 'path',
  key,
  role,
  runs: lines.map(([from, to]) => ({ segments: [line(from, to)], closed: false })),
});

/** Room under a heading, mm. */
const UNDER_HEADING = 1.2;
export const HEADING_HEIGHT = lineHeight('sheet heading') + UNDER_HEADING;

/** A heading, with a smaller note after it: the first of `notes` for which there is room. */
export function heading(key: string, at: Point, said: string, notes: readonly string[], room: number): readonly Entity[] {
  const base = at.y - baseDrop('sheet heading');
  const title = text(`${key} heading`, 'sheet heading', { x: at.x, y: base }, said);
  const from = widthOf(said, 'sheet heading') + 2.4;
  const note = notes.find((each) => from + widthOf(each, 'sheet caption') <= room);
  return note === undefined ? [title] : [title, text(`${key} heading note`, 'sheet caption', { x: at.x + from, y: base }, note)];
}

export const unbroken = (height: number, draw: Laid['draw']): Laid => ({ height, draw, split: () => undefined });

/** One above the other, `gap` mm apart. */
export function stacked(parts: readonly Laid[], gap: number): Laid {
  const height = parts.reduce((sum, part, i) => sum + part.height + (i > 0 ? gap : 0), 0);
  return {
    height,
    draw: (at) => {
      let y = at.y;
      return parts.flatMap((part) => {
        const drawn = part.draw({ x: at.x, y });
        y -= part.height + gap;
        return drawn;
      });
    },
    split: (room) => {
      let used = 0;
      for (const [i, part] of parts.entries()) {
        if (used + part.height > room) {
          const halves = part.split(room - used);
          const before = [...parts.slice(0, i), ...(halves ? [halves[0]] : [])];
          if (before.length === 0) return undefined;
          return [stacked(before, gap), stacked([...(halves ? [halves[1]] : [part]), ...parts.slice(i + 1)], gap)];
        }
        used += part.height + gap;
      }
      return undefined;
    },
  };
}
