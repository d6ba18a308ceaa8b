/**
 * One part in two or more stocks: each worked out by the same core as the part itself, what is held put right, and the
 * differences to the stock it is made of now lettered for the table and the overlay.
 */
import type { Vector3 } from '../../core/geometry/types';
import { cutoutCalled, legLetter } from '../../core/part/names';
import { writeField } from '../fields';
import type { Job } from '../schema';
import { workOut, workOutAs, type Shape, type WorkedOut } from '../workOut';
import { holdHoles, holdSizes, type Keep } from './keepSizes';

/** One quantity of the part and its value in every stock compared, in the order of the stocks; undefined where the part cannot be laid out in that one. */
export interface Row {
  /** a, b, c … where the stocks differ and the overlay shows it; undefined where they agree. */
  readonly letter: string | undefined;
  readonly what: 'size' | 'leg' | 'bend' | 'hole' | 'bent hole' | 'mass';
  /** `Bend 2, centre line`, `Peg hole 3, along the blank`. */
  readonly called: string;
  readonly unit: 'mm' | 'g' | '';
  readonly values: readonly (number | undefined)[];
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

const apart = (a: Vector3, b: Vector3): number => Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);

type Plain = Omit<Row, 'letter'>;

function plainRows(stocks: readonly InStock[]): Plain[] {
  const shapes = stocks.map((s) => s.worked.shape);
  const each = (value: (shape: Shape) => number | undefined): (number | undefined)[] => shapes.map((shape) => shape && value(shape));
  const first = shapes.find((shape) => shape !== undefined);
  const rows: Plain[] = [
    { what: 'size', called: 'Developed length', unit: 'mm', values: each((s) => s.blank.developedLength) },
    { what: 'size', called: 'Blank, length', unit: 'mm', values: each((s) => s.blank.bounds.maxX) },
    { what: 'size', called: 'Blank, width', unit: 'mm', values: each((s) => s.blank.bounds.maxY) },
    { what: 'mass', called: 'Mass of one', unit: 'g', values: stocks.map((s) => s.mass) },
  ];
  if (!first) return rows;
  const { part } = first.layout;
  part.legs.forEach((_, i) => rows.push({ what: 'leg', called: `Leg ${legLetter(i)}, straight`, unit: 'mm', values: each((s) => s.layout.legs[i]?.straight) }));
  first.blank.bends.forEach((bend, b) => {
    // A bend across the strip is told by x, one along it (a side lug's) by y.
    const along = Math.abs(bend.centreLine[0].x - bend.centreLine[1].x) < Math.abs(bend.centreLine[0].y - bend.centreLine[1].y) ? 'x' : 'y';
    rows.push({ what: 'bend', called: `Bend ${bend.leg}, centre line`, unit: 'mm', values: each((s) => s.blank.bends[b]?.centreLine[0][along]) });
    rows.push({ what: 'bend', called: `Bend ${bend.leg}, allowance`, unit: 'mm', values: each((s) => s.blank.bends[b]?.figures.allowance) });
  });
  first.blank.cutouts.forEach((cutout, c) => {
    const called = cutoutCalled(part, cutout.leg, cutout.cutout, cutout.item);
    const unlike = (axis: 'x' | 'y') => each((s) => s.blank.cutouts[c]?.centre[axis]);
    rows.push({ what: 'hole', called: `${called}, along the blank`, unit: 'mm', values: unlike('x') });
    if (differs(unlike('y'))) rows.push({ what: 'hole', called: `${called}, across the blank`, unit: 'mm', values: unlike('y') });
    const from = first.folded.cutouts[c]?.centre;
    rows.push({ what: 'bent hole', called: `${called}, moved in the bent part`, unit: 'mm', values: each((s) => { const at = s.folded.cutouts[c]?.centre; return from && at && apart(from, at); }) });
  });
  return rows;
}

function differs(values: readonly (number | undefined)[]): boolean {
  const known = values.filter((v) => v !== undefined);
  return known.length > 0 && Math.max(...known) - Math.min(...known) > SAME_TO_THE_READER;
}

/** a … z, aa, ab …: small letters, so that they are not mixed up with legs. */
const rowLetter = (index: number): string => legLetter(index).toLowerCase();

/**
 * @param stocks ids to compare with the part's own stock, which is put first; ids not in the job are left out
 * @param keep what is held, by leg index; as typed where left out
 * The numbering of legs, bends and cut-outs is the same in all: a pattern's count may depend on the thickness, and items
 * that one stock has and another has not come out as undefined.
 */
export function compareStocks(job: Job, partId: string, stocks: readonly string[], keep: readonly Keep[] = []): Comparison {
  const own = job.parts.find((part) => part.id === partId)?.stock;
  const ids = [...new Set([...(own === undefined ? [] : [own]), ...stocks])].filter((id) => job.stocks.some((s) => s.id === id));
  const now = workOut(job, partId);
  const compared = ids.map((stock): InStock => {
    const worked = stock === own ? now : inStock(job, partId, stock, now.shape, keep);
    return { stock, worked, mass: massOf(worked) };
  });
  let lettered = 0;
  const rows = plainRows(compared).map((row): Row => ({ ...row, letter: differs(row.values) && row.what !== 'mass' ? rowLetter(lettered++) : undefined }));
  return { stocks: compared, rows };
}
