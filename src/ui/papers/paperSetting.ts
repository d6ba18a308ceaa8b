/**
 * What is to be printed, and on what. Paper and correction belong to the printer, not to the job, so this browser keeps them; the
 * rest is good until the page is left.
 */
import { createStore } from 'zustand/vanilla';
import { useStore } from 'zustand';
import { USUAL_GAP, USUAL_OVERLAP, type PaperKind } from '../../drawing/papers/types';
import type { Correction, Measured } from '../../drawing/template/correction';
import { PAPER_SIZES, type PaperName } from '../../drawing/template/paperSizes';
import type { Face } from '../../drawing/template/types';
import { bench, goTo } from '../../store/bench';

export type Turn = 'auto' | 'upright' | 'lying';
export type Bar = keyof Measured;

/** What belongs to the printer. */
export interface Printer {
  readonly paper: PaperName;
  readonly turn: Turn;
  /** As typed. */
  readonly overlap: string;
  readonly gap: string;
  /** The correction that the last print was made with. */
  readonly inForce: Correction;
  /** What the bars of that print measured, as typed; empty where they were not measured. */
  readonly measured: Readonly<Record<Bar, string>>;
}

export interface PaperSetting extends Printer {
  readonly kind: PaperKind;
  /** Ids of the parts to print; null while it is the part in view. */
  readonly chosen: readonly string[] | null;
  /** By part, as typed; one where nothing was typed. */
  readonly copies: Readonly<Record<string, string>>;
  readonly face: Face;
  /** Set by the command until the pages are there to be printed. */
  readonly printWanted: boolean;
}

const KEPT_AT = 'bendwright printer';

export const NOT_MEASURED: Printer['measured'] = { xMm: '', xIn: '', yMm: '', yIn: '' };

const FIRST: Printer = {
  paper: 'A4',
  turn: 'auto',
  overlap: String(USUAL_OVERLAP),
  gap: String(USUAL_GAP),
  inForce: { x: 1, y: 1 },
  measured: NOT_MEASURED,
};

const record = (held: unknown): Record<string, unknown> => (typeof held === 'object' && held !== null ? (held as Record<string, unknown>) : {});

/** A setting as it was kept, each field by itself: whatever does not hold is as on the first visit. */
export function readPrinter(text: string | null): Printer {
  let held: Record<string, unknown> = {};
  try {
    held = record(JSON.parse(text ?? '{}'));
  } catch {
    // What cannot be read is no loss: it is chosen again in a moment.
  }
  const words = (value: unknown, otherwise: string): string => (typeof value === 'string' && value.length <= 40 ? value : otherwise);
  const factor = (value: unknown): number => (typeof value === 'number' && value >= 0.9 && value <= 1.1 ? value : 1);
  const [inForce, measured] = [record(held['inForce']), record(held['measured'])];
  return {
    paper: (Object.keys(PAPER_SIZES) as PaperName[]).find((name) => name === held['paper']) ?? FIRST.paper,
    turn: (['upright', 'lying'] as const).find((turn) => turn === held['turn']) ?? FIRST.turn,
    overlap: words(held['overlap'], FIRST.overlap),
    gap: words(held['gap'], FIRST.gap),
    inForce: { x: factor(inForce['x']), y: factor(inForce['y']) },
    measured: { xMm: words(measured['xMm'], ''), xIn: words(measured['xIn'], ''), yMm: words(measured['yMm'], ''), yIn: words(measured['yIn'], '') },
  };
}

function kept(): Printer {
  try {
    return readPrinter(localStorage.getItem(KEPT_AT));
  } catch {
    // A browser that keeps nothing asks again on the next visit.
    return FIRST;
  }
}

export const paperSetting = createStore<PaperSetting>()(() => ({ ...kept(), kind: 'template', chosen: null, copies: {}, face: 'marked', printWanted: false }));

paperSetting.subscribe(({ paper, turn, overlap, gap, inForce, measured }) => {
  try {
    localStorage.setItem(KEPT_AT, JSON.stringify({ paper, turn, overlap, gap, inForce, measured } satisfies Printer));
  } catch {
    // As above: good until the page is left.
  }
});

export const usePaperSetting = <Slice>(read: (state: PaperSetting) => Slice): Slice => useStore(paperSetting, read);

/** Leads to the papers with the part in view and a kind chosen. */
export function showPaper(kind: PaperKind): void {
  paperSetting.setState({ kind, chosen: null });
  goTo('papers');
}

/** Prints what is in view in the papers; from anywhere else the template of the part in view. */
export function askToPrint(): void {
  if (bench.getState().room !== 'papers') showPaper('template');
  paperSetting.setState({ printWanted: true });
}
