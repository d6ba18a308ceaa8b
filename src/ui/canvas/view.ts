/**
 * How the section and the blank are looked at: one scale and one left edge for both, so that their datum stays in line.
 * Screen px from the top left of a figure; drawing mm, y upwards.
 */
import { createStore } from 'zustand/vanilla';
import { useStore } from 'zustand';
import type { Pick } from '../../drawing/entities';
import type { Bounds, Point } from '../../core/geometry/types';

export type FigureName = 'section' | 'blank';

/** What is in sight. `mid` is the height (mm) that lies in the middle of each figure. */
export interface Sight {
  /** px to a mm. */
  readonly zoom: number;
  /** mm at the left edge of both figures. */
  readonly left: number;
  readonly mid: Readonly<Record<FigureName, number>>;
}

/** Room for the figures, px: they share the width and, one above the other, the height. */
export interface Room {
  readonly width: number;
  readonly height: number;
  /** No drawing is fitted into less than this: on a narrow screen it keeps its size and slides sideways. */
  readonly leastWidth: number;
}

export interface View {
  readonly room: Room;
  /** What was moved or zoomed by hand; null while all of both drawings is fitted in. */
  readonly hand: Sight | null;
  /** The figure that was last used: a field that both show opens here. */
  readonly active: FigureName;
  readonly ring: { readonly pick: Pick; readonly turn: number } | null;
}

export const view = createStore<View>()(() => ({
  room: { width: 0, height: 480, leastWidth: 0 },
  hand: null,
  active: 'section',
  ring: null,
}));

export const useView = <Slice>(read: (state: View) => Slice): Slice => useStore(view, read);

/** px kept clear round a fitted drawing. */
export const CLEAR_PX = 12;
export const LEAST_ZOOM = 0.02;
export const MOST_ZOOM = 200;
/** A small part is not blown up beyond this when it is fitted. */
const MOST_FITTED = 14;
/**
 * A fit for the sake of height goes no farther down than this share of the zoom that fills the width, or this many px to the mm:
 * below it metal is a stamp among its lettering, and the page had better be slid.
 */
const LEAST_SHARE = 0.35;
const READABLE_ZOOM = 3;
/** px of height that the lettering of both drawings takes at the least. */
const LEAST_LETTERING_PX = 120;
/** px by which a drawing may be too large without being seen to be. */
const ROUNDING_PX = 0.5;
/** Each try draws both figures once. */
const MOST_TRIES = 8;
export const STEP_ZOOM = 1.25;

export const toScreen = (sight: Sight, figure: FigureName, height: number, p: Point): Point => ({
  x: (p.x - sight.left) * sight.zoom,
  y: height / 2 - (p.y - sight.mid[figure]) * sight.zoom,
});

export const toDrawing = (sight: Sight, figure: FigureName, height: number, p: Point): Point => ({
  x: sight.left + p.x / sight.zoom,
  y: sight.mid[figure] + (height / 2 - p.y) / sight.zoom,
});

export interface Extents {
  readonly extent: Bounds;
  readonly bounds: Bounds;
}
export type Measured = Readonly<Record<FigureName, Extents>>;

export interface Fitted extends Sight {
  /** px, of each figure. */
  readonly height: Readonly<Record<FigureName, number>>;
}

const across = (...bounds: readonly Bounds[]): { readonly min: number; readonly max: number } => ({
  min: Math.min(...bounds.map((b) => b.minX)),
  max: Math.max(...bounds.map((b) => b.maxX)),
});
const size = (min: number, max: number): number => Math.max(1e-6, max - min);
const middle = (b: Bounds): number => (b.minY + b.maxY) / 2;
const widthOf = (m: Measured, key: keyof Extents): number => {
  const { min, max } = across(m.section[key], m.blank[key]);
  return size(min, max);
};
const heightOf = (m: Measured, key: keyof Extents): number => size(m.section[key].minY, m.section[key].maxY) + size(m.blank[key].minY, m.blank[key].maxY);

/** px that both drawings take at a zoom, with the room kept clear. */
const needs = (m: Measured, zoom: number) => ({ width: widthOf(m, 'bounds') * zoom + 2 * CLEAR_PX, height: heightOf(m, 'bounds') * zoom + 4 * CLEAR_PX });

function placed(m: Measured, zoom: number, room: Room): Fitted {
  const { min, max } = across(m.section.bounds, m.blank.bounds);
  const spare = Math.max(2 * CLEAR_PX, room.width - (max - min) * zoom);
  return {
    zoom,
    left: min - spare / 2 / zoom,
    mid: { section: middle(m.section.bounds), blank: middle(m.blank.bounds) },
    height: { section: Math.ceil(size(m.section.bounds.minY, m.section.bounds.maxY) * zoom) + 2 * CLEAR_PX, blank: Math.ceil(size(m.blank.bounds.minY, m.blank.bounds.maxY) * zoom) + 2 * CLEAR_PX },
  };
}

/** How the last fit goes on: `steady` while a figure is typed or dragged, so that the picture does not breathe. */
export interface Before {
  readonly fitted: Fitted;
  readonly steady: boolean;
}

/** A fit is given up for one this much closer. */
const WORTH_IT = 1.12;

/** The last fit, if it will still do. */
function heldFit(measure: (zoom: number) => Measured, room: Room, wide: number, { fitted, steady }: Before): Fitted | undefined {
  const fits = (zoom: number): boolean => {
    const need = needs(measure(zoom), zoom);
    return need.width <= wide + ROUNDING_PX && need.height <= room.height + ROUNDING_PX;
  };
  const m = measure(fitted.zoom);
  const { min, max } = across(m.section.extent, m.blank.extent);
  const shown = wide / fitted.zoom;
  if (steady) {
    const inSight = min >= fitted.left && max <= fitted.left + shown;
    const high = (['section', 'blank'] as const).every((figure) => size(m[figure].extent.minY, m[figure].extent.maxY) * fitted.zoom <= fitted.height[figure]);
    return inSight && high ? { ...placed(m, fitted.zoom, room), left: fitted.left, height: fitted.height } : undefined;
  }
  return fits(fitted.zoom) && !(fitted.zoom * WORTH_IT <= MOST_FITTED && fits(fitted.zoom * WORTH_IT)) ? placed(m, fitted.zoom, room) : undefined;
}

/**
 * The largest zoom at which both drawings fit in the room. Lettering keeps its px, so how much a drawing takes is asked anew
 * at each zoom tried.
 * @param before what was fitted last, kept while it will do
 */
export function fit(measure: (zoom: number) => Measured, room: Room, before?: Before): Fitted {
  const wide = Math.max(room.width, room.leastWidth);
  const held = before && heldFit(measure, room, wide, before);
  if (held) return held;
  // The width first: lettering takes about the same px at any zoom, so this settles at once.
  let widest = before?.fitted.zoom ?? 4;
  for (let turn = 0; turn < 3; turn++) {
    const m = measure(widest);
    const lettering = needs(m, widest).width - widthOf(m, 'extent') * widest;
    const next = Math.min(MOST_FITTED, Math.max(LEAST_ZOOM, (wide - Math.min(lettering, wide / 2)) / widthOf(m, 'extent')));
    const settled = next <= widest && next > 0.98 * widest;
    if (settled) break;
    widest = next;
  }
  // Then down until the height fits too. Closer in, lettering finds more room beside the metal and a drawing may need less
  // height, so no step is longer than a fifth.
  const metal = heightOf(measure(widest), 'extent');
  const least = Math.max(LEAST_ZOOM, Math.min(widest * LEAST_SHARE, READABLE_ZOOM));
  let zoom = Math.min(widest, Math.max(least, (room.height - LEAST_LETTERING_PX) / metal));
  let best = { zoom, over: Infinity };
  for (let turn = 0; turn < MOST_TRIES && best.over > 0; turn++) {
    const need = needs(measure(zoom), zoom);
    const over = Math.max(0, need.height - room.height - ROUNDING_PX) + Math.max(0, need.width - wide - ROUNDING_PX);
    if (over < best.over) best = { zoom, over };
    const byHeight = (room.height - (need.height - metal * zoom)) / metal;
    const byWidth = zoom * (wide / need.width);
    zoom = Math.max(least, Math.min(zoom * 0.96, Math.max(zoom * 0.8, Math.min(byHeight, byWidth))));
  }
  return placed(measure(best.zoom), best.zoom, room);
}

/** Zooms so that what lies under the point (px, in one figure) stays under it. */
export function zoomedAbout(sight: Sight, figure: FigureName, height: number, at: Point, factor: number): Sight {
  const zoom = Math.min(MOST_ZOOM, Math.max(LEAST_ZOOM, sight.zoom * factor));
  const held = toDrawing(sight, figure, height, at);
  return {
    zoom,
    left: held.x - at.x / zoom,
    mid: { ...sight.mid, [figure]: held.y - (height / 2 - at.y) / zoom },
  };
}

/** Moved by hand: both figures sideways, one up and down. px. */
export const panned = (sight: Sight, figure: FigureName, dx: number, dy: number): Sight => ({
  ...sight,
  left: sight.left - dx / sight.zoom,
  mid: { ...sight.mid, [figure]: sight.mid[figure] + dy / sight.zoom },
});

/** Keeps at least `keep` px of what the bounds cover in sight, so that no drawing can be lost. */
export function kept(sight: Sight, m: Measured, width: number, height: Readonly<Record<FigureName, number>>, keep = 60): Sight {
  const { min, max } = across(m.section.extent, m.blank.extent);
  const edge = keep / sight.zoom;
  const left = Math.min(max - edge, Math.max(min + edge - width / sight.zoom, sight.left));
  const mid = (figure: FigureName): number => {
    const half = height[figure] / 2 / sight.zoom;
    const { minY, maxY } = m[figure].extent;
    const near = Math.min(edge, half);
    return Math.min(maxY + half - near, Math.max(minY - half + near, sight.mid[figure]));
  };
  return { zoom: sight.zoom, left, mid: { section: mid('section'), blank: mid('blank') } };
}

/** Left edge that brings a stretch (mm) into sight with as little movement as can be. */
export function slidTo(left: number, zoom: number, width: number, from: number, to: number, clear = 24): number {
  const edge = clear / zoom;
  if (to - from + 2 * edge > width / zoom) return (from + to) / 2 - width / 2 / zoom;
  if (from - edge < left) return from - edge;
  if (to + edge > left + width / zoom) return to + edge - width / zoom;
  return left;
}

export const fitAll = (): void => view.setState({ hand: null });
