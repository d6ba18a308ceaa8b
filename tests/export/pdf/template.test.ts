/** Full-size templates as PDF, measured by poppler from the vector content. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contourBounds } from '../../../src/core/geometry/bounds';
import type { Bounds } from '../../../src/core/geometry/types';
import { correctionFrom } from '../../../src/drawing/template/correction';
import { sheetOf } from '../../../src/drawing/template/paperSizes';
import { templatePages } from '../../../src/drawing/template/templatePages';
import type { TemplateSettings, TemplateSubject } from '../../../src/drawing/template/types';
import { writePdf } from '../../../src/export/pdf/writePdf';
import { partWithLugs } from '../../drawing/sampleParts';
import { EXAMPLE, largePlate, longStrap, settings, subject, subjectOf } from '../../drawing/template/subjects';
import { must } from '../must';
import { fonts } from './fonts';
import { boundsOf, readInk, readPaths, readSizes, readText, readWords, type ReadPath } from './poppler';

const pdf = (subjects: readonly TemplateSubject[], own: TemplateSettings = settings()): Uint8Array =>
  must(writePdf(must(templatePages(subjects, own)), { title: 'Roof-vent peg stay', fonts, date: '2026-11-05' }));

const size = (b: Bounds): readonly [number, number] => [b.maxX - b.minX, b.maxY - b.minY];
const near = (a: number, b: number, by = 0.01): boolean => Math.abs(a - b) <= by;

/** Lengths of the check bars across and up: the longest stroke of each path in the bars' own line width. */
function bars(paths: readonly ReadPath[]): { readonly across: readonly number[]; readonly up: readonly number[] } {
  const found = paths.filter((p) => near(p.width, 0.25, 0.001) && p.pieces.length === 3 && !p.dashed).map((p) => size(boundsOf(p.pieces.slice(0, 1))));
  const sorted = (n: readonly number[]): readonly number[] => n.filter((length) => length > 50).toSorted((a, b) => a - b);
  return { across: sorted(found.map(([w]) => w)), up: sorted(found.map(([, h]) => h)) };
}

/** Closed paths in the line width of edges. */
const edges = (paths: readonly ReadPath[]): readonly Bounds[] => paths.filter((p) => near(p.width, 0.2, 0.001) && p.closed).map((p) => boundsOf(p.pieces));

describe('check bars', () => {
  const papers = [['A4', 210, 297], ['A3', 297, 420], ['Letter', 215.9, 279.4], ['Legal', 215.9, 355.6]] as const;
  it.each(papers.flatMap((p) => (['upright', 'lying'] as const).map((turn) => [...p, turn] as const)))('measure 100 mm and 4 in both ways on %s (%d × %d) %s', (paper, width, height, turn) => {
    const bytes = pdf([subject('lever')], settings({ paper, turn }));
    const [own] = readSizes(bytes);
    const [w, h] = turn === 'lying' ? [height, width] : [width, height];
    // pdfinfo prints points to 6 figures.
    expect(own?.[0]).toBeCloseTo(w, 2);
    expect(own?.[1]).toBeCloseTo(h, 2);
    const { across, up } = bars(readPaths(bytes, 1));
    for (const lengths of [across, up]) {
      expect(lengths).toHaveLength(2);
      expect(near(lengths[0] ?? NaN, 100)).toBe(true);
      expect(near(lengths[1] ?? NaN, 101.6)).toBe(true);
    }
  });

  it('come out right on the next print of a printer that is out', () => {
    // A printer that makes 100 mm 98.6 across and 101.9 up.
    const printer = { x: 0.986, y: 1.019 };
    const correction = must(correctionFrom({ xMm: 100 * printer.x, yMm: 100 * printer.y, xIn: 4 * printer.x }));
    const { across, up } = bars(readPaths(pdf([subject('lever')], settings({ correction })), 1));
    expect(near((across[0] ?? NaN) * printer.x, 100)).toBe(true);
    expect(near((across[1] ?? NaN) * printer.x, 101.6)).toBe(true);
    expect(near((up[0] ?? NaN) * printer.y, 100)).toBe(true);
    expect(near((up[1] ?? NaN) * printer.y, 101.6)).toBe(true);
  });
});

describe('parts on paper', () => {
  it.each(EXAMPLE)('%s has its outline and every hole where the blank has them', (id) => {
    const own = subject(id);
    const found = edges(readPaths(pdf([own], settings({ turn: 'lying' })), 1)).toSorted((a, b) => size(b)[0] - size(a)[0]);
    const [outline, ...holes] = found;
    expect(outline).toBeDefined();
    if (!outline) return;
    const { bounds, cutouts } = own.blank;
    expect(near(size(outline)[0], bounds.maxX)).toBe(true);
    expect(near(size(outline)[1], bounds.maxY)).toBe(true);
    expect(holes).toHaveLength(cutouts.length);
    for (const { contour } of cutouts) {
      const b = contourBounds(contour);
      const there = holes.filter((h) => (['minX', 'maxX'] as const).every((k) => near(h[k] - outline.minX, b[k])) && (['minY', 'maxY'] as const).every((k) => near(h[k] - outline.minY, b[k])));
      expect(there).toHaveLength(1);
    }
    // Punch marks stand at the centres.
    const punches = readPaths(pdf([own], settings({ turn: 'lying' })), 1).filter((p) => p.width === 0).flatMap((p) => circles(p));
    for (const { centre } of cutouts) expect(punches.some((p) => near(p.x - outline.minX, centre.x) && near(p.y - outline.minY, centre.y))).toBe(true);
  });

  /** Middles of the closed circles of a path of eight curves each. */
  function circles(p: ReadPath): readonly { readonly x: number; readonly y: number }[] {
    return Array.from({ length: Math.floor(p.pieces.length / 8) }, (_, i) => {
      const b = boundsOf(p.pieces.slice(i * 8, i * 8 + 8));
      return { x: (b.minX + b.maxX) / 2, y: (b.minY + b.maxY) / 2 };
    });
  }

  it('is mirrored for the other face and turned by a quarter where it packs better, still to size', () => {
    const own = subject('back-plate', { face: 'other' });
    const found = edges(readPaths(pdf([own], settings({ turn: 'upright' })), 1)).toSorted((a, b) => size(b)[1] - size(a)[1]);
    const [outline, ...holes] = found;
    if (!outline) throw new Error('no outline');
    expect(near(size(outline)[1], own.blank.bounds.maxX)).toBe(true);
    for (const { contour } of own.blank.cutouts) {
      const b = contourBounds(contour);
      // Mirrored, then turned to the left: x of the page is y of the blank, y of the page is x of the blank.
      expect(holes.filter((h) => near(h.minY - outline.minY, b.minX) && near(h.minX - outline.minX, b.minY) && near(h.maxX - outline.minX, b.maxY))).toHaveLength(1);
    }
  });

  it('prints twelve levers as twelve, none nearer than the gap', () => {
    const bytes = pdf([subject('lever', { copies: 12 })]);
    const pages = readSizes(bytes).map((_, i) => edges(readPaths(bytes, i + 1)).filter((b) => Math.max(...size(b)) > 50));
    expect(pages.flat()).toHaveLength(12);
    for (const page of pages) {
      page.forEach((a, i) => {
        for (const b of page.slice(i + 1)) expect(Math.max(a.minX - b.maxX, b.minX - a.maxX, a.minY - b.maxY, b.minY - a.maxY)).toBeGreaterThanOrEqual(6 - 0.01);
      });
    }
  });
});

describe('ink', () => {
  const inside = (bytes: Uint8Array, own: TemplateSettings): void => {
    readSizes(bytes).forEach(([width, height], i) => {
      const sheet = sheetOf(own.paper, width > height, own.margins);
      const ink = readInk(bytes, i + 1);
      // A dot of the picture is a fifth of a mm.
      expect(ink.minX).toBeGreaterThanOrEqual(sheet.left - 0.21);
      expect(ink.minY).toBeGreaterThanOrEqual(sheet.bottom - 0.21);
      expect(ink.maxX).toBeLessThanOrEqual(width - sheet.right + 0.21);
      expect(ink.maxY).toBeLessThanOrEqual(height - sheet.top + 0.21);
      // The bars alone reach the lower left corner of the printable area.
      expect(ink.minX).toBeLessThan(sheet.left + 3);
    });
  };

  it.each([{}, { paper: 'Letter', correction: { x: 1.05, y: 0.95 } }, { turn: 'lying', margins: { side: 0, top: 0, bottom: 0 } }] as const)('stays in the printable area: %j', (more) => {
    const own = settings(more);
    inside(pdf([...EXAMPLE.map((id) => subject(id, { copies: 2 })), longStrap(), largePlate({ face: 'other' })], own), own);
  });

  it('of random parts stays in the printable area, and no word lies over another', () => {
    let words = 0;
    fc.assert(
      fc.property(fc.array(partWithLugs, { minLength: 1, maxLength: 3 }), fc.constantFrom('marked' as const, 'other' as const), fc.double({ min: 0.96, max: 1.04, noNaN: true }), (parts, face, x) => {
        const subjects = parts.flatMap((part) => subjectOf(part, { face }) ?? []);
        if (subjects.length === 0) return;
        const own = settings({ correction: { x, y: 2 - x } });
        const bytes = pdf(subjects, own);
        inside(bytes, own);
        readSizes(bytes).forEach((_, i) => {
          // Poppler's boxes have the font's full height, above and below what is inked.
          const boxes = readWords(bytes, i + 1).map((w) => ({ ...w, minY: w.minY + 0.4, maxY: w.maxY - 0.4 }));
          words += boxes.length;
          const over = boxes.flatMap((a, n) => boxes.slice(n + 1).filter((b) => a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY).map((b) => `${a.text} over ${b.text}`));
          expect(over).toEqual([]);
        });
      }),
      { numRuns: 8, endOnFailure: true },
    );
    expect(words).toBeGreaterThan(200);
  });
});

describe('words on the paper', () => {
  it('say what the part is, how it is bent and how to print it', () => {
    const text = readText(pdf([subject('strap', { name: 'Łącznik Ωμέγα Жёлтый ½″', stockLine: 'Laiton demi-dur, 1,6 ±0,05' })]));
    for (const said of ['Łącznik Ωμέγα Жёлтый ½″', 'Laiton demi-dur, 1,6 ±0,05', 'marked face up', '45° up', '45° down', '90° up', '7 × Ø3.2', 'Ø3.1', 'Print at 100 %, no fit to page.', '5 November 2026', 'Sizes in mm.', '100 mm', '4 in']) expect(text).toContain(said);
  });

  it('turn the ways of the bends over for the other face', () => {
    const text = readText(pdf([subject('strap', { face: 'other' })]));
    expect(text).toContain('mirrored: other face up');
    for (const said of ['45° down', '45° up', '90° down']) expect(text).toContain(said);
    expect(text).not.toContain('90° up');
  });
});
