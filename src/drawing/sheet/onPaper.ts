/** A drawing brought to a sheet: scaled, moved, and without what is for the screen only. */
import { placedSegment } from '../../core/geometry/pose';
import type { Contour, Point, Segment } from '../../core/geometry/types';
import { unreachable } from '../../core/result';
import type { Entity } from '../entities';

/** What a point of the drawing becomes on the sheet: times `ratio`, plus `x` and `y`. */
export interface Placing {
  readonly ratio: number;
  readonly x: number;
  readonly y: number;
}

const scaledSegment = (s: Segment, ratio: number, move: (p: Point) => Point): Segment => {
  const placed = placedSegment(s, move);
  return placed.kind === 'arc' ? { ...placed, radius: placed.radius * ratio } : placed;
};

const scaledContour = (c: Contour, ratio: number, move: (p: Point) => Point): Contour =>
  c.kind === 'circle'
    ? { kind: 'circle', centre: move(c.centre), radius: c.radius * ratio }
    : { kind: 'path', segments: c.segments.map((s) => scaledSegment(s, ratio, move)) };

/** The entity on the sheet. Lettering and line widths keep their size; nothing can be picked or changed on paper. */
export function onPaper(entity: Entity, key: string, { ratio, x, y }: Placing): Entity {
  const move = (p: Point): Point => ({ x: x + p.x * ratio, y: y + p.y * ratio });
  const { role } = entity;
  switch (entity.kind) {
    case 'path':
      return { kind: 'path', key, role, runs: entity.runs.map((run) => ({ closed: run.closed, segments: run.segments.map((s) => scaledSegment(s, ratio, move)) })) };
    case 'contours':
      return { kind: 'contours', key, role, contours: entity.contours.map((c) => scaledContour(c, ratio, move)) };
    case 'text': {
      const { at, text, align, rotation, suffix } = entity;
      return { kind: 'text', key, role, at: move(at), text, align, rotation, ...(suffix === undefined ? {} : { suffix }) };
    }
    default:
      return unreachable(entity);
  }
}
