/** What a tap on the bent part takes hold of. */
import { nearestAlong } from '../../core/geometry/nearestAlong';
import { inSpace, vector } from '../../core/geometry/frame';
import type { Contour, Frame, Point, Vector3 } from '../../core/geometry/types';
import { pointAlong } from '../../core/geometry/splitSegment';
import type { Folded, Layout } from '../../core/part/layoutTypes';
import type { CutoutShape } from '../../core/part/types';
import type { Pick } from '../../drawing/entities';
import { axes, onScreen, underScreen } from './view';
import type { Size, View } from './view';

/** Half of the 44 px that a target must have. */
export const REACH_PX = 22;
/** Faces turned further edge on than this (cosine) have no openings that a finger could mean. */
const EDGE_ON = 0.05;
/** A hole's reach ends here on the way to its neighbour, so that the leg between two holes can be had as well. */
const SHARE_TO_NEIGHBOUR = 1 / 3;

/** The metal under the finger: which piece, and how far in front of the view's middle, mm. */
export interface Hit {
  readonly kind: 'leg' | 'bend';
  /** Index of the leg, or of the leg that the bend leads to. */
  readonly leg: number;
  readonly depth: number;
}

const dot = (a: Vector3, b: Vector3): number => a.x * b.x + a.y * b.y + a.z * b.z;

/** Whether a point lies inside a contour: the signed angles to its edge go once round. Exact for arcs, at any size. */
export function isInside(contour: Contour, p: Point): boolean {
  if (contour.kind === 'circle') return Math.hypot(p.x - contour.centre.x, p.y - contour.centre.y) < contour.radius;
  let crossings = 0;
  for (const s of contour.segments) {
    const { from, to } = s;
    if (from.y > p.y !== to.y > p.y && p.x < from.x + ((p.y - from.y) / (to.y - from.y)) * (to.x - from.x)) crossings++;
    // Between chord and arc the side is the other one.
    if (s.kind === 'arc' && Math.hypot(p.x - s.centre.x, p.y - s.centre.y) < s.radius) {
      const side = (to.x - from.x) * (p.y - from.y) - (to.y - from.y) * (p.x - from.x);
      if (side * s.sweep < 0) crossings++;
    }
  }
  return crossings % 2 === 1;
}

interface Opening {
  readonly leg: number;
  readonly cutout: number;
  /** px from the finger to the edge of the opening; 0 within it. */
  readonly away: number;
  /** mm before the view's middle, of the leg's plane under the finger. */
  readonly depth: number;
}

/** Where the line of sight under (x, y) meets the leg's face that looks at the eye, in the leg's frame. */
function onFace(view: View, size: Size, frame: Frame, thickness: number, x: number, y: number): { at: Point; depth: number } | undefined {
  const { towards } = axes(view);
  const facing = dot(frame.z, towards);
  if (Math.abs(facing) < EDGE_ON) return undefined;
  const face = inSpace(frame, vector(0, 0, facing > 0 ? 0 : -thickness));
  const from = underScreen(view, size, x, y);
  const away = vector(face.x - from.x, face.y - from.y, face.z - from.z);
  const depth = dot(away, frame.z) / facing;
  const d = vector(from.x + towards.x * depth - face.x, from.y + towards.y * depth - face.y, from.z + towards.z * depth - face.z);
  return { at: { x: dot(d, frame.x), y: dot(d, frame.y) }, depth };
}

/** Half of the opening's lesser size, mm. */
const halfAcross = (shape: CutoutShape): number =>
  (shape.kind === 'round' ? shape.diameter : Math.min(shape.length, shape.width)) / 2;

function nearestOnEdge(contour: Contour, p: Point): Point {
  if (contour.kind === 'circle') {
    const { centre, radius } = contour;
    const angle = Math.atan2(p.y - centre.y, p.x - centre.x);
    return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
  }
  const nearest = nearestAlong(contour.segments, p);
  const segment = nearest && contour.segments[nearest.segment];
  return segment ? pointAlong(segment, nearest.along) : p;
}

/** Openings under the finger or within reach of it. */
function openingsNear(layout: Layout, folded: Folded, view: View, size: Size, x: number, y: number): Opening[] {
  const { thickness } = layout.part;
  const { towards } = axes(view);
  return layout.legs.flatMap((leg, index): Opening[] => {
    const frame = folded.legs[index];
    const under = frame && onFace(view, size, frame, thickness, x, y);
    if (!frame || !under) return [];
    const z = dot(frame.z, towards) > 0 ? 0 : -thickness;
    const shown = (p: Point): { x: number; y: number } => onScreen(view, size, inSpace(frame, vector(p.x, p.y, z)));
    const centres = leg.cutouts.map((c) => shown(c.centre));
    return leg.cutouts.flatMap((c, i): Opening[] => {
      const found = { leg: index, cutout: c.cutout, depth: under.depth };
      if (isInside(c.contour, under.at)) return [{ ...found, away: 0 }];
      const edge = shown(nearestOnEdge(c.contour, under.at));
      const away = Math.hypot(edge.x - x, edge.y - y);
      if (away > REACH_PX) return [];
      const here = centres[i] ?? edge;
      const neighbour = Math.min(...centres.map((s, k) => (k === i ? Infinity : Math.hypot(s.x - here.x, s.y - here.y))));
      const reach = Math.min(REACH_PX, neighbour * SHARE_TO_NEIGHBOUR) - halfAcross(c.shape) * view.scale;
      return away <= reach ? [{ ...found, away }] : [];
    });
  });
}

/**
 * The cut-out under the finger or nearest to it within 22 px, else the metal hit. Of two holes less than 66 px apart each
 * reaches a third of the way to the other. A hole that lies behind other metal is not had.
 * @param hit the foremost metal under the finger
 */
export function pickFolded(
  layout: Layout, folded: Folded, view: View, size: Size, x: number, y: number, hit: Hit | undefined,
): Pick | undefined {
  const open = openingsNear(layout, folded, view, size, x, y)
    .filter((o) => !hit || (hit.kind === 'leg' && hit.leg === o.leg) || o.depth > hit.depth)
    .toSorted((a, b) => a.away - b.away || b.depth - a.depth);
  const best = open[0];
  if (best) {
    const leg = layout.part.legs[best.leg];
    const cutout = leg?.cutouts[best.cutout];
    if (leg && cutout) return { kind: 'cutout', leg: leg.id, cutout: cutout.id };
  }
  const leg = hit && layout.part.legs[hit.leg];
  return leg && { kind: hit.kind, leg: leg.id };
}
