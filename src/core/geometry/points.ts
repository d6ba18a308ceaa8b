import type { Point } from './types';

export const distance = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);

/** The point a share `at` of the way from `a` to `b`. */
export const between = (a: Point, b: Point, at = 0.5): Point => ({ x: a.x + (b.x - a.x) * at, y: a.y + (b.y - a.y) * at });

/** The point `length` from `origin` in the direction `heading` (rad). */
export const offset = (origin: Point, heading: number, length: number): Point => ({
  x: origin.x + length * Math.cos(heading),
  y: origin.y + length * Math.sin(heading),
});
