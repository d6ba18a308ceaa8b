/** What must be true of a drawing before a cutter's file is made of it, whatever the file's form. */
import { distance } from '../core/geometry/points';
import { TOUCHING_MM } from '../core/geometry/tolerance';
import type { Arc, Contour, Point, Segment } from '../core/geometry/types';
import { bad, unreachable } from '../core/result';
import type { Problem } from '../core/result';
import type { Drawing, Entity } from '../drawing/entities';

/** No sheet is larger than this, mm; it also keeps every number in a form without an exponent. */
const FARTHEST_MM = 1e6;
/** A circle smaller than the last place written would have no radius in the file. */
const SMALLEST_MM = 1e-6;

const within = (value: number): boolean => Math.abs(value) <= FARTHEST_MM;
const pointStands = (p: Point): boolean => within(p.x) && within(p.y);
const problem = (key: string, says: string, amount?: number): Problem => bad(key, says, amount).problem;

function arcProblem(key: string, arc: Arc): Problem | undefined {
  if (!pointStands(arc.centre) || !within(arc.radius) || !(arc.radius >= SMALLEST_MM) || !(Math.abs(arc.sweep) <= 2 * Math.PI * (1 + 1e-12))) {
    return problem(key, 'An arc here has a radius or an angle that cannot be written. Its radius must be above 0 and its angle a full turn at most.');
  }
  const off = Math.max(Math.abs(distance(arc.centre, arc.from) - arc.radius), Math.abs(distance(arc.centre, arc.to) - arc.radius));
  return off > TOUCHING_MM ? problem(key, `An arc here misses its own ends by ${off.toFixed(6)} mm. Its ends must lie on it.`, off) : undefined;
}

function runProblem(key: string, segments: readonly Segment[], closed: boolean): Problem | undefined {
  const first = segments[0];
  if (!first) return problem(key, 'There is a path with nothing in it. It needs at least one line or arc.');
  for (const [i, segment] of segments.entries()) {
    if (!pointStands(segment.from) || !pointStands(segment.to)) {
      return problem(key, 'A point here is not a number or lies more than 1 km away. Look at the sizes of the part.');
    }
    const arc = segment.kind === 'arc' ? arcProblem(key, segment) : undefined;
    if (arc) return arc;
    const next = segments[i + 1] ?? (closed ? first : undefined);
    const gap = next ? distance(segment.to, next.from) : 0;
    if (gap > TOUCHING_MM) return problem(key, `The path has a gap of ${gap.toFixed(6)} mm. It must be joined end to end.`, gap);
  }
  return undefined;
}

function contourProblem(key: string, contour: Contour): Problem | undefined {
  if (contour.kind === 'path') return runProblem(key, contour.segments, true);
  return pointStands(contour.centre) && within(contour.radius) && contour.radius >= SMALLEST_MM
    ? undefined
    : problem(key, 'A hole here has a centre or a size that cannot be written. Its diameter must be a number above 0.');
}

const firstOf = <Item>(items: readonly Item[], check: (item: Item) => Problem | undefined): Problem | undefined => {
  for (const item of items) {
    const found = check(item);
    if (found) return found;
  }
  return undefined;
};

function entityProblem(entity: Entity): Problem | undefined {
  switch (entity.kind) {
    case 'path':
      return firstOf(entity.runs, (run) => runProblem(entity.key, run.segments, run.closed));
    case 'contours':
      return firstOf(entity.contours, (contour) => contourProblem(entity.key, contour));
    case 'text':
      return problem(entity.key, 'A cutting file holds no lettering, since a cutter would cut it. Use the cut drawing.');
    default:
      return unreachable(entity);
  }
}

/**
 * The first thing that keeps a drawing from being written as a cutter's file, with the entity's key as its field: lettering, a
 * gap in a path, a number that is not finite or more than 1 km, an arc that misses its ends, a hole without a size, no size
 * at all. Undefined where all is well.
 */
export function unwritable(drawing: Drawing): Problem | undefined {
  if (drawing.entities.length === 0) return problem('drawing', 'There is nothing to cut in this drawing. Give the part an outline first.');
  const found = firstOf(drawing.entities, entityProblem);
  if (found) return found;
  const { minX, minY, maxX, maxY } = drawing.bounds;
  return [minX, minY, maxX, maxY].every(within) ? undefined : problem('drawing', 'The size of this drawing is not known. Use the cut drawing.');
}
