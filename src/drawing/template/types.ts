/** What a full-size template is made of. mm throughout. */
import type { Blank } from '../../core/part/layoutTypes';
import type { WalkableLayout } from '../../core/part/layOut';
import type { PaperName, Margins } from './paperSizes';

/** Which face of the metal the paper is glued on and the drawing is seen from. */
export type Face = 'marked' | 'other';

export interface TemplateSubject {
  readonly name: string;
  /** `Brass, half hard, 1.6 sheet` */
  readonly stockLine: string;
  readonly blank: Blank;
  readonly layout: WalkableLayout;
  /** A whole number from 1. */
  readonly copies: number;
  readonly face: Face;
}

export interface TemplateSettings {
  readonly paper: PaperName;
  /** Which way round the paper is; `auto` takes the one with fewer sheets, upright where both need as many. */
  readonly turn: 'upright' | 'lying' | 'auto';
  /** Border on which the printer puts no ink. */
  readonly margins: Margins;
  /** How many times too small the printer prints, across and up the paper as it lies before the reader (see `correction.ts`). */
  readonly correction: { readonly x: number; readonly y: number };
  /** What neighbouring tiles have in common. */
  readonly overlap: number;
  /** Room between parts for the saw. */
  readonly gap: number;
  /** The day as it is to be printed. */
  readonly date: string;
  /** A length as text without its unit, and that unit. */
  readonly length: (mm: number) => string;
  readonly unit: 'mm' | 'in';
}
