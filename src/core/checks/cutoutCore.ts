/**
 * Every cut-out shape is a simpler core grown by a radius: a point for a hole, the centre line for a slot, the inner
 * rectangle for an opening with corner radii. Distances to it are distances to the core less the radius, exactly.
 */
import { place } from '../geometry/pose';
import { line } from '../geometry/segments';
import type { Line, Point } from '../geometry/types';
import type { CutoutShape } from '../part/types';

export interface CutoutCore {
  readonly lines: readonly Line[];
  /** mm by which the core is grown. */
  readonly grow: number;
  /** mm from the centre to the farthest point of the cut-out. */
  readonly reach: number;
}

export function cutoutCore(shape: CutoutShape, centre: Point, heading: number): CutoutCore {
  if (shape.kind === 'round') return { lines: [line(centre, centre)], grow: shape.diameter / 2, reach: shape.diameter / 2 };
  const grow = shape.kind === 'slot' ? shape.width / 2 : shape.corner;
  const x = shape.length / 2 - grow;
  const y = shape.width / 2 - grow;
  const at = (px: number, py: number): Point => place({ ...centre, heading: heading + shape.turn }, { x: px, y: py });
  const corners = shape.kind === 'slot' ? [at(-x, 0), at(x, 0)] : [at(-x, -y), at(x, -y), at(x, y), at(-x, y)];
  const lines = shape.kind === 'slot' ? [line(at(-x, 0), at(x, 0))] : corners.map((p, i) => line(p, corners[(i + 1) % 4] ?? p));
  return { lines, grow, reach: Math.hypot(x, y) + grow };
}

/** How far the cut-out reaches from its centre in a direction, mm. */
export function reachTowards(core: CutoutCore, centre: Point, heading: number): number {
  const cos = Math.cos(heading);
  const sin = Math.sin(heading);
  let farthest = -Infinity;
  for (const { from, to } of core.lines) {
    farthest = Math.max(farthest, (from.x - centre.x) * cos + (from.y - centre.y) * sin, (to.x - centre.x) * cos + (to.y - centre.y) * sin);
  }
  return core.grow + farthest;
}
