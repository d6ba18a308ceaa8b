/** Poses: frames in the plane. `place(pose, point)` takes a point of the frame to the plane that the pose is given in. */
import type { Contour, Point, Pose, Segment } from './types';

/** Moves points by a pose; cosine and sine are worked out once. Quarter turns come out exact. */
export function placer(pose: Pose): (p: Point) => Point {
  const [cos, sin] = exactTurn(pose.heading);
  return (p) => ({ x: pose.x + p.x * cos - p.y * sin, y: pose.y + p.x * sin + p.y * cos });
}

export const place = (pose: Pose, p: Point): Point => placer(pose)(p);

/** The pose `inner`, given in the frame of `outer`, in the plane of `outer`. */
export const compose = (outer: Pose, inner: Pose): Pose => ({
  ...place(outer, inner),
  heading: outer.heading + inner.heading,
});

/** Cosine and sine of an angle, exact at quarter turns, so that a lug folded up square stays square on the blank. */
export function exactTurn(angle: number): readonly [number, number] {
  const quarters = angle / (Math.PI / 2);
  const whole = Math.round(quarters);
  if (quarters !== whole) return [Math.cos(angle), Math.sin(angle)];
  switch (((whole % 4) + 4) % 4) {
    case 0:
      return [1, 0];
    case 1:
      return [0, 1];
    case 2:
      return [-1, 0];
    default:
      return [0, -1];
  }
}

export function placedSegment(segment: Segment, move: (p: Point) => Point): Segment {
  const from = move(segment.from);
  const to = move(segment.to);
  return segment.kind === 'line' ? { kind: 'line', from, to } : { ...segment, from, to, centre: move(segment.centre) };
}

/** A path moved by a pose; sweeps keep their sign, since a pose never mirrors. */
export function placedPath(path: readonly Segment[], pose: Pose): readonly Segment[] {
  const move = placer(pose);
  return path.map((segment) => placedSegment(segment, move));
}

export function placedContour(contour: Contour, move: (p: Point) => Point): Contour {
  return contour.kind === 'circle'
    ? { kind: 'circle', centre: move(contour.centre), radius: contour.radius }
    : { kind: 'path', segments: contour.segments.map((segment) => placedSegment(segment, move)) };
}
