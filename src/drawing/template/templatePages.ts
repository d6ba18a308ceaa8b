/** Full-size paper templates: parts packed on sheets with room to cut between, larger ones spread over tiles. */
import { bad, good } from '../../core/result';
import type { Result } from '../../core/result';
import type { Bounds } from '../../core/geometry/types';
import type { Entity } from '../entities';
import type { Page } from '../page';
import { figureOf, FLAT_FACE, moved, type FaceWords, type Figure } from './figure';
import { pack, type Packed } from './pack';
import { frameOf, sheetFrame, type Draft, type Frame } from './sheetFrame';
import { tilePages, tilesOf, type ToTile } from './tilePages';
import { templateShape } from './templateShape';
import { whyNoTemplate } from './templateRefusals';
import type { TemplateSettings, TemplateSubject } from './types';

/** The most sheets printed at once. */
const MOST_SHEETS = 300;

/** A subject with its figures, lying and turned a quarter, as lettered for a frame. */
interface Ready {
  readonly subject: TemplateSubject;
  readonly index: number;
  readonly figures: readonly Figure[];
}

const size = (b: Bounds): { readonly width: number; readonly height: number } => ({ width: b.maxX - b.minX, height: b.maxY - b.minY });

function fits(figure: Figure, frame: Frame): boolean {
  const [own, room] = [size(figure.bounds), size(frame.work)];
  return own.width <= room.width && own.height <= room.height;
}

interface PackedTurn {
  readonly frame: Frame;
  readonly ready: readonly Ready[];
  readonly packed: readonly Packed[];
  readonly sheets: number;
}

/** Every copy of the small parts packed on this way of the paper; undefined where one does not fit. */
function packOn(frame: Frame, ready: readonly Ready[], gap: number): PackedTurn | undefined {
  const copies = ready.flatMap((r) => Array.from({ length: r.subject.copies }, () => r));
  const packed = pack(copies.map((r) => r.figures.map((f) => size(f.bounds))), size(frame.work), gap);
  return packed && { frame, ready: copies, packed, sheets: packed.reduce((most, p) => Math.max(most, p.sheet + 1), 0) };
}

function packedSheets({ frame, ready, packed, sheets }: PackedTurn): readonly (readonly Entity[])[] {
  const made: Entity[][] = Array.from({ length: sheets }, () => []);
  const seen = new Map<number, number>();
  for (const { item, shape, sheet, x, y } of packed) {
    const own = ready[item];
    const figure = own?.figures[shape];
    if (!own || !figure) continue;
    const copy = (seen.get(own.index) ?? 0) + 1;
    seen.set(own.index, copy);
    const by = { x: frame.work.minX + x - figure.bounds.minX, y: frame.work.maxY + y - figure.bounds.minY };
    made[sheet]?.push(...moved(figure.entities, by, `${own.index + 1} copy ${copy}`));
  }
  return made;
}

/**
 * Pages with every subject at full size, as many copies as asked for.
 *
 * Parts that fit the paper are packed on shelves, each lying or turned a quarter, with `gap` between all that belongs to them; others
 * are spread over tiles with `overlap`. Lettering lies on no line and no other lettering; what finds no place by a part is listed
 * below it. With `turn: 'auto'` the paper lies as takes fewer sheets, for the packed parts together and for each tiled part.
 * @returns the pages, packed ones first, or what stands in the way
 */
export function templatePages(subjects: readonly TemplateSubject[], settings: TemplateSettings): Result<readonly Page[]> {
  return pagesOf(subjects, settings, FLAT_FACE);
}

/** The same for a blank of any meaning: `says` tells what the drawing is of. */
export function pagesOf(subjects: readonly TemplateSubject[], settings: TemplateSettings, says: FaceWords): Result<readonly Page[]> {
  const problem = whyNoTemplate(subjects, settings);
  if (problem) return { ok: false, problem };
  const turns = settings.turn === 'auto' ? [false, true] : [settings.turn === 'lying'];
  const frames = turns.map((lying) => frameOf(settings, lying));
  const [first] = frames;
  if (!first) return good([]);
  const ready = subjects.map((subject, index): Ready => ({ subject, index, figures: [false, true].map((quarter) => figureOf(subject, settings, says, first.px, quarter)) }));
  const small = ready.filter((r) => frames.some((frame) => r.figures.some((f) => fits(f, frame))));
  const drafts: Draft[] = [];
  if (small.length > 0) {
    const best = frames.map((frame) => packOn(frame, small, settings.gap)).reduce((a, b) => (!a ? b : b && b.sheets < a.sheets ? b : a), undefined);
    if (best) packedSheets(best).forEach((entities, i) => drafts.push({ name: `sheet ${i + 1}`, frame: best.frame, entities }));
    // Parts that fit only one way of the paper each, and not the same one, are packed by themselves.
    else {
      for (const frame of frames) {
        const own = small.filter((r) => frames.find((f) => r.figures.some((figure) => fits(figure, f))) === frame);
        const packed = own.length > 0 ? packOn(frame, own, settings.gap) : undefined;
        if (packed) packedSheets(packed).forEach((entities) => drafts.push({ name: `sheet ${drafts.length + 1}`, frame, entities }));
      }
    }
  }
  for (const { subject, index } of ready.filter((r) => !small.includes(r))) {
    const ways = frames.flatMap((frame) => [false, true].map((quarter): ToTile => ({ subject, index, frame, shape: templateShape(subject.blank, subject.face, quarter), quarter })));
    const fewest = ways.reduce((a, b) => (tilesOf(b, settings) < tilesOf(a, settings) ? b : a));
    const count = tilesOf(fewest, settings) * subject.copies;
    if (count + drafts.length > MOST_SHEETS) return bad('subjects', `${subject.name} alone takes ${count} sheets. Print at most ${MOST_SHEETS} at once: take fewer copies or larger paper.`, count);
    drafts.push(...tilePages(fewest, settings, says));
  }
  if (drafts.length > MOST_SHEETS) return bad('subjects', `This takes ${drafts.length} sheets. Print at most ${MOST_SHEETS} at once: take fewer copies or larger paper.`, drafts.length);
  return good(drafts.map((draft, i) => page(draft, settings, `Sheet ${i + 1} of ${drafts.length}`)));
}

function page({ name, frame, entities }: Draft, settings: TemplateSettings, count: string): Page {
  const { x, y } = settings.correction;
  return {
    name,
    ...frame.paper,
    entities: [...sheetFrame(frame, settings, count), ...entities],
    ...(x === 1 && y === 1 ? {} : { stretch: { x, y } }),
  };
}

