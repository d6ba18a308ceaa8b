/** Section hatching: parallel lines across strips of cut metal, at an angle that is never that of an edge. */
import { line } from '../core/geometry/segments';
import type { Point, Segment } from '../core/geometry/types';

const ANGLES = [Math.PI / 4, Math.PI / 3, Math.PI / 6, (2 * Math.PI) / 3];

/** px between hatch lines. */
export const HATCH_PX = 6.4;

/** Smallest difference of two directions without regard to sense, rad, 0 to π/2. */
export function lineAngle(a: number, b: number): number {
  const turn = Math.abs(a - b) % Math.PI;
  return Math.min(turn, Math.PI - turn);
}

/** How far a hatch at `angle` stays off the edges of a leg that runs at `heading`, whose ends are square to it. */
const clearOf = (angle: number, heading: number): number => Math.min(lineAngle(angle, heading), lineAngle(angle, heading + Math.PI / 2));

/** Less than this off an edge looks parallel to it, rad (8°). */
const TOO_NEAR = (8 * Math.PI) / 180;

/**
 * Hatch angles for legs that run at these headings: one for all, as for one piece of metal, where one stays clear of every
 * edge; otherwise the best for each. Four angles leave at least 15° for any one leg.
 */
export function hatchAngles(headings: readonly number[]): readonly number[] {
  const best = (score: (angle: number) => number): number => ANGLES.reduce((kept, angle) => (score(angle) > score(kept) + 1e-9 ? angle : kept));
  const shared = (angle: number): number => Math.min(...headings.map((heading) => clearOf(angle, heading)));
  const common = best(shared);
  return shared(common) >= TOO_NEAR ? headings.map(() => common) : headings.map((heading) => best((angle) => clearOf(angle, heading)));
}

/** More lines than this in one strip cannot be told apart; the spacing then grows. */
const MOST_LINES = 1500;

/**
 * Hatch lines in a rectangle given in its own frame.
 * @param at from the rectangle's frame to the drawing
 * @param spacing mm between lines; lines of all strips of a drawing fall on one set
 */
export function hatchStrip(x0: number, x1: number, z0: number, z1: number, at: (x: number, z: number) => Point, angle: number, spacing: number): readonly Segment[] {
  const nx = -Math.sin(angle);
  const ny = Math.cos(angle);
  const height = (p: Point): number => p.x * nx + p.y * ny;
  const o = height(at(0, 0));
  const perX = height(at(1, 0)) - o;
  const perZ = height(at(0, 1)) - o;
  const corners = [x0, x1].flatMap((x) => [z0, z1].map((z) => o + perX * x + perZ * z));
  const low = Math.min(...corners);
  const high = Math.max(...corners);
  const step = spacing * Math.max(1, Math.ceil((high - low) / spacing / MOST_LINES));
  const segments: Segment[] = [];
  for (let k = Math.ceil(low / step); k * step < high; k++) {
    // Along a line of height h: perX x + perZ z = h − o. Neither factor is 0, since the hatch is parallel to no edge.
    const left = k * step - o;
    const atZ0 = (left - perZ * z0) / perX;
    const atZ1 = (left - perZ * z1) / perX;
    const from = Math.max(x0, Math.min(atZ0, atZ1));
    const to = Math.min(x1, Math.max(atZ0, atZ1));
    if (to - from <= 1e-9) continue;
    segments.push(line(at(from, (left - perX * from) / perZ), at(to, (left - perX * to) / perZ)));
  }
  return segments;
}
