/** Where things stand on a drawing: for fields over figures, rings, and sliding a thing into sight. */
import { contourBounds, joined, NOTHING, pathBounds } from '../../core/geometry/bounds';
import type { Bounds } from '../../core/geometry/types';
import type { Drawing, Entity, Pick, Role, TextEntity } from '../../drawing/entities';
import { textBox } from '../../drawing/textWidth';

const METAL: ReadonlySet<Role> = new Set<Role>(['leg area', 'bend zone', 'hole', 'hole edge']);

const same = (a: Pick | undefined, b: Pick): boolean =>
  a !== undefined && a.kind === b.kind && a.leg === b.leg && (a.kind !== 'cutout' || b.kind !== 'cutout' || a.cutout === b.cutout);

function metalBounds(entity: Entity): Bounds {
  if (entity.kind === 'path') return entity.runs.reduce((b, run) => joined(b, pathBounds(run.segments)), NOTHING);
  return entity.kind === 'contours' ? entity.contours.reduce((b, contour) => joined(b, contourBounds(contour)), NOTHING) : NOTHING;
}

/** What the metal of a leg, bend or cut-out covers, mm; undefined where this drawing does not show it. */
export function boundsOf(drawing: Drawing, pick: Pick): Bounds | undefined {
  let bounds = NOTHING;
  for (const entity of drawing.entities) if (METAL.has(entity.role) && same(entity.pick, pick)) bounds = joined(bounds, metalBounds(entity));
  return bounds.minX <= bounds.maxX ? bounds : undefined;
}

/** The figures that can be changed, left to right, each field once. */
export function changeable(drawing: Drawing): readonly (TextEntity & { readonly field: string })[] {
  const seen = new Set<string>();
  const found: (TextEntity & { readonly field: string })[] = [];
  for (const entity of drawing.entities) {
    if (entity.kind !== 'text' || entity.field === undefined || seen.has(entity.field)) continue;
    seen.add(entity.field);
    found.push({ ...entity, field: entity.field });
  }
  return found.toSorted((a, b) => a.at.x - b.at.x);
}

/** The middle of the figure that shows a field, mm. */
export function figureAt(drawing: Drawing, field: string, px: number): { readonly x: number; readonly y: number } | undefined {
  const text = changeable(drawing).find((entity) => entity.field === field);
  if (!text) return undefined;
  const { x, y } = textBox(text, px);
  return { x, y };
}
