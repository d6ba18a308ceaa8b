import { describe, expect, it } from 'vitest';
import { arcAbout, line } from '../../../src/core/geometry/segments';
import type { Entity } from '../../../src/drawing/entities';
import type { Page } from '../../../src/drawing/page';
import { writePdf } from '../../../src/export/pdf/writePdf';
import { must } from '../must';
import { fonts } from './fonts';
import { on, readFonts, readPaths, readSizes, readText } from './poppler';

const note = (text: string, at = { x: 20, y: 30 }, more: Partial<Extract<Entity, { kind: 'text' }>> = {}): Entity => ({ kind: 'text', key: text, role: 'note text', at, text, align: 'start', rotation: 0, ...more });
const pageOf = (...entities: readonly Entity[]): Page => ({ name: 'sheet 1', width: 210, height: 297, entities });
const SETTINGS = { title: 'Vent stay', fonts, date: '2026-11-05' };
const bytesOf = (...pages: readonly Page[]): Uint8Array => must(writePdf(pages, SETTINGS));

describe('lettering in the PDF', () => {
  const SAID = 'Ø3.2 ±0.05 45° 3⅛ 1½ 7 × 15 Zażółć Ψύξη Щёголь';

  it('is in fonts that are embedded, as a part of the whole, and can be copied out', () => {
    const bytes = bytesOf(pageOf(note(SAID), note('Bold Жук', { x: 20, y: 60 }, { role: 'part name' })));
    const found = readFonts(bytes);
    expect(found.map((f) => f.name).toSorted()).toEqual(['BWSHTB+DejaVuSansCondensed-Bold', 'BWSHTR+DejaVuSansCondensed']);
    expect(found.every((f) => f.embedded && f.subset && f.unicode)).toBe(true);
    expect(bytes.length).toBeLessThan(fonts.regular.length / 2);
    expect(readText(bytes)).toContain(SAID);
    expect(readText(bytes)).toContain('Bold Жук');
  });

  it('goes on behind a letter that the font has not got', () => {
    expect(readText(bytesOf(pageOf(note('Stay 漢 and 🌱 more'))))).toContain('Stay \uFFFD and \uFFFD more');
  });

  it('keeps a suffix behind its figure', () => {
    expect(readText(bytesOf(pageOf(note('26', { x: 50, y: 50 }, { role: 'dimension text', suffix: 'outside', align: 'middle' }))))).toMatch(/26 ?outside/);
  });
});

describe('lines in the PDF', () => {
  it('draw arcs to six millionths of their radius', () => {
    const radius = 1000;
    const centre = { x: 0, y: 0 };
    const arc = arcAbout(centre, radius, 0.1, 2.9);
    const bytes = must(writePdf([{ name: 'large', width: 2200, height: 1200, entities: [{ kind: 'path', key: 'arc', role: 'template edge', runs: [{ segments: [arc], closed: false }] }] }], SETTINGS));
    const [path] = readPaths(bytes, 1);
    expect(path?.pieces.length).toBe(4);
    for (const piece of path?.pieces ?? []) for (const share of [0, 0.25, 0.5, 0.75, 1]) expect(Math.abs(Math.hypot(on(piece, share).x, on(piece, share).y) - radius)).toBeLessThan(0.006);
  });

  it('have the widths and dashes of the guide', () => {
    const roles = ['outline', 'hole', 'bend centre line', 'tangent line', 'centre line', 'hatch', 'dimension line'] as const;
    const entities = roles.map((role, i): Entity => ({ kind: 'path', key: role, role, runs: [{ segments: [line({ x: 20, y: 20 + i }, { x: 50, y: 20 + i })], closed: false }] }));
    const strokes = readPaths(bytesOf(pageOf(...entities)), 1).filter((p) => p.width > 0);
    // mm column of the guide's table "Drawing entities".
    expect(strokes.map((p) => Number(p.width.toFixed(3)))).toEqual([0.5, 0.5, 0.25, 0.18, 0.18, 0.13, 0.18]);
    expect(strokes.map((p) => p.dashed)).toEqual([false, false, true, true, true, false, false]);
  });

  it('stretch in each direction about the lower left corner, lettering keeping its size', () => {
    const stroke: Entity = { kind: 'path', key: 's', role: 'check bar', runs: [{ segments: [line({ x: 20, y: 40 }, { x: 120, y: 140 })], closed: false }] };
    const [path] = readPaths(bytesOf({ ...pageOf(stroke), stretch: { x: 1.02, y: 0.97 } }), 1);
    const [from, to] = path?.pieces[0] ?? [];
    expect(from?.x).toBeCloseTo(20.4, 2);
    expect(from?.y).toBeCloseTo(38.8, 2);
    expect(to?.x).toBeCloseTo(122.4, 2);
    expect(to?.y).toBeCloseTo(135.8, 2);
  });
});

describe('the file', () => {
  it('is the same each time, and another on another day', () => {
    const pages = [pageOf(note('Vent stay')), { ...pageOf(note('Lever')), width: 297, height: 210 }];
    expect(Buffer.from(bytesOf(...pages)).equals(Buffer.from(bytesOf(...pages)))).toBe(true);
    expect(Buffer.from(must(writePdf(pages, { ...SETTINGS, date: '2026-11-06' }))).equals(Buffer.from(bytesOf(...pages)))).toBe(false);
    const sizes = readSizes(bytesOf(...pages));
    expect(sizes).toHaveLength(2);
    expect(sizes[1]?.[0]).toBeCloseTo(297, 2);
  });

  it.each([
    ['no pages', [], SETTINGS, 'pages'],
    ['a place that is no number', [pageOf(note('stay', { x: NaN, y: 3 }))], SETTINGS, 'stay'],
    ['a place without end', [pageOf({ kind: 'path', key: 'far', role: 'outline', runs: [{ segments: [line({ x: 0, y: 0 }, { x: Infinity, y: 0 })], closed: false }] })], SETTINGS, 'far'],
    ['a sheet without a size', [{ ...pageOf(), width: 0 }], SETTINGS, 'sheet 1'],
    ['a stretch that is no figure', [{ ...pageOf(), stretch: { x: NaN, y: 1 } }], SETTINGS, 'sheet 1'],
    ['a day that is none', [pageOf()], { ...SETTINGS, date: '2026-13-01' }, 'date'],
    ['fonts that are none', [pageOf()], { ...SETTINGS, fonts: { ...fonts, bold: new Uint8Array(40) } }, 'fonts.bold'],
    ['fonts that break off', [pageOf()], { ...SETTINGS, fonts: { ...fonts, regular: fonts.regular.slice(0, 2000) } }, 'fonts.regular'],
  ])('is refused with a sentence for %s', (_, pages, own, field) => {
    const written = writePdf(pages, own);
    expect(written.ok).toBe(false);
    if (written.ok) return;
    expect(written.problem.field).toBe(field);
    expect(written.problem.says).toMatch(/^[A-Z"].*\.$/);
  });
});
