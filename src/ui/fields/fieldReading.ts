/** What a field of the job shows: the text that was typed, its value, and the sentence where it will not do. */
import { useShallow } from 'zustand/react/shallow';
import type { Wanted } from '../../core/units/evaluate';
import { formatAngle, formatLength } from '../../core/units/formatLength';
import { unreachable, type Result } from '../../core/result';
import { readField } from '../../job/fields';
import type { Job } from '../../job/schema';
import { useBench } from '../../store/bench';
import { partOf } from '../../store/derived';
import { plainText } from './nudge';

export interface FieldReading {
  readonly text: string;
  /** mm, rad or a plain number; undefined where it could not be worked out. */
  readonly value: number | undefined;
  readonly says: string | undefined;
}

/** Which part's figures hold a field: the one its path names, else the part in view (its stock's fields are among them). */
export const partOfField = (field: string, inView: string): string => /^parts\.([^.]+)\./.exec(field)?.[1] ?? inView;

/** Reads a field. `value` works out fields that belong to no part, such as named sizes. */
export function readEntry(job: Job, field: string, inView: string, value?: (job: Job) => Result<number>): FieldReading {
  const held = readField(job, field);
  const text = typeof held === 'string' ? held : '';
  if (value) {
    const worked = value(job);
    return worked.ok ? { text, value: worked.value, says: undefined } : { text, value: undefined, says: worked.problem.says };
  }
  const worked = partOf(job, partOfField(field, inView));
  return { text, value: worked.resolved.values.get(field), says: worked.problems.find((problem) => problem.field === field)?.says };
}

/** The same reading again while nothing in it has changed, so that an edit renders only the fields that it touches. */
export const useEntry = (field: string, value?: (job: Job) => Result<number>): FieldReading =>
  useBench(useShallow((state) => readEntry(state.job, field, state.part, value)));

/** A value as tables and fields show it, in the job's units. */
export function showValue(units: Job['units'], wanted: Wanted, value: number): string {
  switch (wanted) {
    case 'length':
      return formatLength(value, { show: units.show, denominator: units.denominator });
    case 'angle':
      return formatAngle(value);
    case 'number':
      return plainText(value, 6);
    case 'count':
      return String(value);
    default:
      return unreachable(wanted);
  }
}
