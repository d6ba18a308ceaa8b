/** What is to be printed of a job, and what comes of it. Plain data: it goes to a worker and back. */
import type { Problem } from '../../core/result';
import type { Page } from '../page';
import type { Correction } from '../template/correction';
import type { PaperName } from '../template/paperSizes';
import type { Face } from '../template/types';

/** A full-size template of the blank, one that wraps round the bent part, or the sheet for the bench. */
export type PaperKind = 'template' | 'wrap' | 'sheet';

export interface PaperWish {
  readonly kind: PaperKind;
  /** In the order in which they are printed. Shop sheets are printed once each, whatever the copies. */
  readonly parts: readonly { readonly id: string; readonly copies: number }[];
  readonly face: Face;
  readonly paper: PaperName;
  /** `auto`: templates take as few sheets as can be, shop sheets lie. */
  readonly turn: 'upright' | 'lying' | 'auto';
  /** mm */
  readonly overlap: number;
  readonly gap: number;
  readonly correction: Correction;
  /** `2026-11-05` */
  readonly date: string;
}

export interface LaidPapers {
  readonly pages: readonly Page[];
  /** Parts that are not printed, each with the sentences that say why. */
  readonly leftOut: readonly { readonly id: string; readonly says: readonly string[] }[];
  /** What keeps the rest from being printed: a setting, or that nothing is left. */
  readonly problem: Problem | undefined;
}

/** Settings of a print that has none of its own: as printed headless, and on the first visit. mm. */
export const USUAL_OVERLAP = 10;
export const USUAL_GAP = 6;
