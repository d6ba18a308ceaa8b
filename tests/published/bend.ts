import { bendFigures } from '../../src/core/bending/bendFigures';
import type { AllowanceRule, BendFigures } from '../../src/core/bending/types';
import type { Result } from '../../src/core/result';
import workedExamples from './data/worked-examples.json';

export const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** The program's own answer, or a failed test that says why there is none. */
export function answer<Value>(result: Result<Value>): Value {
  if (!result.ok) throw new Error(`no answer: ${result.problem.says}`);
  return result.value;
}

/** The program's figures of one bend, sizes in mm, angle turned in degrees. */
export const bend = (rule: AllowanceRule, turnedDegrees: number, radius: number, thickness: number): BendFigures =>
  answer(bendFigures(rule, radians(turnedDegrees), radius, thickness));

/** mm in an inch, exact since 1959. */
export const INCH = 25.4;

/** The same, sizes and answers in inches; the program works in mm. */
export function bendInInches(rule: AllowanceRule, turnedDegrees: number, radius: number, thickness: number): BendFigures {
  const figures = bend(rule, turnedDegrees, radius * INCH, thickness * INCH);
  return {
    ...figures,
    radius,
    allowance: figures.allowance / INCH,
    outsideSetback: figures.outsideSetback / INCH,
    insideSetback: figures.insideSetback / INCH,
    centreLineSetback: figures.centreLineSetback / INCH,
    deduction: figures.deduction / INCH,
  };
}

/** How far two figures lie apart. */
export const apart = (ours: number, theirs: number): number => Math.abs(ours - theirs);

/** What is compared with a printed figure gets room for the last binary place, so that a figure half a step away passes. */
export const ROUNDING = 1e-9;

/** A worked example by its name in data/worked-examples.json; each has inputs of its own shape. */
export function workedExample<Inputs, Printed>(id: string): { readonly inputs: Inputs; readonly printed_answer: Printed } {
  const found = workedExamples.values.examples.find((example) => example.id === id);
  if (found === undefined) throw new Error(`no worked example ${id}`);
  return found as unknown as { inputs: Inputs; printed_answer: Printed };
}
