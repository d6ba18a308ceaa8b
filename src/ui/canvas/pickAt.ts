/** What a pointer takes hold of, found by measuring and not by hit boxes: the mark may be small, the target is 44 px. */
import { contourArea, signedArea } from '../../core/geometry/area';
import { distance } from '../../core/geometry/points';
import { nearestAlong } from '../../core/geometry/nearestAlong';
import type { Point, Segment } from '../../core/geometry/types';
import { unreachable } from '../../core/result';
import type { Entity, Pick, Role, TextEntity } from '../../drawing/entities';
import { LETTER_BOX_PX } from '../../drawing/balloon';
import { textBox } from '../../drawing/textWidth';

/** px: half of a 44 px target. */
export const REACH_PX = 22;

/**
 * px by which a thing stands back behind what is smaller and finer. A leg is large: inside it, a hole or a bend up to this far
 * off is meant, not the leg. A role that is not among these cannot be taken hold of.
 */
const STOOD_BACK: Readonly<Partial<Record<Role, number>>> = {
  hole: 0,
  'hole edge': 0,
  'leg letter': 1,
  'bend number': 1,
  balloon: 1,
  'bend zone': 2,
  'bend centre line': 2,
  'tangent line': 2,
  'leg area': 16,
};
const FIGURE_TO_TYPE = 0;
const FIGURE = 3;

function stoodBack(entity: Entity): number | undefined {
  if (entity.field !== undefined) return FIGURE_TO_TYPE;
  if (!entity.pick) return undefined;
  return STOOD_BACK[entity.role] ?? (entity.kind === 'text' ? FIGURE : undefined);
}

/** Whether a point lies within a closed path of lines and arcs: the turn of the path about it, arcs by their own sweep. */
function inside(path: readonly Segment[], p: Point): boolean {
  let turn = 0;
  for (const s of path) {
    if (s.kind === 'line') turn += turnAbout(p, s.from, s.to);
    else {
      // An arc in eighths is near enough to its chords for a pointer.
      const pieces = Math.max(1, Math.ceil(Math.abs(s.sweep) / (Math.PI / 8)));
      const start = Math.atan2(s.from.y - s.centre.y, s.from.x - s.centre.x);
      let from = s.from;
      for (let i = 1; i <= pieces; i++) {
        const angle = start + (s.sweep * i) / pieces;
        const to = { x: s.centre.x + s.radius * Math.cos(angle), y: s.centre.y + s.radius * Math.sin(angle) };
        turn += turnAbout(p, from, to);
        from = to;
      }
    }
  }
  return Math.abs(turn) > Math.PI;
}

function turnAbout(p: Point, a: Point, b: Point): number {
  const ax = a.x - p.x;
  const ay = a.y - p.y;
  const bx = b.x - p.x;
  const by = b.y - p.y;
  return Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
}

interface Off {
  /** mm from the point to the thing; 0 inside it. */
  readonly off: number;
  /** mm², for telling which of two things about the point is the smaller. */
  readonly size: number;
}

function offPath(path: readonly Segment[], closed: boolean, p: Point): Off {
  const size = closed ? Math.abs(signedArea(path)) : 0;
  if (closed && inside(path, p)) return { off: 0, size };
  return { off: nearestAlong(path, p)?.off ?? Infinity, size };
}

function offText(entity: TextEntity, p: Point, px: number): Off {
  const b = textBox(entity, px);
  const least = entity.role === 'leg letter' ? (LETTER_BOX_PX / 2) * px : 0;
  const along = Math.abs((p.x - b.x) * b.ux + (p.y - b.y) * b.uy) - Math.max(b.halfLength, least);
  const over = Math.abs((p.y - b.y) * b.ux - (p.x - b.x) * b.uy) - Math.max(b.halfHeight, least);
  return { off: Math.hypot(Math.max(0, along), Math.max(0, over)), size: 4 * b.halfLength * b.halfHeight };
}

const nearer = (a: Off, b: Off): Off => (b.off < a.off || (b.off === a.off && b.size < a.size) ? b : a);
const FAR: Off = { off: Infinity, size: Infinity };

/** How far a point is from an entity, mm; 0 inside a closed one. */
function offEntity(entity: Entity, p: Point, px: number): Off {
  switch (entity.kind) {
    case 'path':
      return entity.runs.reduce((best, run) => nearer(best, offPath(run.segments, run.closed, p)), FAR);
    case 'contours':
      return entity.contours.reduce<Off>((best, contour) => {
        if (contour.kind === 'path') return nearer(best, offPath(contour.segments, true, p));
        return nearer(best, { off: Math.max(0, distance(contour.centre, p) - contour.radius), size: contourArea(contour) });
      }, FAR);
    case 'text':
      return offText(entity, p, px);
    default:
      return unreachable(entity);
  }
}

export interface Picked {
  readonly pick: Pick | undefined;
  /** The job field of the figure that was hit. */
  readonly field: string | undefined;
  readonly key: string;
}

/**
 * The thing that a pointer means; undefined on empty paper.
 * @param p mm on the drawing
 * @param px mm to a px
 */
export function pickAt(entities: readonly Entity[], p: Point, px: number, reach = REACH_PX): Picked | undefined {
  let best: { readonly entity: Entity; readonly cost: number; readonly size: number } | undefined;
  for (const entity of entities) {
    const back = stoodBack(entity);
    if (back === undefined) continue;
    const { off, size } = offEntity(entity, p, px);
    if (off > reach * px) continue;
    const cost = off / px + back;
    if (!best || cost < best.cost - 1e-9 || (cost < best.cost + 1e-9 && size < best.size)) best = { entity, cost, size };
  }
  return best && { pick: best.entity.pick, field: best.entity.field, key: best.entity.key };
}
