/** The shop sheet: what a maker takes to the bench for one part. */
import { pathBounds } from '../../core/geometry/bounds';
import { sectionOutline } from '../../core/part/sectionOutline';
import { unitWord } from '../../core/units/formatLength';
import type { Job } from '../../job/schema';
import { canGoOut, whyNot, type Shape, type WorkedOut } from '../../job/workOut';
import { blankDrawing } from '../blankDrawing';
import type { Drawing } from '../entities';
import type { Page } from '../page';
import type { PlacedDrawing } from '../placement';
import { sectionDrawing } from '../sectionDrawing';
import type { Words } from '../words';
import { compose, flow, innerOf, sheetPage, type Composed, type SheetSettings } from './compose';
import { makerOf, type Detail, type FigureMaker } from './figures';
import { partBlocks } from './partBlocks';
import { refusal } from './refusal';
import type { TitleCell } from './titleBlock';
import { printed } from './wording';

export interface ShopSheetSubject {
  readonly job: Job;
  readonly partId: string;
  readonly worked: WorkedOut;
  readonly words: Words;
  /** Bends by their numbers in the order of bending; those left out follow by number. */
  readonly order?: readonly number[];
}

export const UNITS: Readonly<Record<Job['units']['show'], string>> = { mm: 'mm', inch: 'decimal inches', fraction: 'inches and fractions' };

/** What is said where a figure could not keep all of its dimensions. */
const LEFT_OUT: Readonly<Record<Detail, readonly string[]>> = {
  all: [],
  'no holes': ['The holes are too many to be dimensioned in the figures on this paper: work from the table of holes.'],
  bare: ['The dimensions do not fit the figures on this paper: work from the tables, or print on larger paper.'],
};

/** A section with more dimensions of holes than this can no longer be read; the table has them. */
const MOST_HOLE_DIMENSIONS = 10;

/** Readings that show for a chosen leg only take no room on paper. */
const asShown = (drawing: PlacedDrawing): Drawing => ({ ...drawing, bounds: drawing.shown });

function partFigures(shape: Shape, words: Words): readonly FigureMaker[] {
  const { layout, blank, folded } = shape;
  const size = `${words.length(blank.bounds.maxX)} × ${words.length(blank.bounds.maxY)}`;
  const cutouts = layout.part.legs.flatMap((leg) => leg.cutouts);
  const many = cutouts.length + cutouts.filter(({ pattern }) => pattern.kind !== 'single').length > MOST_HOLE_DIMENSIONS;
  return [
    makerOf(pathBounds(sectionOutline(layout, folded).path), (lettering) => ({
      key: 'section',
      title: 'Section',
      notes: [many ? 'looking on the near edge, sizes as given; holes in the table' : 'looking on the near edge, sizes as given', 'sizes as given'],
      drawing: asShown(sectionDrawing(layout, folded, words, many ? { ...lettering, withoutHoles: true } : lettering)),
    })),
    makerOf(blank.bounds, (lettering) => ({
      key: 'blank',
      title: 'Blank',
      notes: [`${size}, marked face up, running dimensions from the start of leg A`, `${size}, marked face up, from the start of leg A`, `${size}, marked face up`, 'marked face up'],
      drawing: asShown(blankDrawing(layout, blank, words, lettering)),
    })),
  ];
}

/**
 * One sheet where it fits, more for long tables. A part that may not go out gets a sheet that says so and shows no shape and no
 * sizes but those in the sentences. The part's id must be in the job.
 */
export function shopSheetPages(subject: ShopSheetSubject, settings: SheetSettings): readonly Page[] {
  const { job, partId, worked, words } = subject;
  const part = job.parts.find(({ id }) => id === partId);
  const stock = job.stocks.find(({ id }) => id === part?.stock);
  const name = printed(part?.name ?? '', 'Part without a name');
  const { shape } = worked;
  const may = shape && stock && canGoOut(worked);
  const composed = may ? partSheets(shape) : undefined;
  const bodies = composed?.bodies ?? flow([refusal(whyNot(worked))], innerOf(settings));

  const place = job.parts.findIndex(({ id }) => id === partId) + 1;
  const off = worked.resolved.quantity;
  const tall: readonly TitleCell[] = [
    { caption: `Part ${place} of ${job.parts.length}`, value: name, share: 42, role: 'sheet title' },
    { caption: 'Off', value: off === undefined ? '–' : String(off), share: 11, role: 'sheet title' },
    { caption: 'Stock', value: printed(stock?.name ?? '', 'Stock without a name'), share: 34, role: 'sheet heading' },
    { caption: 'Thickness', value: may ? `${words.length(shape.layout.part.thickness)} ${unitWord(job.units)}` : '–', share: 13, role: 'sheet heading' },
  ];
  return bodies.map((body, i) => {
    const low: readonly TitleCell[] = [
      { caption: 'Job', value: printed(job.name, 'Job without a name'), share: 36, role: 'sheet figure' },
      { caption: 'Drawn to scale', value: body.scale, share: 14, role: 'sheet figure' },
      { caption: 'Lengths in', value: UNITS[job.units.show], share: 20, role: 'sheet figure' },
      { caption: 'Date', value: printed(settings.date, '–'), share: 16, role: 'sheet figure' },
      { caption: 'Sheet', value: `${i + 1} of ${bodies.length}`, share: 14, role: 'sheet figure' },
    ];
    return sheetPage(`shop sheet ${partId} ${i + 1}`, body.entities, tall, low, settings);
  });

  function partSheets(good: Shape): Composed {
    const figures = partFigures(good, words);
    const blocksWith = (notes: readonly string[]) => (stock ? partBlocks({ job, stock, worked, shape: good, words, order: subject.order ?? [] }, notes) : []);
    const first = compose({ figures, blocks: blocksWith([]) }, settings);
    return first.detail === 'all' ? first : compose({ figures, blocks: blocksWith(LEFT_OUT[first.detail]) }, settings);
  }
}
