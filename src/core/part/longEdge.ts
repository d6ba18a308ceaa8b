/**
 * The straight long edges of a leg. They mirror each other in the centre line, so the left one (y > 0) stands for both.
 * At a square end it passes through the corner; at a round end it touches the round, whose diameter is the width there.
 */
import { bad, good, type Result } from '../result';
import type { Point } from '../geometry/types';
import type { EndShape } from './types';

export interface LongEdge {
  /** rad between the left edge and the centre line, positive where the leg widens towards its end. */
  readonly taper: number;
  /** Height of the left edge's line over the centre line at x = 0, mm. */
  readonly rise: number;
  /** Ends of the left edge before corner radii and chamfers: the square corners, or where a round is touched. */
  readonly start: Point;
  readonly end: Point;
}

/** Half the leg's width at x, mm. */
export const halfWidthAt = (edge: LongEdge, x: number): number => edge.rise + x * Math.tan(edge.taper);

/**
 * @param length straight length, mm
 * @param startHalf half the width at the start, endHalf at the end, mm
 * @returns refuses a leg that is too short for its round ends, and says by how much (field `startWidth`)
 */
export function longEdge(
  length: number,
  startHalf: number,
  endHalf: number,
  startShape: EndShape['kind'],
  endShape: EndShape['kind'],
): Result<LongEdge> {
  const startRound = startShape === 'round';
  const endRound = endShape === 'round';
  const startCentre = startRound ? startHalf : 0;
  const endCentre = endRound ? length - endHalf : length;
  const apart = endCentre - startCentre;
  const short = (by: number) =>
    bad('startWidth', `is ${by.toFixed(2)} mm too short for its round ends. Make it longer or narrower.`, by);

  let taper: number;
  if (startRound && endRound) {
    const grows = endHalf - startHalf;
    // Touching from within counts too, unless they are one disc.
    if (apart < Math.abs(grows) || (apart === Math.abs(grows) && grows !== 0)) return short(Math.abs(grows) - apart);
    taper = apart === 0 ? 0 : Math.asin(grows / apart);
  } else if (endRound) {
    if (apart < 0) return short(-apart);
    // The edge starts at the corner (0, startHalf) and touches a circle about (apart, 0).
    taper = Math.atan2(apart, startHalf) - Math.acos(Math.min(1, endHalf / Math.hypot(apart, startHalf)));
    if (endHalf > Math.hypot(apart, startHalf)) return short(endHalf - Math.hypot(apart, startHalf));
  } else if (startRound) {
    if (apart < 0) return short(-apart);
    if (startHalf > Math.hypot(apart, endHalf)) return short(startHalf - Math.hypot(apart, endHalf));
    taper = -(Math.atan2(apart, endHalf) - Math.acos(Math.min(1, startHalf / Math.hypot(apart, endHalf))));
  } else {
    taper = length === 0 ? 0 : Math.atan2(endHalf - startHalf, length);
  }

  const touch = (centre: number, radius: number): Point => ({
    x: centre - radius * Math.sin(taper),
    y: radius * Math.cos(taper),
  });
  const start = startRound ? touch(startCentre, startHalf) : { x: 0, y: startHalf };
  const end = endRound ? touch(endCentre, endHalf) : { x: length, y: endHalf };
  return good({ taper, rise: start.y - start.x * Math.tan(taper), start, end });
}
