/** Cut-outs in the frame of their leg: where each repeat stands, and its edge. */
import { SAME_LENGTH_MM } from '../geometry/tolerance';
import { arcAbout, line, withEnds } from '../geometry/segments';
import { placedContour, placer } from '../geometry/pose';
import { unreachable } from '../result';
import type { Contour, Point, Segment } from '../geometry/types';
import type { LegCutout } from './layoutTypes';
import type { Cutout, CutoutShape, Pattern } from './types';
import { halfWidthAt, type LongEdge } from './longEdge';

/** Distances (mm) of a run's items from the first place: onwards, backwards, or centred on it. */
function run(count: number, pitch: number, from: 'onwards' | 'backwards' | 'centred'): number[] {
  const first = from === 'centred' ? (-(count - 1) * pitch) / 2 : 0;
  const stride = from === 'backwards' ? -pitch : pitch;
  return Array.from({ length: count }, (_, i) => first + i * stride);
}

interface Counts {
  readonly alongCount: number;
  readonly alongPitch: number;
  readonly acrossCount: number;
  readonly acrossPitch: number;
}

function counts(pattern: Pattern): Counts {
  const once = { alongCount: 1, alongPitch: 0, acrossCount: 1, acrossPitch: 0 };
  switch (pattern.kind) {
    case 'single':
      return once;
    case 'row':
      return pattern.direction === 'along'
        ? { ...once, alongCount: pattern.count, alongPitch: pattern.pitch }
        : { ...once, acrossCount: pattern.count, acrossPitch: pattern.pitch };
    case 'grid':
      return pattern;
    default:
      return unreachable(pattern);
  }
}

/** How many openings a cut-out makes. */
export function cutoutCount(pattern: Pattern): number {
  const { alongCount, acrossCount } = counts(pattern);
  return alongCount * acrossCount;
}

/** Edge of a cut-out of this shape about (0, 0), before it is moved: true circle, or lines and true arcs, anticlockwise. */
export function contourAt(shape: CutoutShape, centre: Point): Contour {
  if (shape.kind === 'round') return { kind: 'circle', centre, radius: shape.diameter / 2 };
  const halfLength = shape.length / 2;
  const halfWidth = shape.width / 2;
  const corner = shape.kind === 'slot' ? halfWidth : shape.corner;
  if (shape.kind === 'slot' && shape.length === shape.width) return { kind: 'circle', centre, radius: halfWidth };
  const segments: Segment[] = [];
  const quarter = Math.PI / 2;
  const x = halfLength - corner;
  const y = halfWidth - corner;
  const corners: readonly Point[] = [{ x, y: -y }, { x, y }, { x: -x, y }, { x: -x, y: -y }];
  if (shape.kind === 'slot') {
    const right = withEnds(arcAbout({ x, y: 0 }, corner, -quarter, Math.PI), { x, y: -corner }, { x, y: corner });
    const left = withEnds(arcAbout({ x: -x, y: 0 }, corner, quarter, Math.PI), { x: -x, y: corner }, { x: -x, y: -corner });
    segments.push(line(left.to, right.from), right, line(right.to, left.from), left);
  } else if (corner <= SAME_LENGTH_MM) {
    corners.forEach((p, i) => segments.push(line(p, corners[(i + 1) % 4] ?? p)));
  } else {
    const arcs = corners.map((p, i) => arcAbout(p, corner, (i - 1) * quarter, quarter));
    arcs.forEach((arc, i) => {
      const next = arcs[(i + 1) % 4] ?? arc;
      segments.push(arc);
      if (Math.hypot(next.from.x - arc.to.x, next.from.y - arc.to.y) > SAME_LENGTH_MM) segments.push(line(arc.to, next.from));
      else segments[segments.length - 1] = withEnds(arc, arc.from, next.from);
    });
  }
  return placedContour({ kind: 'path', segments }, placer({ ...centre, heading: shape.turn }));
}

/**
 * Every opening of one cut-out.
 * @param datum x in the leg's frame from which `along` counts, mm
 * A position across that is given from an edge follows a tapering edge, item by item.
 */
export function cutoutPlaces(cutout: Cutout, index: number, datum: number, edge: LongEdge): LegCutout[] {
  const { alongCount, alongPitch, acrossCount, acrossPitch } = counts(cutout.pattern);
  const { along, across } = cutout;
  const x0 = along.from === 'end' ? datum - along.distance : datum + along.distance;
  const xs = run(alongCount, alongPitch, ({ start: 'onwards', end: 'backwards', middle: 'centred' } as const)[along.from]);
  const ys = run(acrossCount, acrossPitch, ({ right: 'onwards', left: 'backwards', centre: 'centred' } as const)[across.from]);
  const places: LegCutout[] = [];
  for (const dx of xs) {
    const x = x0 + dx;
    const half = halfWidthAt(edge, x);
    const y0 = { centre: across.distance, left: half - across.distance, right: across.distance - half }[across.from];
    for (const dy of ys) {
      const centre = { x, y: y0 + dy };
      places.push({ cutout: index, item: places.length, centre, shape: cutout.shape, contour: contourAt(cutout.shape, centre) });
    }
  }
  return places;
}
