/** The rows of a comparison as lines of the table: what differs first, the openings of a pattern as one line until it is opened. */
import { formatLength } from '../../core/units/formatLength';
import { rowDiffers, type Row } from '../../job/compare/compareStocks';
import type { Job } from '../../job/schema';

/** One line: a single row, or those of a pattern. */
export interface Line {
  readonly key: string;
  readonly called: string;
  readonly rows: readonly [Row, ...Row[]];
}

export interface Block {
  readonly title: string;
  readonly lines: readonly Line[];
}

export interface TableLines {
  readonly differ: readonly Block[];
  readonly same: readonly Line[];
}

const BLOCKS: readonly { readonly title: string; readonly what: readonly Row['what'][] }[] = [
  { title: 'The whole part', what: ['size', 'mass'] },
  { title: 'Legs', what: ['leg'] },
  { title: 'Bends, on the blank', what: ['bend'] },
  { title: 'Holes, on the blank', what: ['hole'] },
  { title: 'Holes, in the bent part', what: ['bent hole'] },
];

function lineOf(rows: readonly [Row, ...Row[]]): Line {
  const [{ called, run }] = rows;
  return { key: run?.key ?? called, called: run && rows.length > 1 ? `${run.called} 1 to ${rows.length}, ${run.says}` : called, rows };
}

/** Rows in their order, those of one run gathered where the first of them stands. */
function gathered(rows: readonly Row[]): readonly Line[] {
  const groups = new Map<string, [Row, ...Row[]]>();
  for (const row of rows) {
    const key = row.run?.key ?? row.called;
    const held = groups.get(key);
    if (held) held.push(row);
    else groups.set(key, [row]);
  }
  return [...groups.values()].map(lineOf);
}

/** A figure that one stock alone has is not the same in all. */
const alone = ({ values }: Row): boolean => values.length > 1 && values.filter((value) => value !== undefined).length === 1;

const lineDiffers = ({ rows }: Line): boolean => rows.some((row) => rowDiffers(row) || alone(row));

export function tableLines(rows: readonly Row[]): TableLines {
  const blocks = BLOCKS.map(({ title, what }) => ({ title, lines: gathered(rows.filter((row) => what.includes(row.what))) }));
  return {
    differ: blocks.map(({ title, lines }) => ({ title, lines: lines.filter(lineDiffers) })).filter(({ lines }) => lines.length > 0),
    same: blocks.flatMap(({ lines }) => lines.filter((line) => !lineDiffers(line))),
  };
}

const NOTHING = '–';

const figureOf = (row: Row, value: number, job: Job): string =>
  row.unit === 'g' ? `${value.toFixed(2)} g` : formatLength(value, { show: job.units.show, denominator: job.units.denominator });

/** One figure, or the first and the last of a pattern. A hole's way in the bent part is a difference, not a place. */
export function valueText({ rows }: Line, stock: number, job: Job): string {
  if (rows[0].what === 'bent hole') return '';
  const known = rows.flatMap((row) => row.values[stock] ?? []);
  const [first] = known;
  const last = known.at(-1);
  if (first === undefined || last === undefined) return NOTHING;
  const [from, to] = [figureOf(rows[0], first, job), figureOf(rows[0], last, job)];
  return from === to ? from : `${from} to ${to}`;
}

/** `+0.62`, `−0.62 g`, `same`: to hundredths of a mm or a g. */
function signed(amount: number, unit: string): string {
  const text = Math.abs(amount).toFixed(2);
  return text === '0.00' ? 'same' : `${amount < 0 ? '−' : '+'}${text}${unit}`;
}

/** How far a row is from the stock that the part is made of now, mm or g; undefined where one of the two has no figure. */
function apart(row: Row, stock: number): number | undefined {
  const [now, other] = [row.values[0], row.values[stock]];
  return now === undefined || other === undefined ? undefined : other - now;
}

/** The difference to the present stock in mm or g; from the least to the most where those of a pattern differ. */
export function differenceText({ rows }: Line, stock: number): string {
  const all = rows.flatMap((row) => apart(row, stock) ?? []);
  if (all.length === 0) return NOTHING;
  const unit = rows[0].unit === 'g' ? ' g' : '';
  const say = (amount: number): string => (rows[0].what === 'bent hole' ? amount.toFixed(2) : signed(amount, unit));
  const [least, most] = [say(Math.min(...all)), say(Math.max(...all))];
  return least === most ? least : `${least} to ${most}`;
}

/** What is said of one hole of a pattern, under its line. */
export const eachOf = ({ rows }: Line): readonly Line[] => rows.map((row) => ({ key: row.called, called: row.called, rows: [row] }));
