/** A library for plane shapes that keeps true arcs judges the blank: areas, and that plans and bend zones tile the outline. */
import * as fc from 'fast-check';
import { arc, BooleanOperations, circle, point, Polygon, segment } from '@flatten-js/core';
import { describe, expect, it } from 'vitest';
import { unfold } from '../../src/core/part/unfold';
import type { ClosedPath, Contour, Point } from '../../src/core/geometry/types';
import type { Blank } from '../../src/core/part/layoutTypes';
import { laidOut } from '../core/part/laidOut';
import { pathPoints } from '../core/part/measure';
import { randomPart } from '../core/part/randomParts';

/** Built face by face: handed an arc, the library's constructor answers an empty polygon without a word. */
function polygonOf(path: ClosedPath): InstanceType<typeof Polygon> {
  const shapes = path.map((s) => {
    if (s.kind === 'line') return segment(point(s.from.x, s.from.y), point(s.to.x, s.to.y));
    const start = Math.atan2(s.from.y - s.centre.y, s.from.x - s.centre.x);
    return arc(point(s.centre.x, s.centre.y), s.radius, start, start + s.sweep, s.sweep > 0);
  });
  const polygon = new Polygon();
  polygon.addFace(shapes);
  if (polygon.faces.size === 0) throw new Error('an empty polygon');
  return polygon;
}

function contourPolygon(contour: Contour): InstanceType<typeof Polygon> {
  if (contour.kind === 'path') return polygonOf(contour.segments);
  const polygon = new Polygon();
  polygon.addFace(circle(point(contour.centre.x, contour.centre.y), contour.radius));
  return polygon;
}

interface Tile {
  readonly called: string;
  readonly polygon: InstanceType<typeof Polygon>;
}

/** A path drawn in towards a point inside it, so that it shares no edge with its neighbours: the library cannot join those. */
const drawnIn = (path: ClosedPath, share: number): ClosedPath => {
  const x = path.reduce((sum, s) => sum + s.from.x, 0) / path.length;
  const y = path.reduce((sum, s) => sum + s.from.y, 0) / path.length;
  const move = (p: Point): Point => ({ x: x + (p.x - x) * share, y: y + (p.y - y) * share });
  return path.map((s) => (s.kind === 'line' ? { ...s, from: move(s.from), to: move(s.to) } : { ...s, from: move(s.from), to: move(s.to), centre: move(s.centre), radius: s.radius * share }));
};

/** Plans as they are; bend zones, which are rectangles, drawn in by a thousandth. No two plans share an edge, nor do two zones. */
const tilesOf = (blank: Blank): Tile[] => [
  ...blank.plans.map((path, i): Tile => ({ called: `plan ${i}`, polygon: polygonOf(path) })),
  ...blank.bends.map((bend): Tile => ({ called: `bend ${bend.leg}`, polygon: polygonOf(drawnIn(bend.zone, 0.999)) })),
];

/** No leg so short that the library, whose points are one within 1e-6 mm, loses it. */
const whole = randomPart({ legs: 10, shortest: 1 });
/** And nothing lies over anything else by the part's own making. */
const sound = randomPart({ sound: true, legs: 8, shortest: 1 });

describe('an independent plane geometry', () => {
  it('finds the same area within the plans, the zones and the openings', () => {
    fc.assert(
      fc.property(whole, (part) => {
        const blank = unfold(laidOut(part));
        const plans = blank.plans.reduce((sum, path) => sum + polygonOf(path).area(), 0);
        const zones = blank.bends.reduce((sum, bend) => sum + polygonOf(bend.zone).area(), 0);
        const openings = blank.cutouts.reduce((sum, { contour }) => sum + contourPolygon(contour).area(), 0);
        expect(Math.abs(plans + zones - openings - blank.area)).toBeLessThan(1e-9 * Math.max(1, plans));
      }),
      { numRuns: 100 },
    );
  });

  it('finds the same area within the outline', () => {
    // An outline that crosses itself has no area that two libraries need agree on, so only sound parts are asked.
    fc.assert(
      fc.property(sound, (part) => {
        const blank = unfold(laidOut(part));
        const openings = blank.cutouts.reduce((sum, { contour }) => sum + contourPolygon(contour).area(), 0);
        expect(Math.abs(polygonOf(blank.outline).area() - openings - blank.area)).toBeLessThan(1e-9 * blank.area);
      }),
      { numRuns: 100 },
    );
  });

  it('finds that no plan and no bend zone lies over another', () => {
    let pairs = 0;
    let asked = 0;
    fc.assert(
      fc.property(sound, (part) => {
        const tiles = tilesOf(unfold(laidOut(part)));
        for (const [i, a] of tiles.entries())
          for (const b of tiles.slice(i + 1)) {
            pairs++;
            // Boxes that lie apart are proof enough.
            if (a.polygon.box.not_intersect(b.polygon.box)) continue;
            asked++;
            expect(BooleanOperations.intersect(a.polygon, b.polygon).area()).toBe(0);
          }
      }),
      { numRuns: 60 },
    );
    expect(pairs).toBeGreaterThan(300);
    expect(asked).toBeGreaterThan(8);
  });

  it('finds every corner of each plan and each zone within the outline: none over another and the areas equal, they cover it', () => {
    fc.assert(
      fc.property(sound, (part) => {
        const blank = unfold(laidOut(part));
        const outline = polygonOf(blank.outline);
        for (const path of [...blank.plans, ...blank.bends.map((bend) => bend.zone)])
          for (const p of pathPoints(path, 8)) expect(outline.contains(point(p.x, p.y))).toBe(true);
        const plans = blank.plans.reduce((sum, path) => sum + polygonOf(path).area(), 0);
        const zones = blank.bends.reduce((sum, bend) => sum + polygonOf(bend.zone).area(), 0);
        expect(Math.abs(plans + zones - outline.area())).toBeLessThan(1e-9 * Math.max(1, plans));
      }),
      { numRuns: 40 },
    );
  });

  it('finds every opening of a sound part within its leg’s plan', () => {
    let openings = 0;
    fc.assert(
      fc.property(sound, (part) => {
        const blank = unfold(laidOut(part));
        for (const { contour, leg } of blank.cutouts) {
          const plan = blank.plans[leg];
          if (!plan) throw new Error(`no plan ${leg}`);
          openings++;
          expect(polygonOf(plan).contains(contourPolygon(contour))).toBe(true);
        }
      }),
      { numRuns: 40 },
    );
    expect(openings).toBeGreaterThan(20);
  });
});
