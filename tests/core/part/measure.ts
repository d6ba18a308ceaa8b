/**
 * Measures a bent part as one would with a rule and a square: planes of the faces, the lines in which they meet, and the tangents
 * square to a leg. Uses nothing of the source but its answers.
 */
import type { Frame, Point, Segment, Vector3 } from '../../../src/core/geometry/types';
import type { Folded, Layout } from '../../../src/core/part/layoutTypes';
import type { Basis } from '../../../src/core/part/types';

export const plus = (a: Vector3, b: Vector3, times = 1): Vector3 => ({ x: a.x + b.x * times, y: a.y + b.y * times, z: a.z + b.z * times });
export const minus = (a: Vector3, b: Vector3): Vector3 => plus(a, b, -1);
export const dot = (a: Vector3, b: Vector3): number => a.x * b.x + a.y * b.y + a.z * b.z;
export const cross = (a: Vector3, b: Vector3): Vector3 => ({ x: a.y * b.z - a.z * b.y, y: a.z * b.x - a.x * b.z, z: a.x * b.y - a.y * b.x });
export const long = (a: Vector3): number => Math.sqrt(dot(a, a));
export const scaled = (a: Vector3, times: number): Vector3 => plus({ x: 0, y: 0, z: 0 }, a, times);
export const pointOf = (f: Frame, x: number, y: number, z: number): Vector3 => plus(plus(plus(f.origin, f.x, x), f.y, y), f.z, z);

interface MeasuredBend {
  readonly turn: number;
  readonly radius: number;
  readonly way: 'up' | 'down';
}

/**
 * How far from the origin of leg `a`, in direction `towards` of its plane (square to the bend, off the leg), the dimension line of
 * a bend lies. `child` is the frame of the leg that the bend leads to: its origin is where that leg's flat metal begins.
 */
export function dimensionLine(a: Frame, b: Frame, child: Frame, towards: Vector3, bend: MeasuredBend, thickness: number, basis: Basis): number {
  const up = bend.way === 'up';
  const { radius: r, turn } = bend;
  const where = (z: number): number => dot(b.z, minus(plus(b.origin, b.z, z), plus(a.origin, a.z, z))) / dot(b.z, towards);
  // The axis of the bend stands a radius off the inside face.
  const axisHeight = up ? r : -thickness - r;
  const axis = Math.abs(Math.sin(turn)) < 1e-6 ? dot(towards, minus(pointOf(child, 0, 0, axisHeight), a.origin)) : where(axisHeight);
  if (basis === 'straight') return axis;
  if (turn <= Math.PI / 2) {
    const face = { outside: up ? -thickness : 0, inside: up ? 0 : -thickness, 'centre line': -thickness / 2 }[basis];
    return where(face);
  }
  return axis + { outside: r + thickness, inside: r, 'centre line': r + thickness / 2 }[basis];
}

/** Ends of a leg's dimension of this basis, x in the leg's own frame, measured on the bent part. */
export function measuredEnds(layout: Layout, folded: Folded, i: number, startBasis: Basis, endBasis: Basis): { readonly start: number; readonly end: number } {
  const { part } = layout;
  const leg = part.legs[i];
  const frame = folded.legs[i];
  const plan = layout.legs[i]?.plan;
  if (!leg || !frame || !plan) throw new Error(`no leg ${i}`);
  const xs = pathPoints(plan).map((p) => p.x);
  let start = Math.min(...xs);
  let end = Math.max(...xs);
  if (leg.bend) {
    const parent = folded.legs[leg.bend.parent];
    if (!parent) throw new Error(`no parent of leg ${i}`);
    start = -dimensionLine(frame, parent, frame, scaled(frame.x, -1), leg.bend, part.thickness, startBasis);
  }
  const next = part.legs.findIndex((other) => other.bend?.parent === i && other.bend.edge === 'end');
  const beyond = folded.legs[next];
  const bend = part.legs[next]?.bend;
  if (beyond && bend) end = dimensionLine(frame, beyond, beyond, frame.x, bend, part.thickness, endBasis);
  return { start, end };
}

/** Points along a path, the ends of every segment and `chords` − 1 places between on every arc. */
export const pathPoints = (path: readonly Segment[], chords = 64): Point[] =>
  path.flatMap((s) => {
    if (s.kind === 'line') return [s.from];
    const start = Math.atan2(s.from.y - s.centre.y, s.from.x - s.centre.x);
    return Array.from({ length: chords }, (_, i): Point =>
      i === 0 ? s.from : { x: s.centre.x + s.radius * Math.cos(start + (s.sweep * i) / chords), y: s.centre.y + s.radius * Math.sin(start + (s.sweep * i) / chords) },
    );
  });

/** Area by Gauss's sum over the ends and, for arcs, Green's integral ½∮(x dy − y dx) worked out in closed form about the centre. */
export function greenArea(path: readonly Segment[]): number {
  let sum = 0;
  for (const s of path) {
    if (s.kind === 'line') sum += s.from.x * s.to.y - s.to.x * s.from.y;
    else {
      const a = Math.atan2(s.from.y - s.centre.y, s.from.x - s.centre.x);
      const b = a + s.sweep;
      sum += s.radius * s.radius * s.sweep + s.radius * (s.centre.x * (Math.sin(b) - Math.sin(a)) - s.centre.y * (Math.cos(b) - Math.cos(a)));
    }
  }
  return sum / 2;
}
