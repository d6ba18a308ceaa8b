/** The ruled title block along the foot of a sheet, and the border round it. Fields after ISO 7200 (from memory). Paper mm. */
import type { Point } from '../../core/geometry/types';
import type { Entity } from '../entities';
import { PAPER_PX_MM } from '../page';
import type { TextRole } from '../textWidth';
import { baseDrop, lineHeight, rule, text, widthOf } from './block';
import { brokenTo, cutTo } from './wording';

export interface TitleCell {
  readonly caption: string;
  readonly value: string;
  /** Share of the row's width. */
  readonly share: number;
  readonly role: 'sheet title' | 'sheet heading' | 'sheet figure';
}

/** mm: heights of the two rows, and room inside a cell. */
const TALL = 13.6;
const LOW = 9.2;
const SIDE = 1.8;
const TOP = 0.7;

export const TITLE_HEIGHT = TALL + LOW;

/** A value in its own letters on one line, else in smaller ones on two, the second cut with dots. */
function set(value: string, role: TextRole, room: number): { readonly role: TextRole; readonly lines: readonly string[] } {
  const px = room / PAPER_PX_MM;
  if (widthOf(value, role) <= room) return { role, lines: [value] };
  const smaller: TextRole = role === 'sheet title' ? 'sheet heading' : role;
  return role === 'sheet figure' ? { role, lines: [cutTo(value, role, px)] } : { role: smaller, lines: brokenTo(value, smaller, px, 2) };
}

/** @param at upper left corner */
export function titleBlock(tall: readonly TitleCell[], low: readonly TitleCell[], at: Point, width: number): readonly Entity[] {
  const found: Entity[] = [];
  const divided = at.y - TALL;
  const rows: readonly (readonly [readonly TitleCell[], number, number])[] = [[tall, at.y, TALL], [low, divided, LOW]];
  rows.forEach(([cells, top, height], r) => {
    const all = cells.reduce((sum, cell) => sum + cell.share, 0);
    let x = at.x;
    cells.forEach((cell, i) => {
      const own = (width * cell.share) / all;
      const room = own - 2 * SIDE;
      const key = `title ${r} ${i}`;
      if (i > 0) found.push(rule(`${key} side`, 'sheet rule', [{ x, y: top }, { x, y: top - height }]));
      const caption = cutTo(cell.caption, 'sheet caption', room / PAPER_PX_MM);
      found.push(text(`${key} caption`, 'sheet caption', { x: x + SIDE, y: top - TOP - baseDrop('sheet caption') }, caption));
      const { role, lines } = set(cell.value, cell.role, room);
      const under = top - TOP - lineHeight('sheet caption');
      const spare = lines.length === 1 && r === 0 ? (height - TOP - lineHeight('sheet caption') - lineHeight(role)) / 2 : 0;
      lines.forEach((said, j) => found.push(text(`${key} value ${j}`, role, { x: x + SIDE, y: under - spare - baseDrop(role) - j * lineHeight(role) }, said)));
      x += own;
    });
  });
  const right = at.x + width;
  found.push(
    rule('title divide', 'sheet rule', [{ x: at.x, y: divided }, { x: right, y: divided }]),
    rule('title top', 'sheet border', [at, { x: right, y: at.y }]),
  );
  return found;
}
