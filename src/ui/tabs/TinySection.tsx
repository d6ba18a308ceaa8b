import { useMemo } from 'react';
import { sectionOutline } from '../../core/part/sectionOutline';
import { halfTurns } from '../../core/geometry/bulge';
import { pathBounds } from '../../core/geometry/bounds';
import type { Point, Segment } from '../../core/geometry/types';
import type { Job, JobPart } from '../../job/schema';
import { workOut } from '../../job/workOut';

const WIDTH = 104;
const HEIGHT = 52;
const EDGE = 4;

/** The section of a part that is not in the job yet, in small. */
export function TinySection({ part, job }: { readonly part: JobPart; readonly job: Job }) {
  const path = useMemo(() => {
    const { shape } = workOut({ ...job, parts: [part] }, part.id);
    return shape ? drawn(sectionOutline(shape.layout, shape.folded).path) : '';
  }, [part, job]);
  return (
    <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      <path d={path} />
    </svg>
  );
}

function drawn(path: readonly Segment[]): string {
  const [first] = path;
  if (!first) return '';
  const { minX, minY, maxX, maxY } = pathBounds(path);
  const scale = Math.min((WIDTH - 2 * EDGE) / Math.max(maxX - minX, 1e-6), (HEIGHT - 2 * EDGE) / Math.max(maxY - minY, 1e-6));
  const at = ({ x, y }: Point): string =>
    `${(WIDTH / 2 + (x - (minX + maxX) / 2) * scale).toFixed(2)} ${(HEIGHT / 2 - (y - (minY + maxY) / 2) * scale).toFixed(2)}`;
  const step = (segment: Segment): string =>
    segment.kind === 'line'
      ? `L${at(segment.to)}`
      : halfTurns(segment).map((arc) => `A${arc.radius * scale} ${arc.radius * scale} 0 0 ${arc.sweep > 0 ? 0 : 1} ${at(arc.to)}`).join('');
  return `M${at(first.from)}${path.map(step).join('')}Z`;
}
