/** The main run of a part as a shape in the plane of the section: x along the first leg, y out of its marked face. */
import { setback } from '../core/bending/setback';
import { mainRun as mainRunIndices } from '../core/part/mainRun';
import type { BendFigures } from '../core/bending/types';
import type { Frame, Point } from '../core/geometry/types';
import type { Folded, LegLayout, Layout } from '../core/part/layoutTypes';
import type { Basis, Leg } from '../core/part/types';

/** A leg of the main run, seen from its near edge. */
export interface RunLeg {
  readonly index: number;
  readonly leg: Leg;
  readonly layout: LegLayout;
  readonly straight: number;
  /** Unit direction of the leg on the section. */
  readonly ux: number;
  readonly uy: number;
  /** From the leg's frame (x along, z out of the marked face) to the section. */
  readonly at: (x: number, z: number) => Point;
  /** The bends at its ends; undefined at a free end. */
  readonly startBend: RunBend | undefined;
  readonly endBend: RunBend | undefined;
}

export interface RunBend {
  /** Index of the leg it leads to: its ringed number. */
  readonly index: number;
  readonly leg: Leg;
  readonly figures: BendFigures;
  readonly way: 'up' | 'down';
  readonly centre: Point;
  /** rad on the section: direction from the centre to the start tangent line, and the signed turn from there. */
  readonly start: number;
  readonly sweep: number;
}

const onSection = (frame: Frame) => (x: number, z: number): Point => ({
  x: frame.origin.x + frame.x.x * x + frame.z.x * z,
  y: frame.origin.z + frame.x.z * x + frame.z.z * z,
});

function bendAt(index: number, leg: Leg, parent: Frame, parentLayout: LegLayout, own: LegLayout, thickness: number): RunBend | undefined {
  if (!own.bend) return undefined;
  const { figures, way } = own.bend;
  const up = way === 'up';
  const centre = onSection(parent)(parentLayout.straight, up ? figures.radius : -thickness - figures.radius);
  const side = up ? 1 : -1;
  return { index, leg, figures, way, centre, start: Math.atan2(-side * parent.z.z, -side * parent.z.x), sweep: side * figures.turn };
}

export function mainRun(layout: Layout, folded: Folded): readonly RunLeg[] {
  const { part } = layout;
  const indices = mainRunIndices(layout);
  const bends = indices.map((index, i) => {
    const before = indices[i - 1];
    const leg = part.legs[index];
    const own = layout.legs[index];
    if (before === undefined || !leg || !own) return undefined;
    const parent = folded.legs[before];
    const parentLayout = layout.legs[before];
    return parent && parentLayout ? bendAt(index, leg, parent, parentLayout, own, part.thickness) : undefined;
  });
  return indices.flatMap((index, i) => {
    const leg = part.legs[index];
    const own = layout.legs[index];
    const frame = folded.legs[index];
    if (!leg || !own || !frame) return [];
    return [{
      index,
      leg,
      layout: own,
      straight: own.straight,
      ux: frame.x.x,
      uy: frame.x.z,
      at: onSection(frame),
      startBend: bends[i],
      endBend: bends[i + 1],
    }];
  });
}

/** mm from the tangent line to where a length is measured at this bend; 0 at a free end. */
export const measuredBeyond = (bend: RunBend | undefined, basis: Basis, thickness: number): number =>
  bend ? setback(basis, bend.figures.turn, bend.figures.radius, thickness) : 0;

/** z of the face (or the centre line) on which a length is measured at this bend; undefined where any face will do. */
export function measuredFace(bend: RunBend | undefined, basis: Basis, thickness: number): number | undefined {
  if (!bend || basis === 'straight') return undefined;
  if (basis === 'centre line') return -thickness / 2;
  return (basis === 'outside') === (bend.way === 'up') ? -thickness : 0;
}
