import { segmentLength } from './segments';
import { pointAlong } from './splitSegment';
import type { Arc, Segment } from './types';

/** A half turn and the last bits of rounding: a semicircle stays in one piece. */
const HALF_TURN = Math.PI * (1 + 1e-12);

/**
 * The arc in equal pieces of at most half a turn. A full circle has no single bulge (tan of a quarter of 2π has no value) and
 * its ends coincide, so that a reader could not tell where it goes.
 */
export function halfTurns(arc: Arc): readonly Arc[] {
  const pieces = Math.max(1, Math.ceil(Math.abs(arc.sweep) / HALF_TURN));
  const length = segmentLength(arc) / pieces;
  return Array.from({ length: pieces }, (_, i): Arc => ({
    ...arc,
    from: i === 0 ? arc.from : pointAlong(arc, i * length),
    to: i === pieces - 1 ? arc.to : pointAlong(arc, (i + 1) * length),
    sweep: arc.sweep / pieces,
  }));
}

/**
 * Bulge of a segment of at most half a turn: tan(sweep / 4), positive anticlockwise, 0 for a line.
 * Source: definition of the bulge in the published DXF reference (group code 42 of a polyline's vertex).
 */
export const bulge = (segment: Segment): number => (segment.kind === 'line' ? 0 : Math.tan(segment.sweep / 4));
