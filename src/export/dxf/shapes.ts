/** The drawing in the words of DXF: circles, lines and polylines with bulges, in the file's unit. */
import { bulge, halfTurns } from '../../core/geometry/bulge';
import type { Contour, Point, Segment } from '../../core/geometry/types';
import { bad, good, unreachable } from '../../core/result';
import type { Result } from '../../core/result';
import type { Drawing, Entity } from '../../drawing/entities';
import { formatReal } from '../formatReal';
import { layerUse } from './layers';
import type { LayerPlan } from './layers';

export interface Vertex extends Point {
  readonly bulge: number;
}

export interface Polyline {
  readonly kind: 'polyline';
  readonly layer: number;
  readonly closed: boolean;
  readonly vertices: readonly Vertex[];
}

export type DxfShape =
  | { readonly kind: 'circle'; readonly layer: number; readonly centre: Point; readonly radius: number }
  | { readonly kind: 'line'; readonly layer: number; readonly from: Point; readonly to: Point }
  | Polyline;

/** Places of a coordinate in the file: a millionth of a micrometre, and still below a tenth of one in inches. */
export const PLACES = 9;

const same = (a: number, b: number): boolean => formatReal(a, PLACES) === formatReal(b, PLACES);

function polyline(layer: number, segments: readonly Segment[], closed: boolean, scale: number): Polyline {
  const pieces = segments.flatMap((s): readonly Segment[] => (s.kind === 'arc' ? halfTurns(s) : [s]));
  const vertices = pieces
    .map((s) => ({ x: s.from.x * scale, y: s.from.y * scale, toX: s.to.x * scale, toY: s.to.y * scale, bulge: bulge(s) }))
    // A segment shorter than the last place would become two equal points.
    .filter((v) => !(same(v.x, v.toX) && same(v.y, v.toY)))
    .map(({ x, y, bulge }): Vertex => ({ x, y, bulge }));
  const end = pieces.at(-1);
  if (!closed && end) vertices.push({ x: end.to.x * scale, y: end.to.y * scale, bulge: 0 });
  return { kind: 'polyline', layer, closed, vertices };
}

function runShape(key: string, layer: number, segments: readonly Segment[], closed: boolean, scale: number): Result<DxfShape> {
  const only = segments[0];
  if (!closed && segments.length === 1 && only?.kind === 'line') {
    const [from, to] = [only.from, only.to].map((p) => ({ x: p.x * scale, y: p.y * scale })) as [Point, Point];
    return good({ kind: 'line', layer, from, to });
  }
  const shape = polyline(layer, segments, closed, scale);
  return shape.vertices.length < 2 ? bad(key, 'A path here is too small to be cut. Make it larger or take it out.') : good(shape);
}

function contourShape(key: string, layer: number, contour: Contour, scale: number): Result<DxfShape> {
  if (contour.kind === 'path') return runShape(key, layer, contour.segments, true, scale);
  const { centre, radius } = contour;
  return good({ kind: 'circle', layer, centre: { x: centre.x * scale, y: centre.y * scale }, radius: radius * scale });
}

function entityShapes(entity: Entity, layer: number, scale: number): readonly Result<DxfShape>[] {
  switch (entity.kind) {
    case 'path':
      return entity.runs.map((run) => runShape(entity.key, layer, run.segments, run.closed, scale));
    case 'contours':
      return entity.contours.map((contour) => contourShape(entity.key, layer, contour, scale));
    case 'text':
      return [];
    default:
      return unreachable(entity);
  }
}

/**
 * Every entity of a drawing that `unwritable` has passed as DXF shapes, in its order.
 * Refuses a path of which nothing is left at the last place written.
 */
export function dxfShapes(drawing: Drawing, plan: LayerPlan, unitsPerMm: number): Result<readonly DxfShape[]> {
  const shapes: DxfShape[] = [];
  for (const entity of drawing.entities) {
    const use = layerUse(entity.role);
    const layer = use && plan.of[use];
    if (layer === undefined) return bad(entity.key, 'This has no layer to go to.');
    for (const shape of entityShapes(entity, layer, unitsPerMm)) {
      if (!shape.ok) return shape;
      shapes.push(shape.value);
    }
  }
  return good(shapes);
}
