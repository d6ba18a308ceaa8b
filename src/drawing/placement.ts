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
  line: { metal: 400, text: 4000, line: 300, extension: 15 },
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
  /** Tries the candidates, marks the best one's boxes as taken and answers its entities. */
  readonly place: (candidates: readonly Candidate[]) => readonly Entity[];
  readonly bounds: () => Bounds;
}

export function emptySheet(): Sheet {
  const taken: Box[] = [];
  let bounds = NOTHING;

  const add = (boxes: readonly Box[]): void => {
    for (const b of boxes) {
      taken.push(b);
      bounds = joined(bounds, b);
    }
  };

  const cost = (boxes: readonly Box[], limit: number): number => {
    let sum = 0;
    for (const mine of boxes) {
      const prices = COST[mine.matter];
      for (const other of taken) {
        if (mine.maxX <= other.minX || other.maxX <= mine.minX || mine.maxY <= other.minY || other.maxY <= mine.minY) continue;
        const price = prices[other.matter];
        if (price === 0 || !overlap(mine, other)) continue;
        sum += price;
        if (sum >= limit) return sum;
      }
    }
    return sum;
  };

  const place = (candidates: readonly Candidate[]): readonly Entity[] => {
    let best: Plan | undefined;
    let least = Infinity;
    for (const candidate of candidates.toSorted((a, b) => a.cost - b.cost)) {
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

/** How far the box round everything reaches from the origin in a direction (unit). */
export const reach = (b: Bounds, ux: number, uy: number): number =>
  ux * (ux >= 0 ? b.maxX : b.minX) + uy * (uy >= 0 ? b.maxY : b.minY);
