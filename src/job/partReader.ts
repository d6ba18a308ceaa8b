/** Collects the worked-out entries of a part and the sentences about those that will not do. */
import type { Problem } from '../core/result';
import type { Wanted } from '../core/units/evaluate';
import { sayMm } from '../core/bending/say';
import type { Setting } from './stockSetting';

/** Answers a sentence where the value will not do. */
export type Refuses = (value: number) => string | undefined;

export interface PartReader {
  readonly problems: Problem[];
  /** By field path. */
  readonly values: (readonly [string, number])[];
  /**
   * The value of an entry; undefined where there is none that will do.
   * @param what names the place in a sentence: `Leg A (Foot), length`
   */
  readonly read: (field: string, what: string, text: string, wanted: Wanted, refuses?: Refuses) => number | undefined;
  /** A sentence about something other than one entry. */
  readonly refuse: (field: string, says: string) => undefined;
}

export function makePartReader(setting: Setting): PartReader {
  const problems: Problem[] = [];
  const values: (readonly [string, number])[] = [];
  const refuse = (field: string, says: string): undefined => {
    problems.push({ field, says });
    return undefined;
  };
  const read: PartReader['read'] = (field, what, text, wanted, refuses) => {
    const worked = setting.work(text, wanted);
    if (worked === undefined) return undefined;
    if (!worked.ok) return refuse(field, `${what}: ${worked.problem.says}`);
    values.push([field, worked.value]);
    const says = refuses?.(worked.value);
    return says === undefined ? worked.value : refuse(field, says);
  };
  return { problems, values, read, refuse };
}

/** Refuses 0 and below: `Leg A (Foot), length: 0 mm will not do; it must be above 0.` */
export const aboveNought =
  (what: string): Refuses =>
  (value) =>
    value > 0 ? undefined : `${what}: ${sayMm(value)} will not do; it must be above 0.`;

export const notBelowNought =
  (what: string): Refuses =>
  (value) =>
    value >= 0 ? undefined : `${what}: ${sayMm(value)} will not do; it cannot be below 0.`;
