import type { Contour, Segment } from './types';

/**
 * Area inside a closed path, mm², positive when it runs anticlockwise. Exact for lines and arcs: the polygon of the ends
 * plus, for each arc, the signed circular segment r²(φ − sin φ)/2 between arc and chord.
 * Ends are taken relative to the first point, so that a small path far from the origin loses no figures.
 */
export function signedArea(path: readonly Segment[]): number {
  const first = path[0];
  if (!first) return 0;
  const { x: x0, y: y0 } = first.from;
  let twice = 0;
  for (const s of path) {
    twice += (s.from.x - x0) * (s.to.y - y0) - (s.to.x - x0) * (s.from.y - y0);
    if (s.kind === 'arc') twice += s.radius * s.radius * (s.sweep - Math.sin(s.sweep));
  }
  return twice / 2;
}

/** Area inside a contour, mm², never negative. */
export const contourArea = (contour: Contour): number =>
  contour.kind === 'circle' ? Math.PI * contour.radius * contour.radius : Math.abs(signedArea(contour.segments));
