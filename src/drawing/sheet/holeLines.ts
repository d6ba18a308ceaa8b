/** Lines of the hole table: every opening by itself, or an even row or grid in one line. */
import { legLetter } from '../../core/part/names';
import type { CutoutShape } from '../../core/part/types';
import { formatAngle } from '../../core/units/formatLength';
import { unreachable } from '../../core/result';
import type { HoleRow } from '../../job/tables/holeRows';
import { short, type Words } from '../words';
import { inOnePiece, printed } from './wording';

export interface HoleLine {
  readonly called: string;
  readonly leg: string;
  readonly size: string;
  readonly along: string;
  readonly across: string;
  /** In the finished part. */
  readonly x: string;
  readonly y: string;
  readonly z: string;
}

/** Up to this many openings of one cut-out have a line each. */
const MOST_SINGLY = 4;
/** In a table longer than this every row and grid is told in one line. */
const LONG_TABLE = 24;
/** Readings this near, mm, are the same: a thousandth of what the table shows. */
const SAME_MM = 1e-5;

/** `Ø3.20`, `slot 18.00 × 3.20 at 90°`, `20.00 × 10.00, corners 2.00`. */
export function sizeWords(shape: CutoutShape, turn: number, words: Words): string {
  const length = (value: number): string => inOnePiece(short(words.length(value)));
  const half = ((turn % Math.PI) + Math.PI) % Math.PI;
  const turned = half < 1e-9 || Math.PI - half < 1e-9 ? '' : ` at ${formatAngle(half)}`;
  switch (shape.kind) {
    case 'round':
      return `Ø${length(shape.diameter)}`;
    case 'slot':
      return `slot ${length(shape.length)} × ${length(shape.width)}${turned}`;
    case 'rectangle':
      return `${length(shape.length)} × ${length(shape.width)}${shape.corner > 0 ? ` R${length(shape.corner)}` : ''}${turned}`;
    default:
      return unreachable(shape);
  }
}

/** Places of several openings in one direction: one figure, `8.00 + 6 × 15 = 98.00` where they are evenly apart, else from and to. */
export function placesWords(values: readonly number[], words: Words): string {
  const distinct = values.toSorted((a, b) => a - b).filter((v, i, all) => i === 0 || v - (all[i - 1] ?? 0) > SAME_MM);
  const [first, second] = distinct;
  const last = distinct.at(-1);
  if (first === undefined || last === undefined) return '';
  if (second === undefined) return inOnePiece(words.length(first));
  const pitch = second - first;
  const at = (value: number): string => inOnePiece(words.length(value));
  const even = distinct.every((v, i) => Math.abs(v - first - i * pitch) < SAME_MM * 10);
  return even ? `${at(first)} + ${distinct.length - 1} × ${inOnePiece(short(words.length(pitch)))} =\u00A0${at(last)}` : `${at(first)} to ${at(last)}`;
}

const spanWords = (values: readonly number[], words: Words): string => {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  return high - low < SAME_MM ? inOnePiece(words.length(low)) : `${inOnePiece(words.length(values[0] ?? low))} to ${inOnePiece(words.length(values.at(-1) ?? high))}`;
};

function oneLine(items: readonly HoleRow[], called: string, words: Words): HoleLine[] {
  const [first] = items;
  if (!first) return [];
  return [{
    called: printed(called),
    leg: legLetter(first.leg),
    size: sizeWords(first.shape, first.turn, words),
    along: placesWords(items.map((i) => i.along), words),
    across: placesWords(items.map((i) => i.across), words),
    x: spanWords(items.map((i) => i.finished.x), words),
    y: spanWords(items.map((i) => i.finished.y), words),
    z: spanWords(items.map((i) => i.finished.z), words),
  }];
}

/** A pattern's own name: `Peg hole 3` of a row is `Peg hole, 7 off`. */
const together = (items: readonly HoleRow[]): string => `${(items[0]?.called ?? '').replace(/ 1$/, '')}, ${items.length} off`;

export function holeLines(rows: readonly HoleRow[], words: Words): readonly HoleLine[] {
  const groups = new Map<string, HoleRow[]>();
  for (const row of rows) {
    const key = `${row.leg} ${row.cutout}`;
    const group = groups.get(key);
    if (group) group.push(row);
    else groups.set(key, [row]);
  }
  const most = rows.length > LONG_TABLE ? 1 : MOST_SINGLY;
  return [...groups.values()].flatMap((items) => (items.length > most ? oneLine(items, together(items), words) : items.flatMap((item) => oneLine([item], item.called, words))));
}
