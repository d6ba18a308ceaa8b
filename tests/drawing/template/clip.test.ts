import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arcAbout, line, pathLength, segmentLength } from '../../../src/core/geometry/segments';
import { pointAlong } from '../../../src/core/geometry/splitSegment';
import type { Bounds, Segment } from '../../../src/core/geometry/types';
import { clipRun, inWindow } from '../../../src/drawing/template/clip';

const WINDOW: Bounds = { minX: -20, minY: -18, maxX: 26, maxY: 22 };

const figure = fc.double({ min: -40, max: 40, noNaN: true });
const segment: fc.Arbitrary<Segment> = fc.oneof(
  fc.tuple(figure, figure, figure, figure).map(([a, b, c, d]) => line({ x: a, y: b }, { x: c, y: d })),
  fc
    .tuple(figure, figure, fc.double({ min: 0.1, max: 50, noNaN: true }), fc.double({ min: -7, max: 7, noNaN: true }), fc.double({ min: -2 * Math.PI, max: 2 * Math.PI, noNaN: true }))
    .map(([x, y, radius, start, sweep]) => arcAbout({ x, y }, radius, start, sweep)),
);

describe('cutting a run at a window', () => {
  it('keeps every piece in the window and no less of the run than lies in it', () => {
    let cut = 0;
    fc.assert(
      fc.property(segment, (whole) => {
        const pieces = clipRun({ segments: [whole], closed: false }, WINDOW).flatMap((run) => run.segments);
        for (const piece of pieces) {
          for (const share of [0, 0.3, 0.5, 0.8, 1]) {
            const p = pointAlong(piece, segmentLength(piece) * share);
            expect(inWindow(p, { minX: WINDOW.minX - 1e-6, minY: WINDOW.minY - 1e-6, maxX: WINDOW.maxX + 1e-6, maxY: WINDOW.maxY + 1e-6 })).toBe(true);
          }
        }
        // What lies in the window, counted over 4000 points.
        const points = 4000;
        const inside = Array.from({ length: points }, (_, i) => pointAlong(whole, (segmentLength(whole) * (i + 0.5)) / points)).filter((p) => inWindow(p, WINDOW)).length / points;
        expect(Math.abs(pathLength(pieces) - inside * segmentLength(whole))).toBeLessThanOrEqual((segmentLength(whole) * 8) / points + 1e-9);
        if (inside > 0 && inside < 1) cut += 1;
      }),
      { numRuns: 500 },
    );
    expect(cut).toBeGreaterThan(60);
  });

  it('leaves a run that lies in the window as it is, closed', () => {
    const run = { segments: [arcAbout({ x: 0, y: 0 }, 3, 0, 2 * Math.PI)], closed: true };
    expect(clipRun(run, WINDOW)).toEqual([run]);
    expect(clipRun({ segments: [line({ x: 50, y: 0 }, { x: 60, y: 0 })], closed: false }, WINDOW)).toEqual([]);
  });
});
