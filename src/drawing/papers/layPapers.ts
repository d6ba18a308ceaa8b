/** Pages for what is wished: templates, wrap-round templates or shop sheets of some parts of a job. */
import { bad } from '../../core/result';
import { unitWord } from '../../core/units/formatLength';
import type { Job } from '../../job/schema';
import { canGoOut, whyNot, workOut, type WorkedOut } from '../../job/workOut';
import { partWords } from '../partWords';
import { shopSheetPages } from '../sheet/shopSheet';
import { printed } from '../sheet/wording';
import { SAFE_MARGINS } from '../template/paperSizes';
import { templatePages } from '../template/templatePages';
import type { TemplateSettings, TemplateSubject } from '../template/types';
import { wrapPages } from '../template/wrapPages';
import { printedDay } from './printedDay';
import type { LaidPapers, PaperWish } from './types';

const NOTHING_CHOSEN = 'There is nothing to print. Choose at least one part.';
const NOTHING_LEFT = 'Nothing is left to print. Put the parts right first.';

interface Wished {
  readonly id: string;
  readonly copies: number;
  readonly worked: WorkedOut;
}

function templates(job: Job, wish: PaperWish, wished: readonly Wished[], date: string): LaidPapers {
  const subjects = wished.flatMap(({ id, copies, worked }): TemplateSubject[] => {
    const part = job.parts.find((each) => each.id === id);
    const stock = job.stocks.find((each) => each.id === part?.stock);
    if (!part || !worked.shape) return [];
    const { blank, layout } = worked.shape;
    return [{ name: printed(part.name, 'Part without a name'), stockLine: printed(stock?.name ?? '', 'Stock without a name'), blank, layout, copies, face: wish.face }];
  });
  const { paper, turn, correction, overlap, gap } = wish;
  // Lengths are written in the job's unit, whichever part they are of.
  const { length } = partWords(job, '', new Map());
  const settings: TemplateSettings = { paper, turn, margins: SAFE_MARGINS, correction, overlap, gap, date, length, unit: unitWord(job.units) };
  const laid = wish.kind === 'wrap' ? wrapPages(subjects, settings) : templatePages(subjects, settings);
  return laid.ok ? { pages: laid.value, leftOut: [], problem: undefined } : { pages: [], leftOut: [], problem: laid.problem };
}

/**
 * @param worked how a part works out; given where the answer is kept. Parts that are not in the job are passed over, a part in error is
 * left out with its sentences and the others are printed.
 */
export function layPapers(job: Job, wish: PaperWish, worked: (id: string) => WorkedOut = (id) => workOut(job, id)): LaidPapers {
  const all = wish.parts.filter(({ id }) => job.parts.some((part) => part.id === id)).map(({ id, copies }): Wished => ({ id, copies, worked: worked(id) }));
  const may = all.filter((part) => canGoOut(part.worked));
  const leftOut = all.filter((part) => !may.includes(part)).map((part) => ({ id: part.id, says: whyNot(part.worked) }));
  const day = printedDay(wish.date);
  if (!day.ok) return { pages: [], leftOut, problem: day.problem };
  if (may.length === 0) return { pages: [], leftOut, problem: bad('parts', all.length === 0 ? NOTHING_CHOSEN : NOTHING_LEFT).problem };
  if (wish.kind !== 'sheet') return { ...templates(job, wish, may, day.value), leftOut };
  const turn = wish.turn === 'upright' ? 'upright' : 'lying';
  const pages = may.flatMap(({ id, worked: own }) =>
    shopSheetPages({ job, partId: id, worked: own, words: partWords(job, id, own.resolved.values) }, { paper: wish.paper, turn, date: day.value }),
  );
  return { pages, leftOut, problem: undefined };
}
