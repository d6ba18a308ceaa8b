/**
 * One part in several stocks laid over one another: the first in full lines, each other in line types of its own. Small letters lead
 * from what differs to the rows of the table.
 */
import { contourBounds, joined, NOTHING, pathBounds } from '../../core/geometry/bounds';
import { placedContour, placedSegment } from '../../core/geometry/pose';
import { line } from '../../core/geometry/segments';
import type { Bounds, Contour, Point, Segment } from '../../core/geometry/types';
import { sectionOutline } from '../../core/part/sectionOutline';
import type { Comparison } from '../../job/compare/compareStocks';
import { datumOf } from '../../job/tables/bendRows';
import type { Shape } from '../../job/workOut';
import { segmentBoxes, uprightBox, type Box } from '../boxes';
import type { Drawing, Entity, Lettering, Role } from '../entities';
import { mainRun } from '../mainRun';
import { drawnBounds, emptySheet } from '../placement';
import { markPlaces, marksOf } from './overlayMarks';

export type OverlayView = 'section' | 'blank';

const GHOSTS = ['ghost 1', 'ghost 2', 'ghost 3', 'ghost 4'] as const;

/** The line of the stock that stands at `index` in the comparison; from the sixth on the line types come round again. */
export const overlayRole = (index: number): Role => (index === 0 ? 'outline' : (GHOSTS[(index - 1) % GHOSTS.length] ?? 'ghost 1'));

/** One stock's lines in a view, ready to be drawn and to be kept clear of. */
interface Lines {
  readonly entities: readonly Entity[];
  readonly segments: readonly Segment[];
  readonly openings: readonly Contour[];
  readonly extent: Bounds;
}

const path = (key: string, role: Role, segments: readonly Segment[], closed: boolean): Entity => ({
  kind: 'path',
  key,
  role,
  runs: closed ? [{ segments, closed }] : segments.map((segment) => ({ segments: [segment], closed: false })),
});

function sectionLines(shape: Shape, key: string, index: number): Lines {
  const { layout, folded } = shape;
  const role = overlayRole(index);
  const outline = sectionOutline(layout, folded).path;
  const { thickness } = layout.part;
  const edges = mainRun(layout, folded).flatMap((leg) =>
    leg.layout.cutouts.flatMap((opening) => {
      const { minX, maxX } = contourBounds(opening.contour);
      return [minX, maxX].map((x) => line(leg.at(x, 0), leg.at(x, -thickness)));
    }),
  );
  return {
    entities: [path(`${key} outline`, role, outline, true), path(`${key} hole edges`, index === 0 ? 'hole edge' : role, edges, false)],
    segments: [...outline, ...edges],
    openings: [],
    extent: pathBounds(outline),
  };
}

function blankLines({ blank }: Shape, key: string, index: number): Lines {
  const role = overlayRole(index);
  const datum = datumOf(blank);
  const move = (p: Point): Point => ({ x: p.x - datum, y: p.y });
  const outline = blank.outline.map((segment) => placedSegment(segment, move));
  const contours = blank.cutouts.map(({ contour }): Contour => placedContour(contour, move));
  const bends = blank.bends.map(({ centreLine: [from, to] }) => line(move(from), move(to)));
  const holes: Entity = { kind: 'contours', key: `${key} holes`, role: index === 0 ? 'hole' : role, contours };
  return {
    entities: [path(`${key} outline`, role, outline, true), holes, path(`${key} bends`, index === 0 ? 'bend centre line' : role, bends, false)],
    segments: [...outline, ...bends],
    openings: contours,
    extent: pathBounds(outline),
  };
}

/**
 * The comparison in one view, mm: in the section x along the first leg from its start and y out of its marked face; on the blank x
 * from the first leg's start and y from the lower edge. A stock in which the part cannot be laid out is left out.
 */
export function overlayDrawing(comparison: Comparison, view: OverlayView, lettering: Lettering): Drawing {
  const { px } = lettering;
  const drawn = comparison.stocks.flatMap(({ stock, worked: { shape } }, i) => {
    if (!shape) return [];
    return [view === 'section' ? sectionLines(shape, stock, i) : blankLines(shape, stock, i)];
  });
  const extent = drawn.reduce<Bounds>((b, { extent: own }) => joined(b, own), NOTHING);
  if (drawn.length === 0) return { entities: [], extent: NO_EXTENT, bounds: NO_EXTENT };
  const boxes: readonly Box[] = drawn.flatMap(({ segments, openings }) => [
    ...segments.flatMap((s) => segmentBoxes('metal', s)),
    ...openings.map((contour) => uprightBox('metal', contourBounds(contour))),
  ]);
  const sheet = emptySheet(px);
  sheet.add(boxes);
  // The full lines of the first stock last, over the others' broken ones.
  const entities: Entity[] = drawn.toReversed().flatMap((d) => d.entities);
  for (const mark of marksOf(comparison, view)) entities.push(...sheet.place(markPlaces(mark, px, sheet)));
  return { entities, extent, bounds: drawnBounds(sheet.bounds(), boxes, px) };
}

const NO_EXTENT: Bounds = { minX: 0, minY: 0, maxX: 0, maxY: 0 };
