/** Entities as runs of lines and Bézier pieces, ready for any sink that knows no arcs or stretches the page. mm. */
import { arcAbout } from '../core/geometry/segments';
import type { Arc, Contour, Point, Segment } from '../core/geometry/types';
import { unreachable } from '../core/result';
import type { Entity, TextEntity } from '../drawing/entities';

export type Step =
  | { readonly kind: 'line'; readonly to: Point }
  | { readonly kind: 'curve'; readonly control1: Point; readonly control2: Point; readonly to: Point };

export interface Run {
  readonly from: Point;
  readonly steps: readonly Step[];
  readonly closed: boolean;
}

/** Largest piece of an arc drawn as one curve, rad: an eighth of a turn is out by 4.2e-6 of the radius, a quarter by 2.7e-4. */
const PIECE = Math.PI / 4;

/**
 * An arc as Bézier curves of at most an eighth of a turn each, ends exact.
 * Source: control points at 4/3 tan(φ/4) of the radius along the tangents, as in every text on these curves.
 */
export function arcCurves(arc: Arc): readonly Step[] {
  const pieces = Math.max(1, Math.ceil(Math.abs(arc.sweep) / PIECE - 1e-9));
  const { centre, radius } = arc;
  const sweep = arc.sweep / pieces;
  const reach = (4 / 3) * Math.tan(sweep / 4) * radius;
  const start = Math.atan2(arc.from.y - centre.y, arc.from.x - centre.x);
  const on = (angle: number): Point => ({ x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) });
  const along = (p: Point, angle: number, by: number): Point => ({ x: p.x - by * Math.sin(angle), y: p.y + by * Math.cos(angle) });
  return Array.from({ length: pieces }, (_, i) => {
    const [a, b] = [start + i * sweep, start + (i + 1) * sweep];
    const from = i === 0 ? arc.from : on(a);
    const to = i === pieces - 1 ? arc.to : on(b);
    return { kind: 'curve', control1: along(from, a, reach), control2: along(to, b, -reach), to };
  });
}

const steps = (segment: Segment): readonly Step[] => (segment.kind === 'line' ? [{ kind: 'line', to: segment.to }] : arcCurves(segment));

function run(segments: readonly Segment[], closed: boolean): readonly Run[] {
  const first = segments[0];
  return first ? [{ from: first.from, steps: segments.flatMap(steps), closed }] : [];
}

function contourRun(contour: Contour): readonly Run[] {
  return contour.kind === 'path' ? run(contour.segments, true) : run([arcAbout(contour.centre, contour.radius, 0, 2 * Math.PI)], true);
}

export function runsOf(entity: Exclude<Entity, TextEntity>): readonly Run[] {
  switch (entity.kind) {
    case 'path':
      return entity.runs.flatMap((r) => run(r.segments, r.closed));
    case 'contours':
      return entity.contours.flatMap(contourRun);
    default:
      return unreachable(entity);
  }
}
