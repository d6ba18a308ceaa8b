/** The sheet of a comparison: one part in several stocks, laid over one another, with a table of what differs. */
import type { Comparison } from '../../job/compare/compareStocks';
import type { Job } from '../../job/schema';
import { overlayDrawing, type OverlayView } from '../overlay/overlayDrawing';
import type { Drawing, Entity } from '../entities';
import type { Page } from '../page';
import type { Words } from '../words';
import { compareBlocks, stockNames } from './compareBlocks';
import { compose, flow, innerOf, sheetPage, type SheetSettings } from './compose';
import { makerOf, type FigureMaker } from './figures';
import { refusal } from './refusal';
import { UNITS } from './shopSheet';
import type { TitleCell } from './titleBlock';
import { printed } from './wording';

export interface CompareSheetSubject {
  readonly job: Job;
  readonly partId: string;
  readonly comparison: Comparison;
  readonly words: Words;
}

const VIEWS: readonly { readonly view: OverlayView; readonly title: string; readonly notes: readonly string[] }[] = [
  { view: 'section', title: 'Sections', notes: ['laid over one another at the start of leg A', 'at the start of leg A'] },
  { view: 'blank', title: 'Blanks', notes: ['marked face up, laid over one another at the start of leg A', 'marked face up, at the start of leg A', 'marked face up'] },
];

/** The stocks differ by tenths of a mm: the first one's edges are drawn half as wide as on a shop sheet, so that the others show beside them. */
const thinly = (drawing: Drawing): Drawing => ({
  ...drawing,
  entities: drawing.entities.map((entity): Entity => (entity.role === 'outline' || entity.role === 'hole' ? { ...entity, role: 'hole edge' } : entity)),
});

/** One sheet where it fits, more for long tables. Where the part can be made in none of the stocks the sheet says so. */
export function compareSheetPages({ job, partId, comparison, words }: CompareSheetSubject, settings: SheetSettings): readonly Page[] {
  const part = job.parts.find(({ id }) => id === partId);
  const drawable = comparison.stocks.some(({ worked }) => worked.shape !== undefined);
  const figures = VIEWS.map(({ view, title, notes }): FigureMaker => {
    const { extent } = overlayDrawing(comparison, view, { px: 1 });
    return makerOf(extent, (lettering) => ({ key: view, title, notes, drawing: thinly(overlayDrawing(comparison, view, lettering)) }));
  });
  const names = stockNames(job, comparison);
  const reasons = comparison.stocks.flatMap(({ worked }, i) => worked.problems.map(({ says }) => `${names[i]}: ${says}`));
  const { bodies } = drawable ? compose({ figures, blocks: compareBlocks(job, comparison, words, innerOf(settings).width) }, settings, 0) : { bodies: flow([refusal(reasons)], innerOf(settings)) };

  const place = job.parts.findIndex(({ id }) => id === partId) + 1;
  const tall: readonly TitleCell[] = [
    { caption: `Part ${place} of ${job.parts.length}`, value: printed(part?.name ?? '', 'Part without a name'), share: 40, role: 'sheet title' },
    { caption: 'Comparison of', value: names.length === 1 ? '1 stock' : `${names.length} stocks`, share: 22, role: 'sheet title' },
    { caption: 'Now made of', value: names[0] ?? '–', share: 38, role: 'sheet heading' },
  ];
  return bodies.map((body, i) => {
    const low: readonly TitleCell[] = [
      { caption: 'Job', value: printed(job.name, 'Job without a name'), share: 36, role: 'sheet figure' },
      { caption: 'Drawn to scale', value: body.scale, share: 14, role: 'sheet figure' },
      { caption: 'Lengths in', value: UNITS[job.units.show], share: 20, role: 'sheet figure' },
      { caption: 'Date', value: printed(settings.date, '–'), share: 16, role: 'sheet figure' },
      { caption: 'Sheet', value: `${i + 1} of ${bodies.length}`, share: 14, role: 'sheet figure' },
    ];
    return sheetPage(`comparison ${partId} ${i + 1}`, body.entities, tall, low, settings);
  });
}
