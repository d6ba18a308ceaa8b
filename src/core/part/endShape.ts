/** The outline of a free end, from one long edge to the other. */
import { SAME_LENGTH_MM } from '../geometry/tolerance';
import { line, withEnds } from '../geometry/segments';
import { bad, good, type Result } from '../result';
import type { Point, Segment } from '../geometry/types';
import type { EndShape } from './types';
import type { LongEdge } from './longEdge';

export interface EndOutline {
  /** Where the left long edge stops and the end shape begins; the right one mirrors it. */
  readonly edgePoint: Point;
  /** From the right edge to the left one round the leg's end (x large); empty never: a square end is one line. */
  readonly segments: readonly Segment[];
}

/** In the centre line; 0 − 0 is 0 where −0 would be a minus nought. */
const mirrored = (p: Point): Point => ({ x: p.x, y: 0 - p.y });

/**
 * Outline of the leg's END (x = length), drawn from the right edge up to the left. The start is worked out as the end of
 * the leg turned round, see `layOut`.
 * A corner of interior angle β takes radius R with arms R / tan(β/2); a chamfer takes its size off both arms.
 * @returns the field `radius` or `size` refused where the arms do not fit on the end or on the long edge
 */
export function endOutline(edge: LongEdge, shape: EndShape): Result<EndOutline> {
  const corner = edge.end;
  const edgeLength = Math.hypot(edge.end.x - edge.start.x, edge.end.y - edge.start.y);
  if (shape.kind === 'round') {
    // The round is centred where the normals of both edges meet the centre line.
    const radius = corner.y / Math.cos(edge.taper);
    const centre = { x: corner.x + radius * Math.sin(edge.taper), y: 0 };
    const half = Math.PI / 2 + edge.taper;
    const arc = { kind: 'arc', centre, radius, sweep: 2 * half, from: mirrored(corner), to: corner } as const;
    return good({ edgePoint: corner, segments: [arc] });
  }
  const size = shape.kind === 'radius' ? shape.radius : shape.kind === 'chamfer' ? shape.size : 0;
  if (size <= SAME_LENGTH_MM) return good({ edgePoint: corner, segments: [line(mirrored(corner), corner)] });

  const interior = Math.PI / 2 - edge.taper;
  const arm = shape.kind === 'radius' ? size / Math.tan(interior / 2) : size;
  const field = shape.kind === 'radius' ? 'radius' : 'size';
  const what = shape.kind === 'radius' ? 'corner radius' : 'chamfer';
  const room = Math.min(corner.y, edgeLength);
  // tan(π/4) is a hair below 1: a radius of exactly half the width must pass.
  if (arm > room + SAME_LENGTH_MM) {
    const most = shape.kind === 'radius' ? room * Math.tan(interior / 2) : room;
    return bad(field, `has a ${what} of ${size.toFixed(2)} mm, but only ${most.toFixed(2)} mm fits at that end.`, size - most);
  }
  const onEdge: Point = { x: corner.x - arm * Math.cos(edge.taper), y: corner.y - arm * Math.sin(edge.taper) };
  const left = corner.y - arm;
  const onEnd: Point = { x: corner.x, y: left > SAME_LENGTH_MM ? left : 0 };
  const segments: Segment[] = [];
  if (shape.kind === 'radius') {
    const centre: Point = { x: corner.x - size, y: onEnd.y };
    const sweep = Math.PI - interior;
    const right = { kind: 'arc', centre: mirrored(centre), radius: size, sweep, from: mirrored(onEdge), to: mirrored(onEnd) } as const;
    segments.push(right);
    if (onEnd.y > 0) segments.push(line(mirrored(onEnd), onEnd));
    segments.push(withEnds({ ...right, centre }, onEnd, onEdge));
  } else {
    segments.push(line(mirrored(onEdge), mirrored(onEnd)));
    if (onEnd.y > 0) segments.push(line(mirrored(onEnd), onEnd));
    segments.push(line(onEnd, onEdge));
  }
  return good({ edgePoint: onEdge, segments });
}
