/** The bent part: the layout walked in space, each bend turned by its angle or by part of it. */
import { framedPose, inSpace, direction, vector, WORLD } from '../geometry/frame';
import type { Frame } from '../geometry/types';
import type { Folded, FoldedBend, FoldedCutout, Layout, LegBend } from './layoutTypes';

/** rad: below this a bend lies flat. A leg of ten metres rises by 1e-11 mm at its far end. */
const HARDLY_BEGUN = 1e-15;

/**
 * A bend at one stage of being made. Its neutral line keeps its length θ (r + K t), as in a bend that is pressed
 * home: at less than the full angle the radius is larger.
 * @param bent share of the full angle, 0 to 1
 */
function stage(bend: LegBend, leg: number, frame: Frame, bent: number, thickness: number): FoldedBend {
  const { turn, radius, k, allowance } = bend.figures;
  // A share that is no number counts as not begun, and so does one so small that its radius is beyond counting.
  const share = bent >= 1 ? 1 : bent > 0 && turn * bent > HARDLY_BEGUN ? bent : 0;
  const turned = turn * share;
  const now = share === 1 ? radius : share === 0 ? Infinity : allowance / turned - k * thickness;
  return { leg, frame, turn: turned, way: bend.way, radius: now, width: bend.width, allowance };
}

/** The frame in which the leg beyond a bend begins. */
export function beyondBend(bend: FoldedBend, thickness: number): Frame {
  const { frame, turn, way, radius, allowance } = bend;
  if (turn === 0) return { ...frame, origin: inSpace(frame, vector(allowance, 0, 0)) };
  const side = way === 'up' ? 1 : -1;
  const cos = Math.cos(turn);
  const sin = Math.sin(turn);
  // Radius of the marked face: it is the inside face of a bend up and the outside face of a bend down.
  const marked = way === 'up' ? radius : radius + thickness;
  // 1 − cos φ as 2 sin²(φ/2): keeps its figures while a bend has hardly begun.
  const half = Math.sin(turn / 2);
  return {
    origin: inSpace(frame, vector(marked * sin, 0, side * marked * 2 * half * half)),
    x: direction(frame, vector(cos, 0, side * sin)),
    y: frame.y,
    z: direction(frame, vector(-side * sin, 0, cos)),
  };
}

/**
 * Frames of all legs, bends and cut-outs in the frame of the first leg.
 * @param bent how far each leg's own bend is made, 0 flat to 1 finished, by leg index; finished where left out
 */
export function fold(layout: Layout, bent: readonly number[] = []): Folded {
  const { thickness } = layout.part;
  const legs: Frame[] = [];
  const bends: FoldedBend[] = [];
  const cutouts: FoldedCutout[] = [];
  layout.legs.forEach((leg, i) => {
    const parent = layout.part.legs[i]?.bend?.parent;
    const under = parent === undefined ? undefined : legs[parent];
    let frame = WORLD;
    if (leg.bend && under) {
      const made = stage(leg.bend, i, framedPose(under, leg.bend.seat), bent[i] ?? 1, thickness);
      bends.push(made);
      frame = beyondBend(made, thickness);
    }
    legs.push(frame);
    for (const { cutout, item, centre } of leg.cutouts) {
      cutouts.push({ leg: i, cutout, item, centre: inSpace(frame, vector(centre.x, centre.y, 0)), axis: frame.z });
    }
  });
  return { legs, bends, cutouts };
}
