/**
 * Places lettering and dimensions so that they can be read: every thing placed leaves its boxes on the sheet, every next one
 * is tried in several places in order of liking, and the place with the least cost is taken. Text never lies on text or metal
 * as long as one of the places offered is clear; callers end their lists with a place outside everything.
 */
import type { Bounds } from '../core/geometry/types';
import { joined, NOTHING } from '../core/geometry/bounds';
import { overlap, type Box, type Matter } from './boxes';
import type { Entity } from './entities';

/**
 * Cost of laying one thing (row) on another that is there already (column). Text that cannot be read outweighs everything
 * else; extension lines may cross one another and, at a small cost, metal and dimension lines. The weights were set by eye on the
 * drawings of the tests.
 */
const COST: Readonly<Record<Matter, Readonly<Record<Matter, number>>>> = {
  text: { metal: 1e6, text: 1e6, line: 3000, extension: 2000 },
  line: { metal: 2200, text: 4000, line: 300, extension: 15 },
  extension: { metal: 60, text: 2500, line: 40, extension: 0 },
  metal: { metal: 0, text: 0, line: 0, extension: 0 },
};

/** What would stand in one place, and how it is drawn. */
export interface Plan {
  readonly boxes: readonly Box[];
  readonly entities: () => readonly Entity[];
}

/** A place to try: `cost` says how little it is liked, before anything it would lie on. */
export interface Candidate {
  readonly cost: number;
  readonly plan: () => Plan;
}

export interface Sheet {
  readonly add: (boxes: readonly Box[]) => void;
  /** Cost of adding these boxes; stops counting at `limit`. */
  readonly cost: (boxes: readonly Box[], limit: number) => number;
  /** Tries the candidates, which come in order of their own cost, marks the best one's boxes as taken and answers its entities. */
  readonly place: (candidates: Iterable<Candidate>) => readonly Entity[];
  readonly bounds: () => Bounds;
}

/** px: side of the squares by which boxes are found again, and the most squares that one box is listed under. */
const SQUARE_PX = 56;
const MOST_SQUARES = 48;

/** A sheet with nothing on it. `px` mm to a reference px. */
export function emptySheet(px: number): Sheet {
  const side = SQUARE_PX * px;
  const all: Listed[] = [];
  const squares = new Map<number, Listed[]>();
  /** Boxes that cover too many squares to be listed under each. */
  const large: Listed[] = [];
  let bounds = NOTHING;
  let asked = 0;

  const add = (boxes: readonly Box[]): void => {
    for (const b of boxes) {
      const listed: Listed = { box: b, seen: 0 };
      all.push(listed);
      bounds = joined(bounds, b);
      const keys = squaresOf(b, side);
      if (!keys) large.push(listed);
      else {
        for (const key of keys) {
          const square = squares.get(key);
          if (square) square.push(listed);
          else squares.set(key, [listed]);
        }
      }
    }
  };

  const cost = (boxes: readonly Box[], limit: number): number => {
    let sum = 0;
    for (const mine of boxes) {
      const prices = COST[mine.matter];
      asked += 1;
      const against = (others: readonly Listed[]): void => {
        for (const other of others) {
          if (other.seen === asked) continue;
          other.seen = asked;
          const price = prices[other.box.matter];
          if (price > 0 && overlap(mine, other.box)) sum += price;
        }
      };
      const keys = squaresOf(mine, side);
      if (keys) {
        against(large);
        for (const key of keys) {
          const square = squares.get(key);
          if (square) against(square);
        }
      } else against(all);
      if (sum >= limit) return sum;
    }
    return sum;
  };

  const place = (candidates: Iterable<Candidate>): readonly Entity[] => {
    let best: Plan | undefined;
    let least = Infinity;
    for (const candidate of candidates) {
      if (candidate.cost >= least) break;
      const plan = candidate.plan();
      const total = candidate.cost + cost(plan.boxes, least - candidate.cost);
      if (total < least) {
        least = total;
        best = plan;
      }
    }
    if (!best) return [];
    add(best.boxes);
    return best.entities();
  };

  return { add, cost, place, bounds: () => bounds };
}

/** A box on the sheet, and the last question for which it was looked at. */
interface Listed {
  readonly box: Box;
  seen: number;
}

/** Keys of the squares that a box's upright bounds touch; undefined where there are too many of them. */
function squaresOf(b: Box, side: number): readonly number[] | undefined {
  const x0 = Math.floor(b.minX / side);
  const x1 = Math.floor(b.maxX / side);
  const y0 = Math.floor(b.minY / side);
  const y1 = Math.floor(b.maxY / side);
  if ((x1 - x0 + 1) * (y1 - y0 + 1) > MOST_SQUARES) return undefined;
  const keys: number[] = [];
  for (let x = x0; x <= x1; x++) for (let y = y0; y <= y1; y++) keys.push(x * 65_536 + y);
  return keys;
}

/** How far the box round everything reaches from the origin in a direction (unit). */
export const reach = (b: Bounds, ux: number, uy: number): number =>
  ux * (ux >= 0 ? b.maxX : b.minX) + uy * (uy >= 0 ? b.maxY : b.minY);

/** px by which centre lines, marks and bend lines run past the metal, at the most. */
const PAST_METAL_PX = 12;

/** What a drawing covers: everything placed, and the metal with the lines that run past it. */
export const drawnBounds = (placed: Bounds, metal: readonly Box[], px: number): Bounds => {
  const past = PAST_METAL_PX * px;
  const { minX, minY, maxX, maxY } = metal.reduce<Bounds>((b, box) => joined(b, box), NOTHING);
  return joined(placed, { minX: minX - past, minY: minY - past, maxX: maxX + past, maxY: maxY + past });
};

/** px by which a band is moved out when its lettering would lie on that of another. */
const BAND_STEP_PX = 14;
const MOST_BAND_STEPS = 40;

/** Lettering made at the first distance out (mm, from 0) at which none of it lies on what is on the sheet. */
export function movedClear<Drawn extends { readonly boxes: readonly Box[] }>(sheet: Sheet, px: number, make: (out: number) => Drawn): Drawn {
  let drawn = make(0);
  for (let step = 1; step <= MOST_BAND_STEPS && sheet.cost(drawn.boxes.filter((b) => b.matter === 'text'), COST.text.text) >= COST.text.text; step++) {
    drawn = make(step * BAND_STEP_PX * px);
  }
  return drawn;
}
