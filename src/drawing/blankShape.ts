/** The metal of the blank: leg areas, bend zones, outline, cut-outs and their centre marks, moved so that x = 0 is the first leg's start. */
import { contourBounds, joined } from '../core/geometry/bounds';
import { offset } from '../core/geometry/points';
import { placedContour, placedSegment } from '../core/geometry/pose';
import { line } from '../core/geometry/segments';
import type { Contour, Point, Segment } from '../core/geometry/types';
import type { Cutout } from '../core/part/types';
import type { Blank, BlankBend, BlankCutout, Layout } from '../core/part/layoutTypes';
import { LETTER_BOX_PX } from './balloon';
import { lineBox, segmentBoxes, uprightBox, type Box } from './boxes';
import type { Entity, PathEntity, Pick } from './entities';
import { mainRun } from '../core/part/mainRun';

/** px: a bend's centre line past the edges of the metal; a hole's mark past its edge; the centre line past the ends of the blank. */
export const BEND_LINE_PAST_PX = 6;
const MARK_PAST_PX = 7;
const CENTRE_LINE_PAST_PX = 10;

/** Sine of the angle by which a leg may be off square to the blank and still count as square: rounding only. */
const SQUARE = 1e-9;
/** An opening this near the centre line is on it, mm: a thousandth of a line's width. */
const ON_AXIS_MM = 1e-4;

export interface BlankShape {
  readonly entities: readonly Entity[];
  readonly boxes: readonly Box[];
  /** Moves a point of the blank to the drawing. */
  readonly move: (p: Point) => Point;
}

export const originOf = (blank: Blank): number => blank.legs[0]?.x ?? 0;

export function blankShape(layout: Layout, blank: Blank, px: number): BlankShape {
  const origin = originOf(blank);
  const move = (p: Point): Point => ({ x: p.x - origin, y: p.y });
  const still = origin === 0;
  const moved = (segments: readonly Segment[]): readonly Segment[] => (still ? segments : segments.map((segment) => placedSegment(segment, move)));
  const contour = (c: Contour): Contour => (still ? c : placedContour(c, move));
  const { legs } = layout.part;
  const name = (index: number): string => legs[index]?.id ?? String(index);
  const closed = (key: string, role: PathEntity['role'], segments: readonly Segment[], pick?: Pick): PathEntity => ({
    kind: 'path',
    key,
    role,
    runs: [{ segments: moved(segments), closed: true }],
    ...(pick ? { pick } : {}),
  });
  const open = (key: string, role: PathEntity['role'], segments: readonly Segment[], pick?: Pick): PathEntity => ({
    kind: 'path',
    key,
    role,
    runs: moved(segments).map((segment) => ({ segments: [segment], closed: false })),
    ...(pick ? { pick } : {}),
  });

  const entities: Entity[] = [];
  blank.plans.forEach((plan, i) => entities.push(closed(`${name(i)} area`, 'leg area', plan, { kind: 'leg', leg: name(i) })));
  for (const bend of blank.bends) entities.push(closed(`${name(bend.leg)} bend zone`, 'bend zone', bend.zone, bendPick(name(bend.leg))));
  for (const bend of blank.bends) {
    const pick = bendPick(name(bend.leg));
    entities.push(
      open(`${name(bend.leg)} tangent lines`, 'tangent line', [line(...bend.startTangent), line(...bend.endTangent)], pick),
      open(`${name(bend.leg)} bend centre line`, 'bend centre line', [line(...pastEdges(bend, px))], pick),
    );
  }
  entities.push(closed('outline', 'outline', blank.outline));
  entities.push(open('centre line', 'centre line', centreLines(layout, blank, px)));

  const marks: Entity[] = [];
  const boxes: Box[] = blank.outline.flatMap((segment) => segmentBoxes('metal', still ? segment : placedSegment(segment, move)));
  // Words keep off the lines that bends are set by.
  for (const bend of blank.bends) {
    for (const [from, to] of [bend.startTangent, pastEdges(bend, px), bend.endTangent]) boxes.push(lineBox('line', move(from), move(to)));
  }
  for (const items of byCutout(blank.cutouts)) {
    const first = items[0];
    const leg = first ? legs[first.leg] : undefined;
    const cutout = first ? leg?.cutouts[first.cutout] : undefined;
    if (!first || !leg || !cutout) continue;
    const pick: Pick = { kind: 'cutout', leg: leg.id, cutout: cutout.id };
    const contours = items.map((item) => contour(item.contour));
    entities.push({ kind: 'contours', key: `${leg.id} ${cutout.id}`, role: 'hole', pick, contours });
    const free = room(cutout);
    const past = Math.min(MARK_PAST_PX * px, free * 0.4);
    const own = layout.legs[first.leg]?.cutouts.filter((c) => c.cutout === first.cutout) ?? [];
    // Between openings that leave no room for a letter nothing is looked for.
    const covered = contours.map(contourBounds);
    boxes.push(...(free > LETTER_BOX_PX * px ? covered : [covered.reduce(joined)]).map((b) => uprightBox('metal', b)));
    marks.push(open(`${leg.id} ${cutout.id} centre marks`, 'centre line', items.flatMap((item, i) => centreMark(item, Math.abs(own[i]?.centre.y ?? 1) < ON_AXIS_MM, past)), pick));
  }
  return { entities: [...entities, ...marks], boxes, move };
}

const bendPick = (leg: string): Pick => ({ kind: 'bend', leg });

/** The bend's centre line, run past both edges of the metal. */
export function pastEdges(bend: BlankBend, px: number): readonly [Point, Point] {
  const [from, to] = bend.centreLine;
  const heading = Math.atan2(to.y - from.y, to.x - from.x);
  return [offset(from, heading, -BEND_LINE_PAST_PX * px), offset(to, heading, BEND_LINE_PAST_PX * px)];
}

/** One run through the main legs, and one for every side lug up to its free end. */
function centreLines(layout: Layout, blank: Blank, px: number): readonly Segment[] {
  const past = CENTRE_LINE_PAST_PX * px;
  const main = new Set(mainRun(layout));
  const first = blank.legs[0];
  const lines: Segment[] = first ? [line(offset(first, first.heading, -past), offset(first, first.heading, blank.developedLength + past))] : [];
  blank.legs.forEach((pose, i) => {
    if (!main.has(i)) lines.push(line(pose, offset(pose, pose.heading, (layout.legs[i]?.straight ?? 0) + past)));
  });
  return lines.map((s) => (s.kind === 'line' ? line({ x: s.from.x, y: s.from.y }, s.to) : s));
}

/**
 * A cross through the opening, square to the blank: it is where the running dimensions start. An opening on the centre line of its
 * leg (`onAxis`) has one of its strokes from that line already.
 */
function centreMark(item: BlankCutout, onAxis: boolean, past: number): readonly Segment[] {
  const b = contourBounds(item.contour);
  const { x, y } = item.centre;
  const upright = line({ x, y: b.minY - past }, { x, y: b.maxY + past });
  const level = line({ x: b.minX - past, y }, { x: b.maxX + past, y });
  if (onAxis && Math.abs(Math.sin(item.heading)) < SQUARE) return [upright];
  if (onAxis && Math.abs(Math.cos(item.heading)) < SQUARE) return [level];
  return [upright, level];
}

/** Least metal between neighbours of one cut-out, mm: marks of neighbours are kept from running into each other. */
function room({ pattern, shape }: Cutout): number {
  const size = shape.kind === 'round' ? shape.diameter : shape.length;
  const pitches =
    pattern.kind === 'row' ? [pattern.pitch]
    : pattern.kind === 'grid' ? [...(pattern.alongCount > 1 ? [pattern.alongPitch] : []), ...(pattern.acrossCount > 1 ? [pattern.acrossPitch] : [])]
    : [];
  return Math.max(0, Math.min(Infinity, ...pitches) - size);
}

/** Openings by the cut-out they belong to. */
export function byCutout(items: readonly BlankCutout[]): readonly (readonly BlankCutout[])[] {
  const groups = new Map<string, BlankCutout[]>();
  for (const item of items) {
    const key = `${item.leg} ${item.cutout}`;
    const group = groups.get(key);
    if (group) group.push(item);
    else groups.set(key, [item]);
  }
  return [...groups.values()];
}
