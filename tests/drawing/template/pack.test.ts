import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pack, type Shape } from '../../../src/drawing/template/pack';

const ROOM: Shape = { width: 180, height: 250 };
const GAP = 6;

const item = fc.record({ width: fc.integer({ min: 5, max: 180 }), height: fc.integer({ min: 5, max: 180 }) }).map(({ width, height }): readonly Shape[] => [{ width, height }, { width: height, height: width }]);

describe('packing', () => {
  it('puts every item on a sheet once, inside the room, none nearer another than the gap', () => {
    let many = 0;
    fc.assert(
      fc.property(fc.array(item, { minLength: 1, maxLength: 25 }), (items) => {
        const packed = pack(items, ROOM, GAP);
        expect(packed?.map((p) => p.item).toSorted((a, b) => a - b)).toEqual(items.map((_, i) => i));
        const boxes = (packed ?? []).map((p) => ({ ...p, own: items[p.item]?.[p.shape] as Shape }));
        for (const { x, y, own } of boxes) {
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x + own.width).toBeLessThanOrEqual(ROOM.width + 1e-9);
          expect(y + own.height).toBeLessThanOrEqual(1e-9);
          expect(y).toBeGreaterThanOrEqual(-ROOM.height - 1e-9);
        }
        boxes.forEach((a, i) => {
          for (const b of boxes.slice(i + 1).filter((other) => other.sheet === a.sheet)) {
            many += 1;
            expect(Math.max(b.x - a.x - a.own.width, a.x - b.x - b.own.width, b.y - a.y - a.own.height, a.y - b.y - b.own.height)).toBeGreaterThanOrEqual(GAP - 1e-9);
          }
        });
      }),
      { numRuns: 200 },
    );
    expect(many).toBeGreaterThan(1000);
  });

  it('turns items where fewer sheets come of it', () => {
    const long: readonly Shape[] = [{ width: 20, height: 170 }, { width: 170, height: 20 }];
    // Lying, nine of them and eight gaps stand above one another in 228 mm; upright, only seven stand side by side.
    const packed = pack(Array.from({ length: 9 }, () => long), ROOM, GAP);
    expect(new Set(packed?.map((p) => p.sheet)).size).toBe(1);
  });

  it('answers nothing where an item fits in no shape', () => expect(pack([[{ width: 300, height: 300 }]], ROOM, GAP)).toBeUndefined());
});
