/**
 * What stays the same when a part is made of another stock. As typed, every entry keeps its basis and is worked out anew
 * with the other thickness and radius. Beyond that the maker may hold, leg by leg, the outside sizes, the inside sizes, or
 * the places of the holes in the bent part.
 */
import { setback } from '../../core/bending/setback';
import type { Frame } from '../../core/geometry/types';
import type { LegLayout } from '../../core/part/layoutTypes';
import { mainChild } from '../../core/part/mainRun';
import type { Along, Basis, Leg, Part } from '../../core/part/types';
import type { Shape } from '../workOut';

export type Keep = 'as typed' | 'outside' | 'inside' | 'holes';

/** Setbacks of a basis at both ends of a leg as laid out, mm. */
function setbacks(shape: Shape, index: number, basis: Basis): { readonly start: number; readonly end: number } {
  const { layout } = shape;
  const of = (bent: LegLayout | undefined): number =>
    bent?.bend ? setback(basis, bent.bend.figures.turn, bent.bend.figures.radius, layout.part.thickness) : 0;
  const child = mainChild(layout.part, index);
  return { start: of(layout.legs[index]), end: child === undefined ? 0 : of(layout.legs[child]) };
}

/** A place along leg `index` of the shape, given on `basis`. */
function alongOn(shape: Shape, index: number, along: Along, basis: 'outside' | 'inside'): Along {
  const { start, end } = setbacks(shape, index, basis);
  const own = setbacks(shape, index, along.basis);
  // From the middle the place moves with the middle, which shifts by half the change in the two setbacks' difference.
  const shift = {
    start: start - own.start,
    end: end - own.end,
    middle: (own.end - own.start - (end - start)) / 2,
  }[along.from];
  return { ...along, basis, distance: along.distance + shift };
}

/** The leg with its length, and the place of each hole along it, given on `basis` at the size they have in `shape`. */
function onBasis(shape: Shape, leg: Leg, index: number, basis: 'outside' | 'inside'): Leg {
  const straight = shape.layout.legs[index]?.straight ?? 0;
  const { start, end } = setbacks(shape, index, basis);
  return {
    ...leg,
    length: straight + start + end,
    startBasis: basis,
    endBasis: basis,
    cutouts: leg.cutouts.map((cutout) => ({ ...cutout, along: alongOn(shape, index, cutout.along, basis) })),
  };
}

/** How far, along its own length, a leg's frame has moved between two bent parts, mm. */
const movedAlong = (before: Frame, after: Frame): number =>
  (before.origin.x - after.origin.x) * after.x.x + (before.origin.y - after.origin.y) * after.x.y + (before.origin.z - after.origin.z) * after.x.z;

/** Whether a leg's outside or inside sizes are held. */
const sizesHeld = (held: Keep | undefined): held is 'outside' | 'inside' => held === 'outside' || held === 'inside';

/** A side lug keeps its place along a parent whose sizes are held, as that parent's holes do. */
function lugHeld(shape: Shape, leg: Leg, now: Leg, keep: readonly Keep[]): Leg {
  const { bend } = leg;
  const held = bend && keep[bend.parent];
  const along = now.bend?.seat?.along;
  if (!bend?.seat || !along || !sizesHeld(held)) return leg;
  return { ...leg, bend: { ...bend, seat: { ...bend.seat, along: alongOn(shape, bend.parent, along, held) } } };
}

/**
 * The part in the other stock with what is held put right: outside and inside sizes.
 * @param shape the part in the stock it is made of now
 * @param other the same entries worked out in the other stock
 */
export function holdSizes(shape: Shape, other: Part, keep: readonly Keep[]): Part {
  return {
    ...other,
    legs: other.legs.map((leg, i) => {
      const now = shape.layout.part.legs[i];
      if (!now) return leg;
      const held = keep[i];
      const seated = lugHeld(shape, leg, now, keep);
      if (!sizesHeld(held)) return seated;
      const { length, startBasis, endBasis, cutouts } = onBasis(shape, now, i, held);
      return { ...seated, length, startBasis, endBasis, cutouts };
    }),
  };
}

/**
 * Moves the holes of the legs that hold their holes, along the leg, so that in space they stand where they stand now, as
 * seen along that leg. Across the leg's plane a hole goes with its leg.
 * @param shape the part in the stock it is made of now
 * @param bent the part in the other stock, laid out and bent with its sizes held
 */
export function holdHoles(shape: Shape, bent: Shape, keep: readonly Keep[]): Part {
  const { part } = bent.layout;
  return {
    ...part,
    legs: part.legs.map((leg, i) => {
      const before = shape.folded.legs[i];
      const after = bent.folded.legs[i];
      if (keep[i] !== 'holes' || !before || !after) return leg;
      const moved = movedAlong(before, after);
      return {
        ...leg,
        cutouts: leg.cutouts.map((cutout, j) => {
          const was = shape.layout.legs[i]?.cutouts.find((c) => c.cutout === j && c.item === 0)?.centre.x;
          const is = bent.layout.legs[i]?.cutouts.find((c) => c.cutout === j && c.item === 0)?.centre.x;
          if (was === undefined || is === undefined) return cutout;
          const shift = was + moved - is;
          const distance = cutout.along.distance + (cutout.along.from === 'end' ? -shift : shift);
          return { ...cutout, along: { ...cutout.along, distance } };
        }),
      };
    }),
  };
}
