/** A ruled table that measures its own columns, wraps long names and can go on over the page. Paper mm. */
import type { Point } from '../../core/geometry/types';
import { ring } from '../balloon';
import type { Entity } from '../entities';
import { PAPER_PX_MM } from '../page';
import { CAP_HEIGHT, LETTER_PX } from '../textWidth';
import { heading, HEADING_HEIGHT, lineHeight, mm, rule, text, widthOf, type Block, type Laid } from './block';
import { brokenTo } from './wording';

export interface Column {
  /** Lines of the column's head. */
  readonly head: readonly string[];
  readonly align: 'start' | 'end' | 'middle';
  /** mm: a column may be made this narrow, and grows no wider than `most`, by breaking its cells between words. */
  readonly least?: number;
  readonly most?: number;
  /** Lines to a cell, the last of which is cut with dots where more are needed: for names. Figures are never cut. */
  readonly mostLines?: number;
}

/** Text, or a bend's ringed number. */
export type Cell = string | { readonly ring: number };

export interface TableSpec {
  readonly key: string;
  readonly title: string;
  readonly note: string;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Cell[])[];
  /** Stands under the table in small letters. */
  readonly below?: string;
}

const CELL = 'sheet figure';
const HEAD = 'sheet caption';
/** mm: between columns at the least and at the most, what more than the least is liked, round the text of a row, and least height of a row. */
const GAP = 3;
const WIDEST_GAP = 15;
const LIKED_GAP = 3;
const ROW_ROOM = 1.4;
const SIDE = 0.8;
/** px: room that a ringed number takes. */
const RING_ROOM_PX = 26;
/** Rows that a table keeps together with its head. */
const TOGETHER = 2;

const cellWidth = (cell: Cell): number => (typeof cell === 'string' ? widthOf(cell, CELL) : mm(RING_ROOM_PX));

interface Measured {
  readonly natural: readonly number[];
  readonly least: readonly number[];
}

function measured({ columns, rows }: TableSpec): Measured {
  const heads = columns.map((column) => Math.max(...column.head.map((said) => widthOf(said, HEAD))));
  const natural = columns.map((column, i) => {
    const wanted = Math.max(heads[i] ?? 0, ...rows.map((row) => cellWidth(row[i] ?? '')));
    return column.most === undefined ? wanted : Math.max(heads[i] ?? 0, Math.min(column.most, wanted));
  });
  // A head is never cut, nor a figure broken: only between the words of a cell.
  const word = columns.map((column, i) =>
    column.mostLines === undefined ? Math.max(0, ...rows.flatMap((row) => { const cell = row[i] ?? ''; return typeof cell === 'string' ? cell.split(' ').map(cellWidth) : [cellWidth(cell)]; })) : 0,
  );
  const least = columns.map((column, i) => (column.least === undefined ? (natural[i] ?? 0) : Math.max(heads[i] ?? 0, word[i] ?? 0, Math.min(column.least, natural[i] ?? 0))));
  return { natural: natural.map((width, i) => Math.max(width, least[i] ?? 0)), least };
}

const total = (widths: readonly number[]): number => widths.reduce((sum, w) => sum + w, 0) + GAP * Math.max(0, widths.length - 1) + 2 * SIDE;

/** Widths and left edges of the columns in the room given: names give way first, then gaps grow. */
function columnsIn(width: number, { natural, least }: Measured): { readonly widths: readonly number[]; readonly lefts: readonly number[] } {
  const short = Math.max(0, total(natural) - width);
  const give = natural.reduce((sum, w, i) => sum + w - (least[i] ?? 0), 0);
  const share = give > 0 ? Math.min(1, short / give) : 0;
  const widths = natural.map((w, i) => w - share * (w - (least[i] ?? 0)));
  const spare = Math.max(0, width - total(widths));
  const gap = Math.min(WIDEST_GAP, GAP + spare / Math.max(1, widths.length - 1));
  const lefts: number[] = [];
  let x = SIDE;
  for (const w of widths) {
    lefts.push(x);
    x += w + gap;
  }
  return { widths, lefts };
}

export function tableBlock(spec: TableSpec): Block {
  const sizes = measured(spec);
  const natural = total(sizes.natural);
  return { least: total(sizes.least), natural, liked: natural + LIKED_GAP * (spec.columns.length - 1), at: (width) => laid(spec, sizes, width, 0, spec.rows.length) };
}

function laid(spec: TableSpec, sizes: Measured, room: number, from: number, to: number): Laid {
  const { columns, key } = spec;
  // A table of few columns is not drawn out over the whole sheet.
  const width = Math.min(room, total(sizes.natural) + (WIDEST_GAP - GAP) * (columns.length - 1));
  const { widths, lefts } = columnsIn(width, sizes);
  const rows = spec.rows.slice(from, to).map((row) => {
    // A hair wider than the column, so that a text that has set its width is not broken by a rounding.
    const cells = row.map((cell, i) => (typeof cell === 'string' ? brokenTo(cell, CELL, (widths[i] ?? 0) / PAPER_PX_MM + 0.01, columns[i]?.mostLines) : cell));
    const lines = Math.max(1, ...cells.map((cell) => ('ring' in cell ? 1 : cell.length)));
    return { cells, height: lines * lineHeight(CELL) + ROW_ROOM };
  });
  const headLines = Math.max(...columns.map((column) => column.head.length));
  const headHeight = headLines * lineHeight(HEAD) + 1.2;
  const below = spec.below !== undefined && to === spec.rows.length ? brokenTo(spec.below, 'sheet caption', width / PAPER_PX_MM) : [];
  const belowHeight = below.length > 0 ? below.length * lineHeight('sheet caption') + 1 : 0;
  const top = HEADING_HEIGHT + headHeight;
  const height = top + rows.reduce((sum, row) => sum + row.height, 0) + belowHeight;
  const title = from === 0 ? spec.title : `${spec.title}, continued`;

  const draw = (at: Point): readonly Entity[] => {
    const right = at.x + width;
    const level = (y: number): readonly [Point, Point] => [{ x: at.x, y }, { x: right, y }];
    const anchor = (i: number): number => at.x + (lefts[i] ?? 0) + { start: 0, middle: (widths[i] ?? 0) / 2, end: widths[i] ?? 0 }[columns[i]?.align ?? 'start'];
    const found: Entity[] = [...heading(key, at, title, from === 0 ? [spec.note] : [], width)];
    const headFoot = at.y - top;
    columns.forEach((column, i) => {
      column.head.forEach((said, j) => {
        const up = (column.head.length - 1 - j) * lineHeight(HEAD) + 1.3;
        if (said !== '') found.push(text(`${key} head ${i} ${j}`, HEAD, { x: anchor(i), y: headFoot + up }, said, column.align));
      });
    });
    found.push(rule(`${key} head rule`, 'sheet rule', level(headFoot)));
    let y = headFoot;
    const hairs: (readonly [Point, Point])[] = [];
    rows.forEach((row, r) => {
      const middle = y - row.height / 2;
      row.cells.forEach((cell, i) => {
        const name = `${key} ${from + r} ${i}`;
        if ('ring' in cell) {
          found.push(...ring(name, { x: anchor(i), y: middle }, cell.ring, { kind: 'bend', leg: '' }, PAPER_PX_MM));
          return;
        }
        cell.forEach((said, j) => {
          const base = middle + ((cell.length - 1) / 2 - j) * lineHeight(CELL) - mm((CAP_HEIGHT / 2) * LETTER_PX[CELL]);
          if (said !== '') found.push(text(`${name} ${j}`, CELL, { x: anchor(i), y: base }, said, columns[i]?.align ?? 'start'));
        });
      });
      y -= row.height;
      if (r < rows.length - 1) hairs.push(level(y));
    });
    if (hairs.length > 0) found.push(rule(`${key} rows`, 'sheet hair', ...hairs));
    found.push(rule(`${key} foot`, 'sheet rule', level(y)));
    below.forEach((said, j) => found.push(text(`${key} below ${j}`, 'sheet caption', { x: at.x, y: y - 1 - mm(LETTER_PX['sheet caption'] * 0.96) - j * lineHeight('sheet caption') }, said)));
    return found;
  };

  const split: Laid['split'] = (room) => {
    let used = top;
    let fits = 0;
    while (fits < rows.length && used + (rows[fits]?.height ?? 0) <= room) used += rows[fits++]?.height ?? 0;
    if (fits === rows.length) fits -= 1;
    if (fits < TOGETHER || rows.length - fits < 1) return undefined;
    return [laid(spec, sizes, width, from, from + fits), laid(spec, sizes, width, from + fits, to)];
  };
  return { height, draw, split };
}

