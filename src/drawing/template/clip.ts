/** Segments cut off at a window, so that a tile holds what is in it and no more. */
import { pathBounds, segmentBounds } from '../../core/geometry/bounds';
import { arcAbout, line } from '../../core/geometry/segments';
import type { Arc, Bounds, Line, Point, Segment } from '../../core/geometry/types';

export interface OpenOrClosed {
  readonly segments: readonly Segment[];
  readonly closed: boolean;
}

export const inWindow = (p: Point, w: Bounds): boolean => p.x >= w.minX && p.x <= w.maxX && p.y >= w.minY && p.y <= w.maxY;

const holds = (w: Bounds, b: Bounds): boolean => b.minX >= w.minX && b.maxX <= w.maxX && b.minY >= w.minY && b.maxY <= w.maxY;
const misses = (w: Bounds, b: Bounds): boolean => b.maxX < w.minX || b.minX > w.maxX || b.maxY < w.minY || b.minY > w.maxY;

/** The share of a line that lies in the window (Liang and Barsky, from memory). */
function clipLine({ from, to }: Line, w: Bounds): readonly Line[] {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  let [begin, end] = [0, 1];
  for (const [step, room] of [[-dx, from.x - w.minX], [dx, w.maxX - from.x], [-dy, from.y - w.minY], [dy, w.maxY - from.y]] as const) {
    if (step === 0) {
      if (room < 0) return [];
    } else if (step < 0) begin = Math.max(begin, room / step);
    else end = Math.min(end, room / step);
  }
  const at = (share: number): Point => (share === 0 ? from : share === 1 ? to : { x: from.x + dx * share, y: from.y + dy * share });
  return begin < end ? [line(at(begin), at(end))] : [];
}

/** Pieces of an arc between its crossings with the window's edges, those whose middle lies inside. */
function clipArc(arc: Arc, w: Bounds): readonly Arc[] {
  const { centre, radius, sweep } = arc;
  const start = Math.atan2(arc.from.y - centre.y, arc.from.x - centre.x);
  const size = Math.abs(sweep);
  const shares: number[] = [0, 1];
  const crossing = (angle: number): void => {
    const turned = sweep >= 0 ? angle - start : start - angle;
    const onwards = ((turned % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
    if (onwards < size) shares.push(onwards / size);
  };
  for (const x of [w.minX, w.maxX]) {
    const cos = (x - centre.x) / radius;
    if (Math.abs(cos) <= 1) [Math.acos(cos), -Math.acos(cos)].forEach(crossing);
  }
  for (const y of [w.minY, w.maxY]) {
    const sin = (y - centre.y) / radius;
    if (Math.abs(sin) <= 1) [Math.asin(sin), Math.PI - Math.asin(sin)].forEach(crossing);
  }
  shares.sort((a, b) => a - b);
  return shares.slice(1).flatMap((share, i) => {
    const before = shares[i] ?? 0;
    if (share <= before) return [];
    const piece = arcAbout(centre, radius, start + sweep * before, sweep * (share - before));
    const middle = start + (sweep * (before + share)) / 2;
    return inWindow({ x: centre.x + radius * Math.cos(middle), y: centre.y + radius * Math.sin(middle) }, w) ? [piece] : [];
  });
}

/** The pieces of a run that lie in the window: the run itself where all of it does, else every piece on its own. */
export function clipRun(run: OpenOrClosed, w: Bounds): readonly OpenOrClosed[] {
  const b = pathBounds(run.segments);
  if (holds(w, b)) return [run];
  if (misses(w, b)) return [];
  return run.segments.flatMap((segment) => {
    const own = segmentBounds(segment);
    if (misses(w, own)) return [];
    const pieces: readonly Segment[] = holds(w, own) ? [segment] : segment.kind === 'line' ? clipLine(segment, w) : clipArc(segment, w);
    return pieces.map((piece) => ({ segments: [piece], closed: false }));
  });
}
