/** The two overlays as they are looked at now: one scale, one left edge. */
import type { Drawing, Entity } from '../../drawing/entities';
import { overlayDrawing } from '../../drawing/overlay/overlayDrawing';
import type { Comparison } from '../../job/compare/compareStocks';
import { fit, type FigureName, type Fitted, type Room } from '../canvas/view';

export type Overlays = Readonly<Record<FigureName, Drawing>>;

const made = new WeakMap<Comparison, Map<number, Overlays>>();

/** Lettering keeps its px, so the layout hangs on the zoom. */
export function overlaysAt(comparison: Comparison, zoom: number): Overlays {
  const byZoom = made.get(comparison) ?? new Map<number, Overlays>();
  made.set(comparison, byZoom);
  const before = byZoom.get(zoom);
  if (before) return before;
  const lettering = { px: 1 / zoom };
  const drawings = { section: overlayDrawing(comparison, 'section', lettering), blank: overlayDrawing(comparison, 'blank', lettering) };
  byZoom.set(zoom, drawings);
  return drawings;
}

/** Undefined where the part cannot be laid out in any of the stocks. */
export function fittedOverlays(comparison: Comparison, room: Room): Fitted | undefined {
  if (room.width <= 0 || !comparison.stocks.some(({ worked }) => worked.shape)) return undefined;
  return fit((zoom) => overlaysAt(comparison, zoom), room);
}

/** Letters of a mark: several differences at one place stand together. */
export const lettersOf = (entity: Entity): readonly string[] => (entity.kind === 'text' && entity.role === 'difference letter' ? entity.text.split(', ') : []);

const ofMark = (key: string): string => key.replace(/ (letters|dot|leader)$/, '');

/** Tells what is lit with a letter: the letter itself, its leader and the dot at the place. */
export function litBy(drawing: Drawing, letter: string | undefined): (entity: Entity) => boolean {
  const mark = letter === undefined ? undefined : drawing.entities.find((entity) => lettersOf(entity).includes(letter));
  const lit = mark && ofMark(mark.key);
  return (entity) => lit !== undefined && /(letters|dot|leader)$/.test(entity.key) && ofMark(entity.key) === lit;
}

/** Where the thing stands that a letter is led to, mm; undefined where this overlay does not show it. */
export function placeOf(drawing: Drawing, letter: string | undefined): { readonly x: number; readonly y: number } | undefined {
  const lit = litBy(drawing, letter);
  const dot = drawing.entities.find((entity) => entity.kind === 'contours' && lit(entity));
  const contour = dot?.kind === 'contours' ? dot.contours[0] : undefined;
  return contour?.kind === 'circle' ? contour.centre : undefined;
}
