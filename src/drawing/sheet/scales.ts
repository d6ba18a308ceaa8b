/** Scales that a drawing may be made to. Source: ISO 5455, recommended scales (from memory). */

export interface DrawingScale {
  /** mm on paper for one mm of the part. */
  readonly ratio: number;
  /** `1:2` */
  readonly says: string;
}

/** Nothing is drawn larger than this: a workshop compares the part with the paper by eye. Common practice, no source. */
const ENLARGED = [5, 2];
const REDUCED = [2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000];

/** Largest first. */
export const DRAWING_SCALES: readonly DrawingScale[] = [
  ...ENLARGED.map((ratio) => ({ ratio, says: `${ratio}:1` })),
  { ratio: 1, says: '1:1' },
  ...REDUCED.map((times) => ({ ratio: 1 / times, says: `1:${times}` })),
];
