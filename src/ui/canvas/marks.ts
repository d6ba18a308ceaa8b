/** From drawing entities to what stands in the SVG: tags, attributes and texts, as plain data that can be compared. */
import type { Contour, Point, Segment } from '../../core/geometry/types';
import { unreachable } from '../../core/result';
import type { Entity, Pick, TextEntity } from '../../drawing/entities';
import { LETTER_BOX_PX } from '../../drawing/balloon';
import { CAP_HEIGHT, LETTER_PX, textWidth, type TextRole } from '../../drawing/textWidth';

export interface Piece {
  readonly tag: 'path' | 'rect' | 'text';
  readonly attrs: Readonly<Record<string, string>>;
  readonly text?: string;
  readonly suffix?: string;
}

/** One entity: a path by itself, or a group of pieces. `key` is that of the entity. */
export interface Mark {
  readonly key: string;
  readonly tag: 'path' | 'g';
  readonly attrs: Readonly<Record<string, string>>;
  readonly pieces: readonly Piece[];
}

export interface Look {
  /** px to a mm. */
  readonly zoom: number;
  readonly chosen: Pick | null;
  /** The field that is open over its figure: the figure is hidden meanwhile. */
  readonly editing: string | null;
  /** What a figure that can be changed is called: `26 outside: foot length, change`. */
  readonly nameOf: (entity: TextEntity) => string;
  /** Lit for another reason than being what is chosen, such as a row of a table. */
  readonly alsoLit?: (entity: Entity) => boolean;
}

/** What stands behind the point for so many hundredths. */
const HUNDREDTHS = Array.from({ length: 100 }, (_, n) => (n === 0 ? '' : n % 10 === 0 ? `.${n / 10}` : n < 10 ? `.0${n}` : `.${n}`));
const MOST_WHOLE = 2 ** 30;

/** Hundredths of a px are finer than any screen shows. Put together from whole numbers, which is several times faster. */
const round = (value: number): string => {
  const hundredths = Math.round(Math.abs(value) * 100);
  if (hundredths === 0) return '0';
  const text = hundredths < MOST_WHOLE ? `${Math.trunc(hundredths / 100)}${HUNDREDTHS[hundredths % 100] ?? ''}` : String(hundredths / 100);
  return value < 0 ? `-${text}` : text;
};

/** Whether a thing is lit: it is what is chosen, or belongs to the chosen leg. A chosen bend or cut-out lights alone. */
export function isLit(pick: Pick | undefined, chosen: Pick | null): boolean {
  if (!pick || !chosen || pick.leg !== chosen.leg) return false;
  if (chosen.kind === 'leg') return pick.kind !== 'bend';
  return pick.kind === chosen.kind && (pick.kind !== 'cutout' || chosen.kind !== 'cutout' || pick.cutout === chosen.cutout);
}

/** The path of a run on the screen: px, y downwards, true arcs. */
export function pathData(segments: readonly Segment[], closed: boolean, zoom: number): string {
  const at = (p: Point): string => `${round(p.x * zoom)} ${round(-p.y * zoom)}`;
  let d = '';
  segments.forEach((s, i) => {
    const before = segments[i - 1];
    if (!before || before.to.x !== s.from.x || before.to.y !== s.from.y) d += `${i > 0 && joins(before, s, zoom) ? 'L' : 'M'}${at(s.from)}`;
    if (s.kind === 'line') d += `L${at(s.to)}`;
    else {
      const r = round(s.radius * zoom);
      // Anticlockwise with y upwards is sweep 0 with y downwards. A whole turn needs two arcs.
      const flag = s.sweep >= 0 ? 0 : 1;
      const pieces = Math.abs(s.sweep) > Math.PI * 1.99 ? 2 : 1;
      const start = Math.atan2(s.from.y - s.centre.y, s.from.x - s.centre.x);
      for (let k = 1; k <= pieces; k++) {
        const angle = start + (s.sweep * k) / pieces;
        const to = k === pieces ? s.to : { x: s.centre.x + s.radius * Math.cos(angle), y: s.centre.y + s.radius * Math.sin(angle) };
        d += `A${r} ${r} 0 ${Math.abs(s.sweep) / pieces > Math.PI ? 1 : 0} ${flag} ${at(to)}`;
      }
    }
  });
  return closed && d !== '' ? `${d}Z` : d;
}

/** Ends that meet but for a rounding go on as one line, so that joins stay round. */
const joins = (before: Segment | undefined, next: Segment, zoom: number): boolean =>
  before !== undefined && Math.hypot(before.to.x - next.from.x, before.to.y - next.from.y) * zoom < 0.02;

function contourData(contour: Contour, zoom: number): string {
  if (contour.kind === 'path') return pathData(contour.segments, true, zoom);
  const { centre, radius } = contour;
  const r = round(radius * zoom);
  const y = round(-centre.y * zoom);
  const left = round((centre.x - radius) * zoom);
  const right = round((centre.x + radius) * zoom);
  return `M${right} ${y}A${r} ${r} 0 0 0 ${left} ${y}A${r} ${r} 0 0 0 ${right} ${y}Z`;
}

export const classOf = (entity: Entity, look: Look): string => {
  let names = entity.role.replaceAll(' ', '-');
  if (isLit(entity.pick, look.chosen) || look.alsoLit?.(entity)) names += ' lit';
  if (entity.pick?.kind === 'cutout') names += ' of-cutout';
  if (entity.kind === 'text' && entity.field !== undefined) {
    names += ' can-change';
    if (entity.field === look.editing) names += ' editing';
  }
  return names;
};

const ANCHOR = { start: 'start', middle: 'middle', end: 'end' } as const;
/** px round a figure: the ruled box on hover, and where the dotted underline lies below the base line. */
const BOX_SIDE = 5;
const BOX_BELOW = 8;
const BOX_ABOVE = 6;
const DOTS_BELOW = 5;

function textMark(entity: TextEntity, look: Look): Mark {
  const role = entity.role as TextRole;
  const turn = entity.rotation === 0 ? '' : ` rotate(${round((-entity.rotation * 180) / Math.PI)})`;
  const transform = `translate(${round(entity.at.x * look.zoom)} ${round(-entity.at.y * look.zoom)})${turn}`;
  const width = textWidth(entity.text, role, entity.suffix);
  const left = { start: 0, middle: -width / 2, end: -width }[entity.align];
  const cap = CAP_HEIGHT * LETTER_PX[role];
  const text: Piece = {
    tag: 'text',
    attrs: { 'text-anchor': ANCHOR[entity.align] },
    text: entity.text,
    ...(entity.suffix === undefined ? {} : { suffix: entity.suffix }),
  };
  const attrs: Record<string, string> = { class: classOf(entity, look), transform };
  if (entity.field !== undefined) {
    attrs['role'] = 'button';
    attrs['tabindex'] = '-1';
    attrs['aria-label'] = look.nameOf(entity);
    attrs['data-field'] = entity.field;
    const frame = { x: round(left - BOX_SIDE), y: round(-cap - BOX_ABOVE), width: round(width + 2 * BOX_SIDE), height: round(cap + BOX_ABOVE + BOX_BELOW), rx: '2', class: 'frame' };
    const dots: Piece = { tag: 'path', attrs: { class: 'dots', d: `M${round(left)} ${DOTS_BELOW}H${round(left + width)}` } };
    return { key: entity.key, tag: 'g', attrs, pieces: [{ tag: 'rect', attrs: frame }, dots, text] };
  }
  if (role === 'leg letter' || role === 'difference letter') {
    const side = Math.max(LETTER_BOX_PX, width + 6);
    const square = { x: round(-side / 2), y: round(-cap / 2 - LETTER_BOX_PX / 2), width: round(side), height: String(LETTER_BOX_PX), rx: '2', class: 'square' };
    return { key: entity.key, tag: 'g', attrs, pieces: [{ tag: 'rect', attrs: square }, text] };
  }
  return { key: entity.key, tag: 'g', attrs, pieces: [text] };
}

export function markOf(entity: Entity, look: Look): Mark {
  switch (entity.kind) {
    case 'path': {
      const d = entity.runs.map((run) => pathData(run.segments, run.closed, look.zoom)).join('');
      return { key: entity.key, tag: 'path', attrs: { class: classOf(entity, look), d }, pieces: [] };
    }
    case 'contours': {
      const d = entity.contours.map((contour) => contourData(contour, look.zoom)).join('');
      return { key: entity.key, tag: 'path', attrs: { class: classOf(entity, look), d, 'fill-rule': 'evenodd' }, pieces: [] };
    }
    case 'text':
      return textMark(entity, look);
    default:
      return unreachable(entity);
  }
}
