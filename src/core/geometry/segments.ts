import { unreachable } from '../result';
import { distance } from './points';
import type { Arc, ClosedPath, Contour, Line, Point, Segment } from './types';

export const line = (from: Point, to: Point): Line => ({ kind: 'line', from, to });

/** The arc about `centre` that begins at angle `start` and turns by `sweep` (rad, signed). */
export function arcAbout(centre: Point, radius: number, start: number, sweep: number): Arc {
  const at = (angle: number): Point => ({ x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) });
  return { kind: 'arc', from: at(start), to: at(start + sweep), centre, radius, sweep };
}

/** The same arc with its ends put exactly where the neighbours' ends are, so that a path closes to the last bit. */
export const withEnds = (arc: Arc, from: Point, to: Point): Arc => ({ ...arc, from, to });

/** mm along a segment. */
export function segmentLength(segment: Segment): number {
  switch (segment.kind) {
    case 'line':
      return distance(segment.from, segment.to);
    case 'arc':
      return Math.abs(segment.sweep) * segment.radius;
    default:
      return unreachable(segment);
  }
}

export const pathLength = (path: readonly Segment[]): number => path.reduce((sum, segment) => sum + segmentLength(segment), 0);

export const contourLength = (contour: Contour): number =>
  contour.kind === 'circle' ? 2 * Math.PI * contour.radius : pathLength(contour.segments);

/** The path walked the other way round. */
export const reversed = (path: ClosedPath): ClosedPath =>
  path.toReversed().map((s) => (s.kind === 'line' ? line(s.to, s.from) : { ...s, from: s.to, to: s.from, sweep: -s.sweep }));
