/** One leg of a part, with its bend and its cut-outs, worked out. */
import { sayDegrees, sayMm } from '../core/bending/say';
import { legLetter } from '../core/part/names';
import type { Bend, EndShape, Leg, Relief } from '../core/part/types';
import { unreachable, type Problem } from '../core/result';
import { aboveNought, makePartReader, notBelowNought, type PartReader } from './partReader';
import { openings, resolveCutout } from './resolveCutout';
import type { JobBend, JobCutout, JobEndShape, JobLeg } from './schema';
import type { Setting } from './stockSetting';

/** 180° worked out by division may pass π by a rounding; nearer than this share it is π. */
const FULL_FOLD = Math.PI * (1 + 1e-12);

const inBrackets = (name: string): string => (name.trim() ? ` (${name.trim()})` : '');

const legWords = (leg: JobLeg, index: number): string => `Leg ${legLetter(index)}${inBrackets(leg.name)}`;

/** `Peg hole (leg C)`; one without a name goes by its kind and number. */
function cutoutWords(cutout: JobCutout, index: number, leg: number): string {
  const kind = { round: 'Hole', slot: 'Slot', rectangle: 'Opening' }[cutout.shape.kind];
  return `${cutout.name.trim() || `${kind} ${index + 1}`} (leg ${legLetter(leg)})`;
}

function endShapeOf(reader: PartReader, field: string, called: string, shape: JobEndShape): EndShape | undefined {
  switch (shape.kind) {
    case 'square':
    case 'round':
      return { kind: shape.kind };
    case 'radius': {
      const what = `${called}, corner radius`;
      const radius = reader.read(`${field}.radius`, what, shape.radius, 'length', notBelowNought(what));
      return radius === undefined ? undefined : { kind: 'radius', radius };
    }
    case 'chamfer': {
      const what = `${called}, chamfer`;
      const size = reader.read(`${field}.size`, what, shape.size, 'length', notBelowNought(what));
      return size === undefined ? undefined : { kind: 'chamfer', size };
    }
    default:
      return unreachable(shape);
  }
}

function angleRefused(index: number, turn: number): string | undefined {
  if (turn === 0) return `A bend of 0° is no bend. Join the two legs, or turn bend ${index} by more than 0.`;
  if (turn < 0) return `Bend ${index}: ${sayDegrees(turn)} will not do. Give the angle above 0 and say which way: up or down.`;
  return turn > FULL_FOLD ? `Bend ${index}: ${sayDegrees(turn)} is more than a full fold. 180° is the most.` : undefined;
}

function reliefOf(reader: PartReader, field: string, called: string, relief: NonNullable<JobBend['seat']>['relief']): Relief | undefined {
  if (relief.kind === 'none') return { kind: 'none' };
  const size = (key: 'width' | 'depth'): number | undefined =>
    reader.read(`${field}.${key}`, `${called}, relief ${key}`, relief[key], 'length', aboveNought(`${called}, relief ${key}`));
  const width = size('width');
  const depth = size('depth');
  return width === undefined || depth === undefined ? undefined : { kind: relief.kind, width, depth };
}

function bendOf(reader: PartReader, field: string, index: number, bend: JobBend, parent: number | undefined): Bend | undefined {
  const called = `Bend ${index}`;
  if (parent === undefined) reader.refuse(`${field}.parent`, `${called} hangs on no leg that stands before leg ${legLetter(index)}. Name one.`);
  const turn = reader.read(`${field}.angle`, `${called}, angle`, bend.angle, 'angle', (value) => angleRefused(index, value));
  const radius = reader.read(`${field}.radius`, `${called}, radius`, bend.radius, 'length', (value) =>
    value >= 0 ? undefined : `${called}: a radius cannot be below 0, and this is ${sayMm(value)}.`,
  );
  let seat: Bend['seat'];
  if (bend.edge !== 'end') {
    if (!bend.seat) return reader.refuse(field, `${called} hangs on a long edge and does not say where along it. Give it a seat.`);
    const distance = reader.read(`${field}.seat.along.distance`, `${called}, place along`, bend.seat.along.distance, 'length');
    const relief = reliefOf(reader, `${field}.seat.relief`, called, bend.seat.relief);
    if (distance === undefined || !relief) return undefined;
    seat = { along: { from: bend.seat.along.from, basis: bend.seat.along.basis, distance }, basis: bend.seat.basis, relief };
  }
  if (parent === undefined || turn === undefined || radius === undefined) return undefined;
  const plain: Bend = { parent, edge: bend.edge, turn: Math.min(turn, Math.PI), way: bend.way, radius };
  return seat ? { ...plain, seat } : plain;
}

/** A cut-out entry and how many openings it makes. */
interface Openings {
  readonly field: string;
  readonly words: string;
  readonly count: number;
}

export interface ResolvedLeg {
  /** Undefined where any entry of it could not be worked out. */
  readonly leg: Leg | undefined;
  readonly problems: readonly Problem[];
  readonly values: readonly (readonly [string, number])[];
  readonly openings: readonly Openings[];
}

function workOutLeg(setting: Setting, field: string, leg: JobLeg, index: number, parent: number | undefined): ResolvedLeg {
  const reader = makePartReader(setting);
  const called = legWords(leg, index);
  const size = (key: 'length' | 'startWidth' | 'endWidth', what: string): number | undefined =>
    reader.read(`${field}.${key}`, `${called}, ${what}`, leg[key], 'length', aboveNought(`${called}, ${what}`));
  const length = size('length', 'length');
  const startWidth = size('startWidth', 'width at the start');
  const endWidth = size('endWidth', 'width at the end');
  const startShape = endShapeOf(reader, `${field}.startShape`, `${called}, start`, leg.startShape);
  const endShape = endShapeOf(reader, `${field}.endShape`, `${called}, end`, leg.endShape);

  const made: Openings[] = [];
  const cutouts = leg.cutouts.flatMap((cutout, i) => {
    const words = cutoutWords(cutout, i, index);
    const path = `${field}.cutouts.${cutout.id}`;
    const resolved = resolveCutout(reader, path, words, cutout);
    if (resolved) made.push({ field: `${path}.pattern`, words, count: openings(resolved.pattern) });
    return resolved ? [resolved] : [];
  });

  const bend = index > 0 && leg.bend ? bendOf(reader, `${field}.bend`, index, leg.bend, parent) : undefined;
  if (index > 0 && !leg.bend) reader.refuse(field, `${called} has no bend. Every leg but the first hangs on another by a bend.`);
  if (index === 0 && leg.bend) reader.refuse(`${field}.bend`, `${called} is the first leg and hangs on nothing. Take its bend away.`);

  const { id, name, startBasis, endBasis } = leg;
  const answer = { problems: reader.problems, values: reader.values, openings: made };
  if (length === undefined || startWidth === undefined || endWidth === undefined || !startShape || !endShape) return { ...answer, leg: undefined };
  if (cutouts.length < leg.cutouts.length || (index === 0) !== (leg.bend === undefined) || (index > 0 && !bend)) return { ...answer, leg: undefined };
  const plain: Leg = { id, name, length, startBasis, endBasis, startWidth, endWidth, startShape, endShape, cutouts };
  return { ...answer, leg: bend ? { ...plain, bend } : plain };
}

interface Done {
  readonly setting: Setting;
  readonly field: string;
  readonly index: number;
  readonly parent: number | undefined;
  readonly resolved: ResolvedLeg;
}

const done = new WeakMap<JobLeg, Done>();

/**
 * A leg worked out, remembered until it or what it stands on changes: while one leg is edited the others cost nothing.
 * @param field path of the leg in the job
 * @param parent index of the leg it hangs on, if that stands before it
 */
export function resolveLeg(setting: Setting, field: string, leg: JobLeg, index: number, parent: number | undefined): ResolvedLeg {
  const before = done.get(leg);
  if (before && before.setting === setting && before.index === index && before.parent === parent && before.field === field) return before.resolved;
  const resolved = workOutLeg(setting, field, leg, index, parent);
  done.set(leg, { setting, field, index, parent, resolved });
  return resolved;
}
