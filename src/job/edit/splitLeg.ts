import { setback } from '../../core/bending/setback';
import type { Bend, Part } from '../../core/part/types';
import { plainBend, SQUARE } from '../pieces';
import { resolvePart } from '../resolve';
import { settingOf } from '../stockSetting';
import type { Job, JobCutout, JobLeg } from '../schema';
import { changeLegs } from './change';
import { minus } from './entryText';
import { freeId } from './ids';
import { onEndOf } from './tree';

type Along = JobCutout['along'];

/** mm along the leg from the point its length starts at. */
interface Metal {
  /** Where a basis puts the start and the end. */
  readonly start: (basis: Along['basis']) => number;
  readonly end: (basis: Along['basis']) => number;
  readonly cut: number;
  readonly leg: JobLeg;
  /** Lengths of the halves as entries. */
  readonly first: string;
  readonly second: string;
  readonly write: (mm: number) => string;
}

function metalOf(part: Part, index: number, cut: number, texts: Pick<Metal, 'leg' | 'first' | 'second' | 'write'>): Metal | undefined {
  const leg = part.legs[index];
  if (!leg) return undefined;
  const behind = part.legs.find(({ bend }) => bend?.parent === index && bend.edge === 'end')?.bend;
  const reach = (bend: Bend | undefined, basis: Along['basis']): number => (bend ? setback(basis, bend.turn, bend.radius, part.thickness) : 0);
  const startTangent = reach(leg.bend, leg.startBasis);
  const endTangent = leg.length - reach(behind, leg.endBasis);
  if (cut <= startTangent || cut >= endTangent) return undefined;
  return { ...texts, cut, start: (basis) => startTangent - reach(leg.bend, basis), end: (basis) => endTangent + reach(behind, basis) };
}

/** How far along the first item of a thing at `along` stands. */
function placeOf(metal: Metal, along: Along, distance: number): number {
  const start = metal.start(along.basis);
  const end = metal.end(along.basis);
  return { start: start + distance, end: end - distance, middle: (start + end) / 2 + distance }[along.from];
}

const SHIFT = { start: 1, end: -1, middle: 0 } as const;

/** `along` for the half it stands on. Places measured from an end that is still there are left as typed. */
function alongOnHalf(metal: Metal, along: Along, place: number, half: 'first' | 'second'): Along | undefined {
  if (along.from === 'middle') {
    const other = half === 'first' ? metal.start('straight') : metal.end('straight');
    return { from: 'middle', basis: 'straight', distance: metal.write(place - (metal.cut + other) / 2) };
  }
  if (along.from === (half === 'first' ? 'start' : 'end')) return along;
  const [mine, less, atDatum] =
    along.from === 'start'
      ? ([place - metal.cut, metal.first, metal.start(along.basis) === 0] as const)
      : ([metal.cut - place, metal.second, metal.end(along.basis) === metal.end(metal.leg.endBasis)] as const);
  // Counted from where the length itself counts, the two entries can be put together; otherwise only the figure is known.
  const distance = atDatum ? minus(along.distance, less) : metal.write(mine);
  return distance === undefined ? undefined : { from: along.from, basis: 'straight', distance };
}

/** The whole pattern goes with the half on which its middle stands. */
function middleShift(pattern: JobCutout['pattern'], values: ReadonlyMap<string, number>, field: string, from: Along['from']): number {
  if (pattern.kind === 'single' || (pattern.kind === 'row' && pattern.direction === 'across')) return 0;
  const [many, apart] = pattern.kind === 'row' ? ['count', 'pitch'] : ['alongCount', 'alongPitch'];
  return (SHIFT[from] * ((values.get(`${field}.pattern.${many}`) ?? 1) - 1) * (values.get(`${field}.pattern.${apart}`) ?? 0)) / 2;
}

export interface Split {
  /** From where the leg's length starts, as an entry. */
  readonly distance: string;
  /** Turned from flat, as an entry. */
  readonly angle: string;
  readonly way: 'up' | 'down';
}

/**
 * Splits a leg in two with a new bend between them, of the stock's own radius. The first half is `distance` long and the second
 * has the rest, both to the tangent lines (`straight`) of the new bend, so that the flat metal on either side stays what it was
 * and the bend is added to it. Cut-outs and side lugs go with the half they stand on and keep their place on the metal; a row or
 * a grid goes whole, by its middle. The same job where the part does not work out, the cut is not on the flat of the leg, or an
 * entry would grow too long.
 */
export function splitLeg(job: Job, partId: string, legId: string, split: Split): Job {
  const { part, values } = resolvePart(job, partId);
  const jobPart = job.parts.find(({ id }) => id === partId);
  const index = jobPart?.legs.findIndex(({ id }) => id === legId) ?? -1;
  const leg = jobPart?.legs[index];
  if (!part || !jobPart || !leg) return job;
  const work = settingOf(job, job.stocks.find(({ id }) => id === jobPart.stock)).work(split.distance, 'length');
  const second = minus(leg.length, split.distance);
  if (!work?.ok || second === undefined) return job;
  const write = (mm: number): string => `${Number(mm.toFixed(6)) + 0}${job.units.plain === 'mm' ? '' : ' mm'}`;
  const metal = metalOf(part, index, work.value, { leg, first: split.distance, second, write });
  return metal ? changeLegs(job, partId, (legs) => halves(legs, metal, split, part, index, partId, values) ?? legs) : job;
}

function halves(legs: JobLeg[], metal: Metal, split: Split, part: Part, index: number, partId: string, values: ReadonlyMap<string, number>): JobLeg[] | undefined {
  const { leg, cut } = metal;
  const newId = freeId(legs, 'leg');
  const cutouts: { first: JobCutout[]; second: JobCutout[] } = { first: [], second: [] };
  for (const cutout of leg.cutouts) {
    const field = `parts.${partId}.legs.${leg.id}.cutouts.${cutout.id}`;
    const place = placeOf(metal, cutout.along, values.get(`${field}.along.distance`) ?? 0);
    const half = place + middleShift(cutout.pattern, values, field, cutout.along.from) < cut ? 'first' : 'second';
    const along = alongOnHalf(metal, cutout.along, place, half);
    if (!along) return undefined;
    cutouts[half].push({ ...cutout, along });
  }

  const width = widthAt(metal, part, index);
  const first: JobLeg = { ...leg, length: metal.first, endBasis: 'straight', endWidth: width, endShape: SQUARE, cutouts: cutouts.first };
  const second: JobLeg = {
    ...leg,
    id: newId,
    name: '',
    length: metal.second,
    startBasis: 'straight',
    startWidth: width,
    startShape: SQUARE,
    cutouts: cutouts.second,
    bend: plainBend(leg.id, split.angle, split.way),
  };

  const next = onEndOf(legs, leg.id);
  const out: JobLeg[] = [];
  for (const other of legs) {
    if (other === leg) out.push(first, second);
    else if (other === next && other.bend) out.push({ ...other, bend: { ...other.bend, parent: newId } });
    else if (other.bend?.parent === leg.id && other.bend.seat) {
      const { along } = other.bend.seat;
      const path = `parts.${partId}.legs.${other.id}`;
      const place = placeOf(metal, along, values.get(`${path}.bend.seat.along.distance`) ?? 0);
      const middle = place + (SHIFT[along.from] * (values.get(`${path}.startWidth`) ?? 0)) / 2;
      const half = middle < cut ? 'first' : 'second';
      const moved = alongOnHalf(metal, along, place, half);
      if (!moved) return undefined;
      const parent = half === 'first' ? leg.id : newId;
      out.push({ ...other, bend: { ...other.bend, parent, seat: { ...other.bend.seat, along: moved } } });
    } else out.push(other);
  }
  return out;
}

/** The width at the cut: as typed where the leg does not taper. */
function widthAt(metal: Metal, part: Part, index: number): string {
  const { leg, cut } = metal;
  const worked = part.legs[index];
  if (leg.startWidth === leg.endWidth || !worked) return leg.endWidth;
  const start = metal.start('straight');
  const share = (cut - start) / (metal.end('straight') - start);
  return metal.write(worked.startWidth + (worked.endWidth - worked.startWidth) * share);
}
