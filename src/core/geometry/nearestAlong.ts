import { distance } from './points';
import { segmentLength } from './segments';
import { pointAlong } from './splitSegment';
import type { Point, Segment } from './types';

/** Where a path comes nearest to a point: which segment, how far along it (mm), and how far off the point is (mm). */
export interface Nearest {
  readonly segment: number;
  readonly along: number;
  readonly off: number;
}

function alongSegment(segment: Segment, p: Point): number {
  const length = segmentLength(segment);
  if (length === 0) return 0;
  if (segment.kind === 'line') {
    const dx = (segment.to.x - segment.from.x) / length;
    const dy = (segment.to.y - segment.from.y) / length;
    return Math.min(length, Math.max(0, (p.x - segment.from.x) * dx + (p.y - segment.from.y) * dy));
  }
  const { centre, from, sweep, radius } = segment;
  const turn = Math.atan2(p.y - centre.y, p.x - centre.x) - Math.atan2(from.y - centre.y, from.x - centre.x);
  const signed = sweep >= 0 ? turn : -turn;
  const onwards = ((signed % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
  if (onwards <= Math.abs(sweep)) return onwards * radius;
  // Past the arc's ends the nearer end is nearest.
  return distance(p, segment.from) <= distance(p, segment.to) ? 0 : length;
}

/** The place on a path nearest to a point; undefined for an empty path. */
export function nearestAlong(path: readonly Segment[], p: Point): Nearest | undefined {
  let best: Nearest | undefined;
  for (const [i, segment] of path.entries()) {
    const along = alongSegment(segment, p);
    const length = segmentLength(segment);
    const at = along <= 0 ? segment.from : along >= length ? segment.to : pointAlong(segment, along);
    const off = distance(p, at);
    if (!best || off < best.off) best = { segment: i, along, off };
  }
  return best;
}
