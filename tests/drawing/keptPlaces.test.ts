import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fold } from '../../src/core/part/fold';
import { layOut } from '../../src/core/part/layOut';
import { unfold } from '../../src/core/part/unfold';
import type { Part } from '../../src/core/part/types';
import { blankDrawing } from '../../src/drawing/blankDrawing';
import { lineBox, overlap, uprightBox } from '../../src/drawing/boxes';
import type { Drawing, TextEntity } from '../../src/drawing/entities';
import { emptySheet, type PlacedDrawing, type Places } from '../../src/drawing/placement';
import { sectionDrawing } from '../../src/drawing/sectionDrawing';
import { textBox } from '../../src/drawing/textWidth';
import { entityBounds } from './entityBounds';
import { partWithLugs, STRAP, wordsFor, workablePart } from './sampleParts';

interface Both {
  readonly section: PlacedDrawing;
  readonly blank: PlacedDrawing;
}

/** mm to a px: the strap of the guide is about 850 px long. */
const PX = 0.2;

function drawnAt(part: Part, before?: Both): Both | undefined {
  const layout = layOut(part);
  if (!layout.ok) return undefined;
  const words = wordsFor(part);
  return {
    section: sectionDrawing(layout.value, fold(layout.value), words, { px: PX }, before?.section.places),
    blank: blankDrawing(layout.value, unfold(layout.value), words, { px: PX }, before?.blank.places),
  };
}

function must(both: Both | undefined): Both {
  if (!both) throw new Error('The part cannot be laid out.');
  return both;
}

const longer = (part: Part, index: number, by: number): Part => ({ ...part, legs: part.legs.map((leg, i) => (i === index ? { ...leg, length: leg.length + by } : leg)) });
const indices = (drawing: PlacedDrawing): Readonly<Record<string, number>> => Object.fromEntries([...drawing.places].map(([key, { index }]) => [key, index]));
const texts = (drawing: Drawing): readonly TextEntity[] => drawing.entities.filter((e) => e.kind === 'text');

function overlapping(drawing: Drawing): readonly string[] {
  const boxes = texts(drawing).map((t) => ({ key: t.key, box: textBox(t, PX) }));
  return boxes.flatMap((a, i) => boxes.slice(i + 1).filter((b) => overlap(a.box, b.box, 1e-9)).map((b) => `${a.key} on ${b.key}`));
}

describe('lettering that keeps its place', () => {
  it('draws a part that has not changed as it was', () => {
    fc.assert(
      fc.property(partWithLugs, (part) => {
        const first = drawnAt(part);
        if (!first) return;
        expect(must(drawnAt(part, first)).section.entities).toEqual(first.section.entities);
        expect(must(drawnAt(part, first)).blank.entities).toEqual(first.blank.entities);
      }),
      { numRuns: 40 },
    );
  });

  it('stays where it is while a leg of the strap grows millimetre by millimetre', () => {
    let both = must(drawnAt(STRAP));
    const [section, blank] = [indices(both.section), indices(both.blank)];
    let jumps = 0;
    for (let by = 1; by <= 12; by++) {
      const grown = longer(STRAP, 1, by);
      both = must(drawnAt(grown, both));
      expect(indices(both.section)).toEqual(section);
      expect(indices(both.blank)).toEqual(blank);
      const afresh = must(drawnAt(grown));
      if (JSON.stringify([indices(afresh.section), indices(afresh.blank)]) !== JSON.stringify([section, blank])) jumps += 1;
    }
    // Otherwise the strap shows nothing: placed afresh at each length, something would have jumped.
    expect(jumps).toBeGreaterThan(0);
  });

  it('can be read all the same: no lettering on other lettering, however the part has changed since', () => {
    let kept = 0;
    let moved = 0;
    fc.assert(
      fc.property(workablePart, fc.nat(11), fc.double({ min: -8, max: 40, noNaN: true }), (part, leg, by) => {
        const first = drawnAt(part);
        const then = first && drawnAt(longer(part, leg % part.legs.length, by), first);
        if (!then) return;
        expect(overlapping(then.section)).toEqual([]);
        expect(overlapping(then.blank)).toEqual([]);
        for (const [key, { index }] of then.section.places) {
          if (first.section.places.get(key)?.index === index) kept += 1;
          else moved += 1;
        }
      }),
      { numRuns: 120 },
    );
    expect(kept).toBeGreaterThan(20 * moved);
    expect(moved).toBeGreaterThan(0);
  });
});

describe('a place held from before', () => {
  const metal = uprightBox('metal', { minX: 0, minY: 0, maxX: 10, maxY: 10 });
  /** Three places along a line, the first of them on the metal. */
  const places: Places = {
    key: 'word',
    count: 3,
    cost: (index) => index,
    plan: (index) => ({ boxes: [uprightBox('text', { minX: 5 + 20 * index, minY: 0, maxX: 15 + 20 * index, maxY: 5 })], entities: () => [] }),
  };
  const placed = (held: number | undefined, over: number, others: Parameters<ReturnType<typeof emptySheet>['add']>[0]): number | undefined => {
    const sheet = emptySheet(1, held === undefined ? undefined : new Map([['word', { index: held, over }]]));
    sheet.add(others);
    sheet.place(places);
    return sheet.taken().get('word')?.index;
  };
  const lineAcross = lineBox('line', { x: 48, y: -5 }, { x: 48, y: 20 });

  it('is kept, though another is liked better', () => expect([placed(undefined, 0, [metal]), placed(2, 0, [metal])]).toEqual([1, 2]));
  it('is left once it is worse than it was', () => expect(placed(2, 0, [metal, lineAcross])).toBe(1));
  it('is kept where it lies on no more than it did', () => expect(placed(2, 3000, [metal, lineAcross])).toBe(2));
  it('is left where it is offered no more', () => expect(placed(7, 0, [metal])).toBe(1));
});

describe('what is always on show', () => {
  it('is within the bounds and holds everything but readings of a chosen leg', () => {
    let smaller = 0;
    fc.assert(
      fc.property(partWithLugs, (part) => {
        const both = drawnAt(part);
        if (!both) return;
        for (const { entities, shown, bounds } of [both.section, both.blank]) {
          expect(shown.minX >= bounds.minX && shown.minY >= bounds.minY && shown.maxX <= bounds.maxX && shown.maxY <= bounds.maxY).toBe(true);
          if (shown.maxY < bounds.maxY || shown.minY > bounds.minY) smaller += 1;
          for (const entity of entities) {
            if (entity.role === 'tangent text' || (entity.kind === 'path' && entity.runs.length === 0)) continue;
            const b = entityBounds(entity, PX);
            expect(Math.min(b.minX - shown.minX, b.minY - shown.minY, shown.maxX - b.maxX, shown.maxY - b.maxY)).toBeGreaterThanOrEqual(-1e-9);
          }
        }
      }),
      { numRuns: 60 },
    );
    expect(smaller).toBeGreaterThan(0);
  });
});
