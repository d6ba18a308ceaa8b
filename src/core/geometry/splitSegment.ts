import { SAME_LENGTH_MM } from './tolerance';
import { line, segmentLength } from './segments';
import type { Point, Segment } from './types';

/** Point on a segment `length` mm from its start, measured along it. */
export function pointAlong(segment: Segment, length: number): Point {
  const whole = segmentLength(segment);
  if (whole === 0) return segment.from;
  const share = length / whole;
  if (segment.kind === 'line') {
    return {
      x: segment.from.x + (segment.to.x - segment.from.x) * share,
      y: segment.from.y + (segment.to.y - segment.from.y) * share,
    };
  }
  const { centre, radius, from, sweep } = segment;
  const angle = Math.atan2(from.y - centre.y, from.x - centre.x) + sweep * share;
  return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
}

/**
 * The segment cut in two, `length` mm from its start. A piece that would be nothing is left away, so the answer holds one
 * or two pieces; together they always make the whole segment.
 */
export function splitSegment(segment: Segment, length: number): { readonly before?: Segment; readonly after?: Segment } {
  const whole = segmentLength(segment);
  if (length <= SAME_LENGTH_MM) return { after: segment };
  if (length >= whole - SAME_LENGTH_MM) return { before: segment };
  const at = pointAlong(segment, length);
  if (segment.kind === 'line') return { before: line(segment.from, at), after: line(at, segment.to) };
  const sweep = segment.sweep * (length / whole);
  return {
    before: { ...segment, to: at, sweep },
    after: { ...segment, from: at, sweep: segment.sweep - sweep },
  };
}
