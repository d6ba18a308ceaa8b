import { halfTurns } from '../../core/geometry/bulge';
import type { Contour, Point, Segment } from '../../core/geometry/types';
import { bad, good, unreachable } from '../../core/result';
import type { Result } from '../../core/result';
import type { Drawing, Entity } from '../../drawing/entities';
import type { Job } from '../../job/schema';
import { layerUse } from '../dxf/layers';
import type { LayerUse } from '../dxf/layers';
import { unwritable } from '../checkDrawing';
import { formatReal } from '../formatReal';
import { MM_PER_INCH } from '../../core/units/unitWords';
import { escapeXml } from './escapeXml';

export interface SvgSettings {
  /** Unit of the width and height; the drawing inside is in mm either way. */
  readonly unit: Job['dxf']['unit'];
  readonly layers: Job['dxf']['layers'];
  /** What the file shows, such as the part's name. */
  readonly title: string;
}

/** Edge of the page round the part, mm, so that no line is cut in half by it. */
const MARGIN = 2;
const PLACES = 9;
/** Black is cut, blue is marked. Common practice of cutters that sort by colour, no source. */
const COLOURS: Record<LayerUse, string> = { outline: '#000000', cutouts: '#000000', bends: '#0000ff' };

const real = (value: number): string => formatReal(value, PLACES);

/** What is written of one entity, with y turned to run downwards by `down`. */
function elements(entity: Entity, down: (y: number) => number): readonly string[] {
  const at = (p: Point): string => `${real(p.x)} ${real(down(p.y))}`;
  // Turning y over turns the way round as well: anticlockwise here is flag 0 there.
  const step = (s: Segment): string =>
    s.kind === 'line'
      ? `L${at(s.to)}`
      : halfTurns(s).map((a) => `A${real(a.radius)} ${real(a.radius)} 0 0 ${a.sweep > 0 ? 0 : 1} ${at(a.to)}`).join('');
  const path = (segments: readonly Segment[], closed: boolean): string => {
    const first = segments[0];
    return first ? `<path d="M${at(first.from)}${segments.map(step).join('')}${closed ? 'Z' : ''}"/>` : '';
  };
  const contour = (c: Contour): string =>
    c.kind === 'circle' ? `<circle cx="${real(c.centre.x)}" cy="${real(down(c.centre.y))}" r="${real(c.radius)}"/>` : path(c.segments, true);
  switch (entity.kind) {
    case 'path':
      return entity.runs.map((run) => path(run.segments, run.closed));
    case 'contours':
      return entity.contours.map(contour);
    case 'text':
      return [];
    default:
      return unreachable(entity);
  }
}

/**
 * An SVG of a cut drawing at true size: one user unit is 1 mm, arcs and circles stay what they are, each layer is a group with
 * its name. Names are escaped, so that none can open an element of its own. The same drawing gives the same bytes.
 * @param drawing mm; outlines, holes and bend centre lines, no lettering
 * @returns the text of the file, or what in the drawing cannot be written
 * Source of the form: SVG 1.1 and SVG 2, paths and basic shapes.
 */
export function writeSvg(drawing: Drawing, settings: SvgSettings): Result<string> {
  const problem = unwritable(drawing);
  if (problem) return { ok: false, problem };
  const { minX, minY, maxX, maxY } = drawing.bounds;
  const groups: Record<LayerUse, string[]> = { outline: [], cutouts: [], bends: [] };
  const down = (y: number): number => minY + maxY - y;
  for (const entity of drawing.entities) {
    const use = layerUse(entity.role);
    if (!use) return bad('drawing', `A cutting file holds only what is cut or marked, and this drawing has a ${entity.role} in it. Use the cut drawing.`);
    groups[use].push(...elements(entity, down));
  }
  const body = (Object.keys(groups) as LayerUse[])
    .filter((use) => groups[use].length > 0)
    .map((use) => {
      const name = escapeXml(settings.layers[use]);
      return `  <g id="${use}" data-layer="${name}" stroke="${COLOURS[use]}">\n    <title>${name}</title>\n    ${groups[use].join('\n    ')}\n  </g>\n`;
    })
    .join('');
  const width = maxX - minX + 2 * MARGIN;
  const height = maxY - minY + 2 * MARGIN;
  const page = (mm: number): string => `${real(settings.unit === 'mm' ? mm : mm / MM_PER_INCH)}${settings.unit}`;
  return good(
    `<?xml version="1.0" encoding="UTF-8"?>\n<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="${page(width)}" height="${page(height)}"` +
      ` viewBox="${[minX - MARGIN, minY - MARGIN, width, height].map(real).join(' ')}" fill="none" stroke-width="0.1">\n` +
      `  <title>${escapeXml(settings.title)}</title>\n${body}</svg>\n`,
  );
}
