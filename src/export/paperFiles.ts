/** The papers that a part goes to the bench with: a full-size template and a shop sheet, as PDF. */
import type { Result } from '../core/result';
import type { PaperKind, PaperWish } from '../drawing/papers/types';
import { USUAL_GAP, USUAL_OVERLAP } from '../drawing/papers/types';
import { layPapers } from '../drawing/papers/layPapers';
import type { PaperName } from '../drawing/template/paperSizes';
import type { Job } from '../job/schema';
import type { WorkedOut } from '../job/workOut';
import type { PdfFonts } from './pdf/pdfFonts';
import { writePdf } from './pdf/writePdf';

export interface PaperFileSettings {
  readonly paper: PaperName;
  /** `2026-11-05` */
  readonly date: string;
  readonly fonts: PdfFonts;
  /** What the file is called inside itself. */
  readonly title: string;
}

/** One copy of one part, marked face up, for a printer that prints true. The same part on the same day gives the same bytes. */
export function paperFile(job: Job, partId: string, worked: WorkedOut, kind: PaperKind, { paper, date, fonts, title }: PaperFileSettings): Result<Uint8Array> {
  const wish: PaperWish = { kind, parts: [{ id: partId, copies: 1 }], face: 'marked', paper, turn: 'auto', overlap: USUAL_OVERLAP, gap: USUAL_GAP, correction: { x: 1, y: 1 }, date };
  const { pages, problem } = layPapers(job, wish, () => worked);
  return problem ? { ok: false, problem } : writePdf(pages, { title, fonts, date });
}
