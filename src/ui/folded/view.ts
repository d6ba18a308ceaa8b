/**
 * How the bent part is looked at: an orthographic view that turns about the vertical and tilts, and never stands on its head.
 * Part space: x along the first leg, y to its left, z out of the marked face, mm. Screen: px from the upper left corner, y down.
 */
import { vector } from '../../core/geometry/frame';
import type { Vector3 } from '../../core/geometry/types';

export interface View {
  /** rad about the vertical; 0 looks square on to the near edge, as the section does. */
  readonly around: number;
  /** rad above the level, from −π/2 to π/2. */
  readonly above: number;
  /** px for one mm. */
  readonly scale: number;
  /** Point of the part in the middle of the screen. */
  readonly middle: Vector3;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** As in the section: straight at the near edge. */
export const SECTION_ANGLES = { around: 0, above: 0 };
/** The first look at a part: near edge in front, from the start end and from above. */
export const FIRST_ANGLES = { around: (28.8 * Math.PI) / 180, above: (32 * Math.PI) / 180 };

/** A drag of this many px turns the part by one rad. */
const PX_PER_RAD = 160;
/** Share of the screen that a part just fitted leaves free on each side. */
const MARGIN = 0.04;
const NEAREST_PX_PER_MM = 200;
const FARTHEST_PX_PER_MM = 0.02;
/** A part seen edge on is taken to be at least so wide, mm. */
const TINY_MM = 1e-3;

export const clamp = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

/** Unit directions of the screen in part space: right, up, and out of the screen towards the eye. */
export function axes({ around, above }: Pick<View, 'around' | 'above'>): { right: Vector3; up: Vector3; towards: Vector3 } {
  const [ca, sa, ce, se] = [Math.cos(around), Math.sin(around), Math.cos(above), Math.sin(above)];
  return {
    right: vector(ca, -sa, 0),
    up: vector(sa * se, ca * se, ce),
    towards: vector(-sa * ce, -ca * ce, se),
  };
}

const dot = (a: Vector3, b: Vector3): number => a.x * b.x + a.y * b.y + a.z * b.z;
const minus = (a: Vector3, b: Vector3): Vector3 => vector(a.x - b.x, a.y - b.y, a.z - b.z);

/** Where a point of the part shows on the screen, px, and how far it lies in front of the middle, mm. */
export function onScreen(view: View, size: Size, p: Vector3): { x: number; y: number; depth: number } {
  const { right, up, towards } = axes(view);
  const d = minus(p, view.middle);
  return { x: size.width / 2 + view.scale * dot(d, right), y: size.height / 2 - view.scale * dot(d, up), depth: dot(d, towards) };
}

/** The point of the part under a point of the screen, in the plane through the view's middle that faces the eye. */
export function underScreen(view: View, size: Size, x: number, y: number): Vector3 {
  const { right, up } = axes(view);
  const a = (x - size.width / 2) / view.scale;
  const b = (size.height / 2 - y) / view.scale;
  const m = view.middle;
  return vector(m.x + right.x * a + up.x * b, m.y + right.y * a + up.y * b, m.z + right.z * a + up.z * b);
}

/** Turned by a drag, px. To the right swings the near side right; up and down tilt, as far as straight down or straight up. */
export const turned = (view: View, dx: number, dy: number): View => ({
  ...view,
  around: view.around + dx / PX_PER_RAD,
  above: clamp(view.above + dy / PX_PER_RAD, -Math.PI / 2, Math.PI / 2),
});

/** Slid by a drag, px: what was under the finger stays under it. */
export function slid(view: View, dx: number, dy: number): View {
  const { right, up } = axes(view);
  const [a, b] = [-dx / view.scale, dy / view.scale];
  const m = view.middle;
  return { ...view, middle: vector(m.x + right.x * a + up.x * b, m.y + right.y * a + up.y * b, m.z + right.z * a + up.z * b) };
}

/** Brought nearer by a factor; the point under (x, y) stays there. */
export function zoomed(view: View, size: Size, factor: number, x: number, y: number): View {
  const scale = clamp(view.scale * factor, FARTHEST_PX_PER_MM, NEAREST_PX_PER_MM);
  const before = underScreen(view, size, x, y);
  const after = underScreen({ ...view, scale }, size, x, y);
  const moved = minus(before, after);
  return { ...view, scale, middle: vector(view.middle.x + moved.x, view.middle.y + moved.y, view.middle.z + moved.z) };
}

/** The view from these angles that shows all of the points as large as the screen allows, in its middle. */
export function fitted(angles: Pick<View, 'around' | 'above'>, size: Size, points: readonly Vector3[]): View {
  const all = axes(angles);
  const middle = [all.right, all.up, all.towards].map((axis) => {
    let [least, most] = [Infinity, -Infinity];
    for (const p of points) {
      least = Math.min(least, dot(p, axis));
      most = Math.max(most, dot(p, axis));
    }
    return points.length === 0 ? { at: 0, span: 0, axis } : { at: (least + most) / 2, span: most - least, axis };
  });
  const [wide, high] = [middle[0]?.span ?? 0, middle[1]?.span ?? 0];
  const room = 1 - 2 * MARGIN;
  const scale = Math.min((size.width * room) / Math.max(wide, TINY_MM), (size.height * room) / Math.max(high, TINY_MM));
  const sum = (of: (v: Vector3) => number): number => middle.reduce((total, m) => total + m.at * of(m.axis), 0);
  return {
    around: angles.around,
    above: angles.above,
    scale: clamp(scale, FARTHEST_PX_PER_MM, NEAREST_PX_PER_MM),
    middle: vector(sum((v) => v.x), sum((v) => v.y), sum((v) => v.z)),
  };
}

/** Whether all of the points are on the screen. */
export const isInView = (view: View, size: Size, points: readonly Vector3[]): boolean =>
  points.every((point) => {
    const p = onScreen(view, size, point);
    return p.x >= 0 && p.x <= size.width && p.y >= 0 && p.y <= size.height;
  });
