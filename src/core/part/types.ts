/**
 * A part as numbers: what the job document becomes once every entry is worked out.
 * A part is a tree. Legs are nodes; each leg but the first is joined to its parent by one bend.
 *
 * Frame of a leg: origin on the marked face, on the centre line, at the start tangent line (or the free start edge);
 * x along the leg towards its end, y across to the left, z out of the marked face. The metal lies at −thickness ≤ z ≤ 0.
 */
import type { AllowanceRule } from '../bending/types';

/** To where a leg's length or a feature's position is measured at a bent end (design: setbacks). All agree at a free end. */
export type Basis = 'outside' | 'inside' | 'centre line' | 'straight';

/** Shape of a free end, mm. A bent end is always square. With `round` the leg's width at that end is the diameter. */
export type EndShape =
  | { readonly kind: 'square' }
  | { readonly kind: 'radius'; readonly radius: number }
  | { readonly kind: 'chamfer'; readonly size: number }
  | { readonly kind: 'round' };

/** A place along a leg, mm. From `end` it counts back towards the start; from `middle` it counts towards the end. */
export interface Along {
  readonly from: 'start' | 'end' | 'middle';
  readonly basis: Basis;
  readonly distance: number;
}

/** A place across a leg, mm. From `centre` it counts to the left (+y); from an edge it counts inwards. */
export interface Across {
  readonly from: 'centre' | 'left' | 'right';
  readonly distance: number;
}

/** mm and rad; `length` is overall, along the leg before `turn` turns it anticlockwise on the marked face. */
export type CutoutShape =
  | { readonly kind: 'round'; readonly diameter: number }
  | { readonly kind: 'slot'; readonly length: number; readonly width: number; readonly turn: number }
  | { readonly kind: 'rectangle'; readonly length: number; readonly width: number; readonly corner: number; readonly turn: number };

/**
 * How a cut-out repeats, pitches in mm. From the start or the right edge the rest follow at +pitch, from the end or the
 * left edge at −pitch; from the middle or the centre line the run is centred on the place given.
 */
export type Pattern =
  | { readonly kind: 'single' }
  | { readonly kind: 'row'; readonly direction: 'along' | 'across'; readonly count: number; readonly pitch: number }
  | { readonly kind: 'grid'; readonly alongCount: number; readonly alongPitch: number; readonly acrossCount: number; readonly acrossPitch: number };

export interface Cutout {
  readonly id: string;
  readonly name: string;
  readonly shape: CutoutShape;
  readonly along: Along;
  readonly across: Across;
  readonly pattern: Pattern;
}

/** A notch at an end of a side lug's bend, mm, cut along the parent's edge (`width`) and into the parent (`depth`). */
export type Relief =
  | { readonly kind: 'none' }
  | { readonly kind: 'square' | 'round'; readonly width: number; readonly depth: number };

/** The bend between a leg and its parent. */
export interface Bend {
  /** Index of the parent in the part's list; always below the leg's own. */
  readonly parent: number;
  /** `end`: the parent's far end (main run). `left`, `right`: a long edge of the parent (side lug). */
  readonly edge: 'end' | 'left' | 'right';
  /** rad turned from flat, above 0, to π. */
  readonly turn: number;
  /** `up`: towards the marked face. */
  readonly way: 'up' | 'down';
  /** mm at the inside face, from 0. */
  readonly radius: number;
  /** Only for a side lug: where it sits on the parent's edge, to its near side (`middle`: to its own middle). */
  readonly seat?: {
    readonly along: Along;
    /** What the parent's edge is to the lug once bent: its outside face, inside face, centre line, or the tangent line (`straight`). */
    readonly basis: Basis;
    readonly relief: Relief;
  };
}

export interface Leg {
  readonly id: string;
  readonly name: string;
  /** mm, to `startBasis` and `endBasis` at bent ends. */
  readonly length: number;
  readonly startBasis: Basis;
  readonly endBasis: Basis;
  /** mm across the leg at its ends; straight taper between. */
  readonly startWidth: number;
  readonly endWidth: number;
  readonly startShape: EndShape;
  readonly endShape: EndShape;
  readonly cutouts: readonly Cutout[];
  /** Absent on the first leg only. */
  readonly bend?: Bend;
}

export interface Part {
  /** mm */
  readonly thickness: number;
  readonly rule: AllowanceRule;
  /** Parents stand before their children. */
  readonly legs: readonly Leg[];
}
