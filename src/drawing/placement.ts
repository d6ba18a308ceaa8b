/**
 * Places lettering and dimensions so that they can be read: every thing placed leaves its boxes on the sheet, every next one
 * is tried in several places in order of liking, and the place with the least cost is taken. Text never lies on text or metal
 * as long as one of the places offered is clear; callers end their lists with a place outside everything.
 */
import type { Bounds } from '../core/geometry/types';
import { joined, NOTHING } from '../core/geometry/bounds';
import { overlap, type Box, type Matter } from './boxes';
import type { Drawing, Entity } from './entities';

/**
 * Cost of laying one thing (row) on another that is there already (column). Text that cannot be read outweighs everything
 * else; extension lines may cross one another and, at a small cost, metal and dimension lines; leaders keep off all of them where
 * they can. The weights were set by eye on the drawings of the tests.
 */
const COST: Readonly<Record<Matter, Readonly<Record<Matter, number>>>> = {
  text: { metal: 1e6, text: 1e6, line: 3000, extension: 2000, leader: 3000 },
  line: { metal: 2200, text: 4000, line: 300, extension: 15, leader: 300 },
  extension: { metal: 60, text: 2500, line: 40, extension: 0, leader: 30 },
  leader: { metal: 2200, text: 4000, line: 300, extension: 30, leader: 60 },
  metal: { metal: 0, text: 0, line: 0, extension: 0, leader: 0 },
};

/** What would stand in one place, and how it is drawn. */
export interface Plan {
  readonly boxes: readonly Box[];
  readonly entities: () => readonly Entity[];
}

/**
 * The places for one thing, numbered from the best on. A number stands for the same place in every drawing of the part, so that
 * the thing can stay where it was.
 */
export interface Places {
  /** Stays the same from one drawing of a part to the next. */
  readonly key: string;
  readonly count: number;
  /** How little a place is liked, before anything it would lie on: never less than that of a lower number. Infinity where it is not offered. */
  readonly cost: (index: number) => number;
  readonly plan: (index: number) => Plan;
}

/** Where a thing was placed, and the cost of what it lies on there. */
export interface Taken {
  readonly index: number;
  readonly over: number;
}

/** Where everything was placed, by key. */
export type TakenPlaces = ReadonlyMap<string, Taken>;

/** A drawing that remembers where it placed things. */
export interface PlacedDrawing extends Drawing {
  readonly places: TakenPlaces;
  /** What is always on show covers: `bounds` without the readings that show for the chosen leg only. */
  readonly shown: Bounds;
}

export interface Sheet {
  readonly add: (boxes: readonly Box[]) => void;
  /** Cost of adding these boxes; stops counting at `limit`. */
  readonly cost: (boxes: readonly Box[], limit: number) => number;
  /** Marks the boxes of the best place as taken and answers its entities. A place held from before is kept while it is no worse than it was. */
  readonly place: (places: Places) => readonly Entity[];
  readonly bounds: () => Bounds;
  readonly taken: () => TakenPlaces;
}

/** px: side of the squares by which boxes are found again, and the most squares that one box is listed under. */
const SQUARE_PX = 56;
const MOST_SQUARES = 48;
const ROUNDING = 1e-6;

/** A sheet with nothing on it. `px` mm to a reference px. `before`: places that things are to be kept in. */
export function emptySheet(px: number, before?: TakenPlaces): Sheet {
  const side = SQUARE_PX * px;
  const all: Listed[] = [];
  const squares = new Map<number, Listed[]>();
  /** Boxes that cover too many squares to be listed under each. */
  const large: Listed[] = [];
  const taken = new Map<string, Taken>();
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  let asked = 0;

  const add = (boxes: readonly Box[]): void => {
    for (const b of boxes) {
      const listed: Listed = { box: b, seen: 0 };
      all.push(listed);
      if (b.minX < minX) minX = b.minX;
      if (b.minY < minY) minY = b.minY;
      if (b.maxX > maxX) maxX = b.maxX;
      if (b.maxY > maxY) maxY = b.maxY;
      const x0 = Math.floor(b.minX / side);
      const x1 = Math.floor(b.maxX / side);
      const y0 = Math.floor(b.minY / side);
      const y1 = Math.floor(b.maxY / side);
      if (tooMany(x0, x1, y0, y1)) large.push(listed);
      else {
        for (let x = x0; x <= x1; x++) {
          for (let y = y0; y <= y1; y++) {
            const square = squares.get(squareKey(x, y));
            if (square) square.push(listed);
            else squares.set(squareKey(x, y), [listed]);
          }
        }
      }
    }
  };

  /** Cost of one box on those of a list that it has not been laid on yet; stops counting at `limit`. */
  const against = (mine: Box, prices: Readonly<Record<Matter, number>>, others: readonly Listed[], limit: number): number => {
    let sum = 0;
    for (const other of others) {
      if (other.seen === asked) continue;
      other.seen = asked;
      const { box } = other;
      // Most boxes of a square do not touch: told before anything else is asked.
      if (mine.maxX <= box.minX || box.maxX <= mine.minX || mine.maxY <= box.minY || box.maxY <= mine.minY) continue;
      const price = prices[box.matter];
      if (price > 0 && overlap(mine, box)) {
        sum += price;
        if (sum >= limit) return sum;
      }
    }
    return sum;
  };

  const cost = (boxes: readonly Box[], limit: number): number => {
    let sum = 0;
    for (const mine of boxes) {
      const prices = COST[mine.matter];
      asked += 1;
      const x0 = Math.floor(mine.minX / side);
      const x1 = Math.floor(mine.maxX / side);
      const y0 = Math.floor(mine.minY / side);
      const y1 = Math.floor(mine.maxY / side);
      if (tooMany(x0, x1, y0, y1)) sum += against(mine, prices, all, limit - sum);
      else {
        sum += against(mine, prices, large, limit - sum);
        for (let x = x0; x <= x1 && sum < limit; x++) {
          for (let y = y0; y <= y1 && sum < limit; y++) {
            const square = squares.get(squareKey(x, y));
            if (square) sum += against(mine, prices, square, limit - sum);
          }
        }
      }
      if (sum >= limit) return sum;
    }
    return sum;
  };

  const put = (key: string, index: number, over: number, plan: Plan): readonly Entity[] => {
    taken.set(key, { index, over });
    add(plan.boxes);
    return plan.entities();
  };

  const place = (places: Places): readonly Entity[] => {
    const held = before?.get(places.key);
    if (held && held.index < places.count && places.cost(held.index) < Infinity) {
      const plan = places.plan(held.index);
      const over = cost(plan.boxes, held.over + 2 * ROUNDING);
      if (over <= held.over + ROUNDING) return put(places.key, held.index, Math.max(over, held.over), plan);
    }
    let best: Plan | undefined;
    let bestIndex = 0;
    let least = Infinity;
    for (let i = 0; i < places.count; i++) {
      const own = places.cost(i);
      if (own === Infinity) continue;
      if (own >= least) break;
      const plan = places.plan(i);
      const total = own + cost(plan.boxes, least - own);
      if (total < least) {
        least = total;
        best = plan;
        bestIndex = i;
      }
    }
    return best ? put(places.key, bestIndex, least - places.cost(bestIndex), best) : [];
  };

  return { add, cost, place, bounds: () => ({ minX, minY, maxX, maxY }), taken: () => taken };
}

/** A box on the sheet, and the last question for which it was looked at. */
interface Listed {
  readonly box: Box;
  seen: number;
}

const squareKey = (x: number, y: number): number => x * 65_536 + y;

/** Whether a box's upright bounds touch more squares than it is listed under. */
const tooMany = (x0: number, x1: number, y0: number, y1: number): boolean => (x1 - x0 + 1) * (y1 - y0 + 1) > MOST_SQUARES;

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
