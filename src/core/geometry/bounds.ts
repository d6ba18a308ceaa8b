import type { Arc, Bounds, Contour, Point, Segment } from './types';

export const NOTHING: Bounds = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };

export const including = (b: Bounds, p: Point): Bounds => ({
  minX: Math.min(b.minX, p.x),
  minY: Math.min(b.minY, p.y),
  maxX: Math.max(b.maxX, p.x),
  maxY: Math.max(b.maxY, p.y),
});

export const joined = (a: Bounds, b: Bounds): Bounds => ({
  minX: Math.min(a.minX, b.minX),
  minY: Math.min(a.minY, b.minY),
  maxX: Math.max(a.maxX, b.maxX),
  maxY: Math.max(a.maxY, b.maxY),
});

const FULL_TURN = 2 * Math.PI;

/** Whether the arc passes the direction `angle` (rad) as seen from its centre. */
export function arcPasses(arc: Arc, angle: number): boolean {
  const start = Math.atan2(arc.from.y - arc.centre.y, arc.from.x - arc.centre.x);
  const turned = arc.sweep >= 0 ? angle - start : start - angle;
  const onwards = ((turned % FULL_TURN) + FULL_TURN) % FULL_TURN;
  return onwards <= Math.abs(arc.sweep);
}

/** Smallest upright rectangle round a segment; exact for arcs (their extreme points count). */
export function segmentBounds(segment: Segment): Bounds {
  let b = including(including(NOTHING, segment.from), segment.to);
  if (segment.kind === 'arc') {
    const { centre, radius } = segment;
    if (arcPasses(segment, 0)) b = including(b, { x: centre.x + radius, y: centre.y });
    if (arcPasses(segment, Math.PI / 2)) b = including(b, { x: centre.x, y: centre.y + radius });
    if (arcPasses(segment, Math.PI)) b = including(b, { x: centre.x - radius, y: centre.y });
    if (arcPasses(segment, -Math.PI / 2)) b = including(b, { x: centre.x, y: centre.y - radius });
  }
  return b;
}

export const pathBounds = (path: readonly Segment[]): Bounds => path.reduce((b, s) => joined(b, segmentBounds(s)), NOTHING);

export const contourBounds = (contour: Contour): Bounds =>
  contour.kind === 'path'
    ? pathBounds(contour.segments)
    : {
        minX: contour.centre.x - contour.radius,
        minY: contour.centre.y - contour.radius,
        maxX: contour.centre.x + contour.radius,
        maxY: contour.centre.y + contour.radius,
      };
