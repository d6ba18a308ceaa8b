/**
 * The job document, version 1: one schema is the source of the types, of validation and of the JSON Schema in `public/`.
 * Every number is an entry: the text that was typed (`gap + 2*thickness`, `3/8in`), worked out when it is needed.
 * A schema says what may be written; whether the entries make sense together is for `references.ts` and `resolve.ts`.
 */
import * as z from 'zod/mini';
import { LONGEST_ENTRY } from './limits';

export const FORMAT = 'bendwright job';
export const VERSION = 1;

const entry = z.string().check(z.maxLength(LONGEST_ENTRY));
const name = z.string().check(z.maxLength(120));
const id = z.string().check(z.regex(/^[A-Za-z0-9_-]{1,40}$/));

const basis = z.enum(['outside', 'inside', 'centre line', 'straight']);

const endShape = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('square') }),
  z.strictObject({ kind: z.literal('radius'), radius: entry }),
  z.strictObject({ kind: z.literal('chamfer'), size: entry }),
  z.strictObject({ kind: z.literal('round') }),
]);

const along = z.strictObject({ from: z.enum(['start', 'end', 'middle']), basis, distance: entry });
const across = z.strictObject({ from: z.enum(['centre', 'left', 'right']), distance: entry });

const cutoutShape = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('round'), diameter: entry }),
  z.strictObject({ kind: z.literal('slot'), length: entry, width: entry, turn: entry }),
  z.strictObject({ kind: z.literal('rectangle'), length: entry, width: entry, corner: entry, turn: entry }),
]);

const pattern = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('single') }),
  z.strictObject({ kind: z.literal('row'), direction: z.enum(['along', 'across']), count: entry, pitch: entry }),
  z.strictObject({ kind: z.literal('grid'), alongCount: entry, alongPitch: entry, acrossCount: entry, acrossPitch: entry }),
]);

const cutout = z.strictObject({ id, name, shape: cutoutShape, along, across, pattern });

const relief = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('none') }),
  z.strictObject({ kind: z.enum(['square', 'round']), width: entry, depth: entry }),
]);

const bend = z.strictObject({
  parent: id,
  edge: z.enum(['end', 'left', 'right']),
  angle: entry,
  way: z.enum(['up', 'down']),
  radius: entry,
  /** A side lug says where it sits on its parent's edge. */
  seat: z.optional(z.strictObject({ along, basis, relief })),
});

const leg = z.strictObject({
  id,
  name,
  length: entry,
  startBasis: basis,
  endBasis: basis,
  startWidth: entry,
  endWidth: entry,
  startShape: endShape,
  endShape,
  cutouts: z.array(cutout),
  /** How the leg hangs on its parent; the first leg has none. */
  bend: z.optional(bend),
});

const part = z.strictObject({
  id,
  name,
  stock: id,
  quantity: entry,
  legs: z.array(leg).check(z.minLength(1)),
});

const rule = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('fixedK'), k: entry }),
  z.strictObject({ kind: z.literal('din6935') }),
  z.strictObject({ kind: z.literal('handbook'), metal: z.enum(['soft', 'half-hard', 'hard']) }),
  z.strictObject({ kind: z.literal('aviation') }),
  z.strictObject({
    kind: z.literal('measured'),
    rows: z.array(z.strictObject({ angle: entry, radius: entry, deduction: entry })),
  }),
]);

const stock = z.strictObject({
  id,
  name,
  /** Sets the tint of the folded view. */
  metal: z.enum(['steel', 'stainless', 'brass', 'copper', 'bronze', 'nickel silver', 'aluminium', 'other']),
  thickness: entry,
  /** Inside radius that the word `radius` stands for in the parts cut from this stock. */
  radius: entry,
  /** kg per cubic metre. */
  density: entry,
  rule,
});

const lengthUnit = z.enum(['mm', 'in']);

export const jobSchema = z.strictObject({
  format: z.literal(FORMAT),
  version: z.literal(VERSION),
  name,
  units: z.strictObject({
    /** What a number without a unit means. */
    plain: lengthUnit,
    /** How lengths are shown. */
    show: z.enum(['mm', 'inch', 'fraction']),
    /** Finest fraction of an inch shown. */
    denominator: z.union([z.literal(8), z.literal(16), z.literal(32), z.literal(64), z.literal(128)]),
  }),
  /** Full size divided by model size: `1`, `10.5`, `12`. An entry after the word `full` is divided by it. */
  scale: entry,
  /** What a drag snaps to. */
  step: z.strictObject({ length: entry, angle: entry }),
  sizes: z.array(z.strictObject({ id, name, text: entry, note: name })),
  stocks: z.array(stock).check(z.minLength(1)),
  parts: z.array(part).check(z.minLength(1)),
  dxf: z.strictObject({
    unit: lengthUnit,
    bendLines: z.enum(['none', 'layer', 'nicks']),
    layers: z.strictObject({ outline: name, cutouts: name, bends: name }),
  }),
});

export type Job = z.infer<typeof jobSchema>;
export type JobPart = Job['parts'][number];
export type JobLeg = JobPart['legs'][number];
export type JobBend = NonNullable<JobLeg['bend']>;
export type JobCutout = JobLeg['cutouts'][number];
export type JobEndShape = JobLeg['startShape'];
export type JobPattern = JobCutout['pattern'];
export type JobCutoutShape = JobCutout['shape'];
export type JobStock = Job['stocks'][number];
export type JobRule = JobStock['rule'];
export type JobSize = Job['sizes'][number];
