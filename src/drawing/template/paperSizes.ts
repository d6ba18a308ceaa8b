/** Sheets of paper, mm, upright. Sources: ISO 216 for A3 and A4; Letter 8½ × 11 in and Legal 8½ × 14 in (ANSI Y14.1, from memory). */
export const PAPER_SIZES = {
  A4: { width: 210, height: 297 },
  A3: { width: 297, height: 420 },
  Letter: { width: 215.9, height: 279.4 },
  Legal: { width: 215.9, height: 355.6 },
} as const;

export type PaperName = keyof typeof PAPER_SIZES;

/** mm along each edge of the sheet as it goes upright through the printer. */
export interface Margins {
  readonly side: number;
  readonly top: number;
  readonly bottom: number;
}

/** Safe for any home printer; the edge that leaves the rollers last needs the most. Common practice, no source. */
export const SAFE_MARGINS: Margins = { side: 10, top: 10, bottom: 13 };

export interface Sheet {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A sheet as it lies before the reader. Lying, its foot may be on either side, as the printer turns it; so both sides keep the wider border. */
export function sheetOf(paper: PaperName, lying: boolean, margins: Margins): Sheet {
  const { width, height } = PAPER_SIZES[paper];
  const { side, top, bottom } = margins;
  if (!lying) return { width, height, left: side, right: side, top, bottom };
  const wide = Math.max(top, bottom);
  return { width: height, height: width, left: wide, right: wide, top: side, bottom: side };
}
