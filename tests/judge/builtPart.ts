/** A part built by a solid kernel from its own definition: every leg is laid flat at its tangent line and tilted about the axis of its bend. */
import type { Contour, Vector3 } from '../../src/core/geometry/types';
import { contourAt } from '../../src/core/part/cutoutPlaces';
import type { WalkableLayout } from '../../src/core/part/layOut';
import type { Bend, Part } from '../../src/core/part/types';
import { datumOf, reachOf } from '../core/part/randomParts';
import type { Kernel } from './kernels';

/** One step from a leg's own place to its parent's. */
export interface Step {
  readonly tilt: { readonly height: number; readonly angle: number };
  readonly swing: number;
  readonly move: Vector3;
}

export interface Piece {
  readonly leg: number;
  readonly what: 'leg' | 'bend';
}

export interface Openings {
  readonly contour: Contour;
  readonly centre: Vector3;
  /** mm, of the largest round bar that just fills a hole. */
  readonly radius: number | undefined;
}

const bendAtEnd = (part: Part, leg: number): Bend | undefined => part.legs.find((l) => l.bend?.parent === leg && l.bend.edge === 'end')?.bend;

/** mm between the tangent lines, by design section 3. */
export function straightOf(part: Part, i: number): number {
  const leg = part.legs[i];
  if (!leg) throw new Error(`no leg ${i}`);
  const after = bendAtEnd(part, i);
  return (
    leg.length -
    (leg.bend ? reachOf(leg.startBasis, leg.bend.turn, leg.bend.radius, part.thickness) : 0) -
    (after ? reachOf(leg.endBasis, after.turn, after.radius, part.thickness) : 0)
  );
}

const sizedOf = (part: Part, i: number) => ({ straight: straightOf(part, i), startBend: part.legs[i]?.bend, endBend: bendAtEnd(part, i) });

/** How a leg stands on its parent, worked out from the part alone. */
export function stepOf(part: Part, i: number): Step {
  const leg = part.legs[i];
  const bend = leg?.bend;
  const parent = bend ? part.legs[bend.parent] : undefined;
  if (!leg || !bend || !parent) throw new Error(`leg ${i} hangs on nothing`);
  const t = part.thickness;
  const tilt = bend.way === 'up' ? { height: bend.radius, angle: bend.turn } : { height: -t - bend.radius, angle: -bend.turn };
  const on = sizedOf(part, bend.parent);
  if (!bend.seat) return { tilt, swing: 0, move: { x: on.straight, y: 0, z: 0 } };
  const side = bend.edge === 'left' ? 1 : -1;
  const slope = Math.atan((parent.endWidth - parent.startWidth) / 2 / on.straight);
  const { from, basis, distance } = bend.seat.along;
  const datum = datumOf(from, basis, on, t);
  const x = from === 'end' ? datum - distance : datum + distance;
  const toMiddle = { start: leg.startWidth / 2, middle: 0, end: -leg.startWidth / 2 }[from];
  const middleX = x + toMiddle * Math.cos(slope);
  const edgeY = parent.startWidth / 2 + middleX * Math.tan(slope);
  const inset = reachOf(bend.seat.basis, bend.turn, bend.radius, t);
  return {
    tilt,
    swing: side * (Math.PI / 2 + slope),
    move: { x: middleX + inset * Math.sin(slope), y: side * (edgeY - inset * Math.cos(slope)), z: 0 },
  };
}

/** Every opening of a leg by its dimensions; the leg must have straight edges from corner to corner (no round ends). */
export function openingsOf(part: Part, i: number): Openings[] {
  const leg = part.legs[i];
  if (!leg) throw new Error(`no leg ${i}`);
  const sized = sizedOf(part, i);
  return leg.cutouts.flatMap(({ along, across, pattern, shape }) => {
    const nx = pattern.kind === 'grid' ? pattern.alongCount : pattern.kind === 'row' && pattern.direction === 'along' ? pattern.count : 1;
    const ny = pattern.kind === 'grid' ? pattern.acrossCount : pattern.kind === 'row' && pattern.direction === 'across' ? pattern.count : 1;
    const px = pattern.kind === 'grid' ? pattern.alongPitch : pattern.kind === 'row' ? pattern.pitch : 0;
    const py = pattern.kind === 'grid' ? pattern.acrossPitch : pattern.kind === 'row' ? pattern.pitch : 0;
    const datum = datumOf(along.from, along.basis, sized, part.thickness);
    return Array.from({ length: nx * ny }, (_, item): Openings => {
      const ix = Math.floor(item / ny);
      const iy = item % ny;
      const x = { start: datum + along.distance + ix * px, end: datum - along.distance - ix * px, middle: datum + along.distance + (ix - (nx - 1) / 2) * px }[along.from];
      const half = (leg.startWidth + ((leg.endWidth - leg.startWidth) * x) / (sized.straight || 1)) / 2;
      const y = { centre: across.distance + (iy - (ny - 1) / 2) * py, left: half - across.distance - iy * py, right: -half + across.distance + iy * py }[across.from];
      return { contour: contourAt(shape, { x, y }), centre: { x, y, z: 0 }, radius: shape.kind === 'round' ? shape.diameter / 2 : undefined };
    });
  });
}

/** Every leg and bend as a solid in the place where the first leg lies. */
export function builtPart<Solid>(kernel: Kernel<Solid>, layout: WalkableLayout): (Piece & { readonly solid: Solid })[] {
  const { part } = layout;
  const t = part.thickness;
  const home = (solid: Solid, leg: number): Solid => {
    const parent = part.legs[leg]?.bend?.parent;
    if (parent === undefined) return solid;
    const step = stepOf(part, leg);
    return home(kernel.move(kernel.swing(kernel.tilt(solid, step.tilt.height, step.tilt.angle), step.swing), step.move), parent);
  };
  return part.legs.flatMap((leg, i) => {
    const pieces: (Piece & { readonly solid: Solid })[] = [];
    if (leg.bend) {
      const parent = part.legs[leg.bend.parent];
      const step = stepOf(part, i);
      const width = leg.bend.edge === 'end' ? Math.min(parent?.endWidth ?? NaN, leg.startWidth) : leg.startWidth;
      const curved = kernel.bend(width, leg.bend.radius, t, leg.bend.turn, leg.bend.way);
      pieces.push({ leg: i, what: 'bend', solid: home(kernel.move(kernel.swing(curved, step.swing), step.move), leg.bend.parent) });
    }
    // A leg of no straight length is no solid.
    if (straightOf(part, i) > 1e-4) pieces.push({ leg: i, what: 'leg', solid: home(kernel.plate(layout.legs[i]?.plan ?? [], openingsOf(part, i).map((o) => o.contour), t), i) });
    return pieces;
  });
}
