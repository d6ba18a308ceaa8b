import { describe, expect, it } from 'vitest';
import type { Page } from '../../../src/drawing/page';
import { layPapers } from '../../../src/drawing/papers/layPapers';
import type { PaperWish } from '../../../src/drawing/papers/types';
import { exampleJob } from '../../../src/job/exampleJob';
import { writeField } from '../../../src/job/fields';
import { workOut } from '../../../src/job/workOut';

const wish = (more: Partial<PaperWish> = {}): PaperWish => ({
  kind: 'template',
  parts: [{ id: 'strap', copies: 1 }],
  face: 'marked',
  paper: 'A4',
  turn: 'auto',
  overlap: 10,
  gap: 6,
  correction: { x: 1, y: 1 },
  date: '2026-11-05',
  ...more,
});

const texts = (pages: readonly Page[]): readonly string[] => pages.flatMap((page) => page.entities.flatMap((e) => (e.kind === 'text' ? [e.text] : [])));
const outlines = (pages: readonly Page[]): number => pages.flatMap((page) => page.entities).filter((e) => e.role === 'template edge' && / outline$|^outline$/.test(e.key)).length;
const both = [{ id: 'lever', copies: 3 }, { id: 'strap', copies: 2 }];
const LIP_TOO_SHORT = writeField(exampleJob, 'parts.strap.legs.lip.length', '1');

describe('papers that are wished for', () => {
  it('are a template of each copy of each part', () => {
    const { pages, leftOut, problem } = layPapers(exampleJob, wish({ parts: both }));
    expect({ leftOut, problem }).toEqual({ leftOut: [], problem: undefined });
    expect(outlines(pages)).toBe(5);
    expect(texts(pages).filter((t) => t.includes('Lever'))).toHaveLength(3);
    expect(texts(pages).some((t) => t.includes('5 November 2026'))).toBe(true);
  });

  it('are of the other face, or wrapped round, where that is wished', () => {
    expect(texts(layPapers(exampleJob, wish({ face: 'other' })).pages).join(' ')).toContain('other face up');
    expect(texts(layPapers(exampleJob, wish({ kind: 'wrap' })).pages).join(' ')).toContain('wraps round the bent part, marked face');
  });

  it('are one shop sheet a part, whatever the copies, lying unless told otherwise', () => {
    const { pages } = layPapers(exampleJob, wish({ kind: 'sheet', parts: both }));
    expect(pages.map(({ name }) => name)).toEqual(['shop sheet lever 1', 'shop sheet strap 1']);
    expect(pages.every(({ width, height }) => width === 297 && height === 210)).toBe(true);
    expect(layPapers(exampleJob, wish({ kind: 'sheet', turn: 'upright' })).pages[0]?.width).toBe(210);
  });

  it('are printed in the unit of the job', () => {
    const inches = { ...exampleJob, units: { ...exampleJob.units, show: 'fraction' as const } };
    expect(texts(layPapers(inches, wish()).pages).join(' ')).toContain('Sizes in in');
    expect(texts(layPapers(exampleJob, wish()).pages).join(' ')).toContain('Sizes in mm');
  });

  it('take the answer that is kept for a part instead of working it out again', () => {
    const asked: string[] = [];
    layPapers(exampleJob, wish({ parts: both }), (id) => {
      asked.push(id);
      return workOut(exampleJob, id);
    });
    expect(asked).toEqual(['lever', 'strap']);
  });

  it('leave out a part in error with its sentences and print the others', () => {
    for (const kind of ['template', 'wrap', 'sheet'] as const) {
      const { pages, leftOut, problem } = layPapers(LIP_TOO_SHORT, wish({ kind, parts: both }));
      expect(problem).toBeUndefined();
      expect(leftOut).toEqual([{ id: 'strap', says: [expect.stringMatching(/too short for its bend by \d/)] }]);
      expect(texts(pages).join(' ')).not.toContain('Front strap');
    }
  });

  it.each([
    ['nothing chosen', exampleJob, wish({ parts: [] }), 'parts', 'There is nothing to print. Choose at least one part.'],
    ['a part that is gone', exampleJob, wish({ parts: [{ id: 'gone', copies: 1 }] }), 'parts', 'There is nothing to print. Choose at least one part.'],
    ['only parts in error', LIP_TOO_SHORT, wish(), 'parts', 'Nothing is left to print. Put the parts right first.'],
    ['no number of copies', exampleJob, wish({ parts: [{ id: 'strap', copies: NaN }] }), 'subjects.0.copies', 'Front strap: the number of copies must be a whole number from 1.'],
    ['no gap', exampleJob, wish({ gap: NaN }), 'gap', 'The gap between parts must be 0 to 100 mm.'],
    ['no overlap', exampleJob, wish({ overlap: Infinity }), 'overlap', 'Tiles must overlap by 2 to 60 mm.'],
    ['no day', exampleJob, wish({ date: 'soon' }), 'date', '"soon" is not a day. Give it as year, month and day, such as 2026-11-05.'],
  ])('say what is wrong with %s', (_, job, own, field, says) => {
    const { pages, problem } = layPapers(job, own);
    expect(pages).toEqual([]);
    expect(problem).toMatchObject({ field, says });
  });
});
