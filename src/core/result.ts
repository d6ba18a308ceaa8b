/**
 * What the core answers: a value, or a problem that names the field, says what is wrong and what would be right.
 * Core functions never throw on bad input and never answer NaN or Infinity.
 */

/** Why there is no answer. */
export interface Problem {
  /** Path of the argument at fault, dots between the steps: `legs.2.length`. */
  readonly field: string;
  /** A plain sentence: which leg, bend or hole, by how much, and what would be right. */
  readonly says: string;
  /** How much it is out by, in mm or rad as the sentence says, where there is such a figure. */
  readonly amount?: number;
}

export type Result<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly problem: Problem };

export const good = <Value>(value: Value): Result<Value> => ({ ok: true, value });

export const bad = (field: string, says: string, amount?: number): { readonly ok: false; readonly problem: Problem } => ({
  ok: false,
  problem: amount === undefined ? { field, says } : { field, says, amount },
});

/** Marks a switch that has covered every case: a new case fails the type check here. */
export function unreachable(never: never): never {
  throw new Error(`A case was forgotten: ${JSON.stringify(never)}`);
}

/** An answer that may fail for several reasons at once: all of them are told. */
export type ManyResult<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly problems: readonly Problem[] };
