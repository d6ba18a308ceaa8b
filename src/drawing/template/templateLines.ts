/** All that is drawn of a blank on paper but its lettering: edges, holes, crosses, punch marks, bend lines. Whole, or what a window holds. */
import { offset } from '../../core/geometry/points';
import { line } from '../../core/geometry/segments';
import type { Bounds, Point, Segment } from '../../core/geometry/types';
import { BEND_LINE_PAST_PX } from '../blankShape';
import { lineBox, segmentBoxes, uprightBox, type Box, type Matter } from '../boxes';
import type { Entity, PathEntity, Role } from '../entities';
import { circlePath } from './circlePath';
import { clipRun, inWindow, type OpenOrClosed } from './clip';
import type { TemplateBend, TemplateHole, TemplateShape } from './templateShape';

/** mm: radius of a punch mark, smaller than the punch's own dint; a hole's cross past its edge, and its least arm. */
const PUNCH_MM = 0.3;
const CROSS_PAST_MM = 1;
/** mm kept clear on both sides of a line by lettering. */
const CLEAR_MM = 0.4;

export interface Drawn {
  readonly entities: readonly Entity[];
  readonly boxes: readonly Box[];
}

const run = (segments: readonly Segment[], closed = false): OpenOrClosed => ({ segments, closed });

/** The four arms of the cross of a hole. */
function arms(hole: TemplateHole, at: Point): readonly Segment[] {
  const own = at === hole.centre ? hole.bounds : undefined;
  const reach = Math.min(hole.bounds.maxX - hole.bounds.minX, hole.bounds.maxY - hole.bounds.minY) / 2 + CROSS_PAST_MM;
  const ends: readonly Point[] = own
    ? [{ x: own.maxX + CROSS_PAST_MM, y: at.y }, { x: at.x, y: own.maxY + CROSS_PAST_MM }, { x: own.minX - CROSS_PAST_MM, y: at.y }, { x: at.x, y: own.minY - CROSS_PAST_MM }]
    : [{ x: at.x, y: at.y + reach }, { x: at.x, y: at.y - reach }, { x: at.x + reach, y: at.y }, { x: at.x - reach, y: at.y }];
  return ends.map((end) => line(at, end));
}

const centreLine = (bend: TemplateBend, px: number): Segment => {
  const heading = Math.atan2(bend.to.y - bend.from.y, bend.to.x - bend.from.x);
  return line(offset(bend.from, heading, -BEND_LINE_PAST_PX * px), offset(bend.to, heading, BEND_LINE_PAST_PX * px));
};

/** Boxes that keep lettering off; thin lines get some air. */
const airy = (matter: Matter) => (segment: Segment): readonly Box[] => (segment.kind === 'line' ? [lineBox(matter, segment.from, segment.to, CLEAR_MM)] : segmentBoxes(matter, segment));

/** @param window what of it is drawn; all of it where left out */
export function templateLines(shape: TemplateShape, px: number, window?: Bounds): Drawn {
  const entities: Entity[] = [];
  const boxes: Box[] = [];
  const cut = (runs: readonly OpenOrClosed[]): readonly OpenOrClosed[] => (window ? runs.flatMap((r) => clipRun(r, window)) : runs);
  const path = (key: string, role: Role, runs: readonly OpenOrClosed[]): void => {
    const seen = cut(runs);
    if (seen.length === 0) return;
    const entity: PathEntity = { kind: 'path', key, role, runs: seen };
    entities.push(entity);
    boxes.push(...seen.flatMap((r) => r.segments.flatMap(airy(role === 'template edge' ? 'metal' : 'line'))));
  };

  path('outline', 'template edge', [run(shape.outline, true)]);
  for (const bend of shape.bends) {
    path(`bend ${bend.number} tangent lines`, 'tangent line', bend.tangents.map((s) => run([s])));
    path(`bend ${bend.number} centre line`, 'bend centre line', [run([centreLine(bend, px)])]);
  }
  for (const group of shape.groups) {
    const key = `holes ${group.leg}/${group.cutout}`;
    path(`${key} crosses`, 'centre cross', group.holes.flatMap((hole) => hole.punches.flatMap((at) => arms(hole, at).map((s) => run([s])))));
    for (const hole of group.holes) {
      if (!window) {
        entities.push({ kind: 'contours', key: `hole ${hole.key}`, role: 'template edge', contours: [hole.contour] });
        boxes.push(uprightBox('metal', hole.bounds));
      } else {
        const whole = hole.contour.kind === 'circle' ? circlePath(hole.contour) : hole.contour.segments;
        path(`hole ${hole.key}`, 'template edge', [run(whole, true)]);
        if (inWindow(hole.centre, window)) boxes.push(uprightBox('metal', clamped(hole.bounds, window)));
      }
    }
    const inside = window ? { minX: window.minX + PUNCH_MM, minY: window.minY + PUNCH_MM, maxX: window.maxX - PUNCH_MM, maxY: window.maxY - PUNCH_MM } : undefined;
    const punched = group.holes.flatMap((hole) => hole.punches).filter((at) => !inside || inWindow(at, inside));
    if (punched.length > 0) entities.push({ kind: 'contours', key: `${key} punches`, role: 'centre punch', contours: punched.map((centre) => ({ kind: 'circle', centre, radius: PUNCH_MM })) });
  }
  return { entities, boxes };
}

const clamped = (b: Bounds, w: Bounds): Bounds => ({ minX: Math.max(b.minX, w.minX), minY: Math.max(b.minY, w.minY), maxX: Math.min(b.maxX, w.maxX), maxY: Math.min(b.maxY, w.maxY) });
