/** Subjects and measures for the tests of sheets. */
import { fold } from '../../../src/core/part/fold';
import { layOut } from '../../../src/core/part/layOut';
import type { Part } from '../../../src/core/part/types';
import { unfold } from '../../../src/core/part/unfold';
import { lineBox, overlap, segmentBoxes } from '../../../src/drawing/boxes';
import type { Entity, TextEntity } from '../../../src/drawing/entities';
import { PAPER_PX_MM, type Page } from '../../../src/drawing/page';
import { partWords } from '../../../src/drawing/partWords';
import type { SheetSettings } from '../../../src/drawing/sheet/compose';
import type { ShopSheetSubject } from '../../../src/drawing/sheet/shopSheet';
import { SAFE_MARGINS, sheetOf } from '../../../src/drawing/template/paperSizes';
import { textBox } from '../../../src/drawing/textWidth';
import { exampleJob } from '../../../src/job/exampleJob';
import type { Job } from '../../../src/job/schema';
import { workOut } from '../../../src/job/workOut';
import { entityBounds } from '../entityBounds';
import { wordsFor } from '../sampleParts';

export const settings = (more: Partial<SheetSettings> = {}): SheetSettings => ({ paper: 'A4', turn: 'lying', date: '5 November 2026', ...more });

/** A part of a job as it works out. */
export function subject(partId: string, job: Job = exampleJob): ShopSheetSubject {
  const worked = workOut(job, partId);
  return { job, partId, worked, words: partWords(job, partId, worked.resolved.values) };
}

/** A part that is given in numbers, in a job that has nothing else; undefined where it cannot be laid out. */
export function subjectOf(part: Part, name = 'Vent stay'): ShopSheetSubject | undefined {
  const layout = layOut(part);
  if (!layout.ok) return undefined;
  const worked = {
    resolved: { part, quantity: 3, density: 7850, problems: [], values: new Map<string, number>() },
    shape: { layout: layout.value, blank: unfold(layout.value), folded: fold(layout.value) },
    problems: [],
    findings: [{ level: 'care' as const, key: 'k', says: 'Peg hole 1 starts 4.41 mm from bend 2. Nearer than 5.20 mm it may pull oval.' }],
  };
  const job: Job = { ...exampleJob, parts: [{ id: 'test', name, stock: 'steel', quantity: '3', legs: [] }] };
  return { job, partId: 'test', worked, words: wordsFor(part) };
}

export const texts = (page: Page): readonly TextEntity[] => page.entities.filter((e) => e.kind === 'text');
export const said = (page: Page): readonly string[] => texts(page).map(({ text }) => text);

/** The text of one cell of a table, its lines joined. */
export function cell(pages: readonly Page[], table: string, row: number, column: number): string {
  return pages
    .flatMap(texts)
    .filter(({ key }) => key.startsWith(`${table} ${row} ${column} `))
    .map(({ text }) => text.replaceAll('\u00A0', ' '))
    .join(' ');
}

const SLACK = 1e-6;

/** What goes over the printable area, by key. */
export function outside(page: Page, { paper, turn }: SheetSettings): readonly string[] {
  const sheet = sheetOf(paper, turn === 'lying', SAFE_MARGINS);
  const room = { minX: sheet.left, minY: sheet.bottom, maxX: sheet.width - sheet.right, maxY: sheet.height - sheet.top };
  return page.entities.filter((entity) => inked(entity) && !within(entity)).map(({ key }) => key);

  function within(entity: Entity): boolean {
    const b = entityBounds(entity, PAPER_PX_MM);
    return b.minX >= room.minX - SLACK && b.minY >= room.minY - SLACK && b.maxX <= room.maxX + SLACK && b.maxY <= room.maxY + SLACK;
  }
}

const inked = (entity: Entity): boolean => entity.kind === 'text' || (entity.kind === 'path' ? entity.runs.some((run) => run.segments.length > 0) : entity.contours.length > 0);

/** Pairs of texts that lie on one another, and texts that a ruled line of the sheet runs through. */
export function collisions(page: Page): readonly string[] {
  const boxes = texts(page).map((t) => ({ key: t.key, box: textBox(t, PAPER_PX_MM) }));
  const onText = boxes.flatMap((a, i) => boxes.slice(i + 1).filter((b) => overlap(a.box, b.box, SLACK)).map((b) => `${a.key} on ${b.key}`));
  const rules = page.entities.flatMap((e) =>
    e.kind === 'path' && (e.role === 'sheet rule' || e.role === 'sheet hair' || e.role === 'sheet border') && !e.key.endsWith('sign bar')
      ? e.runs.flatMap((run) => run.segments.map((s) => ({ key: e.key, box: lineBox('line', s.from, s.to) })))
      : [],
  );
  return [...onText, ...boxes.flatMap((t) => rules.filter((r) => overlap(t.box, r.box, SLACK)).map((r) => `${t.key} on rule ${r.key}`))];
}

/** mm: the leader of a reading ends at its foot, within the room that letters with tails would take. */
const AT_THE_FOOT = 0.1;

/** Texts of the figures that an edge or a line of a dimension runs through. */
export function onLines(page: Page): readonly string[] {
  const lines = page.entities.flatMap((e) =>
    e.kind === 'path' && ['outline', 'dimension line', 'extension line', 'leader', 'bend centre line', 'tangent line'].includes(e.role)
      ? e.runs.flatMap((run) => run.segments.flatMap((s) => segmentBoxes('line', s).map((box) => ({ key: e.key, box }))))
      : [],
  );
  const own = texts(page).filter(({ key }) => /^(section|blank) /.test(key));
  return own.flatMap((t) => lines.filter(({ box }) => overlap(textBox(t, PAPER_PX_MM), box, AT_THE_FOOT)).map(({ key }) => `${t.key} on ${key}`));
}
