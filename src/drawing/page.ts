/** A sheet of paper: entities in mm from its lower left corner, y upwards. What is seen on screen, printed and written as PDF. */
import type { Entity } from './entities';

export interface Page {
  /** Stays the same while the same page is meant: `tile B2`. */
  readonly name: string;
  /** mm */
  readonly width: number;
  readonly height: number;
  readonly entities: readonly Entity[];
  /**
   * Where the printer does not print true: every point is set this many times as far from the lower left corner, so that what
   * comes out is true. Places only: letters and line widths keep their size. Left out where nothing is corrected.
   */
  readonly stretch?: { readonly x: number; readonly y: number };
}

/** mm of paper for one reference px of the guide (outline 2.6 px is 0.5 mm): figures come out 3.4 mm, captions 2.9 mm high. */
export const PAPER_PX_MM = 0.19;
