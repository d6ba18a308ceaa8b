/**
 * Lines where a curved wall turns away from the eye. They move as the part is turned, so they are worked out for each view.
 * Only surfaces that bulge outwards show one: on a hollow side it always lies behind metal.
 */
import { direction, inSpace, vector } from '../../core/geometry/frame';
import type { Arc, Frame, Vector3 } from '../../core/geometry/types';
import type { FoldedBend } from '../../core/part/layoutTypes';
import { isFlat } from './bendMesh';

/** Nearer than this to either end, rad, the line would lie on an edge that is drawn already. */
const CLEAR_OF_ENDS = 0.02;

/** Angles in (start, start + sweep), rad, among `angle` + any number of half turns. */
function halfTurnsWithin(angle: number, start: number, sweep: number): number[] {
  const found: number[] = [];
  const from = Math.ceil((start + CLEAR_OF_ENDS - angle) / Math.PI);
  for (let k = from; angle + k * Math.PI < start + sweep - CLEAR_OF_ENDS; k++) found.push(angle + k * Math.PI);
  return found;
}

const dot = (a: Vector3, b: Vector3): number => a.x * b.x + a.y * b.y + a.z * b.z;

/** A direction of the part in the frame's own axes. */
const within = (frame: Frame, v: Vector3): Vector3 => vector(dot(frame.x, v), dot(frame.y, v), dot(frame.z, v));

/** @param towards unit, from the part to the eye. @returns ends of lines in the part's space, x, y, z in turn */
export function legSilhouette(frame: Frame, rounds: readonly Arc[], thickness: number, towards: Vector3): number[] {
  const eye = within(frame, towards);
  const lines: number[] = [];
  for (const arc of rounds) {
    const start = Math.atan2(arc.from.y - arc.centre.y, arc.from.x - arc.centre.x);
    for (const angle of halfTurnsWithin(Math.atan2(-eye.x, eye.y), start, arc.sweep)) {
      const x = arc.centre.x + arc.radius * Math.cos(angle);
      const y = arc.centre.y + arc.radius * Math.sin(angle);
      for (const z of [0, -thickness]) {
        const p = inSpace(frame, vector(x, y, z));
        lines.push(p.x, p.y, p.z);
      }
    }
  }
  return lines;
}

/** The same for the outside of a bend. */
export function bendSilhouette(bend: FoldedBend, thickness: number, towards: Vector3): number[] {
  if (isFlat(bend)) return [];
  const eye = within(bend.frame, towards);
  const outer = bend.radius + thickness;
  const up = bend.way === 'up';
  const lines: number[] = [];
  for (const angle of halfTurnsWithin(Math.atan2(up ? eye.z : -eye.z, eye.x), 0, bend.turn)) {
    const x = outer * Math.sin(angle);
    const rise = 2 * outer * Math.sin(angle / 2) ** 2;
    const z = up ? rise - thickness : -rise;
    for (const y of [-bend.width / 2, bend.width / 2]) {
      const along = direction(bend.frame, vector(x, y, z));
      lines.push(bend.frame.origin.x + along.x, bend.frame.origin.y + along.y, bend.frame.origin.z + along.z);
    }
  }
  return lines;
}
