/** The pieces that jobs, starting shapes and edits are put together from, with the values nobody has to think about. */
import type { JobBend, JobCutout, JobCutoutShape, JobEndShape, JobLeg } from './schema';

export const SQUARE: JobEndShape = { kind: 'square' };

/** A leg measured to its outside faces, as wide at its end as at its start, both ends square. */
export function plainLeg(id: string, name: string, length: string, width: string, more: Partial<JobLeg> = {}): JobLeg {
  return {
    id,
    name,
    length,
    startBasis: 'outside',
    endBasis: 'outside',
    startWidth: width,
    endWidth: width,
    startShape: SQUARE,
    endShape: SQUARE,
    cutouts: [],
    ...more,
  };
}

/** A bend on the end of `parent`, with the stock's own inside radius. `angle` is turned from flat. */
export const plainBend = (parent: string, angle: string, way: 'up' | 'down' = 'up'): JobBend => ({ parent, edge: 'end', angle, way, radius: 'radius' });

/** A cut-out on the centre line, `distance` from the start. */
export function cutout(id: string, name: string, shape: JobCutoutShape, distance: string, more: Partial<JobCutout> = {}): JobCutout {
  return {
    id,
    name,
    shape,
    along: { from: 'start', basis: 'outside', distance },
    across: { from: 'centre', distance: '0' },
    pattern: { kind: 'single' },
    ...more,
  };
}

export const roundHole = (id: string, name: string, diameter: string, distance: string, more: Partial<JobCutout> = {}): JobCutout =>
  cutout(id, name, { kind: 'round', diameter }, distance, more);
