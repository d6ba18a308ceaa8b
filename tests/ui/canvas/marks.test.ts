import { createSVGWindow } from 'svgdom';
import { registerWindow } from '@svgdotjs/svg.js';
import { beforeEach, describe, expect, it } from 'vitest';
import { arcAbout, line } from '../../../src/core/geometry/segments';
import type { Entity, Pick } from '../../../src/drawing/entities';
import { isLit, markOf, pathData, type Look } from '../../../src/ui/canvas/marks';
import { makePainter } from '../../../src/ui/canvas/paintDrawing';

const look: Look = { zoom: 2, chosen: null, editing: null, nameOf: (entity) => `${entity.text}: change` };
const leg = (id: string): Pick => ({ kind: 'leg', leg: id });
const outline = (key: string, to: number): Entity => ({ kind: 'path', key, role: 'outline', pick: leg(key), runs: [{ segments: [line({ x: 0, y: 0 }, { x: to, y: 5 })], closed: false }] });
const text = (key: string, said: string, field?: string): Entity => ({ kind: 'text', key, role: 'dimension text', pick: leg('a'), at: { x: 1, y: 2 }, text: said, align: 'middle', rotation: 0, suffix: 'outside', ...(field === undefined ? {} : { field }) });

describe('from mm to px', () => {
  it('turns y over and scales', () => expect(pathData([line({ x: 1, y: 2 }, { x: 3, y: -4 })], false, 2)).toBe('M2 -4L6 8'));

  it('draws arcs as arcs: anticlockwise with y upwards is against the clock on the screen', () => {
    expect(pathData([arcAbout({ x: 0, y: 0 }, 5, 0, Math.PI / 2)], false, 2)).toBe('M10 0A10 10 0 0 0 0 -10');
    expect(pathData([arcAbout({ x: 0, y: 0 }, 5, 0, -Math.PI / 2)], false, 2)).toBe('M10 0A10 10 0 0 1 0 10');
    expect(pathData([arcAbout({ x: 0, y: 0 }, 5, 0, 1.5 * Math.PI)], false, 2)).toBe('M10 0A10 10 0 1 0 0 10');
  });

  it('draws a whole turn, which one arc cannot', () => expect(pathData([arcAbout({ x: 0, y: 0 }, 5, 0, 2 * Math.PI)], true, 1)).toBe('M5 0A5 5 0 0 0 -5 0A5 5 0 0 0 5 0Z'));

  it('goes on from where a segment ends, and lifts the pen over a gap', () => {
    const a = line({ x: 0, y: 0 }, { x: 1, y: 0 });
    expect(pathData([a, line({ x: 1, y: 0 }, { x: 1, y: 1 })], false, 1)).toBe('M0 0L1 0L1 -1');
    expect(pathData([a, line({ x: 2, y: 0 }, { x: 2, y: 1 })], false, 1)).toBe('M0 0L1 0M2 0L2 -1');
  });
});

describe('lit', () => {
  const hole: Pick = { kind: 'cutout', leg: 'a', cutout: 'h' };
  const bend: Pick = { kind: 'bend', leg: 'a' };
  it.each([
    [leg('a'), leg('a'), true],
    [leg('a'), leg('b'), false],
    [hole, leg('a'), true],
    [bend, leg('a'), false],
    [leg('a'), bend, false],
    [leg('a'), hole, false],
    [hole, hole, true],
    [{ ...hole, cutout: 'k' }, hole, false],
    [undefined, leg('a'), false],
    [leg('a'), null, false],
  ])('%j while %j is chosen: %s', (pick, chosen, lit) => expect(isLit(pick, chosen)).toBe(lit));
});

describe('figures of a path', () => {
  it.each([[0, '0'], [-0, '0'], [0.004, '0'], [-0.004, '0'], [0.05, '0.05'], [-0.05, '-0.05'], [0.1, '0.1'], [12.34, '12.34'], [-12.3, '-12.3'], [99.999, '100'], [7e7, '70000000'], [123_456_789.12, '123456789.12']])('writes %d as %s', (value, written) =>
    expect(pathData([line({ x: value, y: 0 }, { x: 1, y: 0 })], false, 1)).toBe(`M${written} 0L1 0`));
});

describe('painting', () => {
  let host: HTMLElement;
  const body = (): readonly Element[] => [...(host.firstElementChild?.firstElementChild?.children ?? [])];

  beforeEach(() => {
    const window = createSVGWindow();
    registerWindow(window, window.document);
    host = window.document.createElement('div');
  });

  it('makes, changes and takes away only what differs', () => {
    const painter = makePainter(host);
    expect(painter.paint([outline('a', 10), outline('b', 10), text('t', '12')], look)).toEqual({ made: 3, changed: 0, removed: 0 });
    const [a, b] = body();
    expect(painter.paint([outline('a', 10), outline('b', 11), text('t', '12')], look)).toEqual({ made: 0, changed: 1, removed: 0 });
    expect(body()[0]).toBe(a);
    expect(body()[1]).toBe(b);
    expect(b?.getAttribute('d')).toBe('M0 0L22 -10');
    expect(painter.paint([outline('a', 10), text('t', '13')], look)).toEqual({ made: 0, changed: 1, removed: 1 });
    expect(body()).toHaveLength(2);
    expect(body()[1]?.textContent).toBe('13outside');
  });

  it('keeps the order of the drawing, whatever comes in between', () => {
    const painter = makePainter(host);
    painter.paint([outline('a', 1), outline('c', 3)], look);
    painter.paint([outline('c', 3), outline('b', 2), outline('a', 1)], look);
    expect(body().map((element) => element.getAttribute('d'))).toEqual(['M0 0L6 -10', 'M0 0L4 -10', 'M0 0L2 -10']);
  });

  it('paints what has not moved anew at another zoom, and again back', () => {
    const painter = makePainter(host);
    painter.paint([outline('a', 1)], look);
    expect(painter.paint([outline('a', 1)], { ...look, zoom: 2 * look.zoom }).changed).toBe(1);
    expect(body()[0]?.getAttribute('d')).toBe('M0 0L4 -20');
    expect(painter.paint([outline('a', 1)], look).changed).toBe(1);
    expect(body()[0]?.getAttribute('d')).toBe('M0 0L2 -10');
  });

  it('lights one thing and puts it out again', () => {
    const painter = makePainter(host);
    painter.paint([outline('a', 1), outline('b', 2)], look);
    expect(painter.paint([outline('a', 1), outline('b', 2)], { ...look, chosen: leg('b') })).toEqual({ made: 0, changed: 1, removed: 0 });
    expect(body().map((element) => element.getAttribute('class'))).toEqual(['outline', 'outline lit']);
    painter.paint([outline('a', 1), outline('b', 2)], look);
    expect(body().map((element) => element.getAttribute('class'))).toEqual(['outline', 'outline']);
  });

  it('paints both of two entities with one key', () => {
    const painter = makePainter(host);
    painter.paint([outline('a', 1), outline('a', 2)], look);
    painter.paint([outline('a', 1), outline('a', 3)], look);
    expect(body().map((element) => element.getAttribute('d'))).toEqual(['M0 0L2 -10', 'M0 0L6 -10']);
    expect(painter.paint([], look).removed).toBe(2);
    expect(body()).toHaveLength(0);
  });

  it('shows a hostile name as letters', () => {
    const painter = makePainter(host);
    const name = '<script>alert(1)</script><img src=x onerror=alert(2)>';
    painter.paint([{ ...text('t', name), suffix: name } as Entity], look);
    const texts = [...host.querySelectorAll('text')];
    expect(texts.map((element) => element.textContent)).toEqual([name + name]);
    expect(host.querySelectorAll('script, img')).toHaveLength(0);
  });

  it('makes a figure that can be changed a button with a name', () => {
    const painter = makePainter(host);
    painter.paint([text('t', '26', 'parts.p.legs.a.length'), text('u', '12.73')], look);
    const [figure, plain] = body();
    expect([figure?.getAttribute('role'), figure?.getAttribute('aria-label'), figure?.getAttribute('data-field')]).toEqual(['button', '26: change', 'parts.p.legs.a.length']);
    expect([plain?.getAttribute('role'), plain?.getAttribute('data-field')]).toEqual([null, null]);
    expect(painter.paint([text('t', '26'), text('u', '12.73')], look).made).toBe(1);
    expect(body()[0]?.getAttribute('role')).toBeNull();
  });

  it('hides the figure that is being typed', () => {
    const entity = text('t', '26', 'f');
    expect(markOf(entity, { ...look, editing: 'f' }).attrs['class']).toBe('dimension-text can-change editing');
    expect(markOf(entity, look).attrs['class']).toBe('dimension-text can-change');
  });

  it('leaves nothing behind', () => {
    const painter = makePainter(host);
    painter.paint([outline('a', 1)], look);
    painter.clear();
    expect(host.children).toHaveLength(0);
  });
});
