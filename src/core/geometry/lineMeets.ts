import { arcPasses } from './bounds';
import type { Contour, Line, Segment } from './types';

function lineMeetsLine(a: Line, b: Line): boolean {
  const ux = a.to.x - a.from.x;
  const uy = a.to.y - a.from.y;
  const vx = b.to.x - b.from.x;
  const vy = b.to.y - b.from.y;
  const cross = ux * vy - uy * vx;
  const wx = b.from.x - a.from.x;
  const wy = b.from.y - a.from.y;
  if (cross === 0) return false;
  const alongA = (wx * vy - wy * vx) / cross;
  const alongB = (wx * uy - wy * ux) / cross;
  return alongA >= 0 && alongA <= 1 && alongB >= 0 && alongB <= 1;
}

/** Shares of the way along the line, from 0 to 1, at which it crosses a circle. */
function circleCrossings(a: Line, centre: { readonly x: number; readonly y: number }, radius: number): readonly number[] {
  const ux = a.to.x - a.from.x;
  const uy = a.to.y - a.from.y;
  const wx = a.from.x - centre.x;
  const wy = a.from.y - centre.y;
  const square = ux * ux + uy * uy;
  const half = ux * wx + uy * wy;
  const inside = half * half - square * (wx * wx + wy * wy - radius * radius);
  if (square === 0 || inside < 0) return [];
  const root = Math.sqrt(inside);
  return [(-half - root) / square, (-half + root) / square].filter((share) => share >= 0 && share <= 1);
}

/** Whether a straight line crosses or touches a segment. Parallel lines do not count as meeting. */
export function lineMeets(a: Line, b: Segment): boolean {
  if (b.kind === 'line') return lineMeetsLine(a, b);
  return circleCrossings(a, b.centre, b.radius).some((share) => {
    const x = a.from.x + (a.to.x - a.from.x) * share;
    const y = a.from.y + (a.to.y - a.from.y) * share;
    return arcPasses(b, Math.atan2(y - b.centre.y, x - b.centre.x));
  });
}

/** Whether a straight line crosses or touches the edge of a cut-out. */
export const lineMeetsContour = (a: Line, contour: Contour): boolean =>
  contour.kind === 'circle'
    ? circleCrossings(a, contour.centre, contour.radius).length > 0
    : contour.segments.some((segment) => lineMeets(a, segment));
