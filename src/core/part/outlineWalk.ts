/**
 * The walk round a leg, anticlockwise: right edge from start to end, far end, left edge back to the start. Where a bend
 * leaves the leg the walk either goes on round the metal beyond it (the blank's outline) or crosses straight over its
 * tangent line (the leg's own plan).
 */
import { SAME_LENGTH_MM } from '../geometry/tolerance';
import { arcAbout, line, reversed, withEnds } from '../geometry/segments';
import { distance } from '../geometry/points';
import { placedPath } from '../geometry/pose';
import type { ClosedPath, Point, Pose, Segment } from '../geometry/types';
import { onEdge, type LugSeat } from './lugSeat';
import type { LongEdge } from './longEdge';

/** What the walk needs to know of a leg. */
export interface WalkedLeg {
  readonly straight: number;
  readonly edge: LongEdge;
  /** Left edge's stretch between the end shapes; the right one mirrors it. */
  readonly edgeFrom: Point;
  readonly edgeTo: Point;
  /** Free start, from the left edge to the right one; undefined where the leg begins at a bend. */
  readonly startOutline: readonly Segment[] | undefined;
  /** Free end, from the right edge to the left one; undefined where a bend leaves the far end. */
  readonly endOutline: readonly Segment[] | undefined;
  /** Width of the bend that leads here and of the one at the far end, mm. */
  readonly startBend: number;
  readonly endBend: number;
  readonly endChild: number | undefined;
  readonly lugs: readonly LugSeat[];
}

/** Draws what lies beyond a bend, from the right end of its start tangent line to the left end. */
export type Beyond = (child: number, from: Point, to: Point, seat: Pose) => readonly Segment[];

/** A pen that draws lines from where it stands, leaving out those of no length. */
class Pen {
  readonly segments: Segment[] = [];
  constructor(private at: Point) {}
  to(p: Point): void {
    if (distance(this.at, p) <= SAME_LENGTH_MM) return;
    this.segments.push(line(this.at, p));
    this.at = p;
  }
  draw(run: readonly Segment[]): void {
    const first = run[0];
    const last = run.at(-1);
    if (!first || !last) return;
    this.to(first.from);
    this.segments.push(...run);
    this.at = last.to;
  }
}

function relief(edge: LongEdge, seat: LugSeat, outerAt: number, innerAt: number): Segment[] {
  // From the parent's edge at `outerAt`, down and along to the tangent line at `innerAt`; drawn in the direction outer -> inner.
  if (seat.relief.kind === 'none') return [];
  const { width, depth, kind } = seat.relief;
  const floor = -(seat.inset + depth);
  const on = (q: number, d: number) => onEdge(edge, seat.side, q, d);
  const pen = new Pen(on(outerAt, 0));
  if (kind === 'square') {
    pen.to(on(outerAt, floor));
    pen.to(on(innerAt, floor));
  } else {
    const radius = width / 2;
    const shoulderFrom = on(outerAt, floor + radius);
    const shoulderTo = on(innerAt, floor + radius);
    const centre = on((outerAt + innerAt) / 2, floor + radius);
    pen.to(shoulderFrom);
    // The notch's floor bulges into the parent: walked anticlockwise round the part, it turns clockwise about its centre.
    const start = Math.atan2(shoulderFrom.y - centre.y, shoulderFrom.x - centre.x);
    const roundThePart = innerAt > outerAt === (seat.side === 'right');
    pen.draw([withEnds(arcAbout(centre, radius, start, roundThePart ? -Math.PI : Math.PI), shoulderFrom, shoulderTo)]);
  }
  pen.to(on(innerAt, -seat.inset));
  return pen.segments;
}

/** One long edge in the direction of x, bites, reliefs and lugs included. */
function longEdgeRun(leg: WalkedLeg, side: 'left' | 'right', beyond: Beyond): readonly Segment[] {
  const mirror = (p: Point): Point => (side === 'left' ? p : { x: p.x, y: -p.y });
  const lugs = leg.lugs.filter((seat) => seat.side === side).toSorted((a, b) => a.near - b.near);
  const edgeLength = distance(leg.edge.start, leg.edge.end);
  const on = (q: number, d: number) => onEdge(leg.edge, side, q, d);
  const first = lugs[0];
  const last = lugs.at(-1);
  const fullFromStart = first && first.inset > 0 && first.relief.kind === 'none' && first.near <= SAME_LENGTH_MM;
  const fullToEnd = last && last.inset > 0 && last.relief.kind === 'none' && last.far >= edgeLength - SAME_LENGTH_MM;
  const pen = new Pen(fullFromStart ? on(first.near, -first.inset) : mirror(leg.edgeFrom));
  for (const seat of lugs) {
    const wide = seat.relief.kind === 'none' ? 0 : seat.relief.width;
    const a = on(seat.near, -seat.inset);
    const b = on(seat.far, -seat.inset);
    if (seat.relief.kind !== 'none') pen.draw(relief(leg.edge, seat, seat.near - wide, seat.near));
    pen.to(a);
    // On the left edge the walk meets the lug's left side first, so what lies beyond is drawn backwards here.
    if (side === 'right') pen.draw(beyond(seat.child, a, b, seat.pose));
    else pen.draw(reversed(beyond(seat.child, b, a, seat.pose)));
    pen.to(b);
    if (seat.relief.kind !== 'none') pen.draw(reversed(relief(leg.edge, seat, seat.far + wide, seat.far)));
  }
  if (!fullToEnd) pen.to(mirror(leg.edgeTo));
  return pen.segments;
}

/** From the right end of the leg's start line round to the left end; a free start is closed as well. */
export function walkLeg(leg: WalkedLeg, beyond: Beyond): readonly Segment[] {
  const right = longEdgeRun(leg, 'right', beyond);
  const left = reversed(longEdgeRun(leg, 'left', beyond));
  const begin: Point = leg.startOutline
    ? (right[0]?.from ?? { x: leg.edgeFrom.x, y: -leg.edgeFrom.y })
    : { x: 0, y: -leg.startBend / 2 };
  const pen = new Pen(begin);
  if (right.length > 0) pen.draw(right);
  if (leg.endOutline) {
    if (right.length === 0 || leg.lugs.length === 0) pen.draw(leg.endOutline);
    else drawEndBetween(pen, leg.endOutline, right, left);
  } else if (leg.endChild !== undefined) {
    const half = leg.endBend / 2;
    const from = { x: leg.straight, y: -half };
    const to = { x: leg.straight, y: half };
    pen.to(from);
    pen.draw(beyond(leg.endChild, from, to, { x: leg.straight, y: 0, heading: 0 }));
    pen.to(to);
  }
  if (left.length > 0) pen.draw(left);
  if (leg.startOutline) {
    if (leg.lugs.length === 0 || left.length === 0) pen.draw(leg.startOutline);
    else drawEndBetween(pen, leg.startOutline, left, right);
    pen.to(begin);
  } else {
    pen.to({ x: 0, y: leg.startBend / 2 });
  }
  return pen.segments;
}

/** A free end whose corners a full-length lug may have taken: then the end is one line between what is left of the edges. */
function drawEndBetween(pen: Pen, outline: readonly Segment[], before: readonly Segment[], after: readonly Segment[]): void {
  const from = before.at(-1)?.to;
  const to = after[0]?.from;
  const first = outline[0];
  const last = outline.at(-1);
  if (!from || !to || !first || !last) return;
  const whole = distance(from, first.from) <= SAME_LENGTH_MM && distance(to, last.to) <= SAME_LENGTH_MM;
  if (whole) pen.draw(outline);
  else {
    pen.to(from);
    pen.to(to);
  }
}

/**
 * Joins lines that lie in one: a plain strip has four corners and not a vertex at every tangent line, and a relief that reaches
 * the end of its leg leaves no sliver where the outline would run out and straight back.
 */
export function withoutNeedlessVertices(path: ClosedPath): ClosedPath {
  const inOneLine = (a: Segment, b: Segment): boolean => {
    if (a.kind !== 'line' || b.kind !== 'line') return false;
    const ax = a.to.x - a.from.x;
    const ay = a.to.y - a.from.y;
    const bx = b.to.x - b.from.x;
    const by = b.to.y - b.from.y;
    const longer = Math.max(Math.hypot(ax, ay), Math.hypot(bx, by));
    return Math.abs(ax * by - ay * bx) <= SAME_LENGTH_MM * longer;
  };
  const kept: Segment[] = [];
  for (const segment of path) {
    let next: Segment = segment;
    for (let before = kept.at(-1); before && inOneLine(before, next); before = kept.at(-1)) {
      kept.pop();
      next = line(before.from, next.to);
      if (distance(next.from, next.to) <= SAME_LENGTH_MM) break;
    }
    if (distance(next.from, next.to) > SAME_LENGTH_MM || next.kind === 'arc') kept.push(next);
  }
  for (let [first, last] = [kept[0], kept.at(-1)]; first && last && kept.length > 3 && inOneLine(last, first); [first, last] = [kept[0], kept.at(-1)]) {
    kept.pop();
    kept[0] = line(last.from, first.to);
  }
  return sealed(kept);
}

/** Each segment begins exactly where the last one ended: what the pen left out as no length is no gap either. */
function sealed(path: ClosedPath): ClosedPath {
  return path.map((segment, i) => {
    const from = path.at(i - 1)?.to ?? segment.from;
    return segment.kind === 'line' ? line(from, segment.to) : withEnds(segment, from, segment.to);
  });
}

/** Moves what a walk drew in a child's frame to the frame of `pose`, with the bend's two side lines before and behind. */
export function throughBend(run: readonly Segment[], pose: Pose, from: Point, to: Point): readonly Segment[] {
  const pen = new Pen(from);
  pen.draw(placedPath(run, pose));
  pen.to(to);
  return pen.segments;
}
