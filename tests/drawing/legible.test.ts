import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Part } from '../../src/core/part/types';
import { overlap, segmentBoxes, type Box } from '../../src/drawing/boxes';
import type { Drawing, TextEntity } from '../../src/drawing/entities';
import { textBox } from '../../src/drawing/textWidth';
import { entityBounds } from './entityBounds';
import { drawn, mustDraw, partWithLugs, STRAP, workablePart } from './sampleParts';

const texts = (drawing: Drawing): readonly TextEntity[] => drawing.entities.filter((e) => e.kind === 'text');

/** Boxes that only touch differ by rounding. */
const SLACK_MM = 1e-9;

function overlapping(drawing: Drawing, px: number): readonly string[] {
  const boxes = texts(drawing).map((t) => ({ key: t.key, box: textBox(t, px) }));
  return boxes.flatMap((a, i) => boxes.slice(i + 1).filter((b) => overlap(a.box, b.box, SLACK_MM)).map((b) => `${a.key} on ${b.key}`));
}

const outline = (drawing: Drawing): readonly Box[] =>
  drawing.entities.flatMap((e) => (e.kind === 'path' && e.role === 'outline' ? e.runs.flatMap((run) => run.segments.flatMap((s) => segmentBoxes('metal', s))) : []));

function onOutline(drawing: Drawing, px: number): readonly string[] {
  const edges = outline(drawing);
  return texts(drawing)
    .filter((t) => t.role !== 'tangent text')
    .filter((t) => edges.some((edge) => overlap(textBox(t, px), edge, SLACK_MM)))
    .map((t) => t.key);
}

describe('lettering', () => {
  it('never lies on other lettering, nor on the metal of the section', () => {
    let parts = 0;
    fc.assert(
      fc.property(workablePart, fc.integer({ min: 250, max: 1600 }), (part, acrossPx) => {
        const both = drawn(part, acrossPx);
        if (!both) return;
        parts += 1;
        expect(overlapping(both.section, both.px)).toEqual([]);
        expect(onOutline(both.section, both.px)).toEqual([]);
        expect(overlapping(both.blank, both.px)).toEqual([]);
        expect(onOutline(both.blank, both.px)).toEqual([]);
      }),
      { numRuns: 150 },
    );
    expect(parts).toBeGreaterThan(100);
  });

  it('keeps apart with side lugs too', () => {
    let lugs = 0;
    fc.assert(
      fc.property(partWithLugs, (part) => {
        const both = drawn(part);
        if (!both) return;
        lugs += part.legs.filter((l) => l.bend?.seat).length;
        expect(overlapping(both.blank, both.px)).toEqual([]);
        expect(onOutline(both.blank, both.px)).toEqual([]);
      }),
    );
    expect(lugs).toBeGreaterThan(30);
  });
});

describe('every drawing', () => {
  const keys = (drawing: Drawing): readonly string[] => drawing.entities.map((e) => e.key);

  it('has a key of its own for every entity, finite figures, and bounds that hold all of it', () => {
    fc.assert(
      fc.property(partWithLugs, (part) => {
        const both = drawn(part);
        if (!both) return;
        for (const drawing of [both.section, both.blank]) {
          expect(new Set(keys(drawing)).size).toBe(drawing.entities.length);
          for (const entity of drawing.entities) {
            if (entity.kind === 'path' && entity.runs.length === 0) continue;
            const b = entityBounds(entity, both.px);
            expect(Object.values(b).every(Number.isFinite)).toBe(true);
            expect(b.minX).toBeGreaterThanOrEqual(drawing.bounds.minX - 1e-9);
            expect(b.maxX).toBeLessThanOrEqual(drawing.bounds.maxX + 1e-9);
            expect(b.minY).toBeGreaterThanOrEqual(drawing.bounds.minY - 1e-9);
            expect(b.maxY).toBeLessThanOrEqual(drawing.bounds.maxY + 1e-9);
          }
        }
      }),
    );
  });

  it('keeps its keys when one length changes', () => {
    const longer: Part = { ...STRAP, legs: STRAP.legs.map((l) => (l.id === 'peg' ? { ...l, length: 114.5 } : l)) };
    const before = mustDraw(STRAP);
    const after = mustDraw(longer);
    expect(keys(after.section)).toEqual(keys(before.section));
    expect(keys(after.blank)).toEqual(keys(before.blank));
  });

  it('keeps the keys of the section for any part when one length changes', () => {
    fc.assert(
      fc.property(workablePart, fc.double({ min: 0.1, max: 20, noNaN: true }), (part, more) => {
        const before = drawn(part);
        const after = drawn({ ...part, legs: part.legs.map((l, i) => (i === 0 ? { ...l, length: l.length + more } : l)) });
        if (!before || !after) return;
        // Which of two positions is the nearer one may change, and with it their order; what is drawn may not.
        expect(keys(after.section).toSorted()).toEqual(keys(before.section).toSorted());
      }),
    );
  });
});
