/** What the schema found wrong, as plain sentences: where, what is wrong, what would be right. */
import type * as z from 'zod/mini';
import { shown } from '../core/units/refuse';
import { describePlace } from './describePlace';

/** One fault of a job file. */
export interface Fault {
  /** Field path, and the same in words. */
  readonly where: string;
  readonly says: string;
}

/** More than this many are not read by anyone; the rest are counted. */
export const MOST_FAULTS = 50;

const list = (choices: readonly unknown[]): string =>
  choices.length === 1 ? `"${String(choices[0])}"` : `one of ${choices.map(String).join(', ')}`;

function valueAt(document: unknown, path: readonly PropertyKey[]): unknown {
  let node = document;
  for (const key of path) {
    if (typeof node !== 'object' || node === null || !Object.hasOwn(node, key)) return undefined;
    node = (node as { readonly [key: PropertyKey]: unknown })[key];
  }
  return node;
}

function sayValue(value: unknown): string {
  if (typeof value === 'string') return `"${shown(value)}"`;
  if (Array.isArray(value)) return 'a list';
  return typeof value === 'object' && value !== null ? 'a group of fields' : String(value);
}

const KINDS: { readonly [expected: string]: string } = {
  string: 'text in " marks',
  object: 'a group of fields in { }',
  array: 'a list in [ ]',
  number: 'a number',
  boolean: 'true or false',
};

/** The choices of a union of single values, or of one told by a field. */
function choices(issue: Extract<z.core.$ZodIssue, { code: 'invalid_union' }>): readonly unknown[] {
  const told = (issue as { readonly options?: readonly unknown[] }).options;
  return told ?? issue.errors.flatMap((each) => each.flatMap((e) => (e.code === 'invalid_value' ? e.values : [])));
}

function notKnown(value: unknown, may: readonly unknown[]): string {
  const right = `it should be ${list(may)}.`;
  return value === undefined ? `is missing; ${right}` : `${sayValue(value)} is not known here; ${right}`;
}

function says(issue: z.core.$ZodIssue, value: unknown): string {
  switch (issue.code) {
    case 'invalid_value':
      return notKnown(value, issue.values);
    case 'invalid_union':
      return notKnown(value, choices(issue));
    case 'invalid_type': {
      const right = `it should be ${KINDS[issue.expected] ?? issue.expected}`;
      if (value === undefined) return `is missing; ${right}.`;
      const hint = issue.expected === 'string' && typeof value === 'number' ? `, "${value}"` : '';
      return `${sayValue(value)} does not fit here; ${right}${hint}.`;
    }
    case 'too_big':
      return `is ${typeof value === 'string' ? value.length : 'more'} characters long; ${String(issue.maximum)} is the most.`;
    case 'too_small':
      return `is empty; it needs at least ${String(issue.minimum)}.`;
    case 'invalid_format':
      return `${sayValue(value)} will not do as an id; it should be 1 to 40 letters A to Z, figures, hyphens or underscores.`;
    case 'unrecognized_keys': {
      const keys = issue.keys.slice(0, 8).map((key) => `"${shown(key)}"`);
      const more = issue.keys.length - keys.length;
      const named = keys.join(', ') + (more > 0 ? ` and ${more} more` : '');
      return issue.keys.length === 1 ? `there is no field called ${named} here; leave it out.` : `there are no fields called ${named} here; leave them out.`;
    }
    default:
      return `${sayValue(value)} does not fit here.`;
  }
}

/** At most `MOST_FAULTS`, the last of them counting the rest. */
export function capped(faults: readonly Fault[]): Fault[] {
  if (faults.length <= MOST_FAULTS) return [...faults];
  return [...faults.slice(0, MOST_FAULTS), { where: 'the rest of the job', says: `and ${faults.length - MOST_FAULTS} more.` }];
}

/** All faults the schema found in a document, in the order of the file as far as it goes. */
export function schemaFaults(document: unknown, issues: readonly z.core.$ZodIssue[]): Fault[] {
  return issues.map((issue) => {
    const path = issue.path.map((key) => (typeof key === 'symbol' ? String(key) : key));
    return { where: describePlace(document, path), says: says(issue, valueAt(document, path)) };
  });
}
