import Drawing from 'dxf-writer';
import type { DxfShape } from './shapes';

/**
 * Stand-in for a layer's name while dxf-writer works: it keeps layers under their names in a plain object, which a name such as
 * `__proto__` would break, and checks none of them. `finish` puts the real names in.
 */
export const standIn = (layer: number): string => `LAYER ${layer}`;

/** The shapes as the package dxf-writer writes them. Not yet a file to send out: see `finish.ts`. */
export function rawDxf(shapes: readonly DxfShape[], layers: number, unit: 'mm' | 'in'): string {
  const drawing = new Drawing();
  drawing.setUnits(unit === 'mm' ? 'Millimeters' : 'Inches');
  for (let layer = 0; layer < layers; layer++) drawing.addLayer(standIn(layer), 7, 'CONTINUOUS');
  for (const shape of shapes) {
    drawing.setActiveLayer(standIn(shape.layer));
    switch (shape.kind) {
      case 'circle':
        drawing.drawCircle(shape.centre.x, shape.centre.y, shape.radius);
        break;
      case 'line':
        drawing.drawLine(shape.from.x, shape.from.y, shape.to.x, shape.to.y);
        break;
      case 'polyline': {
        // The third number of a point is its bulge; the package's types leave it out.
        const points = shape.vertices.map((v) => (v.bulge === 0 ? [v.x, v.y] : [v.x, v.y, v.bulge]));
        drawing.drawPolyline(points as unknown as Array<[number, number]>, shape.closed);
        break;
      }
    }
  }
  return drawing.toDxfString();
}
