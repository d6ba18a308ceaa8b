/** The comparison as a table for a spreadsheet and as a sheet of paper. The writers come over the net when they are first asked for. */
import { fileName } from '../../export/fileName';
import { download } from '../files/download';
import { dayOf } from '../papers/wish';
import { paperSetting } from '../papers/paperSetting';
import { setOutcome } from '../screen';
import type { Compared } from './useComparison';

const NOT_LOADED = 'The part of Bendwright that writes this file did not load. Look at the connection and try once more.';

/** `Front strap - compare.csv` */
const nameOf = ({ part }: Compared, ending: string): string => fileName({ part: part.name, what: 'compare' }, ending);

export async function saveCsv(compared: Compared): Promise<void> {
  try {
    const { comparisonCsv } = await import('../../export/csv/comparisonCsv');
    const name = nameOf(compared, 'csv');
    download(name, comparisonCsv(compared.job, compared.comparison), 'text/csv');
    setOutcome({ good: true, lines: [`Saved ${name}.`] });
  } catch {
    setOutcome({ good: false, lines: [NOT_LOADED] });
  }
}

/** Lying or upright, whichever takes fewer sheets, unless the maker has said which. */
async function pagesOf({ job, part, comparison }: Compared, day: string) {
  const [{ compareSheetPages }, { partWords }, { printedDay }] = await Promise.all([
    import('../../drawing/sheet/compareSheet'),
    import('../../drawing/partWords'),
    import('../../drawing/papers/printedDay'),
  ]);
  const { paper, turn } = paperSetting.getState();
  const printed = printedDay(day);
  const values = comparison.stocks[0]?.worked.resolved.values ?? new Map<string, number>();
  const subject = { job, partId: part.id, comparison, words: partWords(job, part.id, values) };
  const pages = (way: 'lying' | 'upright') => compareSheetPages(subject, { paper, turn: way, date: printed.ok ? printed.value : day });
  if (turn !== 'auto') return pages(turn);
  const [lying, upright] = [pages('lying'), pages('upright')];
  return upright.length < lying.length ? upright : lying;
}

export async function savePaper(compared: Compared): Promise<void> {
  try {
    const day = dayOf(new Date());
    const [pages, { written }] = await Promise.all([pagesOf(compared, day), import('../papers/prints')]);
    const name = nameOf(compared, 'pdf');
    const pdf = await written(pages, name.replace(/\.pdf$/, ''), day);
    if (!pdf.ok) {
      setOutcome({ good: false, lines: [pdf.problem.says] });
      return;
    }
    download(name, new Uint8Array(pdf.value), 'application/pdf');
    setOutcome({ good: true, lines: [`Saved ${name}, ${pages.length === 1 ? 'one sheet' : `${pages.length} sheets`}.`] });
  } catch {
    setOutcome({ good: false, lines: [NOT_LOADED] });
  }
}
