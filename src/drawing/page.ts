/** A sheet of paper: entities in mm from its lower left corner, y upwards. What is seen on screen, printed and written as PDF. */
import type { Entity } from './entities';

export interface Page {
  /** Stays the same while the same page is meant: `tile B2`. */
  readonly name: string;
  /** mm */
  readonly width: number;
  readonly height: number;
  readonly entities: readonly Entity[];
}

/** mm of paper for one reference px of the guide (outline 2.6 px is 0.5 mm): figures come out 3.4 mm, captions 2.9 mm high. */
export const PAPER_PX_MM = 0.19;
