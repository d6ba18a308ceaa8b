/**
 * What every sheet carries besides the parts: check bars across and up, and the words by which it is printed true. All in true
 * millimetres: where the page is stretched for the printer, less of them go on the paper.
 */
import { line } from '../../core/geometry/segments';
import type { Bounds, Point, Segment } from '../../core/geometry/types';
import { MM_PER_INCH } from '../../core/units/unitWords';
import type { Entity } from '../entities';
import { PAPER_PX_MM } from '../page';
import { CAP_HEIGHT, LETTER_PX } from '../textWidth';
import { BAR_IN, BAR_MM } from './correction';
import { sheetOf } from './paperSizes';
import { block, blockHeight, type Row } from './templateLettering';
import type { TemplateSettings } from './types';

/** mm kept inside the printable border, so that half a line's width stays in it too. */
const INSET_MM = 0.4;
/** mm: the strips that the bars stand in, from one bar to the next, and half a tick. */
const BARS_LEFT_MM = 10;
const BARS_FOOT_MM = 12.5;
const FIRST_BAR_MM = 2;
const BAR_STEP_MM = 5;
const TICK_MM = 1.5;
/** Words beside the bars begin here, from the left of the foot: behind the label of the longer bar. */
const WORDS_FROM_MM = 115;

export interface Frame {
  readonly paper: { readonly width: number; readonly height: number };
  /** What the printer can reach. */
  readonly printable: Bounds;
  /** Room for parts. */
  readonly work: Bounds;
  /** mm to a reference px, so that letters keep clear of each other whatever the stretch. */
  readonly px: number;
}

/** A page before it is known how many there are. */
export interface Draft {
  readonly name: string;
  readonly frame: Frame;
  readonly entities: readonly Entity[];
}

export function frameOf(settings: TemplateSettings, lying: boolean): Frame {
  const sheet = sheetOf(settings.paper, lying, settings.margins);
  const { x, y } = settings.correction;
  const printable: Bounds = {
    minX: (sheet.left + INSET_MM) / x,
    minY: (sheet.bottom + INSET_MM) / y,
    maxX: (sheet.width - sheet.right - INSET_MM) / x,
    maxY: (sheet.height - sheet.top - INSET_MM) / y,
  };
  return {
    paper: { width: sheet.width, height: sheet.height },
    printable,
    work: { ...printable, minX: printable.minX + BARS_LEFT_MM, minY: printable.minY + BARS_FOOT_MM + 2 },
    px: PAPER_PX_MM / Math.min(1, x, y),
  };
}

const BARS = [
  { name: `${BAR_IN} in`, length: BAR_IN * MM_PER_INCH },
  { name: `${BAR_MM} mm`, length: BAR_MM },
] as const;

/** A bar with a tick at both ends and its label behind it. */
function bar(key: string, from: Point, up: boolean, { name, length }: (typeof BARS)[number], px: number): readonly Entity[] {
  const at = (along: number, across: number): Point => (up ? { x: from.x - across, y: from.y + along } : { x: from.x + along, y: from.y + across });
  const tick = (along: number): Segment => line(at(along, -TICK_MM), at(along, TICK_MM));
  const half = (CAP_HEIGHT / 2) * LETTER_PX['note text'] * px;
  return [
    { kind: 'path', key: `${key} bar`, role: 'check bar', runs: [line(at(0, 0), at(length, 0)), tick(0), tick(length)].map((s) => ({ segments: [s], closed: false })) },
    { kind: 'text', key: `${key} label`, role: 'note text', at: at(length + 2, -half), text: name, align: 'start', rotation: up ? Math.PI / 2 : 0 },
  ];
}

/** The bars and the words at the foot. */
export function sheetFrame({ printable, px }: Frame, settings: TemplateSettings, count: string): readonly Entity[] {
  const { minX, minY } = printable;
  const across = BARS.flatMap((b, i) => bar(`across ${b.name}`, { x: minX + 0.4, y: minY + FIRST_BAR_MM + i * BAR_STEP_MM }, false, b, px));
  const up = BARS.flatMap((b, i) => bar(`up ${b.name}`, { x: minX + FIRST_BAR_MM + i * BAR_STEP_MM, y: minY + BARS_FOOT_MM + 2.5 }, true, b, px));
  const rows: readonly Row[] = [
    { role: 'part name', text: 'Print at 100 %, no fit to page.' },
    { role: 'note text', text: `Measure both bars. Sizes in ${settings.unit}.` },
    { role: 'note text', text: [count, settings.date].filter((s) => s !== '').join(' · ') },
  ];
  return [...across, ...up, ...block('foot', rows, { x: minX + WORDS_FROM_MM, y: minY + blockHeight(rows, px) }, px).entities()];
}
