/**
 * What the entries of a part are worked out with: the job's unit, scale and sizes, and the thickness and radius of one stock.
 *
 * Where one of these cannot be worked out itself, two stand-ins take its place. An entry that comes out alike with both does
 * not depend on it, so it is trusted and checked as ever; one that does not is left open. So one bad stock entry is told once,
 * and no entry that merely uses it is blamed.
 */
import { evaluate, type EntryContext, type Wanted } from '../core/units/evaluate';
import { resolveSizes } from '../core/units/namedSizes';
import { unreachable, type Problem, type Result } from '../core/result';
import type { AllowanceRule } from '../core/bending/types';
import type { Job, JobStock } from './schema';

type Pair = readonly [number, number];

/** No two of these have a simple ratio, so an entry that depends on one does not come out alike by chance. */
const STAND_INS = { thickness: [1.2345, 1.8765], radius: [2.3457, 3.4561], scale: [1.1113, 1.7779] } as const;

/** Texts remembered before the memory is emptied: two of the largest parts. */
const MOST_REMEMBERED = 50_000;

type Remembered = Map<Wanted, Map<string, Result<number> | undefined>>;

/** A text without a letter holds no size, no scale and no unit by word: it means the same in every job of one plain unit. */
const HAS_NAME = /\p{L}/u;
const withoutNames: Readonly<Record<Job['units']['plain'], Remembered>> = { mm: new Map(), in: new Map() };

export interface Setting {
  readonly problems: readonly Problem[];
  /** By field path, mm and rad. */
  readonly values: readonly (readonly [string, number])[];
  readonly thickness: number | undefined;
  readonly density: number | undefined;
  readonly rule: AllowanceRule | undefined;
  /** An entry of a part worked out; undefined where that hangs on a faulty entry of the stock or the scale. */
  readonly work: (text: string, wanted: Wanted) => Result<number> | undefined;
  /** What entries are read with; stand-ins take the place of what could not be worked out. */
  readonly context: EntryContext;
}

/** Alike in every context, or undefined. */
function alike(text: string, wanted: Wanted, contexts: readonly EntryContext[]): Result<number> | undefined {
  let first: Result<number> | undefined;
  for (const context of contexts) {
    const result = evaluate(text, wanted, context);
    if (first === undefined) first = result;
    else if (first.ok ? !result.ok || result.value !== first.value : result.ok || result.problem.says !== first.problem.says) return undefined;
  }
  return first;
}

function contextsFor(job: Job, thickness: number | undefined, radius: number | undefined, scale: number | undefined) {
  const pair = (value: number | undefined, standIns: Pair): Pair => (value === undefined ? standIns : [value, value]);
  const t = pair(thickness, STAND_INS.thickness);
  const r = pair(radius, STAND_INS.radius);
  const s = pair(scale, STAND_INS.scale);
  const sure = thickness !== undefined && radius !== undefined && scale !== undefined;
  const make = (i: 0 | 1) => {
    const sizes = resolveSizes(job.sizes, { thickness: t[i], radius: r[i] }, job.units.plain, s[i]);
    const context: EntryContext = { plain: job.units.plain, scale: s[i], sizes: sizes.values };
    return { sizes, context };
  };
  return sure ? ([make(0)] as const) : ([make(0), make(1)] as const);
}

/** Size problems that stand whatever the stand-ins, with their fields. */
function sizeProblems(job: Job, worked: ReturnType<typeof contextsFor>): Problem[] {
  const [first, second] = worked.map(({ sizes }) => sizes.problems);
  const certain = (first ?? []).filter(({ name, problem }) => !second || second.some((other) => other.name === name && other.problem.says === problem.says));
  let next = 0;
  const problems: Problem[] = [];
  // Problems come in the order of the sizes, and sizes of one name all have theirs.
  for (const size of job.sizes) {
    const found = certain[next];
    if (found?.name !== size.name) continue;
    problems.push({ field: `sizes.${size.id}.${found.problem.field}`, says: found.problem.says });
    next += 1;
  }
  return problems;
}

/** Works out the stock and the sizes as they are in the part. Works without a stock, so that a part with none still gets its other sentences. */
function makeSetting(job: Job, stock: JobStock | undefined): Setting {
  const problems: Problem[] = [];
  const values: [string, number][] = [];
  const stockPath = `stocks.${stock?.id ?? ''}`;
  const stockCalled = stock?.name.trim() ? `Stock "${stock.name.trim()}"` : `Stock "${stock?.id ?? ''}"`;

  const take = (field: string, what: string, worked: Result<number> | undefined, refuses: (value: number) => string | undefined): number | undefined => {
    if (worked === undefined) return undefined;
    const says = worked.ok ? refuses(worked.value) : worked.problem.says;
    if (says !== undefined) {
      problems.push({ field, says: `${what}: ${says}` });
      return undefined;
    }
    if (worked.ok) values.push([field, worked.value]);
    return worked.ok ? worked.value : undefined;
  };
  const aboveNought = (value: number): string | undefined => (value > 0 ? undefined : 'this must be above 0.');
  const anything = (): undefined => undefined;

  const scale = take('scale', 'Scale', evaluate(job.scale, 'number', { plain: job.units.plain, scale: 1, sizes: new Map() }), (value) =>
    value > 0 ? undefined : 'this must be above 0. 1 is full size, 12 is one inch to the foot.',
  );

  let thickness: number | undefined;
  let radius: number | undefined;
  if (stock) {
    const ownEntry = (field: 'thickness' | 'radius', uses: string, refuses: (value: number) => string | undefined): number | undefined => {
      const worked = alike(stock[field], 'length', contextsFor(job, thickness, radius, scale).map(({ context }) => context));
      // With all else known, only the entry itself can be what it hangs on.
      if (worked === undefined && scale !== undefined && (field === 'thickness' || thickness !== undefined)) {
        problems.push({ field: `${stockPath}.${field}`, says: `${stockCalled}, ${field}: this cannot be worked out from ${uses}. Type a figure.` });
      }
      return take(`${stockPath}.${field}`, `${stockCalled}, ${field}`, worked, refuses);
    };
    thickness = ownEntry('thickness', 'the thickness or the radius', aboveNought);
    radius = ownEntry('radius', 'the radius itself', (value) => (value >= 0 ? undefined : 'a radius cannot be below 0.'));
  }

  const worked = contextsFor(job, thickness, radius, scale);
  problems.push(...sizeProblems(job, worked));
  const [{ context }] = worked;
  const contexts = worked.map((each) => each.context);
  const own: Remembered = new Map();
  const work = (text: string, wanted: Wanted): Result<number> | undefined => {
    const remembered = HAS_NAME.test(text) ? own : withoutNames[job.units.plain];
    let texts = remembered.get(wanted);
    if (!texts || texts.size >= MOST_REMEMBERED) remembered.set(wanted, (texts = new Map()));
    const known = texts.get(text);
    if (known !== undefined) return known;
    const result = alike(text, wanted, contexts);
    texts.set(text, result);
    return result;
  };

  let density: number | undefined;
  let rule: AllowanceRule | undefined;
  if (stock) {
    density = take(`${stockPath}.density`, `${stockCalled}, density`, work(stock.density, 'number'), aboveNought);
    rule = makeRule(stock, (field, what, text, wanted, refuses) =>
      take(`${stockPath}.rule.${field}`, `${stockCalled}, ${what}`, work(text, wanted), refuses ?? anything),
    );
    if (stock.rule.kind === 'measured' && stock.rule.rows.length === 0) {
      problems.push({ field: `${stockPath}.rule.rows`, says: `${stockCalled}: the table of measured bends is empty. Measure at least one bend, or choose another rule.` });
    }
  }
  return { problems, values, thickness, density, rule, work, context };
}

type TakeRule = (field: string, what: string, text: string, wanted: Wanted, refuses?: (value: number) => string | undefined) => number | undefined;

function makeRule(stock: JobStock, take: TakeRule): AllowanceRule | undefined {
  const { rule } = stock;
  switch (rule.kind) {
    case 'fixedK': {
      const k = take('k', 'K', rule.k, 'number', (value) =>
        value >= 0 && value <= 1 ? undefined : 'K lies between 0, the inside face, and 1, the outside face.',
      );
      return k === undefined ? undefined : { kind: 'fixedK', k };
    }
    case 'din6935':
    case 'aviation':
      return { kind: rule.kind };
    case 'handbook':
      return { kind: 'handbook', metal: rule.metal };
    case 'measured': {
      const rows = rule.rows.map((row, i) => ({
        turn: take(`rows.${i}.angle`, `measured bend ${i + 1}, angle`, row.angle, 'angle', (value) =>
          value > 0 && value <= Math.PI ? undefined : 'the angle must be above 0° and at most 180°.',
        ),
        radius: take(`rows.${i}.radius`, `measured bend ${i + 1}, radius`, row.radius, 'length', (value) =>
          value >= 0 ? undefined : 'a radius cannot be below 0.',
        ),
        deduction: take(`rows.${i}.deduction`, `measured bend ${i + 1}, deduction`, row.deduction, 'length'),
      }));
      const whole = rows.flatMap(({ turn, radius, deduction }) =>
        turn === undefined || radius === undefined || deduction === undefined ? [] : [{ turn, radius, deduction }],
      );
      return whole.length === rows.length && rows.length > 0 ? { kind: 'measured', rows: whole } : undefined;
    }
    default:
      return unreachable(rule);
  }
}

interface Made {
  readonly sizes: Job['sizes'];
  readonly plain: Job['units']['plain'];
  readonly scale: string;
  readonly setting: Setting;
}

const made = new WeakMap<JobStock, Made>();

/** `makeSetting`, remembered for as long as neither the stock nor what it stands on changes. */
export function settingOf(job: Job, stock: JobStock | undefined): Setting {
  if (!stock) return makeSetting(job, stock);
  const before = made.get(stock);
  if (before && before.sizes === job.sizes && before.plain === job.units.plain && before.scale === job.scale) return before.setting;
  const setting = makeSetting(job, stock);
  made.set(stock, { sizes: job.sizes, plain: job.units.plain, scale: job.scale, setting });
  return setting;
}
