/** Where a side lug sits on the long edge of its parent, in the parent's frame. */
import { setback } from '../bending/setback';
import { TOUCHING_MM } from '../geometry/tolerance';
import { bad, good, type Result } from '../result';
import type { BendFigures } from '../bending/types';
import type { Point, Pose } from '../geometry/types';
import type { Bend, Relief } from './types';
import { halfWidthAt, type LongEdge } from './longEdge';

/** A stretch of a long edge taken by a lug. Distances along the edge run in the direction of the leg's x. */
export interface LugSeat {
  readonly child: number;
  readonly side: 'left' | 'right';
  /** mm along the edge from the edge's start to the lug's near and far side. */
  readonly near: number;
  readonly far: number;
  /** mm from the parent's edge inwards to the bend's start tangent line. */
  readonly inset: number;
  readonly relief: Relief;
  readonly pose: Pose;
}

/** A point given along the edge (from its start) and outwards from it, in the parent's frame. */
export function onEdge(edge: LongEdge, side: 'left' | 'right', alongEdge: number, outwards: number): Point {
  const cos = Math.cos(edge.taper);
  const sin = Math.sin(edge.taper);
  const y = edge.start.y + alongEdge * sin + outwards * cos;
  return { x: edge.start.x + alongEdge * cos - outwards * sin, y: side === 'left' ? y : -y };
}

/**
 * @param at mm, x in the parent's frame of the lug's near side (its middle, where the seat counts from the middle)
 * @param width mm, the lug's width at its bend
 * @param squareEnds whether the parent is a plain rectangle, free at both ends: only there can a lug take the whole edge, inset, without reliefs
 * @param straight mm, the parent's straight length
 * @returns refuses a lug that does not fit on the straight stretch of the edge, fields `bend.seat.*`
 */
export function lugSeat(
  child: number,
  bend: Bend & { readonly seat: NonNullable<Bend['seat']> },
  figures: BendFigures,
  thickness: number,
  width: number,
  edge: LongEdge,
  at: number,
  squareEnds: boolean,
  straight: number,
): Result<LugSeat> {
  const side = bend.edge === 'left' ? 'left' : 'right';
  const length = Math.hypot(edge.end.x - edge.start.x, edge.end.y - edge.start.y);
  const fromStart = (at - edge.start.x) / Math.cos(edge.taper);
  const near = { start: fromStart, middle: fromStart - width / 2, end: fromStart - width }[bend.seat.along.from];
  const far = near + width;
  const { relief } = bend.seat;
  const reliefWidth = relief.kind === 'none' ? 0 : relief.width;
  const inset = setback(bend.seat.basis, figures.turn, figures.radius, thickness);

  const overStart = reliefWidth - near;
  const overEnd = far + reliefWidth - length;
  const slack = 1e-9;
  if (overStart > slack || overEnd > slack) {
    const over = Math.max(overStart, overEnd);
    return bad('bend.seat.along.distance', `reaches ${over.toFixed(2)} mm past the end of the edge it hangs on. Move it, make it narrower or take the relief away.`, over);
  }
  if (inset > slack && relief.kind === 'none' && (near > slack || far < length - slack || !squareEnds)) {
    return bad('bend.seat.relief', `is set ${inset.toFixed(2)} mm into the edge, so it needs a relief at both ends, or the basis "straight".`, inset);
  }
  // Its round floor must lie wholly beyond the tangent line, or flat metal stays beside the bend and tears.
  if (relief.kind === 'round' && relief.depth < relief.width / 2 - slack) {
    return bad('bend.seat.relief.depth', `has a round relief that is shallower than its own radius of ${(relief.width / 2).toFixed(2)} mm. Make it deeper or narrower.`, relief.width / 2 - relief.depth);
  }
  // On a sloping edge a relief leans towards one end; there it must stay within the leg, clear of the bend beyond.
  const floor = -(inset + (relief.kind === 'none' ? 0 : relief.depth));
  const past = Math.max(-onEdge(edge, 'left', near - reliefWidth, floor).x, onEdge(edge, 'left', far + reliefWidth, floor).x - straight);
  if (past > slack) {
    return bad('bend.seat.along.distance', `stands on a sloping edge, and its relief reaches ${past.toFixed(2)} mm past the end of that leg. Move it away from that end, or make the relief shallower.`, past);
  }
  const middleHeight = halfWidthAt(edge, onEdge(edge, 'left', (near + far) / 2, 0).x);
  if (inset + (relief.kind === 'none' ? 0 : relief.depth) >= 2 * middleHeight) {
    return bad('bend.seat.basis', 'takes more than the whole width of the leg it hangs on. Make that leg wider.', inset);
  }
  const middle = onEdge(edge, side, (near + far) / 2, -inset);
  const heading = side === 'left' ? edge.taper + Math.PI / 2 : -(edge.taper + Math.PI / 2);
  return good({ child, side, near, far, inset, relief, pose: { ...middle, heading } });
}

/** Lugs of one leg that touch or overlap the one before them on the same edge: without a gap no cut parts them. */
export function lugsWithoutGap(lugs: readonly LugSeat[]): readonly { readonly lug: number; readonly beside: number }[] {
  return (['left', 'right'] as const).flatMap((side) => {
    const inOrder = lugs.filter((seat) => seat.side === side).toSorted((a, b) => a.near - b.near);
    return inOrder.flatMap((seat, i) => {
      const before = inOrder[i - 1];
      return before && seat.near - before.far <= TOUCHING_MM ? [{ lug: seat.child, beside: before.child }] : [];
    });
  });
}
