/** Spreads readings along a line so that none touch, each as near to its place as can be. */

export interface Reading {
  /** Where it belongs, and how far it reaches to either side of that, mm. */
  readonly at: number;
  readonly before: number;
  readonly behind: number;
  /** Held where it belongs: the others give way. */
  readonly held?: boolean;
}

const HELD_WEIGHT = 1e9;

/**
 * Places for readings that are in order of `at`: least sum of squared shifts with at least `gap` mm between neighbours.
 * Source: pooling of adjacent violators, the textbook method for regression in order (from memory).
 */
export function spread(readings: readonly Reading[], gap: number): readonly number[] {
  // With the room that each needs behind the first taken off, places only have to be in order.
  const room: number[] = [];
  readings.forEach((reading, i) => {
    const before = readings[i - 1];
    room.push(before ? (room[i - 1] ?? 0) + before.behind + gap + reading.before : 0);
  });
  const pools: { sum: number; weight: number; count: number }[] = [];
  readings.forEach((reading, i) => {
    const weight = reading.held ? HELD_WEIGHT : 1;
    let pool = { sum: (reading.at - (room[i] ?? 0)) * weight, weight, count: 1 };
    for (let last = pools.at(-1); last && last.sum / last.weight >= pool.sum / pool.weight; last = pools.at(-1)) {
      pools.pop();
      pool = { sum: pool.sum + last.sum, weight: pool.weight + last.weight, count: pool.count + last.count };
    }
    pools.push(pool);
  });
  return pools.flatMap((pool) => Array.from({ length: pool.count }, () => pool.sum / pool.weight)).map((place, i) => place + (room[i] ?? 0));
}
