/** Nicks: small vee bites in the outline that show where a bend line meets the edge. */
import { distance } from '../core/geometry/points';
import { lineMeets, lineMeetsContour } from '../core/geometry/lineMeets';
import { nearestAlong } from '../core/geometry/nearestAlong';
import { line, pathLength, segmentLength } from '../core/geometry/segments';
import { splitSegment } from '../core/geometry/splitSegment';
import { TOUCHING_MM } from '../core/geometry/tolerance';
import type { ClosedPath, Contour, Line, Point, Segment } from '../core/geometry/types';

/**
 * Width along the edge and depth into the metal, as a share of the thickness: wide enough to outlast the cut's own width,
 * shallow enough to vanish in the bend. Common practice, no source.
 */
export const NICK_SHARE = 0.5;

/** A nick may take at most a quarter of the bend line at each end, so that half of the metal at least stays to be bent. */
const DEEPEST_SHARE = 0.25;

/** The chord of the stretch that is taken out, as a share of its length: below this the edge turns a corner there. */
const STRAIGHT_ENOUGH = 0.9;

/** Sine of the least angle between bend line and edge at which a vee still points along the line. */
const LEAST_SLOPE = 0.2;

export type Nicked =
  | { readonly placed: true; readonly outline: ClosedPath; readonly sides: readonly [Line, Line] }
  | { readonly placed: false; readonly because: string };

const refused = (because: string): Nicked => ({ placed: false, because });

/** The path less `length` mm at its start; undefined where that would eat into an earlier nick or the whole path. */
function lessAtStart(path: readonly Segment[], length: number, kept: ReadonlySet<Segment>): readonly Segment[] | undefined {
  let left = length;
  for (const [i, segment] of path.entries()) {
    if (kept.has(segment)) return undefined;
    const { after } = splitSegment(segment, left);
    if (after) return [after, ...path.slice(i + 1)];
    left -= segmentLength(segment);
  }
  return undefined;
}

/** The same at its end. */
function lessAtEnd(path: readonly Segment[], length: number, kept: ReadonlySet<Segment>): readonly Segment[] | undefined {
  let left = length;
  for (const [i, segment] of path.toReversed().entries()) {
    if (kept.has(segment)) return undefined;
    const { before } = splitSegment(segment, segmentLength(segment) - left);
    if (before) return [...path.slice(0, path.length - 1 - i), before];
    left -= segmentLength(segment);
  }
  return undefined;
}

/**
 * The outline with one vee bite where the bend line from `at` towards `inwards` meets it.
 * @param outline closed, anticlockwise, mm
 * @param at end of the bend line on the outline, `far` its other end
 * @param size mm along the edge and into the metal
 * @param nicks sides of the nicks already placed; none of them is cut into
 * @returns the new outline and the two sides of the bite, or why it cannot stand there
 */
export function nickAt(
  outline: ClosedPath,
  at: Point,
  far: Point,
  size: number,
  cutouts: readonly Contour[],
  nicks: ReadonlySet<Segment>,
): Nicked {
  const reach = distance(at, far);
  if (size > DEEPEST_SHARE * reach) return refused('the bend is too short for it');
  const place = nearestAlong(outline, at);
  const here = place && outline[place.segment];
  if (!place || !here || place.off > TOUCHING_MM) {
    return refused(`the bend line ends ${(place?.off ?? 0).toFixed(2)} mm away from the outline`);
  }
  if (pathLength(outline) < 4 * size) return refused('the outline is too short for it');

  // The outline is opened at the bend line, shortened at both ends, and closed again by the two sides of the vee.
  const { before, after } = splitSegment(here, place.along);
  const opened = [after, ...outline.slice(place.segment + 1), ...outline.slice(0, place.segment), before].filter((s) => s !== undefined);
  const withoutStart = lessAtStart(opened, size / 2, nicks);
  const rest = withoutStart && lessAtEnd(withoutStart, size / 2, nicks);
  if (!rest) return refused('another nick is too near');
  const [first, last] = [rest[0], rest.at(-1)];
  if (!first || !last) return refused('the outline is too short for it');

  const chord = { x: first.from.x - last.to.x, y: first.from.y - last.to.y };
  const inwards = { x: (far.x - at.x) / reach, y: (far.y - at.y) / reach };
  if (Math.hypot(chord.x, chord.y) < STRAIGHT_ENOUGH * size) return refused('the edge turns a corner there');
  const slope = (chord.x * inwards.y - chord.y * inwards.x) / Math.hypot(chord.x, chord.y);
  if (slope < LEAST_SLOPE) return refused('the bend line does not run into the metal there');

  const tip = { x: at.x + inwards.x * size, y: at.y + inwards.y * size };
  const sides = [line(last.to, tip), line(tip, first.from)] as const;
  const others = rest.slice(1, -1);
  if (sides.some((side) => others.some((other) => lineMeets(side, other)))) return refused('another edge is too near');
  if (sides.some((side) => cutouts.some((cutout) => lineMeetsContour(side, cutout)))) return refused('a cut-out is too near');
  return { placed: true, outline: [...rest, ...sides], sides };
}
