import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { legLetter } from '../../../src/core/part/names';
import { overlap, segmentBoxes, type Box } from '../../../src/drawing/boxes';
import type { Entity, TextEntity } from '../../../src/drawing/entities';
import { PAPER_PX_MM, type Page } from '../../../src/drawing/page';
import { circlePath } from '../../../src/drawing/template/circlePath';
import { sheetOf } from '../../../src/drawing/template/paperSizes';
import { templatePages } from '../../../src/drawing/template/templatePages';
import type { TemplateSettings } from '../../../src/drawing/template/types';
import { textBox } from '../../../src/drawing/textWidth';
import { must } from '../../export/must';
import { entityBounds } from '../entityBounds';
import type { Part } from '../../../src/core/part/types';
import { hole, leg, partWithLugs, workablePart } from '../sampleParts';
import { EXAMPLE, largePlate, longStrap, settings, subject, subjectOf } from './subjects';

/** Boxes that only touch differ by rounding. */
const SLACK_MM = 1e-6;

const texts = (page: Page): readonly TextEntity[] => page.entities.filter((e) => e.kind === 'text');

/** Boxes of everything drawn but lettering and the ring round a bend's number. */
function inked(entity: Entity): readonly Box[] {
  if (entity.kind === 'text' || entity.role === 'balloon') return [];
  const segments = entity.kind === 'path' ? entity.runs.flatMap((r) => r.segments) : entity.contours.flatMap((c) => (c.kind === 'circle' ? circlePath(c) : c.segments));
  return segments.flatMap((s) => segmentBoxes('line', s));
}

/** Every lettering that lies over another or over a line. Boxes are as large as letters come out on the stretched page. */
function unclear(page: Page): readonly string[] {
  const { x = 1, y = 1 } = page.stretch ?? {};
  const px = PAPER_PX_MM / Math.min(1, x, y);
  const words = texts(page).map((t) => ({ key: t.key, text: t.text, box: textBox(t, px) }));
  const lines = page.entities.map((e) => ({ key: e.key, boxes: inked(e) }));
  return words.flatMap((a, i) => [
    ...words.slice(i + 1).filter((b) => overlap(a.box, b.box, SLACK_MM)).map((b) => `${a.text} on ${b.text}`),
    ...lines.filter((l) => l.boxes.some((b) => overlap(a.box, b, SLACK_MM))).map((l) => `${a.text} on ${l.key}`),
  ]);
}

function outside(page: Page, own: TemplateSettings): readonly string[] {
  const sheet = sheetOf(own.paper, page.width > page.height, own.margins);
  const { x, y } = own.correction;
  return page.entities.filter((e) => {
    const b = entityBounds(e, PAPER_PX_MM / Math.min(1, x, y));
    return !(b.minX * x >= sheet.left && b.minY * y >= sheet.bottom && b.maxX * x <= sheet.width - sheet.right && b.maxY * y <= sheet.height - sheet.top);
  }).map((e) => e.key);
}

describe('lettering of templates', () => {
  const check = (pages: readonly Page[], own: TemplateSettings): void => {
    for (const page of pages) {
      expect(unclear(page)).toEqual([]);
      expect(outside(page, own)).toEqual([]);
      expect(new Set(page.entities.map((e) => e.key)).size).toBe(page.entities.length);
    }
  };

  it.each([{}, { paper: 'Letter', turn: 'upright', correction: { x: 0.95, y: 1.04 } }, { paper: 'A3', turn: 'lying' }] as const)('is clear of all lines and lettering for the example, a long strap and a large plate: %j', (more) => {
    const own = settings(more);
    for (const face of ['marked', 'other'] as const) {
      const pages = must(templatePages([...EXAMPLE.map((id) => subject(id, { face })), longStrap({ face }), largePlate({ face })], own));
      check(pages, own);
      const said = pages.flatMap(texts).map((t) => t.text);
      for (const word of ['Front strap', 'Lever', '7 × Ø3.2', 'slot 18 × 3.2', '0', face === 'marked' ? '105° up' : '105° down']) expect(said).toContain(word);
    }
  });

  it('is clear for random parts, and none of it is lost', () => {
    let reached = 0;
    let tiled = 0;
    fc.assert(
      fc.property(fc.oneof(workablePart, partWithLugs), fc.constantFrom('marked' as const, 'other' as const), fc.double({ min: 0.95, max: 1.05, noNaN: true }), (part, face, x) => {
        const own = settings({ correction: { x, y: 2 - x } });
        const made = subjectOf(part, { face });
        if (!made) return;
        const pages = must(templatePages([made], own));
        check(pages, own);
        reached += 1;
        if (pages.length > 1) tiled += 1;
        const said = pages.flatMap(texts);
        for (const bend of made.blank.bends) {
          const way = (bend.way === 'up') === (face === 'marked') ? 'up' : 'down';
          expect(said.some((t) => t.text.endsWith(` ${way}`) && (t.key.includes(`bend ${bend.leg} words`) || t.text.startsWith(`Bend ${bend.leg}:`)))).toBe(true);
        }
        const groups = new Set(made.blank.cutouts.map((c) => `${c.leg}/${c.cutout}`));
        for (const group of groups) expect(said.some((t) => t.key.endsWith(`size ${group}`) || t.text.startsWith(`Leg ${legLetter(Number(group.split('/')[0]))}, h${group.split('/')[1]}: `))).toBe(true);
      }),
      // Shrinking a part of twelve legs takes minutes: the seed finds it again.
      { numRuns: 100, endOnFailure: true },
    );
    // About nine parts in ten can be laid out, and about one in thirteen is larger than a sheet.
    expect(reached).toBeGreaterThan(60);
    expect(tiled).toBeGreaterThan(0);
  });
});

describe('long names', () => {
  it('go on in the next row, on one sheet, without a letter lost', () => {
    const name = `Abstützung für das linke hintere Dachfenster im kleinen Gewächshaus ${'Ω'.repeat(60)}`;
    const own = settings({ correction: { x: 1.07, y: 0.93 } });
    const pages = must(templatePages([subject('lever', { name, stockLine: name })], own));
    expect(pages).toHaveLength(1);
    for (const page of pages) {
      expect(unclear(page)).toEqual([]);
      expect(outside(page, own)).toEqual([]);
      const said = texts(page).filter((t) => t.role === 'part name' && !t.text.startsWith('Print')).map((t) => t.text);
      expect(said.length).toBeGreaterThan(2);
      expect(said.join('').replaceAll(' ', '')).toBe(name.replaceAll(' ', ''));
    }
  });
});

describe('a plate so full of holes that no words fit on it', () => {
  it('has its sizes on a list after the tiles', () => {
    const rows = (id: string, along: number): Part['legs'][number]['cutouts'][number] => ({
      ...hole(id, 9, 'start', along),
      across: { from: 'right', distance: 6 },
      pattern: { kind: 'grid', alongCount: 11, alongPitch: 42.6, acrossCount: 17, acrossPitch: 10 },
    });
    const plate: Part = { thickness: 1, rule: { kind: 'fixedK', k: 0.4 }, legs: [leg('plate', 471, 'outside', 172, { cutouts: [7, 17.65, 28.3, 38.95].map((along) => rows(`h${along}`, along)) })] };
    const own = settings();
    const pages = must(templatePages([subjectOf(plate)!], own));
    const list = pages.at(-1);
    expect(list?.name).toBe('Vent stay list');
    const said = pages.flatMap(texts).map((t) => t.text);
    expect(said.some((text) => /^No room for \d+ labels: see the list$/.test(text))).toBe(true);
    expect(said.filter((text) => text.startsWith('Leg A, h') && text.endsWith(': Ø9')).length).toBeGreaterThanOrEqual(4);
    for (const page of pages) expect(outside(page, own)).toEqual([]);
    if (list) expect(unclear(list)).toEqual([]);
  });
});

describe('sheets', () => {
  it('take the way of the paper that needs fewer', () => {
    const count = (turn: TemplateSettings['turn']): number => must(templatePages([longStrap()], settings({ turn }))).length;
    expect(count('auto')).toBe(Math.min(count('upright'), count('lying')));
    const wide = must(templatePages([longStrap()], settings({ turn: 'lying' })));
    expect(wide.every((p) => p.width === 297 && p.height === 210)).toBe(true);
  });

  it('are counted, and copies of a tiled part come one after the other', () => {
    const pages = must(templatePages([longStrap({ copies: 2 }), subject('lever')], settings({ turn: 'lying' })));
    const [first] = pages;
    expect(first?.name).toBe('sheet 1');
    expect(pages.filter((p) => p.name.startsWith('Front strap copy 2 tile')).length).toBe((pages.length - 1) / 2);
    for (const [i, page] of pages.entries()) expect(texts(page).some((t) => t.text.startsWith(`Sheet ${i + 1} of ${pages.length}`))).toBe(true);
  });

  it.each([
    ['no part', [], {}, 'subjects'],
    ['half a copy', [subject('lever', { copies: 1.5 })], {}, 'subjects.0.copies'],
    ['no copy', [subject('lever', { copies: 0 })], {}, 'subjects.0.copies'],
    ['a thousand copies', [subject('lever', { copies: 1000 })], {}, 'subjects'],
    ['more sheets than anyone prints', [longStrap({ copies: 200 })], {}, 'subjects'],
    ['a border wider than the paper', [subject('lever')], { margins: { side: 58, top: 10, bottom: 10 } }, 'margins'],
    ['a border that is no number', [subject('lever')], { margins: { side: NaN, top: 10, bottom: 10 } }, 'margins'],
    ['a correction out of reach', [subject('lever')], { correction: { x: 1.08, y: 1 } }, 'correction'],
    ['a day in many words', [subject('lever')], { date: 'the twenty-fifth day of November 2026' }, 'date'],
    ['a gap below nought', [subject('lever')], { gap: -1 }, 'gap'],
    ['tiles without a common strip', [subject('lever')], { overlap: 0 }, 'overlap'],
    ['a blank without an outline', [subject('lever', { blank: { ...subject('lever').blank, outline: [] } })], {}, 'subjects.0.blank'],
    ['a blank without a size', [subject('lever', { blank: { ...subject('lever').blank, bounds: { minX: 0, minY: 0, maxX: NaN, maxY: 3 } } })], {}, 'subjects.0.blank'],
  ] as const)('are refused with a sentence for %s', (_, subjects, more, field) => {
    const made = templatePages(subjects, settings(more));
    expect(made.ok).toBe(false);
    if (made.ok) return;
    expect(made.problem.field).toBe(field);
    expect(made.problem.says).toMatch(/^[A-Z0-9].*\.$/);
  });
});
