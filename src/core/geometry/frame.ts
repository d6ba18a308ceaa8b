/** Frames in space: right-handed, unit axes. */
import type { Frame, Pose, Vector3 } from './types';
import { exactTurn } from './pose';

export const vector = (x: number, y: number, z: number): Vector3 => ({ x, y, z });

export const WORLD: Frame = { origin: vector(0, 0, 0), x: vector(1, 0, 0), y: vector(0, 1, 0), z: vector(0, 0, 1) };

/** A direction of the frame, in the frame's surroundings. */
export const direction = (frame: Frame, v: Vector3): Vector3 =>
  vector(
    frame.x.x * v.x + frame.y.x * v.y + frame.z.x * v.z,
    frame.x.y * v.x + frame.y.y * v.y + frame.z.y * v.z,
    frame.x.z * v.x + frame.y.z * v.y + frame.z.z * v.z,
  );

/** A point of the frame, in the frame's surroundings. */
export function inSpace(frame: Frame, p: Vector3): Vector3 {
  const d = direction(frame, p);
  return vector(frame.origin.x + d.x, frame.origin.y + d.y, frame.origin.z + d.z);
}

/** A frame standing in the plane of another at a pose: moved along x and y and turned about z. */
export function framedPose(frame: Frame, pose: Pose): Frame {
  const [cos, sin] = exactTurn(pose.heading);
  return {
    origin: inSpace(frame, vector(pose.x, pose.y, 0)),
    x: direction(frame, vector(cos, sin, 0)),
    y: direction(frame, vector(-sin, cos, 0)),
    z: frame.z,
  };
}
