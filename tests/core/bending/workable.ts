import * as fc from 'fast-check';
import { setback } from '../../../src/core/bending/setback';
import type { AllowanceRule, MeasuredDeduction } from '../../../src/core/bending/types';
import type { Result } from '../../../src/core/result';

export const degrees = (angle: number): number => (angle * Math.PI) / 180;

/** A figure between two limits, spread evenly: a plain fc.double() piles up near 0. */
export const between = (least: number, most: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: 1_000_000 }).map((step) => least + ((most - least) * step) / 1_000_000);

/** Bends that every rule but the measured one can work out: r/t from 0.1 to 300. */
export const workableBend = fc
  .record({ turn: between(degrees(0.5), Math.PI), thickness: between(0.3, 3), ratio: fc.oneof(between(0.1, 8), between(8, 300)) })
  .map(({ turn, thickness, ratio }) => ({ turn, thickness, radius: thickness * ratio }));

export const formulaRule: fc.Arbitrary<AllowanceRule> = fc.oneof(
  between(0, 1).map((k) => ({ kind: 'fixedK' as const, k })),
  fc.constant({ kind: 'din6935' as const }),
  fc.constantFrom('soft' as const, 'half-hard' as const, 'hard' as const).map((metal) => ({ kind: 'handbook' as const, metal })),
  fc.constant({ kind: 'aviation' as const }),
);

/** A row as it would be measured on a bend of known K. */
export const rowOfK = (turn: number, radius: number, thickness: number, k: number): MeasuredDeduction => ({
  turn,
  radius,
  deduction: 2 * setback('outside', turn, radius, thickness) - turn * (radius + k * thickness),
});

export function valueOf<Value>(result: Result<Value>): Value {
  if (!result.ok) throw new Error(`${result.problem.field}: ${result.problem.says}`);
  return result.value;
}

export function problemOf(result: Result<unknown>): { readonly field: string; readonly says: string; readonly amount?: number } {
  if (result.ok) throw new Error(`expected a problem, got ${JSON.stringify(result.value)}`);
  return result.problem;
}

/** A sentence for the maker: a capital, a full stop, none of the words we do not use, no NaN or Infinity let out. */
export const isPlainSentence = (says: string): boolean =>
  /^[A-Z].*\.$/s.test(says) && !/error|invalid|please|oops|!|NaN|Infinity|undefined/i.test(says);
