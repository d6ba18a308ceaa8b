import { segmentBounds } from './bounds';
import { meetingPoints } from './meet';
import { distance } from './points';
import { TOUCHING_MM } from './tolerance';
import type { ClosedPath, Point } from './types';

export interface Crossing {
  readonly at: Point;
  /** Indices in the path of the two segments that meet. */
  readonly first: number;
  readonly second: number;
}

/**
 * Where a closed path meets itself other than at the joints of neighbouring segments, at most `most` places. A path that
 * only touches itself counts too: a cutter would part the metal there.
 */
export function selfCrossings(path: ClosedPath, most = 8): Crossing[] {
  const found: Crossing[] = [];
  const boxed = path.map((segment, index) => ({ segment, index, box: segmentBounds(segment) })).toSorted((a, b) => a.box.minX - b.box.minX);
  for (const [i, a] of boxed.entries()) {
    for (let j = i + 1; j < boxed.length; j++) {
      const b = boxed[j];
      if (!b || b.box.minX > a.box.maxX + TOUCHING_MM) break;
      if (b.box.minY > a.box.maxY + TOUCHING_MM || b.box.maxY < a.box.minY - TOUCHING_MM) continue;
      const after = (a.index + 1) % path.length === b.index;
      const before = (b.index + 1) % path.length === a.index;
      for (const p of meetingPoints(a.segment, b.segment)) {
        const atJoint = (after && distance(p, a.segment.to) <= 2 * TOUCHING_MM) || (before && distance(p, b.segment.to) <= 2 * TOUCHING_MM);
        if (!atJoint) found.push({ at: p, first: a.index, second: b.index });
      }
      if (found.length >= most) return found.slice(0, most);
    }
  }
  return found;
}
