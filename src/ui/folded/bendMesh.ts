/** One bend zone as a solid in the frame of its start tangent, bent as far as it is at this stage. */
import type { FoldedBend } from '../../core/part/layoutTypes';
import { chordCount } from './chords';
import type { SolidMesh } from './legMesh';

/** Below this turn, rad, the zone is drawn as a flat strip: at 1 m its far end is out by a thousandth of a millimetre. */
const STILL_FLAT = 1e-6;

export const isFlat = (bend: FoldedBend): boolean => bend.turn < STILL_FLAT || !Number.isFinite(bend.radius);

/** Section of the zone at a share of its turn: points on the marked face and on the back, x across the bend and z, mm. */
function sectionAt(bend: FoldedBend, thickness: number, share: number): { marked: [number, number]; back: [number, number] } {
  if (isFlat(bend)) {
    const x = bend.allowance * share;
    return { marked: [x, 0], back: [x, -thickness] };
  }
  const angle = bend.turn * share;
  const sin = Math.sin(angle);
  // 1 − cos, written so that the long radius of a bend only just begun loses no figures.
  const rise = 2 * Math.sin(angle / 2) ** 2;
  const inner = bend.radius;
  const outer = bend.radius + thickness;
  return bend.way === 'up'
    ? { marked: [inner * sin, inner * rise], back: [outer * sin, outer * rise - thickness] }
    : { marked: [outer * sin, -outer * rise], back: [inner * sin, -thickness - inner * rise] };
}

/**
 * The solid of one bend zone: a piece of a cylinder, or a flat strip while it is not yet bent. y runs along the bend from
 * −width/2 to +width/2. `faces.walls` holds the two side walls and the two ends, where the legs join.
 * @param thickness mm
 */
export function bendMesh(bend: FoldedBend, thickness: number): SolidMesh {
  const steps = isFlat(bend) ? 1 : chordCount(bend.radius + thickness, bend.turn);
  const half = bend.width / 2;
  const positions = new Float64Array((steps + 1) * 12);
  for (let i = 0; i <= steps; i++) {
    const { marked, back } = sectionAt(bend, thickness, i / steps);
    positions.set([marked[0], -half, marked[1], marked[0], half, marked[1], back[0], half, back[1], back[0], -half, back[1]], i * 12);
  }

  const marked: number[] = [];
  const backFace: number[] = [];
  const walls: number[] = [];
  const edges: number[] = [];
  const quad = (into: number[], a: number, b: number, c: number, d: number): number => into.push(a, b, c, a, c, d);
  for (let i = 0; i < steps; i++) {
    const here = i * 4;
    const there = here + 4;
    quad(marked, here, there, there + 1, here + 1);
    quad(backFace, here + 3, here + 2, there + 2, there + 3);
    quad(walls, here, here + 3, there + 3, there);
    quad(walls, here + 1, there + 1, there + 2, here + 2);
    for (let corner = 0; corner < 4; corner++) {
      for (const vertex of [here + corner, there + corner]) edges.push(...positions.subarray(vertex * 3, vertex * 3 + 3));
    }
  }
  const last = steps * 4;
  quad(walls, 0, 1, 2, 3);
  quad(walls, last, last + 3, last + 2, last + 1);

  return {
    positions,
    triangles: Uint32Array.from([...marked, ...backFace, ...walls]),
    faces: {
      marked: { start: 0, count: marked.length },
      back: { start: marked.length, count: backFace.length },
      walls: { start: marked.length + backFace.length, count: walls.length },
    },
    edges: Float64Array.from(edges),
  };
}

/** Whether two bends make the same solid, wherever they stand. */
export const sameBend = (a: FoldedBend, b: FoldedBend): boolean =>
  a.turn === b.turn && a.way === b.way && a.radius === b.radius && a.width === b.width && a.allowance === b.allowance;
