/** Arcs as chords, for the folded view only: blank, DXF and paper keep their true arcs. */
import type { Arc, Contour, Point, Segment } from '../../core/geometry/types';
import { SAME_LENGTH_MM } from '../../core/geometry/tolerance';

/** No chord leaves its arc by more than this, mm: half a pixel of a part that fills the view at 25 px/mm. */
export const SAGITTA_MM = 0.02;
/** No chord spans more than this, rad, so that a small hole still looks round when it is brought near. */
export const LONGEST_CHORD = (2 * Math.PI) / 32;

/** Joints that turn by less than this, rad, look smooth and get no line down the wall. Larger than a chord's turn. */
const SMOOTH = Math.PI / 9;
/** Cross product of unit directions below which two lines run straight on. */
const STRAIGHT_ON = 1e-9;

/** A closed polygon, anticlockwise, without its first point repeated. */
export interface Ring {
  /** x and y in turn, mm. */
  readonly points: readonly number[];
  /** Indices of the points where the edge turns a corner that the eye sees. */
  readonly corners: readonly number[];
}

/** How many chords an arc of this radius (mm) and turn (rad) is drawn with. */
export function chordCount(radius: number, sweep: number): number {
  const bySagitta = radius > SAGITTA_MM ? 2 * Math.acos(1 - SAGITTA_MM / radius) : Math.PI;
  // The last 1e-9 keeps a whole number of chords whole when the division is a rounding above it.
  return Math.max(1, Math.ceil(Math.abs(sweep) / Math.min(LONGEST_CHORD, bySagitta) - 1e-9));
}

const angleFrom = (arc: Arc): number => Math.atan2(arc.from.y - arc.centre.y, arc.from.x - arc.centre.x);

function tangent(segment: Segment, at: 'from' | 'to'): Point {
  if (segment.kind === 'line') {
    const dx = segment.to.x - segment.from.x;
    const dy = segment.to.y - segment.from.y;
    const length = Math.hypot(dx, dy);
    return { x: dx / length, y: dy / length };
  }
  const end = segment[at];
  const way = Math.sign(segment.sweep) / segment.radius;
  return { x: -(end.y - segment.centre.y) * way, y: (end.x - segment.centre.x) * way };
}

const hasLength = (s: Segment): boolean =>
  s.kind === 'line' ? Math.hypot(s.to.x - s.from.x, s.to.y - s.from.y) > SAME_LENGTH_MM : s.radius * Math.abs(s.sweep) > SAME_LENGTH_MM;

function ringOfPath(path: readonly Segment[]): Ring {
  const segments = path.filter(hasLength);
  const points: number[] = [];
  const corners: number[] = [];
  segments.forEach((segment, i) => {
    const before = segments.at(i - 1) ?? segment;
    const arriving = tangent(before, 'to');
    const leaving = tangent(segment, 'from');
    const cross = arriving.x * leaving.y - arriving.y * leaving.x;
    const dot = arriving.x * leaving.x + arriving.y * leaving.y;
    // A point in the middle of a straight edge would leave the walls with a vertex that the faces do not have.
    const straightOn = before.kind === 'line' && segment.kind === 'line' && Math.abs(cross) < STRAIGHT_ON && dot > 0;
    if (!straightOn) {
      if (Math.abs(Math.atan2(cross, dot)) > SMOOTH) corners.push(points.length / 2);
      points.push(segment.from.x, segment.from.y);
    }
    if (segment.kind === 'arc') {
      const count = chordCount(segment.radius, segment.sweep);
      const start = angleFrom(segment);
      for (let k = 1; k < count; k++) {
        const angle = start + (segment.sweep * k) / count;
        points.push(segment.centre.x + segment.radius * Math.cos(angle), segment.centre.y + segment.radius * Math.sin(angle));
      }
    }
  });
  return { points, corners };
}

function ringOfCircle(centre: Point, radius: number): Ring {
  const count = chordCount(radius, 2 * Math.PI);
  const points: number[] = [];
  for (let k = 0; k < count; k++) {
    const angle = (2 * Math.PI * k) / count;
    points.push(centre.x + radius * Math.cos(angle), centre.y + radius * Math.sin(angle));
  }
  return { points, corners: [] };
}

/** mm², positive anticlockwise, of a polygon given as x and y in turn. */
export function polygonArea(points: readonly number[]): number {
  let twice = 0;
  const n = points.length;
  for (let i = 0; i < n; i += 2) {
    const j = (i + 2) % n;
    twice += (points[i] ?? 0) * (points[j + 1] ?? 0) - (points[j] ?? 0) * (points[i + 1] ?? 0);
  }
  return twice / 2;
}

function anticlockwise(ring: Ring): Ring {
  if (polygonArea(ring.points) >= 0) return ring;
  const count = ring.points.length / 2;
  const points: number[] = [];
  for (let i = count - 1; i >= 0; i--) points.push(ring.points[2 * i] ?? 0, ring.points[2 * i + 1] ?? 0);
  return { points, corners: ring.corners.map((c) => count - 1 - c).toReversed() };
}

/** The edge as a polygon within `SAGITTA_MM`, anticlockwise whichever way the edge is given. Fewer than three points when it encloses nothing. */
export const ringOf = (contour: Contour): Ring =>
  contour.kind === 'circle' ? ringOfCircle(contour.centre, contour.radius) : anticlockwise(ringOfPath(contour.segments));
