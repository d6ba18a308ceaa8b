/** A measured bend, for a table of deductions: angle turned (rad), inside radius (mm), bend deduction 2 So − BA (mm). */
export interface MeasuredDeduction {
  readonly turn: number;
  readonly radius: number;
  readonly deduction: number;
}

/** How a stock says what a bend takes up. Each rule's source stands beside its formula in `kFactor.ts`. */
export type AllowanceRule =
  | { readonly kind: 'fixedK'; readonly k: number }
  | { readonly kind: 'din6935' }
  | { readonly kind: 'handbook'; readonly metal: 'soft' | 'half-hard' | 'hard' }
  | { readonly kind: 'aviation' }
  | { readonly kind: 'measured'; readonly rows: readonly MeasuredDeduction[] };

/** Everything about one bend that does not depend on where it stands. mm and rad. */
export interface BendFigures {
  readonly turn: number;
  readonly radius: number;
  /** Depth of the neutral line from the inside face as a share of the thickness. */
  readonly k: number;
  readonly allowance: number;
  readonly outsideSetback: number;
  readonly insideSetback: number;
  readonly centreLineSetback: number;
  /** 2 × outside setback − allowance. */
  readonly deduction: number;
}
