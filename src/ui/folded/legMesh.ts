/** One leg as a solid in its own frame: faces, walls, edge lines. The marked face is z = 0, the metal lies below it. */
import { ShapeUtils, Vector2 } from 'three';
import type { Arc, ClosedPath } from '../../core/geometry/types';
import type { LegCutout, LegLayout } from '../../core/part/layoutTypes';
import { ringOf } from './chords';
import type { Ring } from './chords';

/** A stretch of the triangle list, counted in indices. */
export interface Run {
  readonly start: number;
  readonly count: number;
}

/** A solid as plain arrays. Its triangles are closed, and anticlockwise seen from outside. */
export interface SolidMesh {
  /** x, y, z in turn, mm. */
  readonly positions: Float64Array;
  /** Three vertices each. */
  readonly triangles: Uint32Array;
  readonly faces: { readonly marked: Run; readonly back: Run; readonly walls: Run };
  /** Lines of the outer edges: two ends each, x, y, z in turn. */
  readonly edges: Float64Array;
}

/** Walls and rims of one opening. */
export interface OpeningMesh {
  /** Index of the cut-out in the leg's list. */
  readonly cutout: number;
  readonly walls: Run;
  /** The opening's stretch of `rims`, counted in numbers. */
  readonly rim: Run;
}

export interface LegMesh extends SolidMesh {
  readonly openings: readonly OpeningMesh[];
  /** Lines of the edges of all openings, as `edges`. */
  readonly rims: Float64Array;
  /** Arcs of the outline that bulge outwards: turned sideways, they show a line where the wall turns from view. */
  readonly rounds: readonly Arc[];
  readonly thickness: number;
}

const vectors = (ring: Ring): Vector2[] => {
  const all: Vector2[] = [];
  for (let i = 0; i < ring.points.length; i += 2) all.push(new Vector2(ring.points[i], ring.points[i + 1]));
  return all;
};

/** Numbers that the lines of a wall take: its two rims, and one line down each corner. */
const wallLineNumbers = (ring: Ring): number => 6 * (ring.points.length + ring.corners.length);

/** Writes the lines of a wall. @returns where the next wall's lines go */
function writeWallLines(into: Float64Array, start: number, ring: Ring, bottom: number): number {
  const { points } = ring;
  const n = points.length;
  let at = start;
  for (const z of [0, bottom]) {
    for (let i = 0; i < n; i += 2) {
      const j = (i + 2) % n;
      into[at++] = points[i] ?? 0;
      into[at++] = points[i + 1] ?? 0;
      into[at++] = z;
      into[at++] = points[j] ?? 0;
      into[at++] = points[j + 1] ?? 0;
      into[at++] = z;
    }
  }
  for (const corner of ring.corners) {
    for (const z of [0, bottom]) {
      into[at++] = points[2 * corner] ?? 0;
      into[at++] = points[2 * corner + 1] ?? 0;
      into[at++] = z;
    }
  }
  return at;
}

/**
 * Most openings cut out of a leg's solid. Cutting more costs the square of their number (1000 take a second, 3000 a
 * minute), and so many are too small on screen to look through: beyond this they are spots laid on both faces.
 */
export const MOST_TRUE_OPENINGS = 400;
/** Corners of a spot: a ring of more is thinned. */
const SPOT_CORNERS = 8;
/** mm by which a spot lies off its face, so that it shows. */
const SPOT_LIFT_MM = 0.02;

function thinned({ points }: Ring): Ring {
  const n = points.length / 2;
  const stride = Math.max(1, Math.ceil(n / SPOT_CORNERS));
  const kept: number[] = [];
  for (let i = 0; i < n; i += stride) kept.push(points[2 * i] ?? 0, points[2 * i + 1] ?? 0);
  return { points: kept, corners: [] };
}

/** The plain plate of a leg with more openings than are cut out, each opening a spot on the marked face and one on the back. */
function spottedMesh(plan: ClosedPath, cutouts: readonly LegCutout[], thickness: number): LegMesh {
  const plate = legMesh(plan, [], thickness);
  const spots = cutouts.map((c) => ({ cutout: c.cutout, ring: thinned(ringOf(c.contour)) })).filter(({ ring }) => ring.points.length >= 6);
  const corners = spots.reduce((sum, { ring }) => sum + ring.points.length / 2, 0);
  const positions = new Float64Array(plate.positions.length + corners * 6);
  const triangles = new Uint32Array(plate.triangles.length + (corners - 2 * spots.length) * 6);
  positions.set(plate.positions);
  triangles.set(plate.triangles);
  let at = plate.positions.length;
  let next = plate.triangles.length;
  const openings = spots.map(({ cutout, ring }): OpeningMesh => {
    const start = next;
    const n = ring.points.length / 2;
    for (const z of [SPOT_LIFT_MM, -thickness - SPOT_LIFT_MM]) {
      const first = at / 3;
      for (let i = 0; i < n; i++) {
        positions[at++] = ring.points[2 * i] ?? 0;
        positions[at++] = ring.points[2 * i + 1] ?? 0;
        positions[at++] = z;
      }
      for (let i = 1; i < n - 1; i++) {
        triangles[next++] = first;
        triangles[next++] = first + (z > 0 ? i : i + 1);
        triangles[next++] = first + (z > 0 ? i + 1 : i);
      }
    }
    return { cutout, walls: { start, count: next - start }, rim: { start: 0, count: 0 } };
  });
  return { ...plate, positions, triangles, openings };
}

/**
 * The solid of one leg. Openings that enclose nothing are left out; openings that cross each other or the edge give a
 * solid that is only drawn approximately (the checks name such a part).
 * @param thickness mm
 */
export function legMesh(plan: ClosedPath, cutouts: readonly LegCutout[], thickness: number): LegMesh {
  if (cutouts.length > MOST_TRUE_OPENINGS) return spottedMesh(plan, cutouts, thickness);
  const outline = ringOf({ kind: 'path', segments: plan });
  const holes = cutouts.map((c) => ({ cutout: c.cutout, ring: ringOf(c.contour) })).filter((h) => h.ring.points.length >= 6);
  const rings = [outline, ...holes.map((h) => h.ring)];
  const count = rings.reduce((sum, ring) => sum + ring.points.length / 2, 0);

  const positions = new Float64Array(count * 6);
  let at = 0;
  for (const z of [0, -thickness]) {
    for (const { points } of rings) {
      for (let i = 0; i < points.length; i += 2) {
        positions[at++] = points[i] ?? 0;
        positions[at++] = points[i + 1] ?? 0;
        positions[at++] = z;
      }
    }
  }

  const flat = outline.points.length < 6 ? [] : ShapeUtils.triangulateShape(vectors(outline), holes.map((h) => vectors(h.ring)));
  const triangles = new Uint32Array(flat.length * 6 + count * 6);
  let next = 0;
  for (const [a = 0, b = 0, c = 0] of flat) {
    triangles[next++] = a;
    triangles[next++] = b;
    triangles[next++] = c;
  }
  for (const [a = 0, b = 0, c = 0] of flat) {
    triangles[next++] = count + a;
    triangles[next++] = count + c;
    triangles[next++] = count + b;
  }

  let first = 0;
  const wall = (ring: Ring, facing: 'out' | 'in'): Run => {
    const n = ring.points.length / 2;
    const start = next;
    for (let i = 0; i < n; i++) {
      const a = first + i;
      const b = first + ((i + 1) % n);
      const p = facing === 'out' ? a : b;
      const q = facing === 'out' ? b : a;
      triangles[next++] = p;
      triangles[next++] = count + p;
      triangles[next++] = count + q;
      triangles[next++] = p;
      triangles[next++] = count + q;
      triangles[next++] = q;
    }
    first += n;
    return { start, count: next - start };
  };
  const edges = new Float64Array(wallLineNumbers(outline));
  writeWallLines(edges, 0, outline, -thickness);
  const walls = wall(outline, 'out');
  const rims = new Float64Array(holes.reduce((sum, h) => sum + wallLineNumbers(h.ring), 0));
  let rimEnd = 0;
  const openings = holes.map((h): OpeningMesh => {
    const start = rimEnd;
    rimEnd = writeWallLines(rims, start, h.ring, -thickness);
    return { cutout: h.cutout, walls: wall(h.ring, 'in'), rim: { start, count: rimEnd - start } };
  });

  return {
    positions,
    triangles,
    faces: {
      marked: { start: 0, count: flat.length * 3 },
      back: { start: flat.length * 3, count: flat.length * 3 },
      walls,
    },
    openings,
    edges,
    rims,
    rounds: plan.filter((s) => s.kind === 'arc' && s.sweep > 0) as readonly Arc[],
    thickness,
  };
}

function sameValue(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a)) {
    return Array.isArray(b) && a.length === b.length && a.every((item, i) => sameValue(item, b[i]));
  }
  const keys = Object.keys(a);
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => sameValue((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]))
  );
}

/**
 * Whether two legs make the same solid. Compared by value, number by number: every edit lays the whole part out afresh,
 * and this costs less than a key and cannot take two different legs for one.
 */
export const sameSolid = (a: LegLayout, b: LegLayout): boolean => sameValue(a.plan, b.plan) && sameValue(a.cutouts, b.cutouts);
