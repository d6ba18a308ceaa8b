/** Plain geometry in a plane. Lengths in mm, angles in rad, anticlockwise positive, y upwards. */

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Line {
  readonly kind: 'line';
  readonly from: Point;
  readonly to: Point;
}

/** A true arc. `sweep` is signed: positive anticlockwise; its size is at most 2π. */
export interface Arc {
  readonly kind: 'arc';
  readonly from: Point;
  readonly to: Point;
  readonly centre: Point;
  readonly radius: number;
  readonly sweep: number;
}

export type Segment = Line | Arc;

/** A closed run of segments: each begins where the one before ends, the last ends where the first begins. */
export type ClosedPath = readonly Segment[];

/** The edge of a cut-out: a true circle, or a closed path. */
export type Contour =
  | { readonly kind: 'circle'; readonly centre: Point; readonly radius: number }
  | { readonly kind: 'path'; readonly segments: ClosedPath };

/** Where a frame stands in the plane: its origin, and the direction of its x axis. */
export interface Pose {
  readonly x: number;
  readonly y: number;
  readonly heading: number;
}

export interface Bounds {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export interface Vector3 {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** A frame in space: origin and three unit axes, right-handed. */
export interface Frame {
  readonly origin: Vector3;
  readonly x: Vector3;
  readonly y: Vector3;
  readonly z: Vector3;
}
