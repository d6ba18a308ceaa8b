/** Whether two drawn shapes are the same to the last bit: told from the numbers, which is cheaper than writing both out. */
import type { Contour, Segment } from '../../core/geometry/types';
import type { Entity } from '../../drawing/entities';

function sameSegments(a: readonly Segment[], b: readonly Segment[]): boolean {
  if (a === b) return true;
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) {
    const s = a[i];
    const t = b[i];
    if (!s || !t || s.from.x !== t.from.x || s.from.y !== t.from.y || s.to.x !== t.to.x || s.to.y !== t.to.y) return false;
    if (s.kind === 'line') {
      if (t.kind !== 'line') return false;
    } else if (t.kind !== 'arc' || s.sweep !== t.sweep || s.radius !== t.radius || s.centre.x !== t.centre.x || s.centre.y !== t.centre.y) return false;
  }
  return true;
}

const sameContour = (a: Contour, b: Contour): boolean =>
  a.kind === 'path'
    ? b.kind === 'path' && sameSegments(a.segments, b.segments)
    : b.kind === 'circle' && a.radius === b.radius && a.centre.x === b.centre.x && a.centre.y === b.centre.y;

/** Of two paths or two sets of contours; texts never count as the same. */
export function sameShape(a: Entity, b: Entity): boolean {
  if (a.kind === 'path') {
    if (b.kind !== 'path' || a.runs.length !== b.runs.length) return false;
    for (let i = 0; i < a.runs.length; i++) {
      const mine = a.runs[i];
      const other = b.runs[i];
      if (!mine || !other || mine.closed !== other.closed || !sameSegments(mine.segments, other.segments)) return false;
    }
    return true;
  }
  if (a.kind === 'contours' && b.kind === 'contours' && a.contours.length === b.contours.length) {
    return a.contours.every((contour, i) => {
      const other = b.contours[i];
      return other !== undefined && sameContour(contour, other);
    });
  }
  return false;
}
