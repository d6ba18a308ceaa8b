import { memo } from 'react';
import { halfTurns } from '../../core/geometry/bulge';
import type { Point, Segment } from '../../core/geometry/types';
import type { Blank } from '../../core/part/layoutTypes';

const WIDTH = 52;
const HEIGHT = 26;
const EDGE = 2;
/** A long narrow strip is drawn wider than it is, up to three times, so that it can be told from a line. */
const LEAST_HEIGHT = 12;

/** A blank with more openings than this is drawn without them: at this size they would only be a blot. */
const MOST_HOLES = 40;

/** The blank in small, for a tab. */
export const BlankOutline = memo(function BlankOutline({ blank }: { readonly blank: Blank }) {
  const { minX, minY, maxX, maxY } = blank.bounds;
  const across = (WIDTH - 2 * EDGE) / Math.max(maxX - minX, 1e-6);
  const upright = (HEIGHT - 2 * EDGE) / Math.max(maxY - minY, 1e-6);
  const scale = Math.min(across, upright);
  const up = Math.min(upright, Math.max(scale, Math.min(3 * scale, LEAST_HEIGHT / Math.max(maxY - minY, 1e-6))));
  const at = ({ x, y }: Point): string =>
    `${(WIDTH / 2 + (x - (minX + maxX) / 2) * scale).toFixed(2)} ${(HEIGHT / 2 - (y - (minY + maxY) / 2) * up).toFixed(2)}`;
  const step = (segment: Segment): string => {
    if (segment.kind === 'line') return `L${at(segment.to)}`;
    // Turning y over turns the way round as well.
    return halfTurns(segment).map((arc) => `A${(arc.radius * scale).toFixed(2)} ${(arc.radius * up).toFixed(2)} 0 0 ${arc.sweep > 0 ? 0 : 1} ${at(arc.to)}`).join('');
  };
  const path = (segments: readonly Segment[]): string => (segments[0] ? `M${at(segments[0].from)}${segments.map(step).join('')}Z` : '');
  const holes = blank.cutouts.length > MOST_HOLES ? [] : blank.cutouts;
  return (
    <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      <path d={path(blank.outline)} />
      {blank.bends.map(({ leg, centreLine }) => (
        <path key={leg} className="thin" d={`M${at(centreLine[0])}L${at(centreLine[1])}`} />
      ))}
      {holes.map(({ contour, leg, cutout, item }) => {
        const key = `${leg} ${cutout} ${item}`;
        if (contour.kind === 'path') return <path key={key} className="thin" d={path(contour.segments)} />;
        const [x, y] = at(contour.centre).split(' ');
        return <circle key={key} className="dot" cx={x} cy={y} r={Math.max(contour.radius * scale, 0.9)} />;
      })}
    </svg>
  );
});
