/** Reads a DXF by dxf-parser, a reader that is none of ours, and states what a cutter would find in it. */
import DxfParser from 'dxf-parser';
import { expect } from '@playwright/test';

interface Vertex {
  readonly x: number;
  readonly y: number;
  readonly bulge?: number;
}

interface Entity {
  readonly type: string;
  readonly layer: string;
  readonly vertices?: readonly Vertex[];
  readonly shape?: boolean;
  readonly center?: { readonly x: number; readonly y: number };
  readonly radius?: number;
}

export interface CutFile {
  readonly unit: number;
  readonly layers: readonly string[];
  readonly entities: readonly Entity[];
  readonly outline: Entity;
  readonly size: { readonly length: number; readonly width: number };
  readonly circles: readonly { readonly x: number; readonly y: number; readonly radius: number; readonly layer: string }[];
}

/** Where an arc of a polyline reaches furthest, besides its ends. Bulge = tan(sweep / 4), as the DXF reference defines it. */
function arcReach(from: Vertex, to: Vertex): Vertex[] {
  const bulge = from.bulge ?? 0;
  if (bulge === 0) return [];
  const sweep = 4 * Math.atan(bulge);
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  const radius = chord / 2 / Math.sin(Math.abs(sweep) / 2);
  // The centre lies left of the chord for an anticlockwise arc of less than half a turn.
  const rise = (chord / 2) * ((1 - bulge * bulge) / (2 * bulge));
  const cx = (from.x + to.x) / 2 - (rise * (to.y - from.y)) / chord;
  const cy = (from.y + to.y) / 2 + (rise * (to.x - from.x)) / chord;
  const start = Math.atan2(from.y - cy, from.x - cx);
  return [-4, -3, -2, -1, 0, 1, 2, 3, 4].flatMap((quarter) => {
    const angle = (quarter * Math.PI) / 2;
    const turned = sweep > 0 ? (angle - start + 4 * Math.PI) % (2 * Math.PI) : -((start - angle + 4 * Math.PI) % (2 * Math.PI));
    return Math.abs(turned) <= Math.abs(sweep) ? [{ x: cx + radius * Math.cos(angle), y: cy + radius * Math.sin(angle) }] : [];
  });
}

function sizeOf(vertices: readonly Vertex[]): { length: number; width: number } {
  const all = vertices.flatMap((v, i) => [v, ...arcReach(v, vertices[(i + 1) % vertices.length] ?? v)]);
  const xs = all.map(({ x }) => x);
  const ys = all.map(({ y }) => y);
  return { length: Math.max(...xs) - Math.min(...xs), width: Math.max(...ys) - Math.min(...ys) };
}

/** The file as read; fails where it has no closed outline on the layer. */
export function readDxf(text: string, outlineLayer = 'OUTLINE'): CutFile {
  const read = new DxfParser().parseSync(text);
  if (!read) throw new Error('The reader found no drawing in the file.');
  const entities = read.entities as readonly Entity[];
  const outlines = entities.filter(({ type, layer }) => type === 'LWPOLYLINE' && layer === outlineLayer);
  expect(outlines, `one outline on layer ${outlineLayer}`).toHaveLength(1);
  const [outline] = outlines;
  if (!outline?.vertices) throw new Error('The outline has no points.');
  expect(outline.shape, 'the outline is closed').toBe(true);
  for (const entity of entities) if (entity.type === 'LWPOLYLINE') expect(entity.shape, 'every polyline is closed').toBe(true);
  const circles = entities.flatMap(({ type, layer, center, radius }) => (type === 'CIRCLE' && center && radius !== undefined ? [{ x: center.x, y: center.y, radius, layer }] : []));
  return {
    unit: Number(read.header['$INSUNITS']),
    layers: Object.keys(read.tables.layer.layers),
    entities,
    outline,
    size: sizeOf(outline.vertices),
    circles,
  };
}

/** $INSUNITS of the DXF reference. */
export const INCHES = 1;
export const MILLIMETRES = 4;
