/** The blank as it lies on the paper: seen from one face, turned, with its marks to work to. */
import { contourBounds, joined, pathBounds } from '../../core/geometry/bounds';
import { distance, offset } from '../../core/geometry/points';
import { line } from '../../core/geometry/segments';
import type { Bounds, Contour, Point, Segment } from '../../core/geometry/types';
import type { Blank, BlankCutout } from '../../core/part/layoutTypes';
import { byCutout } from '../blankShape';
import type { Face } from './types';

export interface TemplateHole {
  readonly key: string;
  readonly contour: Contour;
  readonly bounds: Bounds;
  readonly centre: Point;
  /** Where the punch goes: its centre, and for a slot the middles of its round ends too. */
  readonly punches: readonly Point[];
}

/** Openings of one cut-out. */
export interface TemplateHoles {
  readonly leg: number;
  readonly cutout: number;
  readonly item: BlankCutout;
  readonly holes: readonly TemplateHole[];
}

export interface TemplateBend {
  /** Ringed number. */
  readonly number: number;
  readonly turn: number;
  /** As told from the face seen. */
  readonly way: 'up' | 'down';
  readonly tangents: readonly Segment[];
  readonly from: Point;
  readonly to: Point;
}

export interface TemplateShape {
  readonly outline: readonly Segment[];
  readonly groups: readonly TemplateHoles[];
  readonly bends: readonly TemplateBend[];
  /** Places on the datum edge where its mark may stand, its middle first, and the direction (unit) away from the metal there. */
  readonly datum: { readonly places: readonly Point[]; readonly out: Point };
  readonly bounds: Bounds;
}

/** Tangent lines nearer than this to the centre line are not drawn: a sharp inner corner has only one line, mm. */
const SEEN_APART_MM = 0.1;
/** A corner this near the start of the first leg belongs to its edge, mm. */
const SAME_EDGE_MM = 1e-6;

/** Moves the plane: from the other face it is mirrored top to bottom; then it may be turned a quarter to the left. */
interface Move {
  readonly point: (p: Point) => Point;
  readonly mirrored: boolean;
}

function mover(blank: Blank, face: Face, quarter: boolean): Move {
  const { minX, minY, maxY } = blank.bounds;
  const mirrored = face === 'other';
  const height = maxY - minY;
  return {
    mirrored,
    point: (p) => {
      const x = p.x - minX;
      const y = mirrored ? maxY - p.y : p.y - minY;
      return quarter ? { x: height - y, y: x } : { x, y };
    },
  };
}

const segmentMoved = (s: Segment, { point, mirrored }: Move): Segment =>
  s.kind === 'line'
    ? line(point(s.from), point(s.to))
    : { ...s, from: point(s.from), to: point(s.to), centre: point(s.centre), sweep: mirrored ? -s.sweep : s.sweep };

const contourMoved = (c: Contour, move: Move): Contour =>
  c.kind === 'circle' ? { ...c, centre: move.point(c.centre) } : { kind: 'path', segments: c.segments.map((s) => segmentMoved(s, move)) };

function punches(item: BlankCutout): readonly Point[] {
  const { shape, centre, heading } = item;
  if (shape.kind !== 'slot' || shape.length <= shape.width) return [centre];
  const along = heading + shape.turn;
  const half = (shape.length - shape.width) / 2;
  const end = (side: number): Point => ({ x: centre.x + side * half * Math.cos(along), y: centre.y + side * half * Math.sin(along) });
  return [centre, end(-1), end(1)];
}

/**
 * The blank as it is printed, lower left corner at the origin. Seen from the other face everything is mirrored and a bend up is
 * told as a bend down. `quarter` turns it a quarter to the left.
 */
export function templateShape(blank: Blank, face: Face, quarter: boolean): TemplateShape {
  const move = mover(blank, face, quarter);
  const { point } = move;
  const outline = blank.outline.map((s) => segmentMoved(s, move));
  const first = blank.legs[0] ?? { x: 0, y: 0, heading: 0 };
  const edge = datumEdge(blank);
  const at = point(first);
  const away = point({ x: first.x - Math.cos(first.heading), y: first.y - Math.sin(first.heading) });
  const groups = byCutout(blank.cutouts).flatMap((items): readonly TemplateHoles[] => {
    const [item] = items;
    if (!item) return [];
    const holes = items.map((own): TemplateHole => {
      const contour = contourMoved(own.contour, move);
      return { key: `${own.leg}/${own.cutout}/${own.item}`, contour, bounds: contourBounds(contour), centre: point(own.centre), punches: punches(own).map(point) };
    });
    return [{ leg: item.leg, cutout: item.cutout, item, holes }];
  });
  const bends = blank.bends.map((bend): TemplateBend => {
    const [from, to] = bend.centreLine;
    const tangents = [bend.startTangent, bend.endTangent].filter((tangent) => distance(tangent[0], from) > SEEN_APART_MM);
    return {
      number: bend.leg,
      turn: bend.figures.turn,
      way: (bend.way === 'up') === (face === 'marked') ? 'up' : 'down',
      tangents: tangents.map(([a, b]) => line(point(a), point(b))),
      from: point(from),
      to: point(to),
    };
  });
  const bounds = bends.reduce((b, bend) => joined(b, pathBounds([line(bend.from, bend.to)])), pathBounds(outline));
  return { outline, groups, bends, datum: { places: edge.map((y) => point(offset(first, first.heading + Math.PI / 2, y))), out: { x: away.x - at.x, y: away.y - at.y } }, bounds };
}

/** mm across the first leg at which its start is square to it: where a rounded end only touches the datum, its middle alone. */
function datumEdge(blank: Blank): readonly number[] {
  const first = blank.legs[0] ?? { x: 0, y: 0, heading: 0 };
  const [cos, sin] = [Math.cos(first.heading), Math.sin(first.heading)];
  const across = (blank.plans[0] ?? [])
    .map(({ from }) => ({ x: (from.x - first.x) * cos + (from.y - first.y) * sin, y: (from.y - first.y) * cos - (from.x - first.x) * sin }))
    .filter((p) => Math.abs(p.x) < SAME_EDGE_MM)
    .map((p) => p.y);
  const [low, high] = [Math.min(0, ...across), Math.max(0, ...across)];
  return [0, 0.3, -0.3, 0.6, -0.6, 0.9, -0.9].map((share) => share * (share > 0 ? high : -low)).filter((y, i) => i === 0 || y !== 0);
}

/** Middle of a bend's centre line. */
export const middleOf = (bend: TemplateBend): Point => ({ x: (bend.from.x + bend.to.x) / 2, y: (bend.from.y + bend.to.y) / 2 });
