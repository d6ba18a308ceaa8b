/** Tiles laid together by their register crosses, as poppler reads them, against the whole blank. */
import { describe, expect, it } from 'vitest';
import { pointAlong } from '../../../src/core/geometry/splitSegment';
import { segmentLength } from '../../../src/core/geometry/segments';
import type { Bounds, Point, Segment } from '../../../src/core/geometry/types';
import { CROSS_ARM_MM } from '../../../src/drawing/template/tiles';
import { templatePages } from '../../../src/drawing/template/templatePages';
import type { TemplateSettings, TemplateSubject } from '../../../src/drawing/template/types';
import { writePdf } from '../../../src/export/pdf/writePdf';
import { largePlate, longStrap, settings } from '../../drawing/template/subjects';
import { must } from '../must';
import { fonts } from './fonts';
import { boundsOf, on, readPaths, readText, type ReadPath } from './poppler';

type Piece = readonly Point[];

interface ReadTile {
  readonly row: number;
  readonly column: number;
  readonly crosses: readonly Point[];
  readonly edges: readonly Piece[];
}

/** Middles of the register crosses: two strokes of the same middle, in their own width. */
const crossesOf = (paths: readonly ReadPath[]): readonly Point[] =>
  paths
    .filter((p) => Math.abs(p.width - 0.18) < 0.001 && !p.closed && !p.dashed && p.pieces.length === 2)
    .map((p) => boundsOf(p.pieces))
    .filter((b) => [b.maxX - b.minX, b.maxY - b.minY].every((arms) => Math.abs(arms / (2 * CROSS_ARM_MM) - 1) < 0.03))
    .map((b) => ({ x: (b.minX + b.maxX) / 2, y: (b.minY + b.maxY) / 2 }));

const byX = (a: Point, b: Point): number => a.x - b.x;
const byY = (a: Point, b: Point): number => a.y - b.y;

/** Crosses along one edge of a tile, those furthest that way. */
function along(tile: ReadTile, edge: 'left' | 'right' | 'top' | 'bottom'): readonly Point[] {
  const key = edge === 'left' || edge === 'right' ? 'x' : 'y';
  const furthest = (edge === 'left' || edge === 'bottom' ? Math.min : Math.max)(...tile.crosses.map((c) => c[key]));
  return tile.crosses.filter((c) => Math.abs(c[key] - furthest) < 0.05).toSorted(key === 'x' ? byY : byX);
}

/** How far the second tile must be moved for its crosses to lie on the first's; every pair must agree. */
function shift(a: readonly Point[], b: readonly Point[]): Point {
  expect(a.length).toBeGreaterThanOrEqual(2);
  expect(b).toHaveLength(a.length);
  const all = a.map((p, i) => ({ x: p.x - (b[i]?.x ?? NaN), y: p.y - (b[i]?.y ?? NaN) }));
  const first = all[0] ?? { x: NaN, y: NaN };
  for (const one of all) expect(Math.hypot(one.x - first.x, one.y - first.y)).toBeLessThan(0.01);
  return first;
}

function assembled(subject: TemplateSubject, own: TemplateSettings, trueTo: Point): { readonly pieces: readonly Piece[]; readonly tiles: number; readonly bounds: Bounds } {
  const pages = must(templatePages([subject], own));
  const bytes = must(writePdf(pages, { title: 'tiles', fonts, date: '2026-11-05' }));
  // A printer that is out, where one is: the paper as it comes out.
  const printed = (p: Point): Point => ({ x: p.x * trueTo.x, y: p.y * trueTo.y });
  const tiles = pages.map((page, i): ReadTile => {
    const [, letter = '', column = ''] = /tile ([A-Z])(\d+)$/.exec(page.name) ?? [];
    const paths = readPaths(bytes, i + 1);
    return {
      row: letter.charCodeAt(0) - 65,
      column: Number(column) - 1,
      crosses: crossesOf(paths).map(printed),
      edges: paths.filter((p) => Math.abs(p.width - 0.2) < 0.001).flatMap((p) => p.pieces.map((piece) => piece.map(printed))),
    };
  });
  const at = (row: number, column: number): ReadTile | undefined => tiles.find((t) => t.row === row && t.column === column);
  const pieces: Piece[] = [];
  let begin: Point = { x: 0, y: 0 };
  for (let row = 0; at(row, 0); row++) {
    const above = at(row - 1, 0);
    const first = at(row, 0) as ReadTile;
    if (above) {
      const by = shift(along(above, 'bottom'), along(first, 'top'));
      begin = { x: begin.x + by.x, y: begin.y + by.y };
    }
    let by = begin;
    for (let column = 0, tile = at(row, 0); tile; tile = at(row, ++column)) {
      const before = at(row, column - 1);
      if (before) {
        const step = shift(along(before, 'right'), along(tile, 'left'));
        by = { x: by.x + step.x, y: by.y + step.y };
      }
      const { x, y } = by;
      pieces.push(...tile.edges.map((piece) => piece.map((p) => ({ x: p.x + x, y: p.y + y }))));
    }
  }
  return { pieces, tiles: tiles.length, bounds: boundsOf(pieces) };
}

function distance(p: Point, piece: Piece): number {
  // The corners of a curve hold it: far from them it need not be looked at.
  const reach = (key: 'x' | 'y'): boolean => piece.every((c) => c[key] < p[key] - 1) || piece.every((c) => c[key] > p[key] + 1);
  if (reach('x') || reach('y')) return Infinity;
  let least = Infinity;
  const steps = piece.length > 2 ? 100 : 1;
  for (let i = 0; i < steps; i++) {
    const [a, b] = [on(piece, i / steps), on(piece, (i + 1) / steps)];
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const share = dx * dx + dy * dy > 0 ? Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy))) : 0;
    least = Math.min(least, Math.hypot(p.x - a.x - share * dx, p.y - a.y - share * dy));
  }
  return least;
}

/** mm from a point to a line, or to the whole circle of an arc. */
function away(p: Point, segment: Segment): number {
  if (segment.kind === 'arc') return Math.abs(Math.hypot(p.x - segment.centre.x, p.y - segment.centre.y) - segment.radius);
  return distance(p, [segment.from, segment.to]);
}

const TRUE: Point = { x: 1, y: 1 };

describe('tiles laid together', () => {
  it.each<[string, TemplateSubject, TemplateSettings, Point]>([
    ['a strap of 600 mm', longStrap(), settings(), TRUE],
    ['the same on lying Letter', longStrap(), settings({ paper: 'Letter', turn: 'lying', overlap: 14 }), TRUE],
    ['a plate of 400 × 420 mm', largePlate(), settings(), TRUE],
    ['the plate for a printer that is out', largePlate(), settings({ correction: { x: 100 / 98.7, y: 100 / 101.2 } }), { x: 0.987, y: 1.012 }],
  ])('make %s whole', (_, subject, own, printer) => {
    const { pieces, tiles, bounds } = assembled(subject, own, printer);
    expect(tiles).toBeGreaterThan(2);
    const { blank } = subject;
    const [width, height] = [bounds.maxX - bounds.minX, bounds.maxY - bounds.minY];
    const quarter = Math.abs(width - blank.bounds.maxX) > 1;
    expect(Math.abs((quarter ? height : width) - blank.bounds.maxX)).toBeLessThan(0.01);
    expect(Math.abs((quarter ? width : height) - blank.bounds.maxY)).toBeLessThan(0.01);
    const put = (p: Point): Point => (quarter ? { x: bounds.minX + blank.bounds.maxY - p.y, y: bounds.minY + p.x } : { x: bounds.minX + p.x, y: bounds.minY + p.y });
    // Every point of the blank's edges is on the paper,
    const wanted = [...blank.outline, ...blank.cutouts.flatMap(({ contour }) => (contour.kind === 'path' ? contour.segments : []))];
    for (const segment of wanted) {
      const count = Math.ceil(segmentLength(segment) / 5);
      for (let i = 0; i <= count; i++) {
        const p = put(pointAlong(segment, (segmentLength(segment) * i) / count));
        expect(Math.min(...pieces.map((piece) => distance(p, piece)))).toBeLessThan(0.01);
      }
    }
    // every round hole is there,
    for (const { contour, centre } of blank.cutouts) {
      if (contour.kind !== 'circle') continue;
      const middle = put(centre);
      for (const angle of [0, 1, 2, 3, 4, 5, 6]) {
        const p = { x: middle.x + contour.radius * Math.cos(angle), y: middle.y + contour.radius * Math.sin(angle) };
        expect(Math.min(...pieces.map((piece) => distance(p, piece)))).toBeLessThan(0.01);
      }
    }
    // and nothing else is drawn as an edge.
    const back = (p: Point): Point => (quarter ? { x: p.y - bounds.minY, y: blank.bounds.maxY - (p.x - bounds.minX) } : { x: p.x - bounds.minX, y: p.y - bounds.minY });
    const round = blank.cutouts.flatMap(({ contour }) => (contour.kind === 'circle' ? [contour] : []));
    for (const piece of pieces) {
      const p = back(on(piece, 0.5));
      const off = [...wanted.map((segment) => away(p, segment)), ...round.map(({ centre, radius }) => Math.abs(Math.hypot(p.x - centre.x, p.y - centre.y) - radius))];
      expect(Math.min(...off)).toBeLessThan(0.01);
    }
  });

  it('say which tile each is', () => {
    const pages = must(templatePages([largePlate()], settings()));
    expect(pages.map((p) => p.name)).toEqual(['A1', 'A2', 'A3', 'B1', 'B2', 'B3'].map((name) => `Back plate tile ${name}`));
    const text = readText(must(writePdf(pages, { title: 'tiles', fonts, date: '2026-11-05' })));
    for (const said of ['A1', 'B3', 'of A1 to B3', 'Sheet 6 of 6']) expect(text).toContain(said);
  });
});
