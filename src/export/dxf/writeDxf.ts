import type { Bounds } from '../../core/geometry/types';
import { good } from '../../core/result';
import type { Result } from '../../core/result';
import type { Drawing } from '../../drawing/entities';
import type { Job } from '../../job/schema';
import { MM_PER_INCH } from '../../core/units/unitWords';
import { unwritable } from '../checkDrawing';
import { finish } from './finish';
import { planLayers } from './layers';
import { rawDxf } from './rawDxf';
import { dxfShapes } from './shapes';

const scaled = (b: Bounds, scale: number): Bounds => ({
  minX: b.minX * scale,
  minY: b.minY * scale,
  maxX: b.maxX * scale,
  maxY: b.maxY * scale,
});

/**
 * A DXF of a cut drawing (see `cutDrawing`): closed polylines with bulges, true circles, bend lines as lines; no lettering, no
 * layer that is not used. Form AC1021, UTF-8, CRLF; the same drawing and settings give the same bytes.
 * @param drawing mm; holds outlines, holes and bend centre lines only
 * @param settings unit of the file's numbers and the layer names
 * @returns the text of the file, or the first layer name, path or number that cannot be written and what would be right
 * Source of the form: the published DXF reference.
 */
export function writeDxf(drawing: Drawing, settings: Pick<Job['dxf'], 'unit' | 'layers'>): Result<string> {
  const plan = planLayers(drawing, settings.layers);
  if (!plan.ok) return plan;
  const problem = unwritable(drawing);
  if (problem) return { ok: false, problem };
  const unitsPerMm = settings.unit === 'mm' ? 1 : 1 / MM_PER_INCH;
  const shapes = dxfShapes(drawing, plan.value, unitsPerMm);
  if (!shapes.ok) return shapes;
  const { layers } = plan.value;
  const raw = rawDxf(shapes.value, layers.length, settings.unit);
  return good(finish(raw, layers, scaled(drawing.bounds, unitsPerMm), settings.unit));
}
