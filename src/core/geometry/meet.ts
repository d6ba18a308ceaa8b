/** Where segments meet, and how far apart things are. mm. Exact formulas for lines and true arcs. */
import { arcPasses } from './bounds';
import { distance } from './points';
import { TOUCHING_MM } from './tolerance';
import type { Arc, Line, Point, Segment } from './types';

/** Whether a point at the arc's radius lies on the arc, within `TOUCHING_MM` at its ends. */
const onArc = (arc: Arc, p: Point): boolean =>
  distance(p, arc.from) <= TOUCHING_MM ||
  distance(p, arc.to) <= TOUCHING_MM ||
  arcPasses(arc, Math.atan2(p.y - arc.centre.y, p.x - arc.centre.x));

/** Nearest point of a line to a point. */
export function nearestOnLine(l: Line, p: Point): Point {
  const dx = l.to.x - l.from.x;
  const dy = l.to.y - l.from.y;
  const square = dx * dx + dy * dy;
  const share = square === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - l.from.x) * dx + (p.y - l.from.y) * dy) / square));
  return { x: l.from.x + share * dx, y: l.from.y + share * dy };
}

function linesMeet(a: Line, b: Line): Point[] {
  const ax = a.to.x - a.from.x;
  const ay = a.to.y - a.from.y;
  const bx = b.to.x - b.from.x;
  const by = b.to.y - b.from.y;
  const aLength = Math.hypot(ax, ay);
  const bLength = Math.hypot(bx, by);
  const cross = ax * by - ay * bx;
  const off = (p: Point): number => Math.abs((p.x - a.from.x) * ay - (p.y - a.from.y) * ax) / aLength;
  if (off(b.from) <= TOUCHING_MM && off(b.to) <= TOUCHING_MM) {
    // On one line: the ends of each that lie on the other bound what they share.
    const on = (l: Line, p: Point): boolean => distance(nearestOnLine(l, p), p) <= TOUCHING_MM;
    return [...[b.from, b.to].filter((p) => on(a, p)), ...[a.from, a.to].filter((p) => on(b, p))];
  }
  if (Math.abs(cross) <= 1e-15 * aLength * bLength) return [];
  const s = ((b.from.x - a.from.x) * by - (b.from.y - a.from.y) * bx) / cross;
  const t = ((b.from.x - a.from.x) * ay - (b.from.y - a.from.y) * ax) / cross;
  const beyond = (share: number, length: number): boolean => share * length < -TOUCHING_MM || (share - 1) * length > TOUCHING_MM;
  return beyond(s, aLength) || beyond(t, bLength) ? [] : [{ x: a.from.x + s * ax, y: a.from.y + s * ay }];
}

function lineMeetsArc(l: Line, arc: Arc): Point[] {
  const dx = l.to.x - l.from.x;
  const dy = l.to.y - l.from.y;
  const length = Math.hypot(dx, dy);
  const ux = dx / length;
  const uy = dy / length;
  const along = (arc.centre.x - l.from.x) * ux + (arc.centre.y - l.from.y) * uy;
  const away = (arc.centre.x - l.from.x) * uy - (arc.centre.y - l.from.y) * ux;
  const gap = arc.radius - Math.abs(away);
  if (gap < -TOUCHING_MM) return [];
  const half = Math.sqrt(Math.max(0, gap * (arc.radius + Math.abs(away))));
  return [along - half, along + half]
    .filter((d) => d >= -TOUCHING_MM && d <= length + TOUCHING_MM)
    .map((d) => ({ x: l.from.x + d * ux, y: l.from.y + d * uy }))
    .filter((p) => onArc(arc, p));
}

function arcsMeet(a: Arc, b: Arc): Point[] {
  const apart = distance(a.centre, b.centre);
  if (apart <= TOUCHING_MM && Math.abs(a.radius - b.radius) <= TOUCHING_MM) {
    return [...[b.from, b.to].filter((p) => onArc(a, p)), ...[a.from, a.to].filter((p) => onArc(b, p))];
  }
  if (apart > a.radius + b.radius + TOUCHING_MM || apart < Math.abs(a.radius - b.radius) - TOUCHING_MM || apart === 0) return [];
  const along = (apart * apart + a.radius * a.radius - b.radius * b.radius) / (2 * apart);
  const off = Math.sqrt(Math.max(0, a.radius * a.radius - along * along));
  const ux = (b.centre.x - a.centre.x) / apart;
  const uy = (b.centre.y - a.centre.y) / apart;
  return [off, -off]
    .map((h) => ({ x: a.centre.x + along * ux - h * uy, y: a.centre.y + along * uy + h * ux }))
    .filter((p) => onArc(a, p) && onArc(b, p));
}

/** Points at which two segments meet; where they run along each other, the ends of what they share. */
export function meetingPoints(a: Segment, b: Segment): Point[] {
  if (a.kind === 'line') return b.kind === 'line' ? linesMeet(a, b) : lineMeetsArc(a, b);
  return b.kind === 'line' ? lineMeetsArc(b, a) : arcsMeet(a, b);
}

function pointToSegment(p: Point, s: Segment): number {
  if (s.kind === 'line') return distance(p, nearestOnLine(s, p));
  const toEnds = Math.min(distance(p, s.from), distance(p, s.to));
  return arcPasses(s, Math.atan2(p.y - s.centre.y, p.x - s.centre.x)) ? Math.min(toEnds, Math.abs(distance(p, s.centre) - s.radius)) : toEnds;
}

/** Shortest distance from a line (which may be a point) to a segment, mm; 0 where they meet. */
export function lineToSegment(l: Line, s: Segment): number {
  if (l.from.x === l.to.x && l.from.y === l.to.y) return pointToSegment(l.from, s);
  if (meetingPoints(l, s).length > 0) return 0;
  const ends = Math.min(
    pointToSegment(l.from, s),
    pointToSegment(l.to, s),
    distance(s.from, nearestOnLine(l, s.from)),
    distance(s.to, nearestOnLine(l, s.to)),
  );
  if (s.kind === 'line') return ends;
  const foot = nearestOnLine(l, s.centre);
  return Math.min(ends, pointToSegment(foot, s));
}

/** Whether a point lies inside a closed path: winding by crossings of a ray, arcs counted exactly. */
export function inside(path: readonly Segment[], p: Point): boolean {
  let odd = false;
  for (const s of path) {
    if (s.kind === 'line') {
      if (s.from.y > p.y !== s.to.y > p.y) {
        const x = s.from.x + ((p.y - s.from.y) / (s.to.y - s.from.y)) * (s.to.x - s.from.x);
        if (x > p.x) odd = !odd;
      }
      continue;
    }
    // The chord counts as a line; between chord and arc a point is inside the circular segment, which flips it.
    if (s.from.y > p.y !== s.to.y > p.y) {
      const x = s.from.x + ((p.y - s.from.y) / (s.to.y - s.from.y)) * (s.to.x - s.from.x);
      if (x > p.x) odd = !odd;
    }
    if (distance(p, s.centre) < s.radius) {
      const side = (s.to.x - s.from.x) * (p.y - s.from.y) - (s.to.y - s.from.y) * (p.x - s.from.x);
      const beyondChord = s.sweep > 0 ? side < 0 : side > 0;
      if (beyondChord) odd = !odd;
    }
  }
  return odd;
}
