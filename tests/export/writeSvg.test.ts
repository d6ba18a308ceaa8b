/** The cut SVG read back by svgdom (lengths, boxes) and by Python's strict XML parser (form, names). */
import { createSVGWindow } from 'svgdom';
import { describe, expect, it } from 'vitest';
import { pathLength } from '../../src/core/geometry/segments';
import { cutDrawing } from '../../src/drawing/cutDrawing';
import { writeSvg } from '../../src/export/svg/writeSvg';
import { must } from './must';
import { readWithStrictXml } from './readers';
import { frontStrap, roundPlate, settings } from './sampleBlanks';

const blank = frontStrap();
const cut = (bendLines: 'none' | 'layer' | 'nicks', of = blank) => must(cutDrawing(of, { bendLines, thickness: 1.6 }));
const write = (title = 'Front strap', layers: Record<'outline' | 'cutouts' | 'bends', string> = settings.layers, unit: 'mm' | 'in' = 'mm') =>
  must(writeSvg(cut('layer').drawing, { unit, layers, title }));

/** The parts of svgdom that are asked here; it has no types of its own. */
interface Shape {
  getAttribute(name: string): string | null;
  getTotalLength(): number;
  getBBox(): { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
}
function shapes(svg: string, selector: string): readonly Shape[] {
  const { document } = createSVGWindow();
  document.documentElement.innerHTML = svg.slice(svg.indexOf('<svg'));
  return [...document.documentElement.querySelectorAll(selector)] as unknown as Shape[];
}

describe('an SVG of what is cut', () => {
  it('has true size: mm inside, width and height in the unit', async () => {
    const [root] = await readWithStrictXml(write());
    expect(root?.attributes).toMatchObject({ width: '124.0mm', height: '24.0mm', viewBox: '-2.0 -2.0 124.0 24.0' });
    const [inches] = await readWithStrictXml(write('Front strap', settings.layers, 'in'));
    expect(inches?.attributes.viewBox).toBe('-2.0 -2.0 124.0 24.0');
    expect(inches?.attributes.width).toMatch(/in$/);
    expect(parseFloat(inches?.attributes.width ?? '') * 25.4).toBeCloseTo(124, 6);
    expect(parseFloat(inches?.attributes.height ?? '') * 25.4).toBeCloseTo(24, 6);
  });

  it('has a group for each layer, with its name', async () => {
    const groups = (await readWithStrictXml(write())).filter((e) => e.tag === 'g');
    expect(groups.map((g) => [g.attributes.id, g.attributes['data-layer']])).toEqual([['outline', 'OUTLINE'], ['cutouts', 'CUT-OUTS'], ['bends', 'BENDS']]);
    const bare = must(writeSvg(cut('none').drawing, { unit: 'mm', layers: settings.layers, title: '' }));
    expect((await readWithStrictXml(bare)).filter((e) => e.tag === 'g')).toHaveLength(2);
  });

  it('has round holes as circles, turned over with the page', async () => {
    const circles = (await readWithStrictXml(write())).filter((e) => e.tag === 'circle').map((e) => e.attributes);
    // The page runs downwards from y = 20; all three holes lie on the middle line but this one is asked by hand.
    expect(circles).toEqual([{ cx: '110.0', cy: '10.0', r: '3.0' }, { cx: '52.123456789', cy: '10.0', r: '1.6' }, { cx: '64.0', cy: '10.0', r: '1.6' }]);
    const high = { ...blank, cutouts: blank.cutouts.map((c) => (c.contour.kind === 'circle' ? { ...c, contour: { ...c.contour, centre: { ...c.contour.centre, y: 4 } } } : c)) };
    const text = must(writeSvg(cut('none', high).drawing, { unit: 'mm', layers: settings.layers, title: '' }));
    expect((await readWithStrictXml(text)).filter((e) => e.tag === 'circle').map((e) => e.attributes.cy)).toEqual(['16.0', '16.0', '16.0']);
  });

  it('has the lengths of the outline and the openings as svgdom measures them', () => {
    const svg = write();
    const [outline] = shapes(svg, '#outline path');
    expect(Math.abs((outline?.getTotalLength() ?? NaN) - pathLength(blank.outline))).toBeLessThan(1e-3);
    const openings = blank.cutouts.flatMap((c) => (c.contour.kind === 'path' ? [pathLength(c.contour.segments)] : []));
    const read = shapes(svg, '#cutouts path').map((p) => p.getTotalLength());
    expect(read).toHaveLength(openings.length);
    openings.forEach((length, i) => expect(Math.abs((read[i] ?? NaN) - length)).toBeLessThan(1e-3));
  });

  it('bends its arcs the right way: the round end and the corners lie inside the box of the part', () => {
    const [outline] = shapes(write(), '#outline path');
    const box = outline?.getBBox();
    expect(box?.x).toBeCloseTo(0, 6);
    expect(box?.width).toBeCloseTo(120, 2);
    expect(box?.height).toBeCloseTo(20, 6);
    const [slot, opening] = shapes(write(), '#cutouts path').map((p) => p.getBBox());
    expect(slot?.width).toBeCloseTo(14, 2);
    expect(opening?.width).toBeCloseTo(10, 6);
  });

  it('keeps arcs as arcs and draws a full turn as two of them', () => {
    expect(write().match(/A10\.0 10\.0 0 0 0 110\.0 0\.0/)).not.toBeNull();
    const plate = must(writeSvg(cut('none', roundPlate()).drawing, { unit: 'mm', layers: settings.layers, title: '' }));
    expect(plate.match(/A25\.0 25\.0 0 0 0/g)).toHaveLength(2);
    expect(plate.match(/A4\.0 4\.0 0 0 1/g)).toHaveLength(2);
    const [outline] = shapes(plate, '#outline path');
    expect(Math.abs((outline?.getTotalLength() ?? NaN) - 2 * Math.PI * 25)).toBeLessThan(1e-2);
  });

  it('is the same bytes each time', () => {
    expect(write()).toBe(write());
  });

  it('refuses what a DXF refuses', () => {
    const { drawing } = cut('none');
    const spoiled = writeSvg({ ...drawing, bounds: { ...drawing.bounds, minX: NaN } }, { unit: 'mm', layers: settings.layers, title: '' });
    expect(!spoiled.ok && spoiled.problem.says).toContain('not known');
    const text = writeSvg({ ...drawing, entities: [{ kind: 'path', role: 'hatch', key: 'x', runs: [] }] }, { unit: 'mm', layers: settings.layers, title: '' });
    expect(text.ok).toBe(false);
  });
});

describe('names in an SVG', () => {
  it.each([
    ['a script', '</title><script>alert(1)</script>'],
    ['quotes that close an attribute', `" onload="alert(1)' onclick='alert(2)`],
    ['entities and marks', '&amp; &lt;g&gt; <!-- --> ]]> <![CDATA['],
    ['line breaks and tabs', 'one\ntwo\r\nthree\tfour'],
    ['emoji and every script', '🔧 曲げ Ω é'],
    ['line separators', 'a\u2028b\u0085c'],
  ])('come back as they were: %s', async (_, name) => {
    const text = write(name, { outline: name, cutouts: name, bends: name });
    expect(text).not.toContain('<script');
    const elements = await readWithStrictXml(text);
    expect(new Set(elements.map((e) => e.tag))).toEqual(new Set(['svg', 'title', 'g', 'path', 'circle']));
    expect(elements.flatMap((e) => Object.keys(e.attributes)).filter((a) => a.startsWith('on'))).toEqual([]);
    expect(elements.filter((e) => e.tag === 'title').map((e) => e.text)).toEqual([name, name, name, name]);
    expect(elements.filter((e) => e.tag === 'g').map((e) => e.attributes['data-layer'])).toEqual([name, name, name]);
  });

  it('lose only what XML cannot hold', async () => {
    const elements = await readWithStrictXml(write('a\u0000b\u0007c\uD83Dd\uFFFEe'));
    expect(elements.find((e) => e.tag === 'title')?.text).toBe('a\uFFFDb\uFFFDc\uFFFDd\uFFFDe');
  });
});
