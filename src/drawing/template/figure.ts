/** One part on paper, drawn and lettered: the whole of it, or what one tile shows. */
import { joined, NOTHING } from '../../core/geometry/bounds';
import { placedContour, placedSegment } from '../../core/geometry/pose';
import type { Bounds, Point } from '../../core/geometry/types';
import { unreachable } from '../../core/result';
import type { CutoutShape } from '../../core/part/types';
import { BEND_LINE_PAST_PX } from '../blankShape';
import type { Entity } from '../entities';
import { emptySheet, type Sheet } from '../placement';
import { textWidth } from '../textWidth';
import { short } from '../words';
import { bendLabels, block, blockHeight, datumOnPaper, holeSizes, partBlock, type LeftOut, type Row } from './templateLettering';
import { templateLines } from './templateLines';
import { templateShape, type TemplateShape } from './templateShape';
import type { TemplateSettings, TemplateSubject } from './types';
import type { Box } from '../boxes';

export interface Figure {
  readonly entities: readonly Entity[];
  readonly bounds: Bounds;
  /** What found no room on a tile. */
  readonly leftOut: readonly LeftOut[];
}

/** Said under the part's name; a wrapped template says another. */
export type FaceWords = (subject: TemplateSubject) => string;

export const FLAT_FACE: FaceWords = ({ face }) => (face === 'marked' ? 'marked face up' : 'mirrored: other face up');

function sizeWords(shape: CutoutShape, length: (mm: number) => string): string {
  const say = (mm: number): string => short(length(mm));
  switch (shape.kind) {
    case 'round':
      return `Ø${say(shape.diameter)}`;
    case 'slot':
      return `slot ${say(shape.length)} × ${say(shape.width)}`;
    case 'rectangle':
      return `${say(shape.length)} × ${say(shape.width)}`;
    default:
      return unreachable(shape);
  }
}

/** px: longer names go on in the next row. */
const LONGEST_ROW_PX = 320;

/** A text in rows that are not too long, broken between words, or within a word where one alone is too long. */
function inRows(role: Row['role'], text: string): readonly Row[] {
  const fits = (row: string): boolean => textWidth(row, role) <= LONGEST_ROW_PX;
  const rows: string[] = [];
  let row = '';
  for (const word of text.split(/\s+/).filter((w) => w !== '')) {
    if (row !== '' && fits(`${row} ${word}`)) {
      row = `${row} ${word}`;
      continue;
    }
    if (row !== '') rows.push(row);
    row = '';
    for (const letter of word) {
      if (!fits(row + letter)) {
        rows.push(row);
        row = '';
      }
      row += letter;
    }
  }
  return [...rows, ...(row === '' ? [] : [row])].map((said) => ({ role, text: said }));
}

/** The words of a part in three lines, in two, or in one, whichever finds room. */
export function partRows({ name, stockLine }: TemplateSubject, face: string): readonly (readonly Row[])[] {
  const title = inRows('part name', name);
  const note = (...said: readonly string[]): Row => ({ role: 'note text', text: said.filter((s) => s !== '').join(' · ') });
  const all = [...title, ...inRows('note text', stockLine), note(face)];
  // Long names stay in rows: all in one they would reach over the whole sheet.
  return title.length > 1 || textWidth(stockLine, 'note text') > LONGEST_ROW_PX ? [all] : [all, [...title, note(stockLine, face)], [note(name, stockLine, face)]];
}

/**
 * A part lettered on a sheet of its own. Without a window everything finds a place: what has none by the metal stands in a list below.
 * @param quarter turned a quarter to the left
 * @param window only what lies in it, for a tile
 */
export function figureOf(subject: TemplateSubject, settings: TemplateSettings, says: FaceWords, px: number, quarter: boolean, window?: { readonly shape: TemplateShape; readonly bounds: Bounds; readonly taken: readonly Box[] }): Figure {
  const shape = window?.shape ?? templateShape(subject.blank, subject.face, quarter);
  const sheet: Sheet = emptySheet(px);
  const lines = templateLines(shape, px, window?.bounds);
  sheet.add(lines.boxes);
  if (window) sheet.add(window.taken);
  const view = window?.bounds;
  const bends = view ? shape.bends.filter((bend) => lines.entities.some((e) => e.key === `bend ${bend.number} centre line`)) : shape.bends;
  const clipped = view ? bends.map((bend) => visible(bend, lines.entities)) : bends;
  const nameOf = ({ leg, cutout }: { readonly leg: number; readonly cutout: number }): string => subject.layout.part.legs[leg]?.cutouts[cutout]?.name ?? `opening ${cutout + 1}`;
  const lettered = [
    datumOnPaper(sheet, shape.datum, px, view),
    bendLabels(sheet, clipped, px, view),
    holeSizes(sheet, shape.groups, (group) => sizeWords(group.item.shape, settings.length), nameOf, px, view),
    partBlock(sheet, shape, partRows(subject, says(subject)), px, view),
  ];
  const entities = [...lines.entities, ...lettered.flatMap((l) => l.entities)];
  const leftOut = lettered.flatMap((l) => l.leftOut);
  const past = (BEND_LINE_PAST_PX + 1) * px;
  const whole = [sheet.bounds(), { minX: shape.bounds.minX - past, minY: shape.bounds.minY - past, maxX: shape.bounds.maxX + past, maxY: shape.bounds.maxY + past }].reduce(joined, NOTHING);
  if (window || leftOut.length === 0) return { entities, bounds: view ?? whole, leftOut };
  const rows = leftOut.map(({ text }): Row => ({ role: 'note text', text }));
  const list = block('list', rows, { x: shape.bounds.minX, y: whole.minY - 2 * px }, px);
  const height = blockHeight(rows, px);
  return {
    entities: [...entities, ...list.entities()],
    bounds: list.boxes.reduce<Bounds>(joined, { ...whole, minY: whole.minY - 2 * px - height }),
    leftOut: [],
  };
}

/** The bend with its centre line cut down to what this tile shows, so that its label stands by that. */
function visible<Bend extends { readonly number: number; readonly from: Point; readonly to: Point }>(bend: Bend, entities: readonly Entity[]): Bend {
  const drawn = entities.find((e) => e.key === `bend ${bend.number} centre line`);
  const segment = drawn?.kind === 'path' ? drawn.runs[0]?.segments[0] : undefined;
  return segment ? { ...bend, from: segment.from, to: segment.to } : bend;
}

/** Entities moved, with their keys told apart by a name in front. */
export function moved(entities: readonly Entity[], by: Point, name: string): readonly Entity[] {
  const move = (p: Point): Point => ({ x: p.x + by.x, y: p.y + by.y });
  return entities.map((entity): Entity => {
    const key = `${name} ${entity.key}`;
    switch (entity.kind) {
      case 'path':
        return { ...entity, key, runs: entity.runs.map((run) => ({ ...run, segments: run.segments.map((s) => placedSegment(s, move)) })) };
      case 'contours':
        return { ...entity, key, contours: entity.contours.map((c) => placedContour(c, move)) };
      case 'text':
        return { ...entity, key, at: move(entity.at) };
      default:
        return unreachable(entity);
    }
  });
}
