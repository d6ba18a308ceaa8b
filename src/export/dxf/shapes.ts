/** The drawing in the words of DXF: circles, lines and polylines with bulges, in the file's unit, checked number by number. */
import { bulge, halfTurns } from '../../core/geometry/bulge';
import { distance } from '../../core/geometry/points';
import { TOUCHING_MM } from '../../core/geometry/tolerance';
import type { Arc, Contour, Point, Segment } from '../../core/geometry/types';
import { bad, good, unreachable } from '../../core/result';
import type { Problem, Result } from '../../core/result';
import type { Drawing, Entity } from '../../drawing/entities';
import { formatReal } from '../formatReal';
import { layerUse } from './layers';
import type { LayerPlan } from './layers';

export interface Vertex extends Point {
  readonly bulge: number;
}

export type DxfShape =
  | { readonly kind: 'circle'; readonly layer: number; readonly centre: Point; readonly radius: number }
  | { readonly kind: 'line'; readonly layer: number; readonly from: Point; readonly to: Point }
  | { readonly kind: 'polyline'; readonly layer: number; readonly closed: boolean; readonly vertices: readonly Vertex[] };

/** Places of a coordinate in the file: a millionth of a micrometre, and still below a tenth of one in inches. */
export const PLACES = 9;

/** No sheet is larger than this, mm; it also keeps every number in a form without an exponent. */
const FARTHEST_MM = 1e6;

const within = (value: number): boolean => Math.abs(value) <= FARTHEST_MM;
const pointStands = (p: Point): boolean => within(p.x) && within(p.y);
const same = (a: number, b: number): boolean => formatReal(a, PLACES) === formatReal(b, PLACES);
const problem = (key: string, says: string, amount?: number): Problem => bad(key, says, amount).problem;

function arcProblem(key: string, arc: Arc): Problem | undefined {
  if (!pointStands(arc.centre) || !within(arc.radius) || !(arc.radius > 0) || !(Math.abs(arc.sweep) <= 2 * Math.PI * (1 + 1e-12))) {
    return problem(key, 'An arc here has a radius or an angle that cannot be written. Its radius must be above 0 and its angle a full turn at most.');
  }
  const off = Math.max(Math.abs(distance(arc.centre, arc.from) - arc.radius), Math.abs(distance(arc.centre, arc.to) - arc.radius));
  return off > TOUCHING_MM ? problem(key, `An arc here misses its own ends by ${off.toFixed(6)} mm. Its ends must lie on it.`, off) : undefined;
}

/** What stops a run from being written, if anything does. */
function runProblem(key: string, segments: readonly Segment[], closed: boolean): Problem | undefined {
  const first = segments[0];
  const last = segments.at(-1);
  if (!first || !last) return problem(key, 'There is a path with nothing in it. It needs at least one line or arc.');
  for (const [i, segment] of segments.entries()) {
    if (!pointStands(segment.from) || !pointStands(segment.to)) {
      return problem(key, 'A point here is not a number or lies more than 1 km away. Look at the sizes of the part.');
    }
    if (segment.kind === 'arc') {
      const arc = arcProblem(key, segment);
      if (arc) return arc;
    }
    const next = segments[i + 1] ?? (closed ? first : undefined);
    const gap = next ? distance(segment.to, next.from) : 0;
    if (gap > TOUCHING_MM) return problem(key, `The path has a gap of ${gap.toFixed(6)} mm. It must be joined end to end.`, gap);
  }
  return undefined;
}

function polyline(layer: number, segments: readonly Segment[], closed: boolean, scale: number): DxfShape {
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
  const wrong = runProblem(key, segments, closed);
  if (wrong) return { ok: false, problem: wrong };
  const only = segments[0];
  if (!closed && segments.length === 1 && only?.kind === 'line') {
    const [from, to] = [only.from, only.to].map((p) => ({ x: p.x * scale, y: p.y * scale })) as [Point, Point];
    return good({ kind: 'line', layer, from, to });
  }
  const shape = polyline(layer, segments, closed, scale);
  return shape.kind === 'polyline' && shape.vertices.length < 2
    ? bad(key, 'A path here is too small to be cut. Make it larger or take it out.')
    : good(shape);
}

function contourShape(key: string, layer: number, contour: Contour, scale: number): Result<DxfShape> {
  if (contour.kind === 'path') return runShape(key, layer, contour.segments, true, scale);
  const { centre, radius } = contour;
  if (!pointStands(centre) || !within(radius) || !(radius * scale >= 10 ** -PLACES)) {
    return bad(key, 'A hole here has a centre or a size that cannot be written. Its diameter must be a number above 0.');
  }
  return good({ kind: 'circle', layer, centre: { x: centre.x * scale, y: centre.y * scale }, radius: radius * scale });
}

function entityShapes(entity: Entity, layer: number, scale: number): readonly Result<DxfShape>[] {
  switch (entity.kind) {
    case 'path':
      return entity.runs.map((run) => runShape(entity.key, layer, run.segments, run.closed, scale));
    case 'contours':
      return entity.contours.map((contour) => contourShape(entity.key, layer, contour, scale));
    case 'text':
      return [bad(entity.key, 'A cutting file holds no lettering, since a cutter would cut it. Use the cut drawing.')];
    default:
      return unreachable(entity);
  }
}

/**
 * Every entity of the drawing as a DXF shape, in its order. Paths must be joined to a micrometre's thousandth, numbers finite
 * and within 1 km; the first that is not comes back as the problem, with the entity's key as its field.
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
  return shapes.length > 0 ? good(shapes) : bad('drawing', 'There is nothing to cut in this drawing. Give the part an outline first.');
}
