/**
 * How each kind of entity is drawn on paper: line widths from the guide's table "Drawing entities", mm. All lines are black: a grey
 * or a colour is printed as dots, and a thin line of dots breaks up.
 */
import type { Role } from '../drawing/entities';
import { PAPER_PX_MM } from '../drawing/page';

export interface PaperLine {
  /** mm; 0 draws no line. */
  readonly width: number;
  /** mm of line and gap by turns. */
  readonly dash?: readonly number[];
  /** Filled with black, with the tint of metal, with the grey of a plan, or with paper, so that no line shows through. */
  readonly fill?: keyof typeof FILLS;
}

/** Red, green and blue, 0 to 255. Metal: the guide's brass of the light set. */
export const FILLS = { ink: [0, 0, 0], metal: [235, 221, 178], plan: [190, 190, 190], paper: [255, 255, 255] } as const;

/** Dashes of the screen, px, on paper. */
const px = (...lengths: readonly number[]): readonly number[] => lengths.map((length) => Math.round(length * PAPER_PX_MM * 1000) / 1000);

const CHAIN = px(10, 3, 2, 3);
const NO_LINE: PaperLine = { width: 0 };
const THIN: PaperLine = { width: 0.18 };
const MARK: PaperLine = { width: 0.25 };

/**
 * Edges of a template are worked to: 0.2 mm, the middle of the line is the edge. Two dots of a 300 dpi printer are 0.17 mm; a thinner
 * line comes out broken, a thicker one leaves the saw to choose.
 */
const TEMPLATE_EDGE: PaperLine = { width: 0.2 };

export const PAPER_LINES: Readonly<Record<Role, PaperLine>> = {
  outline: { width: 0.5 },
  hole: { width: 0.5, fill: 'paper' },
  nick: { width: 0.5 },
  'bend zone': { width: 0, fill: 'metal' },
  'tangent line': { width: 0.18, dash: px(6, 4) },
  'bend centre line': { width: 0.25, dash: px(14, 3, 3, 3) },
  'centre line': { width: 0.18, dash: CHAIN },
  hatch: { width: 0.13 },
  'hole edge': { width: 0.25 },
  'dimension line': THIN,
  'extension line': THIN,
  leader: THIN,
  arrow: { width: 0, fill: 'ink' },
  'leg area': NO_LINE,
  datum: { width: 0.25, fill: 'paper' },
  balloon: { width: 0.25, fill: 'paper' },
  'dimension text': NO_LINE,
  'basis text': NO_LINE,
  'running text': NO_LINE,
  'running total': NO_LINE,
  'tangent text': NO_LINE,
  'bend text': NO_LINE,
  'note text': NO_LINE,
  'leg letter': NO_LINE,
  'bend number': NO_LINE,
  'template edge': TEMPLATE_EDGE,
  'centre cross': { width: 0.13 },
  'centre punch': { width: 0, fill: 'ink' },
  'check bar': MARK,
  'register mark': THIN,
  'tile edge': { width: 0.13, dash: [6, 1.5] },
  'key plan': { width: 0.13 },
  'key plan here': { width: 0, fill: 'plan' },
  'part name': NO_LINE,
  'tile name': NO_LINE,
  'sheet border': { width: 0.7 },
  'sheet rule': { width: 0.35 },
  'sheet hair': { width: 0.13 },
  sketch: { width: 0.25, fill: 'plan' },
  'warning sign': { width: 0.35, fill: 'paper' },
  'ghost 1': { width: 0.25, dash: [3, 1] },
  'ghost 2': { width: 0.18, dash: [1.2, 0.8] },
  'ghost 3': { width: 0.25, dash: [4, 0.8, 0.6, 0.8] },
  'ghost 4': { width: 0.18, dash: [3, 0.7, 0.5, 0.7, 0.5, 0.7] },
  'sheet title': NO_LINE,
  'sheet heading': NO_LINE,
  'sheet text': NO_LINE,
  'sheet figure': NO_LINE,
  'sheet caption': NO_LINE,
  'sheet warning': NO_LINE,
  'difference letter': NO_LINE,
};

/** Roles whose letters are bold. */
const BOLD: ReadonlySet<Role> = new Set<Role>(['running total', 'leg letter', 'bend number', 'part name', 'tile name', 'sheet title', 'sheet heading', 'sheet warning', 'difference letter']);
export const isBold = (role: Role): boolean => BOLD.has(role);
