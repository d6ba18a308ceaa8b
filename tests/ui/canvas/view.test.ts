import { describe, expect, it } from 'vitest';
import { CLEAR_PX, fit, kept, panned, slidTo, toDrawing, toScreen, zoomedAbout, type Measured, type Sight } from '../../../src/ui/canvas/view';

const box = (minX: number, minY: number, maxX: number, maxY: number) => ({ minX, minY, maxX, maxY });

/** Metal of fixed size, with lettering of fixed px round it: what the real drawings come to. */
const measure = (section: readonly [number, number], blank: readonly [number, number], px = 40) => (zoom: number): Measured => {
  const edge = px / zoom;
  const one = ([width, height]: readonly [number, number]) => ({ extent: box(0, 0, width, height), bounds: box(-edge, -edge, width + edge, height + edge) });
  return { section: one(section), blank: one(blank) };
};

const room = { width: 900, height: 450, leastWidth: 0 };
const sight: Sight = { zoom: 4, left: -10, mid: { section: 12, blank: 8 } };

describe('screen and drawing', () => {
  it('turns y over and comes back', () => {
    const p = { x: 30, y: 20 };
    const s = toScreen(sight, 'section', 200, p);
    expect(s).toEqual({ x: 160, y: 68 });
    expect(toDrawing(sight, 'section', 200, s)).toEqual(p);
  });

  it('keeps what is under the pointer there when it zooms, and the other figure at its height', () => {
    const at = { x: 333, y: 41 };
    const before = toDrawing(sight, 'blank', 220, at);
    const next = zoomedAbout(sight, 'blank', 220, at, 1.7);
    const after = toDrawing(next, 'blank', 220, at);
    expect(next.zoom).toBeCloseTo(6.8, 12);
    expect(after.x).toBeCloseTo(before.x, 10);
    expect(after.y).toBeCloseTo(before.y, 10);
    expect(next.mid.section).toBe(12);
  });

  it('moves both figures sideways and one up', () => {
    expect(panned(sight, 'section', 40, 20)).toEqual({ zoom: 4, left: -20, mid: { section: 17, blank: 8 } });
  });
});

describe('fitting', () => {
  it('fills the width where the height leaves room, the datum of both at one place', () => {
    const fitted = fit(measure([150, 20], [160, 16]), room);
    expect(fitted.zoom).toBeCloseTo((900 - 80 - 2 * CLEAR_PX) / 160, 1);
    const m = measure([150, 20], [160, 16])(fitted.zoom);
    expect(toScreen(fitted, 'blank', 100, { x: m.blank.bounds.minX, y: 0 }).x).toBeGreaterThanOrEqual(CLEAR_PX - 1);
    expect(toScreen(fitted, 'blank', 100, { x: m.blank.bounds.maxX, y: 0 }).x).toBeLessThanOrEqual(900 - CLEAR_PX + 1);
  });

  it('goes by the height for a tall part', () => {
    const fitted = fit(measure([60, 100], [160, 30]), room);
    expect(fitted.height.section + fitted.height.blank).toBeLessThanOrEqual(451);
    expect(fitted.height.section + fitted.height.blank).toBeGreaterThan(405);
  });

  it('does not go down to a stamp for the sake of height: the page is slid instead', () => {
    const low = { width: 900, height: 420, leastWidth: 0 };
    const fitted = fit(measure([20, 40], [74, 40]), low);
    // Fitted into the height it would be drawn at less than 2 px to the mm.
    expect(fitted.zoom).toBeGreaterThanOrEqual(3);
    expect(fitted.height.section + fitted.height.blank).toBeGreaterThan(420);
  });

  it('keeps its size on a narrow screen', () => {
    const narrow = fit(measure([150, 20], [160, 16]), { width: 390, height: 600, leastWidth: 720 });
    const wide = fit(measure([150, 20], [160, 16]), { width: 720, height: 600, leastWidth: 0 });
    expect(narrow.zoom).toBeCloseTo(wide.zoom, 6);
  });

  it('stands still while a figure is typed, and fits again afterwards', () => {
    const first = fit(measure([150, 20], [160, 16]), room);
    const shorter = measure([100, 20], [100, 16]);
    const steady = fit(shorter, room, { fitted: first, steady: true });
    expect([steady.zoom, steady.left, steady.height]).toEqual([first.zoom, first.left, first.height]);
    expect(fit(shorter, room, { fitted: first, steady: false }).zoom).toBeGreaterThan(1.2 * first.zoom);
  });

  it('gives way while typing once the metal leaves the sheet', () => {
    const first = fit(measure([150, 20], [160, 16]), room);
    expect(fit(measure([150, 20], [400, 16]), room, { fitted: first, steady: true }).zoom).toBeLessThan(0.5 * first.zoom);
  });

  it.each([
    [[0, 0], [0, 0]],
    [[1e-9, 1e6], [1e6, 1e-9]],
    [[0.1, 0.1], [0.1, 0.1]],
  ] as const)('answers finite figures for %j %j', (section, blank) => {
    const fitted = fit(measure(section, blank), room);
    expect([fitted.zoom, fitted.left, fitted.mid.section, fitted.height.section].every(Number.isFinite)).toBe(true);
    expect(fitted.zoom).toBeGreaterThan(0);
  });
});

describe('moving by hand', () => {
  const m = measure([150, 20], [160, 16])(4);
  const height = { section: 200, blank: 180 };

  it('cannot lose the drawing', () => {
    const far = kept({ zoom: 4, left: 5000, mid: { section: -900, blank: 900 } }, m, 900, height);
    expect(far.left).toBeCloseTo(160 - 15, 9);
    expect(toScreen(far, 'section', 200, { x: 0, y: 0 }).y).toBeGreaterThanOrEqual(0);
    expect(toScreen(far, 'section', 200, { x: 0, y: 0 }).y).toBeLessThanOrEqual(200);
    expect(toScreen(far, 'blank', 180, { x: 0, y: 16 }).y).toBeLessThanOrEqual(180);
  });

  it('slides a thing into sight by as little as can be', () => {
    expect(slidTo(0, 4, 400, 20, 60)).toBe(0);
    expect(slidTo(0, 4, 400, 120, 140)).toBe(140 + 6 - 100);
    expect(slidTo(50, 4, 400, 20, 60)).toBe(14);
    expect(slidTo(0, 4, 400, 0, 300)).toBe(100);
  });
});
