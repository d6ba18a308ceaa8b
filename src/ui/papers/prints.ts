/** What is done with the pages: printed, or written to a file. */
import type { LaidPapers, PaperWish } from '../../drawing/papers/types';
import type { Page } from '../../drawing/page';
import { fileName } from '../../export/fileName';
import type { Job } from '../../job/schema';
import { cutFileNames, partCalled } from '../files/cutFile';
import { download } from '../files/download';
import { setOutcome } from '../screen';
import { KINDS } from './kinds';
import { NOT_MEASURED, paperSetting } from './paperSetting';

/** Why parts are left out, a line each, and what else keeps pages from being made. */
export function partsRefused(job: Job, laid: LaidPapers): readonly string[] {
  const parts = laid.leftOut.map(({ id, says }) => `${partCalled(job, id)} is not printed. ${says.join(' ')}`);
  return laid.problem && laid.leftOut.length === 0 ? [...parts, laid.problem.says] : parts;
}

/** What was measured belongs to the print before: it becomes the correction in force, and the bars can be measured anew. */
export function takeIntoForce({ correction }: PaperWish): void {
  const { inForce } = paperSetting.getState();
  if (correction.x !== inForce.x || correction.y !== inForce.y) paperSetting.setState({ inForce: correction, measured: NOT_MEASURED });
}

/** `Front strap - Brass, half hard, 1.6 sheet - 12 off - template.pdf`; by the job where it holds several parts. */
export function pdfName(job: Job, wish: PaperWish, parts: readonly string[]): string {
  const what = KINDS[wish.kind].file;
  const [only] = parts;
  if (only === undefined || parts.length > 1) return fileName({ part: job.name.trim() || 'Job', what: `${what}s` }, 'pdf');
  const place = job.parts.findIndex(({ id }) => id === only);
  const stem = cutFileNames(job, 'svg')[place]?.replace(/\.svg$/, '');
  return `${stem ?? 'part'} - ${what}.pdf`;
}

async function bytesOf(url: string): Promise<Uint8Array> {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error(`${answer.status}`);
  return new Uint8Array(await answer.arrayBuffer());
}

/** The writer and its lettering come over the net when the first file is asked for. */
export async function written(pages: readonly Page[], title: string, date: string) {
  const [{ writePdf }, { default: regular }, { default: bold }] = await Promise.all([
    import('../../export/pdf/writePdf'),
    import('dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf?url'),
    import('dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf?url'),
  ]);
  const fonts = { regular: await bytesOf(regular), bold: await bytesOf(bold) };
  return writePdf(pages, { title, fonts, date });
}

export async function savePdf(job: Job, wish: PaperWish, laid: LaidPapers): Promise<void> {
  const refused = partsRefused(job, laid);
  if (laid.pages.length === 0) {
    setOutcome({ good: false, lines: ['No PDF was made.', ...refused] });
    return;
  }
  const left = new Set(laid.leftOut.map(({ id }) => id));
  const name = pdfName(job, wish, wish.parts.map(({ id }) => id).filter((id) => !left.has(id)));
  try {
    const pdf = await written(laid.pages, name.replace(/\.pdf$/, ''), wish.date);
    if (!pdf.ok) {
      setOutcome({ good: false, lines: [pdf.problem.says] });
      return;
    }
    download(name, new Uint8Array(pdf.value), 'application/pdf');
    takeIntoForce(wish);
    setOutcome({ good: refused.length === 0, lines: [`Saved ${name}.`, ...refused] });
  } catch {
    setOutcome({ good: false, lines: ['The part of Bendwright that writes this file did not load. Look at the connection and try once more.'] });
  }
}
