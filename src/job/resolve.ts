/** From the job document to numbers: every entry of a part worked out, and every sentence about those that will not do. */
import { sayDegrees, sayMm } from '../core/bending/say';
import { legLetter } from '../core/part/names';
import type { Bend, EndShape, Leg, Part, Relief } from '../core/part/types';
import { unreachable, type Problem } from '../core/result';
import { aboveNought, makePartReader, notBelowNought, type PartReader } from './partReader';
import { openings, resolveCutout } from './resolveCutout';
import type { Job, JobBend, JobCutout, JobEndShape, JobLeg } from './schema';
import { settingOf } from './stockSetting';

/** More openings than this in one part are a slip of the hand. */
export const MOST_CUTOUTS = 20_000;
export const MOST_QUANTITY = 100_000;

/** 180° worked out by division may pass π by a rounding; nearer than this share it is π. */
const FULL_FOLD = Math.PI * (1 + 1e-12);

export interface ResolvedPart {
  /** Undefined where any entry the part is made from could not be worked out. Quantity, density and unused sizes do not stop it. */
  readonly part: Part | undefined;
  readonly quantity: number | undefined;
  /** kg per cubic metre. */
  readonly density: number | undefined;
  /** All of them: sizes, scale and stock first, then along the part. `field` is the path in the job. */
  readonly problems: readonly Problem[];
  /** The value of every entry that could be worked out, by field path: the part's own, its stock's, and the scale. mm and rad. */
  readonly values: ReadonlyMap<string, number>;
}

const inBrackets = (name: string): string => (name.trim() ? ` (${name.trim()})` : '');

export const legWords = (leg: JobLeg, index: number): string => `Leg ${legLetter(index)}${inBrackets(leg.name)}`;

/** `Peg hole (leg C)`; one without a name goes by its kind and number. */
export function cutoutWords(cutout: JobCutout, index: number, leg: number): string {
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

function bendOf(reader: PartReader, field: string, index: number, bend: JobBend, before: ReadonlyMap<string, number>): Bend | undefined {
  const called = `Bend ${index}`;
  const parent = before.get(bend.parent);
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

function legOf(reader: PartReader, field: string, leg: JobLeg, index: number, before: ReadonlyMap<string, number>, room: (cutouts: number, field: string, called: string) => void): Leg | undefined {
  const called = legWords(leg, index);
  const size = (key: 'length' | 'startWidth' | 'endWidth', what: string): number | undefined =>
    reader.read(`${field}.${key}`, `${called}, ${what}`, leg[key], 'length', aboveNought(`${called}, ${what}`));
  const length = size('length', 'length');
  const startWidth = size('startWidth', 'width at the start');
  const endWidth = size('endWidth', 'width at the end');
  const startShape = endShapeOf(reader, `${field}.startShape`, `${called}, start`, leg.startShape);
  const endShape = endShapeOf(reader, `${field}.endShape`, `${called}, end`, leg.endShape);

  const cutouts = leg.cutouts.flatMap((cutout, i) => {
    const words = cutoutWords(cutout, i, index);
    const path = `${field}.cutouts.${cutout.id}`;
    const resolved = resolveCutout(reader, path, words, cutout);
    if (resolved) room(openings(resolved.pattern), `${path}.pattern`, words);
    return resolved ? [resolved] : [];
  });

  let bend: Bend | undefined;
  if (index > 0) {
    if (!leg.bend) return reader.refuse(field, `${called} has no bend. Every leg but the first hangs on another by a bend.`);
    bend = bendOf(reader, `${field}.bend`, index, leg.bend, before);
    if (!bend) return undefined;
  } else if (leg.bend) return reader.refuse(`${field}.bend`, `${called} is the first leg and hangs on nothing. Take its bend away.`);

  if (length === undefined || startWidth === undefined || endWidth === undefined || !startShape || !endShape) return undefined;
  if (cutouts.length < leg.cutouts.length) return undefined;
  const { id, name, startBasis, endBasis } = leg;
  const plain: Leg = { id, name, length, startBasis, endBasis, startWidth, endWidth, startShape, endShape, cutouts };
  return bend ? { ...plain, bend } : plain;
}

/**
 * A part of the job as numbers, mm and rad. `thickness` and `radius` in its entries stand for its stock's; a stock's own radius
 * may use `thickness`. Never throws; every entry that will not do is named with its path and a sentence.
 */
export function resolvePart(job: Job, partId: string): ResolvedPart {
  const found = job.parts.find((part) => part.id === partId);
  if (!found) {
    const problems = [{ field: `parts.${partId}`, says: `There is no part "${partId}" in this job.` }];
    return { part: undefined, quantity: undefined, density: undefined, problems, values: new Map() };
  }
  const stock = job.stocks.find(({ id }) => id === found.stock);
  const setting = settingOf(job, stock);
  const reader = makePartReader(setting);
  const path = `parts.${found.id}`;
  if (!stock) reader.refuse(`${path}.stock`, `There is no stock "${found.stock}" in this job. Choose one of its stocks.`);

  const quantity = reader.read(`${path}.quantity`, 'Quantity', found.quantity, 'count', (value) =>
    value >= 1 && value <= MOST_QUANTITY ? undefined : `Quantity: ${value} will not do; it must be 1 to ${MOST_QUANTITY}.`,
  );

  let cutouts = 0;
  const room = (more: number, field: string, called: string): void => {
    const before = cutouts;
    cutouts += more;
    if (before > MOST_CUTOUTS || cutouts <= MOST_CUTOUTS) return;
    reader.refuse(field, `${called} brings the part to ${cutouts} cut-outs. ${MOST_CUTOUTS} is the most in one part.`);
  };
  const before = new Map<string, number>();
  const legs = found.legs.flatMap((leg, i) => {
    const resolved = legOf(reader, `${path}.legs.${leg.id}`, leg, i, before, room);
    before.set(leg.id, i);
    return resolved ? [resolved] : [];
  });

  const { thickness, density, rule } = setting;
  const whole = legs.length === found.legs.length && cutouts <= MOST_CUTOUTS && thickness !== undefined && rule;
  return { part: whole ? { thickness, rule, legs } : undefined, quantity, density, problems: reader.problems, values: reader.values };
}
