/** Oriented rectangles: what the parts of a drawing take up while lettering is being placed. mm. */
import type { Bounds, Point, Segment } from '../core/geometry/types';

/** What stands in a box: it decides what may lie on what. */
export type Matter = 'metal' | 'text' | 'line' | 'extension' | 'leader';

export interface Box extends Bounds {
  readonly matter: Matter;
  /** Middle, unit direction of the long side, half its length and half its height. */
  readonly x: number;
  readonly y: number;
  readonly ux: number;
  readonly uy: number;
  readonly halfLength: number;
  readonly halfHeight: number;
}

export function box(matter: Matter, middle: Point, ux: number, uy: number, halfLength: number, halfHeight: number): Box {
  const { x, y } = middle;
  const reachX = Math.abs(ux) * halfLength + Math.abs(uy) * halfHeight;
  const reachY = Math.abs(uy) * halfLength + Math.abs(ux) * halfHeight;
  return { matter, x, y, ux, uy, halfLength, halfHeight, minX: x - reachX, maxX: x + reachX, minY: y - reachY, maxY: y + reachY };
}

export const uprightBox = (matter: Matter, b: Bounds): Box =>
  box(matter, { x: (b.minX + b.maxX) / 2, y: (b.minY + b.maxY) / 2 }, 1, 0, (b.maxX - b.minX) / 2, (b.maxY - b.minY) / 2);

/** The box of a straight line; `halfHeight` 0 is the line itself. */
export function lineBox(matter: Matter, from: Point, to: Point, halfHeight = 0): Box {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const ux = length > 0 ? (to.x - from.x) / length : 1;
  const uy = length > 0 ? (to.y - from.y) / length : 0;
  return box(matter, { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }, ux, uy, length / 2, halfHeight);
}

/** Widest piece of an arc that one box stands for, rad: the box is then thicker than the arc by 1 % of its radius. */
const PIECE = Math.PI / 9;

/** Boxes that cover a ring piece from radius `inner` to `outer`; `inner` = `outer` gives the arc itself. */
export function ringBoxes(matter: Matter, centre: Point, inner: number, outer: number, start: number, sweep: number): readonly Box[] {
  const pieces = Math.max(1, Math.ceil(Math.abs(sweep) / PIECE));
  const half = sweep / pieces / 2;
  const near = inner * Math.cos(half);
  const reach = Math.abs(outer * Math.sin(half));
  return Array.from({ length: pieces }, (_, i) => {
    const angle = start + half * (2 * i + 1);
    const cos = Math.cos(angle);
    const sin = Math.sin(angle);
    const at = (near + outer) / 2;
    return box(matter, { x: centre.x + at * cos, y: centre.y + at * sin }, -sin, cos, reach, (outer - near) / 2);
  });
}

export function segmentBoxes(matter: Matter, segment: Segment): readonly Box[] {
  if (segment.kind === 'line') return [lineBox(matter, segment.from, segment.to)];
  const { centre, radius, from, sweep } = segment;
  return ringBoxes(matter, centre, radius, radius, Math.atan2(from.y - centre.y, from.x - centre.x), sweep);
}

/** Whether two boxes share more than a touch (separating axes). `slack` mm of overlap is let pass. */
export function overlap(a: Box, b: Box, slack = 0): boolean {
  if (a.maxX - slack <= b.minX || b.maxX - slack <= a.minX || a.maxY - slack <= b.minY || b.maxY - slack <= a.minY) return false;
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const cos = Math.abs(a.ux * b.ux + a.uy * b.uy);
  const sin = Math.abs(a.ux * b.uy - a.uy * b.ux);
  return (
    Math.abs(dx * a.ux + dy * a.uy) < a.halfLength + b.halfLength * cos + b.halfHeight * sin - slack &&
    Math.abs(dy * a.ux - dx * a.uy) < a.halfHeight + b.halfLength * sin + b.halfHeight * cos - slack &&
    Math.abs(dx * b.ux + dy * b.uy) < b.halfLength + a.halfLength * cos + a.halfHeight * sin - slack &&
    Math.abs(dy * b.ux - dx * b.uy) < b.halfHeight + a.halfLength * sin + a.halfHeight * cos - slack
  );
}
