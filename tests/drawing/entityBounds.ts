/** What entities cover, text included. */
import { contourBounds, joined, NOTHING, segmentBounds } from '../../src/core/geometry/bounds';
import type { Bounds } from '../../src/core/geometry/types';
import { unreachable } from '../../src/core/result';
import type { Entity } from '../../src/drawing/entities';
import { textBox } from '../../src/drawing/textWidth';

export function entityBounds(entity: Entity, px: number): Bounds {
  let bounds = NOTHING;
  switch (entity.kind) {
    case 'path':
      for (const run of entity.runs) for (const segment of run.segments) bounds = joined(bounds, segmentBounds(segment));
      return bounds;
    case 'contours':
      for (const contour of entity.contours) bounds = joined(bounds, contourBounds(contour));
      return bounds;
    case 'text': {
      const { minX, minY, maxX, maxY } = textBox(entity, px);
      return { minX, minY, maxX, maxY };
    }
    default:
      return unreachable(entity);
  }
}

