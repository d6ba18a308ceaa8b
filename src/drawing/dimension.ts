/** One dimension: extension lines, a line with arrow heads, and the figure in a gap in the line or beside it. */
import type { Point, Segment } from '../core/geometry/types';
import { line } from '../core/geometry/segments';
import { lineBox, type Box } from './boxes';
import type { Entity, PathEntity, Pick, TextEntity } from './entities';
import type { Plan } from './placement';
import { CAP_HEIGHT, LETTER_PX, letteringBox, textWidth } from './textWidth';

/** px, from the guide: arrow heads, where extension lines begin and how far they run past, room round a figure in its gap. */
export const ARROW_PX = 11;
const ARROW_HALF_PX = 11 / 6;
const EXTENSION_GAP_PX = 4;
const EXTENSION_PAST_PX = 8;
const FIGURE_ROOM_PX = 6;
/** Tail of an arrow that stands outside. */
const TAIL_PX = 7;

/** Where the figure stands: in a gap in the line, behind the end or before the start of the line, or level beside a steep line. */
export type FigurePlace = 'gap' | 'after' | 'before' | 'beside';

export interface DimensionSpec {
  readonly key: string;
  /** What is measured: the line's ends lie square above these two points. mm. */
  readonly from: Point;
  readonly to: Point;
  /** Unit direction that is measured along, from `from` to `to`. */
  readonly ux: number;
  readonly uy: number;
  /** Where the line runs: distance from the origin along the normal (−uy, ux), mm. */
  readonly level: number;
  readonly text: string;
  readonly suffix?: string;
  /** px that figure and suffix take: `figureWidth(text, suffix)`. */
  readonly width: number;
  readonly field?: string;
  readonly pick?: Pick;
  /** mm by which the extension line stands further off at its start than usual, to clear a centre line. */
  readonly clearFrom?: number;
  readonly clearTo?: number;
}

export const figureWidth = (text: string, suffix = ''): number => textWidth(text, 'dimension text', suffix);

/** A figure reads from below or from the right: never upside down. */
export function readable(angle: number): number {
  const folded = Math.atan2(Math.sin(angle), Math.cos(angle));
  if (folded > Math.PI / 2 + 1e-9) return folded - Math.PI;
  if (folded <= -Math.PI / 2 + 1e-9) return folded + Math.PI;
  return folded;
}

export const arrowHead = (tip: Point, ux: number, uy: number, px: number): { readonly segments: readonly Segment[]; readonly closed: boolean } => {
  const back = { x: tip.x - ux * ARROW_PX * px, y: tip.y - uy * ARROW_PX * px };
  const half = ARROW_HALF_PX * px;
  const left = { x: back.x - uy * half, y: back.y + ux * half };
  const right = { x: back.x + uy * half, y: back.y - ux * half };
  return { segments: [line(tip, left), line(left, right), line(right, tip)], closed: true };
};

const run = (from: Point, to: Point): { readonly segments: readonly Segment[]; readonly closed: boolean } => ({ segments: [line(from, to)], closed: false });

/** The places a figure can take for this length of line, best first. */
export function figurePlaces(spec: DimensionSpec, px: number): readonly FigurePlace[] {
  const length = ((spec.to.x - spec.from.x) * spec.ux + (spec.to.y - spec.from.y) * spec.uy) / px;
  const steep = Math.abs(spec.uy) > 0.85;
  if (length >= spec.width + 2 * FIGURE_ROOM_PX + 4) return ['gap'];
  return steep ? ['beside', 'after', 'before'] : ['after', 'before'];
}

/**
 * The dimension as entities and boxes, with its figure at `place`. The ends of its line are the measured points moved square to
 * the direction and nothing else, so that they stand apart by exactly what is measured.
 */
export function dimension(spec: DimensionSpec, place: FigurePlace, px: number): Plan {
  const { ux, uy, level } = spec;
  const nx = -uy;
  const ny = ux;
  const onLine = (p: Point): Point => {
    const rise = level - (p.x * nx + p.y * ny);
    return { x: p.x + nx * rise, y: p.y + ny * rise };
  };
  const start = onLine(spec.from);
  const end = onLine(spec.to);
  const length = (end.x - start.x) * ux + (end.y - start.y) * uy;
  const lengthPx = length / px;
  const along = (p: Point, mm: number): Point => ({ x: p.x + ux * mm, y: p.y + uy * mm });
  const gapPx = spec.width + 2 * FIGURE_ROOM_PX;
  const outside = place === 'gap' ? lengthPx < gapPx + 2 * (ARROW_PX - 2) : lengthPx < 2 * ARROW_PX + 6;
  const tail = (ARROW_PX + TAIL_PX) * px;

  const rotation = place === 'beside' ? 0 : readable(Math.atan2(uy, ux));
  const [middle, align] = figureAt();
  const drop = (CAP_HEIGHT / 2) * LETTER_PX['dimension text'] * px;
  const base = { x: middle.x + Math.sin(rotation) * drop, y: middle.y - Math.cos(rotation) * drop };

  function figureAt(): readonly [Point, TextEntity['align']] {
    const clear = (outside ? tail : 0) + FIGURE_ROOM_PX * px + (outside ? 0 : 2 * px);
    const reversed = Math.cos(rotation) * ux + Math.sin(rotation) * uy < 0;
    switch (place) {
      case 'gap':
        return [along(start, length / 2), 'middle'];
      case 'after':
        return [along(end, clear), reversed ? 'end' : 'start'];
      case 'before':
        return [along(start, -clear), reversed ? 'start' : 'end'];
      case 'beside': {
        const side = away(spec, level);
        const at = along(start, length / 2);
        const room = (FIGURE_ROOM_PX + 2) * px * side;
        return [{ x: at.x + nx * room, y: at.y + ny * room }, nx * side > 0 ? 'start' : 'end'];
      }
    }
  }

  const extensions = [extension(spec.from, start, spec.clearFrom ?? 0), extension(spec.to, end, spec.clearTo ?? 0)].filter((e) => e !== undefined);

  function extension(from: Point, to: Point, clear: number): readonly [Point, Point] | undefined {
    const rise = (to.x - from.x) * nx + (to.y - from.y) * ny;
    const way2 = Math.sign(rise);
    const begin = EXTENSION_GAP_PX * px + clear;
    if (Math.abs(rise) < begin) return undefined;
    const past = EXTENSION_PAST_PX * px * way2;
    return [
      { x: from.x + nx * begin * way2, y: from.y + ny * begin * way2 },
      { x: to.x + nx * past, y: to.y + ny * past },
    ];
  }

  const reachOut = outside ? tail : 0;
  const boxes: Box[] = [
    letteringBox(spec.width, 'dimension text', base, align, rotation, px),
    lineBox('line', along(start, -reachOut), along(end, reachOut), 2.5 * px),
    ...extensions.map(([a, b]) => lineBox('extension', a, b)),
  ];
  const common = spec.pick ? { pick: spec.pick } : {};
  return {
    boxes,
    entities: (): readonly Entity[] => {
      const runs: { readonly segments: readonly Segment[]; readonly closed: boolean }[] = [];
      if (place === 'gap') {
        const half = (length - gapPx * px) / 2;
        runs.push(run(start, along(start, half)), run(along(end, -half), end));
      } else runs.push(run(start, end));
      if (outside) runs.push(run(along(start, -tail), start), run(end, along(end, tail)));
      const way = outside ? -1 : 1;
      const text: TextEntity = {
        kind: 'text',
        key: `${spec.key} text`,
        role: 'dimension text',
        at: base,
        text: spec.text,
        align,
        rotation,
        ...(spec.suffix === undefined || spec.suffix === '' ? {} : { suffix: spec.suffix }),
        ...(spec.pick ? { pick: spec.pick } : {}),
        ...(spec.field === undefined ? {} : { field: spec.field }),
      };
      const path = (part: string, role: PathEntity['role'], of: PathEntity['runs']): PathEntity => ({ kind: 'path', key: `${spec.key} ${part}`, role, runs: of, ...common });
      return [
        path('extension', 'extension line', extensions.map(([a, b]) => run(a, b))),
        path('line', 'dimension line', runs),
        path('arrows', 'arrow', [arrowHead(start, -ux * way, -uy * way, px), arrowHead(end, ux * way, uy * way, px)]),
        text,
      ];
    },
  };
}

/** Which side of the measured points the line runs on: 1 along the normal, −1 against it. */
function away(spec: DimensionSpec, level: number): 1 | -1 {
  const height = (p: Point): number => -p.x * spec.uy + p.y * spec.ux;
  return level >= (height(spec.from) + height(spec.to)) / 2 ? 1 : -1;
}
