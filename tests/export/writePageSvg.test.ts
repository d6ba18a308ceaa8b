import { describe, expect, it } from 'vitest';
import { templatePages } from '../../src/drawing/template/templatePages';
import type { Page } from '../../src/drawing/page';
import { writePageSvg } from '../../src/export/svg/writePageSvg';
import { settings, subject } from '../drawing/template/subjects';
import { must } from './must';
import { readWithStrictXml, type ReadElement } from './readers';

const read = async (page: Page): Promise<readonly ReadElement[]> => readWithStrictXml(must(writePageSvg(page)));
const ofClass = (elements: readonly ReadElement[], name: string): readonly ReadElement[] => elements.filter((e) => e.attributes['class'] === name);

/** Lengths of the first stroke of every check bar. */
const bars = (elements: readonly ReadElement[]): readonly (readonly [number, number])[] =>
  ofClass(elements, 'check-bar').map((e) => {
    const [, x0, y0, x1, y1] = /^M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)/.exec(e.attributes['d'] ?? '')?.map(Number) ?? [];
    return [Math.abs((x1 ?? NaN) - (x0 ?? NaN)), Math.abs((y1 ?? NaN) - (y0 ?? NaN))];
  });

const lever = (more: Parameters<typeof settings>[0] = {}): Page => must(templatePages([subject('lever', { name: 'Lever <1> & "½"' })], settings({ turn: 'upright', ...more })))[0] as Page;

describe('a page as SVG', () => {
  it('is as large as the paper, with one unit to the mm', async () => {
    const [svg] = await read(lever());
    expect(svg?.attributes).toMatchObject({ width: '210mm', height: '297mm', viewBox: '0 0 210 297' });
  });

  it('has check bars of 100 mm and 4 in both ways', async () => {
    const lengths = bars(await read(lever())).map(([w, h]) => [w.toFixed(3), h.toFixed(3)]);
    expect(lengths).toEqual([['101.600', '0.000'], ['100.000', '0.000'], ['0.000', '101.600'], ['0.000', '100.000']]);
  });

  it('stretches places for the printer, and no letters or lines', async () => {
    const plain = await read(lever());
    const stretched = await read(lever({ correction: { x: 1.02, y: 1.01 } }));
    const lengths = bars(stretched);
    expect(lengths[1]?.[0]).toBeCloseTo(102, 4);
    expect(lengths[3]?.[1]).toBeCloseTo(101, 4);
    for (const name of ['font-size', 'stroke-width']) {
      const values = (elements: readonly ReadElement[]): readonly string[] => [...new Set(elements.flatMap((e) => e.attributes[name] ?? []))].toSorted();
      expect(values(stretched)).toEqual(values(plain));
    }
  });

  it('has its lettering as text, whatever is in the name, in the line widths of the guide', async () => {
    const elements = await read(lever());
    const said = elements.filter((e) => e.tag.endsWith('text')).map((e) => e.text);
    expect(said).toContain('Lever <1> & "½"');
    expect(said).toContain('Ø4.1');
    expect(ofClass(elements, 'template-edge').every((e) => e.attributes['stroke-width'] === '0.2')).toBe(true);
    expect(ofClass(elements, 'check-bar').every((e) => e.attributes['stroke-width'] === '0.25')).toBe(true);
    // The labels of the bars up the page stand upright, read from the right.
    expect(elements.filter((e) => e.attributes['transform']?.startsWith('rotate(-90 '))).toHaveLength(2);
  });

  it('is refused with a sentence where a place is no number', () => {
    const page = lever();
    const broken: Page = { ...page, entities: page.entities.map((e, i) => (i === 1 && e.kind === 'text' ? { ...e, at: { x: NaN, y: 1 } } : e)) };
    const written = writePageSvg(broken);
    expect(written.ok).toBe(false);
    if (!written.ok) expect(written.problem.says).toMatch(/is not a number/);
  });
});
