/** Lettering on paper: what is written where, at what size, and how much room the drawing has kept for it. mm. */
import type { Point } from '../core/geometry/types';
import type { TextEntity } from '../drawing/entities';
import { PAPER_PX_MM } from '../drawing/page';
import { LETTER_PX, SUFFIX_GAP_PX, textWidth, type TextRole } from '../drawing/textWidth';

export interface TextPiece {
  readonly role: TextRole;
  readonly text: string;
  readonly at: Point;
  readonly align: TextEntity['align'];
  /** Height of the letters' body. */
  readonly size: number;
  readonly width: number;
}

const plain = (role: TextRole, text: string, at: Point, align: TextEntity['align']): TextPiece => ({
  role,
  text,
  at,
  align,
  size: LETTER_PX[role] * PAPER_PX_MM,
  width: textWidth(text, role) * PAPER_PX_MM,
});

/** A text entity as one piece, or as two where a smaller word follows the figure. */
export function setText(entity: TextEntity): readonly TextPiece[] {
  const role = entity.role as TextRole;
  const { text, suffix = '', at, align, rotation } = entity;
  if (suffix === '') return text === '' ? [] : [plain(role, text, at, align)];
  const whole = textWidth(text, role, suffix) * PAPER_PX_MM;
  const figure = textWidth(text, role) * PAPER_PX_MM;
  const begin = align === 'start' ? 0 : align === 'middle' ? -whole / 2 : -whole;
  const along = (by: number): Point => ({ x: at.x + by * Math.cos(rotation), y: at.y + by * Math.sin(rotation) });
  return [plain(role, text, along(begin), 'start'), plain('basis text', suffix, along(begin + figure + SUFFIX_GAP_PX * PAPER_PX_MM), 'start')];
}
