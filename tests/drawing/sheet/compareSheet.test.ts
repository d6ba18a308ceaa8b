import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { NOTHING, joined, pathBounds } from '../../../src/core/geometry/bounds';
import { overlap } from '../../../src/drawing/boxes';
import type { Drawing } from '../../../src/drawing/entities';
import { overlayDrawing, overlayRole } from '../../../src/drawing/overlay/overlayDrawing';
import { compareSheetPages } from '../../../src/drawing/sheet/compareSheet';
import { textBox } from '../../../src/drawing/textWidth';
import { compareStocks } from '../../../src/job/compare/compareStocks';
import { exampleJob } from '../../../src/job/exampleJob';
import { writeField } from '../../../src/job/fields';
import { plainBend, plainLeg, roundHole } from '../../../src/job/pieces';
import type { Job } from '../../../src/job/schema';
import { cell, collisions, outside, said, settings, subject, texts } from './sheets';

/** The strap with a lip that 1.0 stainless can be bent to and 1.6 brass cannot. */
const SHORT_LIP = writeField(writeField(exampleJob, 'parts.strap.legs.lip.length', '1.7'), 'parts.strap.legs.lip.endShape', { kind: 'square' });

const sheetOf = (job: Job, partId: string, stocks: readonly string[], on = settings()) => {
  const comparison = compareStocks(job, partId, stocks);
  return { comparison, pages: compareSheetPages({ job, partId, comparison, words: subject(partId, job).words }, on) };
};

const lettersIn = (entities: Drawing['entities']): readonly string[] =>
  entities.flatMap((e) => (e.kind === 'text' && e.role === 'difference letter' ? e.text.split(', ') : [])).toSorted();

const widthOf = (drawing: Drawing, key: string): number => {
  const found = drawing.entities.find((e) => e.key === key);
  const b = found?.kind === 'path' ? found.runs.reduce((all, run) => joined(all, pathBounds(run.segments)), NOTHING) : NOTHING;
  return b.maxX - b.minX;
};

describe('the overlay', () => {
  const { comparison } = sheetOf(exampleJob, 'strap', ['stainless', 'steel']);
  const views = (['section', 'blank'] as const).map((view) => overlayDrawing(comparison, view, { px: 0.19 }));

  it('draws the first stock in full lines and every other in a line of its own', () => {
    for (const view of views) {
      expect(comparison.stocks.map(({ stock }) => view.entities.find((e) => e.key === `${stock} outline`)?.role)).toEqual(['outline', 'ghost 1', 'ghost 2']);
    }
    expect(new Set([0, 1, 2, 3, 4].map(overlayRole)).size).toBe(5);
  });

  it('draws each blank as long as the core makes it, from one datum', () => {
    for (const { stock, worked } of comparison.stocks) expect(widthOf(views[1] as Drawing, `${stock} outline`)).toBeCloseTo(worked.shape?.blank.bounds.maxX ?? NaN, 9);
  });

  it('has every letter of the table once, in one of the views, and no other', () => {
    const inTable = [...new Set(comparison.rows.flatMap(({ letter }) => letter ?? []))].toSorted();
    expect(inTable.length).toBeGreaterThan(10);
    expect(views.flatMap((view) => lettersIn(view.entities)).toSorted()).toEqual(inTable);
  });

  it('lays no letters on others, and has a key for every entity', () => {
    for (const view of views) {
      const boxes = view.entities.flatMap((e) => (e.kind === 'text' ? [textBox(e, 0.19)] : []));
      boxes.forEach((a, i) => expect(boxes.slice(i + 1).some((b) => overlap(a, b, 1e-9))).toBe(false));
      expect(new Set(view.entities.map(({ key }) => key)).size).toBe(view.entities.length);
    }
  });

  it('leaves out a stock in which the part cannot be made, and is empty where there is none', () => {
    const one = overlayDrawing(compareStocks(SHORT_LIP, 'strap', ['stainless']), 'blank', { px: 0.19 });
    expect(one.entities.find((e) => e.key === 'brass outline')).toBeUndefined();
    expect(one.entities.find((e) => e.key === 'stainless outline')?.role).toBe('ghost 1');
    const none = overlayDrawing(compareStocks(writeField(exampleJob, 'parts.strap.legs.lip.length', 'gp'), 'strap', ['stainless']), 'blank', { px: 0.19 });
    expect(none).toMatchObject({ entities: [], extent: { minX: 0, maxX: 0 } });
  });
});

describe('the sheet of a comparison', () => {
  const { comparison, pages } = sheetOf(exampleJob, 'strap', ['stainless']);

  it('gives the values of every stock and the difference beside the letter', () => {
    const [brass, stainless] = comparison.rows.find(({ called }) => called === 'Developed length')?.values ?? [];
    // 165.46: printed in the picture of the main screen.
    expect([0, 1, 2, 3, 4].map((column) => cell(pages, 'differences', 0, column))).toEqual(['a', 'Developed length', '165.46', (stainless ?? NaN).toFixed(2), `+${((stainless ?? NaN) - (brass ?? NaN)).toFixed(2)}`]);
  });

  it('has the same letters in the figures as in the table', () => {
    const column = pages.flatMap(texts).filter(({ key }) => /^differences \d+ 0 /.test(key)).map(({ text }) => text).toSorted();
    expect(pages.flatMap((page) => lettersIn(page.entities)).toSorted()).toEqual(column);
  });

  it('tells mass, what to look at by stock, and holes that move', () => {
    const whole = pages.flatMap(said).join(' ');
    expect(whole).toContain('Mass of one, g');
    expect(whole).toContain('Brass, half hard, 1.6 sheet: Peg hole 1 starts 4.41 mm from bend 2.');
    expect(whole).toContain('Peg hole moves up to');
    expect(whole).toContain('Stainless, 1.0 sheet, 1.00 mm thick');
  });

  it('says why a stock will not do, and refuses where none will', () => {
    const short = sheetOf(SHORT_LIP, 'strap', ['stainless']).pages;
    expect(short.flatMap(said).join(' ')).toContain('Brass, half hard, 1.6 sheet: Leg D (Lip) is too short for its bend by 0.30 mm.');
    const none = sheetOf(writeField(exampleJob, 'parts.strap.legs.lip.length', 'gp'), 'strap', ['stainless']).pages;
    expect(none.flatMap(said)).toContain('Not for the bench');
  });

  it('has every stock and every figure whole, however many stocks and however long their figures are', () => {
    const more = Array.from({ length: 5 }, (_, i) => ({ ...exampleJob.stocks[1], id: `more-${i}`, name: `Nickel silver, hard, ${i + 2}/32 in strip from the long rack`, thickness: `${i + 2}/32in` }) as Job['stocks'][number]);
    const job: Job = { ...writeField(exampleJob, 'units.show', 'fraction'), stocks: [...exampleJob.stocks, ...more] };
    const { length } = subject('strap', job).words;
    for (const on of [settings(), settings({ turn: 'upright' }), settings({ paper: 'Letter', turn: 'upright' })]) {
      const { comparison, pages } = sheetOf(job, 'strap', job.stocks.map(({ id }) => id), on);
      expect(comparison.stocks).toHaveLength(9);
      for (const page of pages) expect([...outside(page, on), ...collisions(page)]).toEqual([]);
      const cells = pages.flatMap(texts).filter(({ key }) => key.startsWith('differences ')).map(({ text }) => text);
      expect(cells.filter((t) => t.includes('…'))).toEqual([]);
      const whole = new Set(cells.map((t) => t.replaceAll('\u00A0', ' ')));
      const developed = comparison.rows.find(({ called }) => called === 'Developed length')?.values ?? [];
      const known = developed.filter((v) => v !== undefined);
      expect(known.length).toBeGreaterThan(5);
      for (const value of known) expect(whole).toContain(length(value));
      for (const { stock } of comparison.stocks) expect(cells.join(' ').replaceAll('\u00A0', ' ')).toContain(job.stocks.find(({ id }) => id === stock)?.name);
    }
  });

  it('keeps to the printable area and lays no text on another, for random parts in up to five stocks', () => {
    const legs = fc.array(fc.record({ length: fc.integer({ min: 15, max: 70 }), angle: fc.integer({ min: 20, max: 110 }), up: fc.boolean(), holes: fc.integer({ min: 0, max: 9 }) }), { minLength: 1, maxLength: 8 });
    let sheets = 0;
    fc.assert(
      fc.property(legs, fc.subarray(['stainless', 'steel', 'steel-inch', 'fifth']), (chain, stocks) => {
        const part: Job['parts'][number] = {
          id: 'p', name: 'Кронштейн, ½', stock: 'brass', quantity: '1',
          legs: chain.map(({ length, angle, up, holes }, i) =>
            plainLeg(`l${i}`, `Leg ${i}`, String(length), '18', {
              ...(i > 0 ? { bend: plainBend(`l${i - 1}`, String(angle), up ? 'up' : 'down') } : {}),
              ...(holes > 0 ? { cutouts: [roundHole('h', 'Peg', '2', '6', { pattern: { kind: 'row', direction: 'along', count: String(holes), pitch: '3' } })] } : {}),
            }),
          ),
        };
        const fifth = { ...exampleJob.stocks[0], id: 'fifth', name: 'Nickel silver, hard, 0.7 sheet from the long rack', thickness: '0.7' } as Job['stocks'][number];
        const made = sheetOf({ ...exampleJob, stocks: [...exampleJob.stocks, fifth], parts: [part] }, 'p', stocks);
        for (const page of made.pages) {
          sheets += 1;
          expect([...outside(page, settings()), ...collisions(page)]).toEqual([]);
        }
        const lettered = new Set(made.comparison.rows.flatMap(({ letter }) => letter ?? []));
        if (made.comparison.stocks.some(({ worked }) => worked.shape)) expect(made.pages.flatMap((page) => lettersIn(page.entities))).toHaveLength(lettered.size);
      }),
      { numRuns: 30 },
    );
    expect(sheets).toBeGreaterThan(20);
  });
});
