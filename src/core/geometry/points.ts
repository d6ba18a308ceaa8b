import type { Point } from './types';

export const distance = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);

/** The point `length` from `origin` in the direction `heading` (rad). */
export const offset = (origin: Point, heading: number, length: number): Point => ({
  x: origin.x + length * Math.cos(heading),
  y: origin.y + length * Math.sin(heading),
});
