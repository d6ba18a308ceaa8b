/** Table and notes of a comparison's sheet. */
import { unitWord } from '../../core/units/formatLength';
import type { Comparison, Row } from '../../job/compare/compareStocks';
import type { Job } from '../../job/schema';
import { line } from '../../core/geometry/segments';
import { overlayRole } from '../overlay/overlayDrawing';
import { PAPER_PX_MM } from '../page';
import type { Words } from '../words';
import { baseDrop, heading, HEADING_HEIGHT, lineHeight, stacked, text, unbroken, type Block } from './block';
import type { SheetBlock } from './compose';
import { sentencesBlock, type Sentence } from './sentences';
import { tableBlock, type Column } from './table';
import { brokenTo, inOnePiece, printed } from './wording';

/** One line of the table: one row, or the rows of a pattern's openings that say the same. */
export interface CompareLine {
  readonly letter: string;
  readonly called: string;
  readonly values: readonly string[];
  /** Against the first stock, by stock; nothing for the first. */
  readonly differences: readonly string[];
}

const NONE = '–';
/** Differences below this, mm or g, are not shown in hundredths. */
const NOUGHT = 0.005;

const span = (values: readonly number[], say: (value: number) => string): string => {
  const said = [...new Set(values.map(say))];
  return said.length <= 1 ? (said[0] ?? NONE) : `${said[0]} to ${said.at(-1)}`;
};

function lineOf(rows: readonly Row[], words: Words): CompareLine {
  const [first] = rows;
  const say = (value: number): string => (first?.unit === 'g' ? value.toFixed(2) : inOnePiece(words.length(value)));
  const signed = (value: number): string => (Math.abs(value) < NOUGHT ? say(0) : `${value > 0 ? '+' : '−'}${say(Math.abs(value))}`);
  const stocks = first?.values.length ?? 0;
  const of = (stock: number): number[] => rows.flatMap((row) => row.values[stock] ?? []);
  const run = first?.run;
  return {
    letter: rows.find((row) => row.letter !== undefined)?.letter ?? '',
    called: `${printed(run && rows.length > 1 ? `${run.called}, ${rows.length} off, ${run.says}` : (first?.called ?? ''))}${first?.unit === 'g' ? ', g' : ''}`,
    values: Array.from({ length: stocks }, (_, s) => span(of(s), say)),
    differences: Array.from({ length: stocks }, (_, s) => {
      const found = rows.flatMap((row) => {
        const [from, to] = [row.values[0], row.values[s]];
        return from === undefined || to === undefined ? [] : [to - from];
      });
      return s === 0 ? '' : span(found, signed);
    }),
  };
}

/** Lines of the table: sizes and mass, and whatever differs. */
export function compareLines({ rows }: Comparison, words: Words): readonly CompareLine[] {
  const groups = new Map<string, Row[]>();
  rows.forEach((row, i) => {
    if (row.letter === undefined && row.what !== 'size' && row.what !== 'mass') return;
    const key = row.run?.key ?? `row ${i}`;
    const group = groups.get(key);
    if (group) group.push(row);
    else groups.set(key, [row]);
  });
  return [...groups.values()].map((group) => lineOf(group, words));
}

/** mm: room for the name of a stock over its column. */
const HEAD_ROOM = 25;

export const stockNames = (job: Job, { stocks }: Comparison): readonly string[] => stocks.map(({ stock }) => printed(job.stocks.find(({ id }) => id === stock)?.name ?? '', 'Stock without a name'));

/** One table: every line with the first stock and these others. */
function differencesTable(job: Job, names: readonly string[], lines: readonly CompareLine[], others: readonly number[], which: number): Block {
  const head = (stock: number): readonly string[] => brokenTo(names[stock] ?? '', 'sheet caption', HEAD_ROOM / PAPER_PX_MM, 3);
  const columns: readonly Column[] = [
    { head: [''], align: 'middle' },
    { head: ['What'], align: 'start', least: 34, most: 74 },
    { head: head(0), align: 'end', least: 16, most: 40 },
    ...others.flatMap((stock): Column[] => [
      { head: head(stock), align: 'end', least: 16, most: 40 },
      { head: ['differ-', 'ence'], align: 'end', least: 14, most: 34 },
    ]),
  ];
  return tableBlock({
    key: `differences${which === 0 ? '' : ` further ${which}`}`,
    title: which === 0 ? 'Differences' : 'Differences, further stocks',
    note: `lengths in ${unitWord(job.units)}, differences against the first stock; the letters stand in the figures`,
    columns,
    rows: lines.map((l) => [l.letter, l.called, l.values[0] ?? '', ...others.flatMap((stock) => [l.values[stock] ?? '', l.differences[stock] ?? ''])]),
    below: 'Legs, bend lines and holes that are not listed are the same in all.',
  });
}

/** As many tables as it takes for each to fit the width: the first stock stands in all of them. */
function differencesTables(job: Job, comparison: Comparison, words: Words, width: number): readonly Block[] {
  const names = stockNames(job, comparison);
  const lines = compareLines(comparison, words);
  const others = names.flatMap((_, stock) => (stock > 0 ? [stock] : []));
  const tables: Block[] = [];
  let from = 0;
  do {
    let count = others.length - from;
    let table = differencesTable(job, names, lines, others.slice(from), tables.length);
    while (count > 1 && table.least > width) table = differencesTable(job, names, lines, others.slice(from, from + --count), tables.length);
    tables.push(table);
    from += Math.max(1, count);
  } while (from < others.length);
  return tables;
}

/** Which line is which stock. */
function legend(job: Job, comparison: Comparison, words: Words): Block {
  const sample = 16;
  const at = (width: number) => {
    const rows = stockNames(job, comparison).map((name, i) => {
      const { shape } = comparison.stocks[i]?.worked ?? {};
      const says = `${name}${shape ? `, ${words.length(shape.layout.part.thickness)} ${unitWord(job.units)} thick` : ', cannot be made'}`;
      const lines = brokenTo(says, 'sheet text', (width - sample - 3) / PAPER_PX_MM);
      const step = lineHeight('sheet text');
      return unbroken(lines.length * step, (p) => [
        { kind: 'path' as const, key: `legend ${i} line`, role: i === 0 ? ('hole edge' as const) : overlayRole(i), runs: [{ segments: [line({ x: p.x, y: p.y - step * 0.55 }, { x: p.x + sample, y: p.y - step * 0.55 })], closed: false }] },
        ...lines.map((said, j) => text(`legend ${i} ${j}`, 'sheet text', { x: p.x + sample + 3, y: p.y - baseDrop('sheet text') - j * step }, said)),
      ]);
    });
    return stacked([unbroken(HEADING_HEIGHT - 0.9, (p) => heading('legend', p, 'Lines', [], width)), ...rows], 0.9);
  };
  return { least: 60, natural: 60, liked: 90, at };
}

/** How far the holes of the bent part move off what they are to meet, worst first. */
function movedSentences(job: Job, comparison: Comparison, words: Words): readonly Sentence[] {
  const names = stockNames(job, comparison);
  const unit = unitWord(job.units);
  const worst = new Map<string, { readonly called: string; readonly stock: number; readonly off: number }>();
  for (const row of comparison.rows) {
    if (row.what !== 'bent hole' || row.of?.kind !== 'cutout' || !row.called.endsWith(OFF_ITS_MATE)) continue;
    const called = row.run?.called ?? row.called.slice(0, -OFF_ITS_MATE.length);
    row.values.forEach((off, stock) => {
      const key = `${row.run?.key ?? row.called} ${stock}`;
      if (stock > 0 && off !== undefined && off > Math.max(NOUGHT, worst.get(key)?.off ?? 0)) worst.set(key, { called, stock, off });
    });
  }
  return [...worst.values()]
    .toSorted((a, b) => b.off - a.off)
    .map(({ called, stock, off }) => ({ sign: 'care', says: `${called} moves up to ${words.length(off)} ${unit} off its mate in ${names[stock]}.` }));
}

const OFF_ITS_MATE = ', off its mate';

function troubles(job: Job, comparison: Comparison): readonly Sentence[] {
  const names = stockNames(job, comparison);
  return comparison.stocks.flatMap(({ worked }, i): Sentence[] => [
    ...worked.problems.map(({ says }): Sentence => ({ sign: 'stop', says: `${names[i]}: ${says}` })),
    ...worked.findings.flatMap(({ level, says }): Sentence[] => (level === 'good' ? [] : [{ sign: level, says: `${names[i]}: ${says}` }])),
  ]);
}

/** @param width mm of the sheet inside its border */
export function compareBlocks(job: Job, comparison: Comparison, words: Words, width: number): readonly SheetBlock[] {
  const moved = movedSentences(job, comparison, words);
  const trouble = troubles(job, comparison);
  const nothing = (says: string): readonly Sentence[] => [{ sign: 'none', says }];
  return [
    ...differencesTables(job, comparison, words, width).map((block): SheetBlock => ({ kind: 'bends', block })),
    { kind: 'notes', block: legend(job, comparison, words) },
    { kind: 'notes', block: sentencesBlock('moved', 'Holes in the bent part', moved.length > 0 ? moved : nothing('Every hole stays where it is.')) },
    { kind: 'notes', block: sentencesBlock('troubles', 'Look at first', trouble.length > 0 ? trouble : nothing('No bend becomes too tight and no leg too short.')) },
  ];
}
