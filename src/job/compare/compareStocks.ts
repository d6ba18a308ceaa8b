/**
 * One part in two or more stocks: each worked out by the same core as the part itself, what is held put right, and the
 * differences to the stock it is made of now lettered for the table and the overlay.
 */
import type { BlankBend, BlankCutout, FoldedCutout } from '../../core/part/layoutTypes';
import { cutoutCalled, legLetter } from '../../core/part/names';
import { writeField } from '../fields';
import type { Job } from '../schema';
import { datumOf } from '../tables/bendRows';
import { workOut, workOutAs, type Shape, type WorkedOut } from '../workOut';
import { holdHoles, holdSizes, type Keep } from './keepSizes';

/** What a row is about, by the ids of the part: what lights up with it. `item` counts the openings of a pattern from 0. */
export type RowSubject =
  | { readonly kind: 'leg'; readonly leg: string }
  | { readonly kind: 'bend'; readonly leg: string }
  | { readonly kind: 'cutout'; readonly leg: string; readonly cutout: string; readonly item: number };

/** One quantity of the part and its value in every stock compared, in the order of the stocks; undefined where the part cannot be laid out in that one. */
export interface Row {
  /** a, b, c … where the stocks differ and the overlay shows it; undefined where they agree. The openings of one pattern share a letter. */
  readonly letter: string | undefined;
  readonly what: 'size' | 'leg' | 'bend' | 'hole' | 'bent hole' | 'mass';
  /** `Bend 2, centre line`, `Peg hole 3, along the blank`. */
  readonly called: string;
  readonly unit: 'mm' | 'g' | '';
  readonly values: readonly (number | undefined)[];
  /** Undefined for the part as a whole. */
  readonly of: RowSubject | undefined;
  /** Rows that say the same of the openings of one pattern go together: `Peg hole`, `along the blank`. Undefined for all others. */
  readonly run: { readonly key: string; readonly called: string; readonly says: string } | undefined;
}

export interface InStock {
  readonly stock: string;
  readonly worked: WorkedOut;
  /** g of one part; undefined where the density or the shape is at fault. */
  readonly mass: number | undefined;
}

export interface Comparison {
  /** The stock that the part is made of now comes first. */
  readonly stocks: readonly InStock[];
  readonly rows: readonly Row[];
}

/** Two figures nearer than this, mm or g, are the same in the table: it shows hundredths. */
const SAME_TO_THE_READER = 0.005;

/** The part worked out in another stock with what the maker holds held. */
function inStock(job: Job, partId: string, stock: string, now: Shape | undefined, keep: readonly Keep[]): WorkedOut {
  const asked = writeField(job, `parts.${partId}.stock`, stock);
  const plain = workOut(asked, partId);
  const { part } = plain.resolved;
  if (!now || !part || keep.every((k) => k === 'as typed')) return plain;
  const sized = workOutAs(asked, partId, plain.resolved, holdSizes(now, part, keep));
  return sized.shape && keep.includes('holes') ? workOutAs(asked, partId, plain.resolved, holdHoles(now, sized.shape, keep)) : sized;
}

const massOf = ({ shape, resolved }: WorkedOut): number | undefined =>
  shape && resolved.density !== undefined ? shape.blank.area * shape.layout.part.thickness * resolved.density * 1e-6 : undefined;

type Plain = Omit<Row, 'letter'>;

const SIZES: readonly { readonly called: string; readonly of: (shape: Shape) => number }[] = [
  { called: 'Developed length', of: (s) => s.blank.developedLength },
  { called: 'Blank, length', of: (s) => s.blank.bounds.maxX - s.blank.bounds.minX },
  { called: 'Blank, width', of: (s) => s.blank.bounds.maxY - s.blank.bounds.minY },
];

/** Where a bend's line stands: along the blank from the datum, or, for a line that runs along it (a side lug's), across it from the lower edge. */
function lineAt({ blank }: Shape, { centreLine: [from, to] }: BlankBend): number {
  return Math.abs(to.y - from.y) >= Math.abs(to.x - from.x) ? (from.x + to.x) / 2 - datumOf(blank) : (from.y + to.y) / 2;
}

interface Opening {
  readonly shape: Shape;
  readonly flat: BlankCutout;
  readonly bent: FoldedCutout;
}

/** Every opening that any of the stocks gives, in order; a pattern's count may hang on the thickness. */
function openings(shapes: readonly (Shape | undefined)[]): readonly (readonly (Opening | undefined)[])[] {
  const name = (flat: BlankCutout): string => `${flat.leg} ${flat.cutout} ${flat.item}`;
  const byName = shapes.map((shape) => {
    const found = new Map<string, Opening>();
    shape?.blank.cutouts.forEach((flat, i) => {
      const bent = shape.folded.cutouts[i];
      if (bent) found.set(name(flat), { shape, flat, bent });
    });
    return found;
  });
  const all = new Map(byName.flatMap((each) => [...each].map(([key, { flat }]) => [key, flat] as const)));
  return [...all]
    .toSorted(([, a], [, b]) => a.leg - b.leg || a.cutout - b.cutout || a.item - b.item)
    .map(([key]) => byName.map((each) => each.get(key)));
}

/** How far a hole has moved in the bent part, whole and across its own axis: only across it does a pin or a bolt miss its mate. mm. */
function moved(before: FoldedCutout, after: FoldedCutout): { readonly whole: number; readonly off: number } {
  const { x, y, z } = before.axis;
  const d = { x: after.centre.x - before.centre.x, y: after.centre.y - before.centre.y, z: after.centre.z - before.centre.z };
  const along = d.x * x + d.y * y + d.z * z;
  return { whole: Math.hypot(d.x, d.y, d.z), off: Math.hypot(d.x - along * x, d.y - along * y, d.z - along * z) };
}

function holeRows(shapes: readonly (Shape | undefined)[], now: Shape | undefined): Plain[] {
  return openings(shapes).flatMap((each) => {
    const known = each.find((opening) => opening !== undefined);
    if (!known) return [];
    const { flat, shape: { layout: { part } } } = known;
    const leg = part.legs[flat.leg];
    const cutout = leg?.cutouts[flat.cutout];
    if (!leg || !cutout) return [];
    const of: RowSubject = { kind: 'cutout', leg: leg.id, cutout: cutout.id, item: flat.item };
    const row = (what: 'hole' | 'bent hole', says: string, value: (opening: Opening) => number | undefined): Plain => ({
      what,
      called: `${cutoutCalled(part, flat.leg, flat.cutout, flat.item)}, ${says}`,
      unit: 'mm',
      values: each.map((opening) => opening && value(opening)),
      of,
      run: cutout.pattern.kind === 'single' ? undefined : { key: `${leg.id} ${cutout.id} ${says}`, called: cutoutCalled(part, flat.leg, flat.cutout), says },
    });
    // A hole is told against where it stands in the stock that the part is made of now.
    const from = now && each[shapes.indexOf(now)]?.bent;
    return [
      row('hole', 'along the blank', ({ shape, flat: { centre } }) => centre.x - datumOf(shape.blank)),
      row('hole', 'across the blank', ({ flat: { centre } }) => centre.y),
      row('bent hole', 'off its mate', ({ bent }) => from && moved(from, bent).off),
      row('bent hole', 'moved in the bent part', ({ bent }) => from && moved(from, bent).whole),
    ];
  });
}

function plainRows(stocks: readonly InStock[]): Plain[] {
  const shapes = stocks.map((s) => s.worked.shape);
  const each = (value: (shape: Shape) => number | undefined): (number | undefined)[] => shapes.map((shape) => shape && value(shape));
  const rows: Plain[] = [
    ...SIZES.map(({ called, of }): Plain => ({ what: 'size', called, unit: 'mm', values: each(of), of: undefined, run: undefined })),
    { what: 'mass', called: 'Mass of one', unit: 'g', values: stocks.map((s) => s.mass), of: undefined, run: undefined },
  ];
  const first = shapes.find((shape) => shape !== undefined);
  if (!first) return rows;
  const { legs } = first.layout.part;
  const bendOf = (shape: Shape, leg: number): BlankBend | undefined => shape.blank.bends.find((bend) => bend.leg === leg);
  legs.forEach((leg, i) =>
    rows.push({ what: 'leg', called: `Leg ${legLetter(i)}, straight`, unit: 'mm', values: each((s) => s.layout.legs[i]?.straight), of: { kind: 'leg', leg: leg.id }, run: undefined }),
  );
  legs.forEach((leg, i) => {
    if (!leg.bend) return;
    const row = (says: string, value: (shape: Shape, bend: BlankBend) => number): Plain => ({
      what: 'bend',
      called: `Bend ${i}, ${says}`,
      unit: 'mm',
      values: each((s) => { const bend = bendOf(s, i); return bend && value(s, bend); }),
      of: { kind: 'bend', leg: leg.id },
      run: undefined,
    });
    rows.push(row('centre line', lineAt), row('allowance', (_, { figures }) => figures.allowance));
  });
  return [...rows, ...holeRows(shapes, shapes[0])];
}

/** Whether a table to hundredths shows a difference between the stocks in which the part can be laid out. */
export function rowDiffers({ values }: Pick<Row, 'values'>): boolean {
  const known = values.filter((v) => v !== undefined);
  return known.length > 0 && Math.max(...known) - Math.min(...known) > SAME_TO_THE_READER;
}

/** a … z, aa, ab …: small letters, so that they are not mixed up with legs. */
const rowLetter = (index: number): string => legLetter(index).toLowerCase();

/** A letter for everything that differs; the openings of a pattern share theirs. The mass is no place on the overlay. */
function lettered(rows: readonly Plain[]): readonly Row[] {
  const ofRun = new Map<string, string>();
  const differing = new Set(rows.flatMap((row) => (row.run && rowDiffers(row) ? [row.run.key] : [])));
  let next = 0;
  return rows.map((row) => {
    const { run } = row;
    if (row.what === 'mass' || !(run ? differing.has(run.key) : rowDiffers(row))) return { ...row, letter: undefined };
    const letter = (run && ofRun.get(run.key)) ?? rowLetter(next++);
    if (run) ofRun.set(run.key, letter);
    return { ...row, letter };
  });
}

/**
 * @param stocks ids to compare with the part's own stock, which is put first; ids not in the job are left out
 * @param keep what is held, by leg index; as typed where left out
 * Legs and bends are the same in all. A pattern's count may hang on the thickness: a hole that a stock has not got has no value there.
 */
export function compareStocks(job: Job, partId: string, stocks: readonly string[], keep: readonly Keep[] = []): Comparison {
  const own = job.parts.find((part) => part.id === partId)?.stock;
  const ids = [...new Set([...(own === undefined ? [] : [own]), ...stocks])].filter((id) => job.stocks.some((s) => s.id === id));
  const now = workOut(job, partId);
  const compared = ids.map((stock): InStock => {
    const worked = stock === own ? now : inStock(job, partId, stock, now.shape, keep);
    return { stock, worked, mass: massOf(worked) };
  });
  // A row without any figure tells nothing: how far a hole moves from a stock in which the part cannot be laid out.
  return { stocks: compared, rows: lettered(plainRows(compared).filter(({ values }) => values.some((v) => v !== undefined))) };
}
