/** Tables and notes of one part's shop sheet. */
import { formatAngle, formatLength, unitWord } from '../../core/units/formatLength';
import { ruleSource, ruleStandsOn } from '../../job/ruleWords';
import type { Job, JobStock } from '../../job/schema';
import { bendRows, type BendRow } from '../../job/tables/bendRows';
import { holeRows } from '../../job/tables/holeRows';
import type { Shape, WorkedOut } from '../../job/workOut';
import type { Words } from '../words';
import { sketchesBlock } from './bentSketches';
import type { SheetBlock } from './compose';
import { holeLines } from './holeLines';
import { sentencesBlock, type Sentence } from './sentences';
import { tableBlock, type Column } from './table';
import { printed } from './wording';

/** Bend figures to three places, in decimals even where lengths are shown as fractions: a 64th is too coarse for an allowance. */
const fine = (units: Job['units']) => (mm: number): string => formatLength(mm, { show: units.show === 'mm' ? 'mm' : 'inch', places: 3 });

/** `25.55`, or `12.00 up` for a line that runs along the blank. */
const placeWords = (row: BendRow, value: number, words: Words): string => `${words.length(value)}${row.told === 'across' ? ' across' : ''}`;

function bendTable(rows: readonly BendRow[], units: Job['units'], words: Words): SheetBlock {
  const small = fine(units);
  return {
    kind: 'bends',
    block: tableBlock({
      key: 'bends',
      title: 'Bending',
      note: 'in this order; lines measured from the datum on the marked face',
      columns: [
        { head: ['Bend'], align: 'middle' },
        { head: ['Line at'], align: 'end' },
        { head: ['Tangent', 'lines'], align: 'middle' },
        { head: ['Turn'], align: 'end' },
        { head: ['Way'], align: 'start' },
        { head: ['Between', 'legs'], align: 'end' },
        { head: ['Inside', 'radius'], align: 'end' },
        { head: ['K'], align: 'end' },
        { head: ['Allow-', 'ance'], align: 'end' },
        { head: ['Deduc-', 'tion'], align: 'end' },
      ],
      rows: rows.map((row) => [
        { ring: row.number },
        placeWords(row, row.lineAt, words),
        `${words.length(row.startsAt)} – ${words.length(row.endsAt)}`,
        formatAngle(row.turn),
        row.way,
        formatAngle(row.between),
        words.length(row.radius),
        row.k.toFixed(3),
        small(row.allowance),
        small(row.deduction),
      ]),
      below: 'Up is towards the marked face. Turn is counted from flat; between the legs is what a protractor in the bend reads.',
    }),
  };
}

const FINISHED: readonly Column[] = [
  { head: ['Finished:', 'along'], align: 'end', least: 20, most: 34 },
  { head: ['', 'across'], align: 'end', least: 16, most: 34 },
  { head: ['', 'up'], align: 'end', least: 16, most: 34 },
];

function holeTable(shape: Shape, words: Words): SheetBlock {
  // A flat part is finished when it is cut.
  const bent = shape.blank.bends.length > 0;
  const lines = holeLines(holeRows(shape), words);
  return {
    kind: 'holes',
    block: tableBlock({
      key: 'holes',
      title: 'Holes',
      note: 'centres',
      columns: [
        { head: ['Name'], align: 'start', least: 22, most: 48, mostLines: 2 },
        { head: ['Leg'], align: 'middle' },
        { head: ['Size'], align: 'start', least: 24, most: 40 },
        { head: ['Along', 'the blank'], align: 'end', least: 24, most: 46 },
        { head: ['Across', 'the blank'], align: 'end', least: 20, most: 40 },
        ...(bent ? FINISHED : []),
      ],
      rows: lines.map((line) => [line.called, line.leg, line.size, line.along, line.across, ...(bent ? [line.x, line.y, line.z] : [])]),
      below: `On the blank: along from the datum, across from its lower edge.${bent ? ' In the finished part: from the start of leg A along it, across from its centre line, up from its marked face.' : ''}`,
    }),
  };
}

function stockBlock(stock: JobStock, shape: Shape, rows: readonly BendRow[], units: Job['units'], words: Words): SheetBlock {
  const unit = unitWord(units);
  const small = fine(units);
  const ks = rows.map((row) => row.k.toFixed(3));
  const [least, most] = [ks.toSorted().at(0), ks.toSorted().at(-1)];
  const kinds = [...new Map(rows.map((row) => [`${formatAngle(row.turn)} ${words.length(row.radius)}`, row])).values()];
  const allowances = kinds.slice(0, 4).map((row) => `${formatAngle(row.turn)} takes up ${small(row.allowance)}`);
  const said: Sentence[] = [
    { sign: 'none', says: `${printed(stock.name, 'Stock without a name')}, ${words.length(shape.layout.part.thickness)} ${unit} thick.` },
    ...(rows.length > 0
      ? [
          { sign: 'none' as const, says: `K ${least === most ? least : `${least} to ${most}`}; ${allowances.join(', ')}${kinds.length > 4 ? ', the rest in the table' : ''}.` },
          { sign: 'none' as const, says: ruleStandsOn(stock.rule) },
          { sign: 'none' as const, says: ruleSource(stock.rule) },
        ]
      : [{ sign: 'none' as const, says: 'This part has no bends; the blank is the part.' }]),
  ];
  return { kind: 'notes', block: sentencesBlock('stock', 'Stock and allowance', said) };
}

function checksBlock(worked: WorkedOut, notes: readonly string[]): SheetBlock {
  const cares = worked.findings.filter((f) => f.level === 'care');
  const said: Sentence[] = [...notes.map((says) => ({ sign: 'care' as const, says })), ...cares.map(({ says }) => ({ sign: 'care' as const, says }))];
  if (said.length === 0) said.push({ sign: 'none', says: 'All checks hold; there is nothing to look at first.' });
  return { kind: 'notes', block: sentencesBlock('checks', 'Look at first', said) };
}

export interface PartOnSheet {
  readonly job: Job;
  readonly stock: JobStock;
  readonly worked: WorkedOut;
  readonly shape: Shape;
  readonly words: Words;
  readonly order: readonly number[];
}

/** @param notes sentences to stand before the checks */
export function partBlocks({ job, stock, worked, shape, words, order }: PartOnSheet, notes: readonly string[]): readonly SheetBlock[] {
  const rows = bendRows(shape.blank, order);
  const steps = rows.map((row) => ({ bend: row.number, says: `${formatAngle(row.turn)} ${row.way}` }));
  return [
    ...(rows.length > 0 ? [bendTable(rows, job.units, words)] : []),
    ...(shape.blank.cutouts.length > 0 ? [holeTable(shape, words)] : []),
    ...(rows.length > 0 ? [{ kind: 'sketches' as const, block: sketchesBlock(shape.layout, steps) }] : []),
    stockBlock(stock, shape, rows, job.units, words),
    checksBlock(worked, notes),
  ];
}
