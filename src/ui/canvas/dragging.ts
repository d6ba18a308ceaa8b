/** What a drag changes and to what: all worked out from where the drag began, so that nothing drifts. mm throughout. */
import { legCalled, cutoutCalled } from '../../core/part/names';
import type { Layout, LegCutout } from '../../core/part/layoutTypes';
import type { Point } from '../../core/geometry/types';
import { originOf } from '../../drawing/blankShape';
import type { Pick } from '../../drawing/entities';
import { mainRun } from '../../drawing/mainRun';
import type { Job } from '../../job/schema';
import type { Shape } from '../../job/workOut';
import { plainText } from '../fields/nudge';
import type { FigureName } from './view';

/** A value of the axis at which the thing dragged lines up with another. */
export interface Alignment {
  readonly value: number;
  readonly says: string;
}

/** One field that follows the pointer. */
export interface DragAxis {
  readonly field: string;
  /** What stands in front of the live figure, where more than one moves. */
  readonly word: string;
  /** Unit direction on the drawing in which the value grows (`sign` 1) or shrinks (−1). */
  readonly ux: number;
  readonly uy: number;
  readonly sign: 1 | -1;
  readonly value: number;
  readonly text: string;
  readonly least: number;
  readonly align: readonly Alignment[];
  /** px to leave the start by before the axis moves, so that a hole pulled along its leg does not wander across it. */
  readonly slack: number;
}

export interface DragPlan {
  readonly pick: Pick;
  /** The first is the main one. */
  readonly axes: readonly DragAxis[];
}

export interface DragSource {
  readonly figure: FigureName;
  readonly job: Job;
  readonly part: string;
  readonly shape: Shape;
  readonly values: ReadonlyMap<string, number>;
}

/** px: an end of a leg is taken hold of within this of the end line. */
const END_PX = 22;
/** A length is not dragged below this, mm. */
const LEAST_LENGTH = 0.1;
const SLACK_PX = 6;

interface OnDrawing {
  readonly ux: number;
  readonly uy: number;
  /** From a point of the drawing to the leg's x and (on the blank) y. */
  readonly along: (p: Point) => number;
  readonly across: (p: Point) => number;
}

function legOnDrawing({ figure, shape }: DragSource, index: number): OnDrawing | undefined {
  if (figure === 'section') {
    const run = mainRun(shape.layout, shape.folded).find((leg) => leg.index === index);
    if (!run) return undefined;
    const { ux, uy } = run;
    const o = run.at(0, 0);
    return { ux, uy, along: (p) => (p.x - o.x) * ux + (p.y - o.y) * uy, across: () => 0 };
  }
  const pose = shape.blank.legs[index];
  if (!pose) return undefined;
  const x0 = pose.x - originOf(shape.blank);
  const ux = Math.cos(pose.heading);
  const uy = Math.sin(pose.heading);
  return { ux, uy, along: (p) => (p.x - x0) * ux + (p.y - pose.y) * uy, across: (p) => (p.y - pose.y) * ux - (p.x - x0) * uy };
}

function typed(source: DragSource, field: string, text: string | undefined): { readonly field: string; readonly value: number; readonly text: string } | undefined {
  const value = source.values.get(field);
  return value === undefined || text === undefined ? undefined : { field, value, text };
}

function lengthAxis(source: DragSource, index: number): DragAxis | undefined {
  const leg = source.shape.layout.part.legs[index];
  const on = legOnDrawing(source, index);
  const held = jobLeg(source, leg?.id);
  const entry = leg && typed(source, `parts.${source.part}.legs.${leg.id}.length`, held?.length);
  if (!leg || !on || !entry) return undefined;
  const others = source.shape.layout.part.legs
    .filter((other) => other.id !== leg.id)
    .map((other) => ({ value: other.length, says: `same as ${lowerFirst(other.name.trim() || legCalled(source.shape.layout.part, source.shape.layout.part.legs.indexOf(other)))}` }));
  return { ...entry, word: '', ux: on.ux, uy: on.uy, sign: 1, least: LEAST_LENGTH, align: others, slack: 0 };
}

const jobLeg = (source: DragSource, leg: string | undefined) => source.job.parts.find((part) => part.id === source.part)?.legs.find(({ id }) => id === leg);
const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** What dragging a thing from a point would change; undefined where it changes nothing, so that the view is moved instead. */
export function dragPlan(source: DragSource, pick: Pick, at: Point, zoom: number): DragPlan | undefined {
  const { layout } = source.shape;
  const { legs } = layout.part;
  const index = legs.findIndex((leg) => leg.id === pick.leg);
  const leg = legs[index];
  if (!leg) return undefined;
  if (pick.kind === 'bend') {
    // A bend goes with the length of the leg before it. A side lug's bend goes with no length.
    const axis = leg.bend?.edge === 'end' ? lengthAxis(source, leg.bend.parent) : undefined;
    return axis && { pick, axes: [axis] };
  }
  if (pick.kind === 'leg') {
    const free = !layout.legs[index]?.children.some((child) => legs[child]?.bend?.edge === 'end');
    const on = legOnDrawing(source, index);
    const straight = layout.legs[index]?.straight ?? 0;
    if (!free || !on || Math.abs(on.along(at) - straight) * zoom > END_PX) return undefined;
    const axis = lengthAxis(source, index);
    return axis && { pick, axes: [axis] };
  }
  return cutoutPlan(source, pick.cutout, index, at);
}

function cutoutPlan(source: DragSource, id: string, index: number, at: Point): DragPlan | undefined {
  const { layout } = source.shape;
  const leg = layout.part.legs[index];
  const own = layout.legs[index];
  const on = legOnDrawing(source, index);
  const number = leg?.cutouts.findIndex((cutout) => cutout.id === id) ?? -1;
  const cutout = leg?.cutouts[number];
  const held = jobLeg(source, leg?.id)?.cutouts.find((c) => c.id === id);
  if (!leg || !own || !on || !cutout || !held) return undefined;
  const x = on.along(at);
  const y = on.across(at);
  const flat = source.figure === 'section';
  const grabbed = own.cutouts
    .filter((item) => item.cutout === number)
    .reduce<LegCutout | undefined>((best, item) => (best && off(best, x, y, flat) <= off(item, x, y, flat) ? best : item), undefined);
  if (!grabbed) return undefined;
  const base = `parts.${source.part}.legs.${leg.id}.cutouts.${id}`;
  const others = own.cutouts.filter((item) => item.cutout !== number);
  const axes: DragAxis[] = [];

  const along = typed(source, `${base}.along.distance`, held.along.distance);
  const alongSign = cutout.along.from === 'end' ? -1 : 1;
  if (along) {
    const align = others.map((other) => ({ value: along.value + alongSign * (other.centre.x - grabbed.centre.x), says: sameAs(layout, index, other) }));
    axes.push({ ...along, word: 'along', ux: on.ux, uy: on.uy, sign: alongSign, least: -Infinity, align: unique(align), slack: source.figure === 'blank' ? SLACK_PX : 0 });
  }
  const across = source.figure === 'blank' ? typed(source, `${base}.across.distance`, held.across.distance) : undefined;
  const acrossSign = cutout.across.from === 'left' ? -1 : 1;
  if (across) {
    const align = others.map((other) => ({ value: across.value + acrossSign * (other.centre.y - grabbed.centre.y), says: sameAs(layout, index, other) }));
    const centred = { value: across.value + acrossSign * (0 - grabbed.centre.y), says: 'on the centre line' };
    axes.push({ ...across, word: 'across', ux: -on.uy, uy: on.ux, sign: acrossSign, least: -Infinity, align: unique([centred, ...align]), slack: SLACK_PX });
  }
  return axes.length > 0 ? { pick: { kind: 'cutout', leg: leg.id, cutout: id }, axes } : undefined;
}

const off = (item: LegCutout, x: number, y: number, flat: boolean): number => Math.hypot(item.centre.x - x, flat ? 0 : item.centre.y - y);
const sameAs = (layout: Layout, leg: number, other: LegCutout): string => `same as ${lowerFirst(cutoutCalled(layout.part, leg, other.cutout, other.item))}`;

/** One alignment to a value: the first that names it. */
const unique = (align: readonly Alignment[]): readonly Alignment[] => {
  const seen = new Map<number, Alignment>();
  for (const a of align) {
    const key = Math.round(a.value * 1e6);
    if (!seen.has(key)) seen.set(key, a);
  }
  return [...seen.values()];
};

export interface Snapping {
  /** mm; 0 or less for none. */
  readonly step: number;
  /** mm in the plain unit: 1 or 25.4. */
  readonly unit: number;
  readonly zoom: number;
  /** Alt: no snapping. */
  readonly free: boolean;
}

export interface Snapped {
  readonly value: number;
  /** Why it sits where it sits, where that is another thing. */
  readonly says: string | undefined;
}

/** px within which a thing lines up with another rather than with the step. */
const ALIGN_PX = 7;

/** A value as the drag leaves it: on another thing's place if near, else on the step; with `free` to a hundredth of the unit. */
export function snapped(raw: number, align: readonly Alignment[], snapping: Snapping): Snapped {
  const fine = snapping.unit === 1 ? 0.01 : snapping.unit / 1000;
  if (snapping.free) return { value: Math.round(raw / fine) * fine, says: undefined };
  let best: Alignment | undefined;
  for (const a of align) if (!best || Math.abs(a.value - raw) < Math.abs(best.value - raw)) best = a;
  if (best && Math.abs(best.value - raw) * snapping.zoom <= ALIGN_PX) return { value: best.value, says: best.says };
  const step = snapping.step > 0 ? snapping.step : fine;
  return { value: Math.round(raw / step) * step, says: undefined };
}

export interface Moved {
  readonly axis: DragAxis;
  readonly value: number;
  /** What is written: a plain number in the plain unit, or what was there before where the axis has not moved. */
  readonly text: string;
  readonly says: string | undefined;
}

/** Where a drag has brought its fields. @param dx, dy mm on the drawing since the drag began */
export function dragTo(plan: DragPlan, dx: number, dy: number, snapping: Snapping): readonly Moved[] {
  return plan.axes.map((axis) => {
    const along = dx * axis.ux + dy * axis.uy;
    if (Math.abs(along) * snapping.zoom < axis.slack) return { axis, value: axis.value, text: axis.text, says: undefined };
    const to = snapped(axis.value + axis.sign * along, axis.align, snapping);
    const value = Math.max(axis.least, to.value);
    return { axis, value, text: plainText(value / snapping.unit, snapping.unit === 1 ? 3 : 4), says: value === to.value ? to.says : undefined };
  });
}
