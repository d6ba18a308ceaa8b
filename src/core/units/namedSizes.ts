import { bad, good, type Problem, type Result } from '../result';
import { emptyEntry, evaluateSize, MOST_MM, type SizeValue } from './evaluate';
import { parse, type Expression } from './parse';
import { refuse, shown } from './refuse';
import { continuesName, functionCalled, GIVEN_SIZES, isFullSizeMark, sameSpelling, startsName, unitCalled, type PlainUnit } from './unitWords';

export interface NamedSize {
  readonly name: string;
  readonly text: string;
}

export interface SizeProblem {
  /** The name as typed. Sizes of one name share their problem. */
  readonly name: string;
  /** `field` is `name` or `text`, whichever is at fault. */
  readonly problem: Problem;
}

export interface ResolvedSizes {
  /** By name, in composed spelling (NFC); `thickness` and `radius` are among them. */
  readonly values: ReadonlyMap<string, SizeValue>;
  /** In the order of the sizes. */
  readonly problems: readonly SizeProblem[];
}

const LONGEST_NAME = 40;

/** How many steps of a circle are told before the rest is left out. */
const STEPS_TOLD = 6;

interface Entry {
  readonly name: string;
  readonly text: string;
  readonly expression: Expression;
  /** The declared sizes it names, each once, in the order named. */
  readonly needs: readonly string[];
}

/**
 * Whether a size can be called this: letters of any alphabet, digits and underscores, a letter first, at most 40 characters,
 * no unit, function or mark of the entry language, not `thickness` or `radius`.
 * @returns the name in composed spelling
 */
export function checkName(name: string): Result<string> {
  const says = nameProblem(name);
  return says === null ? good(sameSpelling(name)) : bad('name', says);
}

function nameProblem(name: string): string | null {
  if (name.trim() === '') return 'Type a name, such as gap or hole_2.';
  const [first = '', ...rest] = [...name];
  if (!startsName(first) || !rest.every(continuesName)) {
    return `"${shown(name)}": a name is made of letters, digits and underscores and starts with a letter, such as gap or hole_2.`;
  }
  if (name.length > LONGEST_NAME) return `"${shown(name)}": a name has at most ${LONGEST_NAME} characters and this has ${name.length}.`;
  const lower = name.toLowerCase();
  if (unitCalled(name) !== undefined || lower === 'mil' || lower === 'mils') return `"${name}" is a unit. Choose another name.`;
  if (functionCalled(name) !== undefined || isFullSizeMark(name)) return `"${name}" has a meaning of its own in an entry. Choose another name.`;
  if (GIVEN_SIZES.some((given) => given === lower)) return `"${name}" comes from the stock. Choose another name.`;
  return null;
}

/**
 * Works out named sizes, whichever order they stand in; the answers do not hang on that order.
 *
 * Refused, each with its own sentence and without harm to the rest: a bad name; a name that stands twice (both, since neither is
 * plainly the one meant); a text that cannot be read; sizes that go round in a circle; and a size that needs one of these.
 * @param given thickness and inside radius of the stock, mm
 * @param scale the job's scale divisor, for `full`
 */
export function resolveSizes(sizes: readonly NamedSize[], given: { readonly thickness: number; readonly radius: number }, plain: PlainUnit, scale: number): ResolvedSizes {
  const values = new Map<string, SizeValue>();
  const faults = new Map<string, Problem>();
  for (const name of GIVEN_SIZES) {
    // Also false for NaN.
    if (Math.abs(given[name]) <= MOST_MM) values.set(name, { value: given[name], dimension: 'length' });
  }

  const texts = new Map<string, string>();
  for (const size of sizes) {
    const checked = checkName(size.name);
    if (!checked.ok) continue;
    const name = checked.value;
    if (texts.has(name)) faults.set(name, bad('name', `There are two sizes called ${name}. Give one of them another name.`).problem);
    else texts.set(name, size.text);
  }

  const known = new Set([...GIVEN_SIZES, ...texts.keys()]);
  const entries = new Map<string, Entry>();
  for (const [name, text] of texts) {
    if (faults.has(name)) continue;
    const expression = text.trim() === '' ? bad('', emptyEntry('size')) : parse(text, (word) => known.has(word));
    if (expression.ok) entries.set(name, { name, text, expression: expression.value, needs: namesIn(expression.value).filter((word) => known.has(word)) });
    else faults.set(name, { ...expression.problem, field: 'text' });
  }

  const waiting = workThrough(entries, values, faults, known, plain, scale);
  tellCircles(waiting, faults);

  const problems: SizeProblem[] = [];
  for (const size of sizes) {
    const checked = checkName(size.name);
    const problem = checked.ok ? faults.get(checked.value) : checked.problem;
    if (problem !== undefined) problems.push({ name: size.name, problem });
  }
  return { values, problems };
}

/** Works out every entry whose needs are met, over and over outwards. Returns those left waiting for one another. */
function workThrough(entries: ReadonlyMap<string, Entry>, values: Map<string, SizeValue>, faults: Map<string, Problem>, known: ReadonlySet<string>, plain: PlainUnit, scale: number): ReadonlyMap<string, Entry> {
  const waiting = new Map(entries);
  const neededBy = new Map<string, string[]>();
  const missing = new Map<string, number>();
  const ready: Entry[] = [];
  for (const entry of entries.values()) {
    const open = entry.needs.filter((name) => entries.has(name));
    missing.set(entry.name, open.length);
    for (const name of open) neededBy.set(name, [...(neededBy.get(name) ?? []), entry.name]);
    if (open.length === 0) ready.push(entry);
  }
  for (let entry = ready.pop(); entry !== undefined; entry = ready.pop()) {
    waiting.delete(entry.name);
    const blocked = entry.needs.find((name) => !values.has(name));
    if (blocked !== undefined) faults.set(entry.name, blockedBy(entry, blocked));
    else {
      const worked = evaluateSize(entry.text, entry.expression, { plain, scale, sizes: values }, known);
      if (worked.ok) values.set(entry.name, worked.value);
      else faults.set(entry.name, { ...worked.problem, field: 'text' });
    }
    for (const name of neededBy.get(entry.name) ?? []) {
      const left = (missing.get(name) ?? 1) - 1;
      missing.set(name, left);
      const next = waiting.get(name);
      if (left === 0 && next !== undefined) ready.push(next);
    }
  }
  return waiting;
}

const blockedBy = (entry: Entry, needed: string): Problem => {
  const refused = refuse(entry.text, `${entry.name} needs ${needed}, which has no value. Put ${needed} right first.`);
  return { field: 'text', says: refused.problem.says };
};

/** Tells each waiting size of the circle it is in, or of the circle it waits for. */
function tellCircles(waiting: ReadonlyMap<string, Entry>, faults: Map<string, Problem>): void {
  for (const entry of waiting.values()) {
    const circle = circleThrough(entry, waiting);
    const needed = entry.needs.find((name) => waiting.has(name));
    if (circle !== null) faults.set(entry.name, { field: 'text', says: circleSentence(circle) });
    else if (needed !== undefined) faults.set(entry.name, blockedBy(entry, needed));
  }
}

/** The shortest way from a size through what it needs back to itself, or null. */
function circleThrough(start: Entry, waiting: ReadonlyMap<string, Entry>): readonly string[] | null {
  const cameFrom = new Map<string, string>();
  const queue = [start];
  for (const entry of queue) {
    for (const name of entry.needs) {
      if (name === start.name) {
        const way = [entry.name];
        for (let step = cameFrom.get(entry.name); step !== undefined; step = cameFrom.get(step)) way.unshift(step);
        return way;
      }
      const next = waiting.get(name);
      if (next === undefined || cameFrom.has(name)) continue;
      cameFrom.set(name, entry.name);
      queue.push(next);
    }
  }
  return null;
}

function circleSentence(circle: readonly string[]): string {
  const [first = ''] = circle;
  if (circle.length === 1) return `${first} needs itself. Give it a text without ${first} in it.`;
  const steps = circle.map((name, index) => `${name} needs ${circle[index + 1] ?? first}`);
  const told = steps.length <= STEPS_TOLD ? steps : [...steps.slice(0, STEPS_TOLD - 1), '…', ...steps.slice(-1)];
  return `These sizes go round in a circle: ${told.join(', ')}. Give one of them a text of its own.`;
}

/** Every name in an expression, each once, in the order met. */
function namesIn(expression: Expression): readonly string[] {
  const names = new Set<string>();
  const left: Expression[] = [expression];
  for (let part = left.pop(); part !== undefined; part = left.pop()) {
    if (part.kind === 'name') names.add(part.name);
    else if (part.kind === 'binary') left.push(part.right, part.left);
    else if (part.kind === 'call') left.push(...part.values.toReversed());
    else if (part.kind !== 'number' && part.kind !== 'feetAndInches') left.push(part.of);
  }
  return [...names];
}
