/**
 * Lettering of a template: bends with way and angle, hole sizes, what the part is. Inside the metal where there is room, since
 * the paper outside it is cut away; never on a line or on other lettering.
 */
import { line } from '../../core/geometry/segments';
import type { Bounds, Point } from '../../core/geometry/types';
import { legLetter } from '../../core/part/names';
import { formatAngle } from '../../core/units/formatLength';
import { RING_PX, RING_TO_WORDS_PX, ring, ringBox, standingBalloon, type Balloon } from '../balloon';
import { box, lineBox, overlap, type Box } from '../boxes';
import type { Entity, Pick } from '../entities';
import type { Plan, Sheet } from '../placement';
import { CAP_HEIGHT, LETTER_PX, letteringBox, textWidth, type TextRole } from '../textWidth';
import { inWindow } from './clip';
import { middleOf, type TemplateBend, type TemplateHoles, type TemplateShape } from './templateShape';

/** Cost from which lettering would lie on something, or something on lettering (see `placement.ts`). */
const ON_SOMETHING = 1500;
/** mm of air before and behind words. */
const AIR_MM = 0.6;
const LEADING_PX = 4;

/** One line of a block of words. */
export interface Row {
  readonly role: TextRole;
  readonly text: string;
}

/** What found no room, in words that say it on their own, and the key that it goes by where it did find room. */
export interface LeftOut {
  readonly key: string;
  readonly text: string;
}

export interface Lettered {
  readonly entities: readonly Entity[];
  readonly leftOut: readonly LeftOut[];
}

/**
 * What must be clear of a plan: words with some air. Leaders run from one thing to another and may cross edges, as extension lines
 * may, but no words.
 */
const asked = (b: Box): Box => (b.matter === 'text' ? box('text', b, b.ux, b.uy, b.halfLength + AIR_MM, b.halfHeight) : { ...b, matter: 'extension' });

/** Candidates in order of liking; the first that is clear is taken. */
function placeClear(sheet: Sheet, plans: Iterable<Plan>, window: Bounds | undefined): readonly Entity[] | undefined {
  for (const plan of plans) {
    if (window && !plan.boxes.every((b) => b.minX >= window.minX && b.maxX <= window.maxX && b.minY >= window.minY && b.maxY <= window.maxY)) continue;
    if (sheet.cost(plan.boxes.map(asked), ON_SOMETHING) >= ON_SOMETHING) continue;
    sheet.add(plan.boxes);
    return plan.entities();
  }
  return undefined;
}

const rowHeight = (role: TextRole): number => LETTER_PX[role] + LEADING_PX;
export const blockHeight = (rows: readonly Row[], px: number): number => rows.reduce((sum, row) => sum + rowHeight(row.role), 0) * px;
export const blockWidth = (rows: readonly Row[], px: number): number => Math.max(0, ...rows.map((row) => textWidth(row.text, row.role))) * px;

/** Rows of words under one another, `at` their upper left corner. */
export function block(key: string, rows: readonly Row[], at: Point, px: number): Plan {
  let down = 0;
  const set = rows.map((row, i) => {
    const base = { x: at.x, y: at.y - (down + LEADING_PX / 2 + LETTER_PX[row.role] * 0.78) * px };
    down += rowHeight(row.role);
    return { row, base, key: `${key} ${i}` };
  });
  return {
    boxes: set.map(({ row, base }) => letteringBox(textWidth(row.text, row.role), row.role, base, 'start', 0, px)),
    entities: () => set.map(({ row, base, key }) => ({ kind: 'text', key, role: row.role, at: base, text: row.text, align: 'start', rotation: 0 })),
  };
}

/** Places of a grid over the metal, those nearest the middle of its height first. */
function* over(b: Bounds, width: number, height: number, step: number): Iterable<Point> {
  const columns = Math.max(0, Math.min(120, Math.floor((b.maxX - b.minX - width) / step)));
  const rows = Math.max(0, Math.min(120, Math.floor((b.maxY - b.minY - height) / step)));
  const [left, top] = [(b.minX + b.maxX - width - columns * step) / 2, (b.minY + b.maxY + height + rows * step) / 2];
  const inward = (n: number): readonly number[] => Array.from({ length: n + 1 }, (_, i) => i).toSorted((a, c) => Math.abs(a - n / 2) - Math.abs(c - n / 2));
  for (const row of inward(rows)) for (const column of inward(columns)) yield { x: left + column * step, y: top - row * step };
}

const insideMetal = (shape: TemplateShape) => (p: Point): boolean => {
  // Crossings of a ray to the right with the outline's chords; near an arc the outline's own boxes decide.
  let inside = false;
  for (const { from, to } of shape.outline) {
    if ((from.y > p.y) !== (to.y > p.y) && p.x < from.x + ((p.y - from.y) / (to.y - from.y)) * (to.x - from.x)) inside = !inside;
  }
  return inside;
};

/** What the part is, at the best place in the metal, else below all of it. */
export function partBlock(sheet: Sheet, shape: TemplateShape, ways: readonly (readonly Row[])[], px: number, window?: Bounds): Lettered {
  const metal = insideMetal(shape);
  const seen = window ? { minX: Math.max(shape.bounds.minX, window.minX), minY: Math.max(shape.bounds.minY, window.minY), maxX: Math.min(shape.bounds.maxX, window.maxX), maxY: Math.min(shape.bounds.maxY, window.maxY) } : shape.bounds;
  function* plans(): Iterable<Plan> {
    for (const rows of ways) {
      const [width, height] = [blockWidth(rows, px), blockHeight(rows, px)];
      for (const at of over(seen, width, height, 2)) {
        const corners = [at, { x: at.x + width, y: at.y }, { x: at.x, y: at.y - height }, { x: at.x + width, y: at.y - height }];
        // All of it as one box first: rows are only set where there is room for them.
        const taken = (): boolean => sheet.cost([box('text', { x: at.x + width / 2, y: at.y - height / 2 }, 1, 0, width / 2, height / 2)], ON_SOMETHING) >= ON_SOMETHING;
        if (corners.every(metal) && !taken()) yield block('part', rows, at, px);
      }
    }
    const [rows] = ways;
    if (!rows) return;
    const height = blockHeight(rows, px);
    for (const down of [2, 6, 12, 20, 30]) {
      yield block('part', rows, { x: seen.minX, y: seen.minY - down * px }, px);
      yield block('part', rows, { x: seen.minX, y: seen.maxY + down * px + height }, px);
      yield block('part', rows, { x: seen.maxX + down * px, y: seen.maxY }, px);
    }
    if (window) for (const at of over(window, blockWidth(rows, px), height, 6)) yield block('part', rows, at, px);
    else yield block('part', rows, { x: seen.minX, y: sheet.bounds().minY - 2 * px }, px);
  }
  const entities = placeClear(sheet, plans(), window);
  return entities ? { entities, leftOut: [] } : { entities: [], leftOut: (ways[0] ?? []).map((row) => ({ key: 'part 0', text: row.text })) };
}

const noPick: Pick = { kind: 'leg', leg: '' };

/** Every bend's ringed number, angle and way, on a leader from its centre line. */
export function bendLabels(sheet: Sheet, bends: readonly TemplateBend[], px: number, window?: Bounds): Lettered {
  const entities: Entity[] = [];
  const leftOut: LeftOut[] = [];
  for (const bend of bends) {
    const words = `${formatAngle(bend.turn)} ${bend.way}`;
    const said: Balloon = { key: `bend ${bend.number}`, number: bend.number, words, width: textWidth(words, 'bend text'), field: '', pick: noPick };
    const placed = placeClear(sheet, balloonPlans(said, bend, px), window);
    if (placed) entities.push(...placed.map(onPaper));
    else leftOut.push({ key: `${said.key} words`, text: `Bend ${bend.number}: ${words}` });
  }
  return { entities, leftOut };
}

/** Paper cannot be tapped. */
function onPaper(entity: Entity): Entity {
  const { pick: _, field: __, ...rest } = entity;
  return rest;
}

const ALONG = [0.5, 0.3, 0.7, 0.15, 0.85];
const OFF_PX = [20, 28, 38, 52, 70, 96];
const BEYOND_PX = [22, 34, 48, 66, 88, 120, 160];
const ASIDE_PX = [0, 18, -18, 36, -36, 60, -60, 96, -96];

/** px: half of the dot at the beginning of a leader, with some air. */
const DOT_PX = 3;

/** A balloon whose words do not lie on its own leader (its boxes are ring, words and leader), its dot from `begin` boxed too. */
function balloonFrom(said: Balloon, begin: Point, middle: Point, side: 'start' | 'end', px: number): readonly Plan[] {
  const plan = standingBalloon(said, begin, middle, side, px);
  const [, words, leader] = plan.boxes;
  if (words && leader && overlap(words, leader)) return [];
  return [{ ...plan, boxes: [...plan.boxes, box('line', begin, 1, 0, DOT_PX * px, DOT_PX * px)] }];
}

function* balloonPlans(said: Balloon, bend: TemplateBend, px: number): Iterable<Plan> {
  const length = Math.hypot(bend.to.x - bend.from.x, bend.to.y - bend.from.y) || 1;
  const u = { x: (bend.to.x - bend.from.x) / length, y: (bend.to.y - bend.from.y) / length };
  const v = { x: -u.y, y: u.x };
  const from = (share: number): Point => ({ x: bend.from.x + u.x * length * share, y: bend.from.y + u.y * length * share });
  const shifted = (p: Point, along: number, across: number): Point => ({ x: p.x + u.x * along + v.x * across, y: p.y + u.y * along + v.y * across });
  const sideOf = (dx: number): 'start' | 'end' => (dx >= -1e-9 ? 'start' : 'end');
  // Beside the line, which is over the metal of a leg; the words run away from the line.
  for (const off of OFF_PX) {
    for (const share of ALONG) {
      for (const side of [1, -1]) {
        const begin = from(share);
        const middle = shifted(begin, 0, side * off * px);
        yield* balloonFrom(said, begin, middle, sideOf(v.x * side), px);
      }
    }
  }
  // Past both ends of the line.
  for (const beyond of BEYOND_PX) {
    for (const aside of ASIDE_PX) {
      for (const [end, out] of [[bend.to, 1], [bend.from, -1]] as const) {
        const begin = shifted(end, out * 6 * px, 0);
        const middle = shifted(end, out * beyond * px, aside * px);
        const first = sideOf(middle.x - begin.x);
        yield* balloonFrom(said, begin, middle, first, px);
        yield* balloonFrom(said, begin, middle, first === 'start' ? 'end' : 'start', px);
      }
    }
  }
  // In a wide leg without a leader's room, on the line's own middle but turned aside.
  const middle = middleOf(bend);
  for (const off of [RING_PX + 8, RING_PX + 20]) {
    for (const side of [1, -1]) {
      const at = shifted(middle, 0, side * off * px);
      const base = { x: at.x + RING_TO_WORDS_PX * px, y: at.y - (CAP_HEIGHT / 2) * LETTER_PX['bend text'] * px };
      yield {
        boxes: [ringBox(at, px), letteringBox(said.width, 'bend text', base, 'start', 0, px)],
        entities: () => [...ring(said.key, at, said.number, said.pick, px), { kind: 'text', key: `${said.key} words`, role: 'bend text', at: base, text: said.words, align: 'start', rotation: 0 }],
      };
    }
  }
}

/** `7 × Ø3.2` beside the first hole of the row, or on a leader. `window`: only the holes in it are told of. */
export function holeSizes(sheet: Sheet, groups: readonly TemplateHoles[], sizeOf: (group: TemplateHoles) => string, nameOf: (group: TemplateHoles) => string, px: number, window?: Bounds): Lettered {
  const entities: Entity[] = [];
  const leftOut: LeftOut[] = [];
  for (const group of groups) {
    const seen = window ? group.holes.filter((hole) => inWindow(hole.centre, window)) : group.holes;
    if (seen.length === 0) continue;
    const size = sizeOf(group);
    const text = seen.length === group.holes.length && seen.length > 1 ? `${seen.length} × ${size}` : size;
    const key = `size ${group.leg}/${group.cutout}`;
    const placed = placeClear(sheet, sizePlans(key, text, seen, px), window);
    if (placed) entities.push(...placed);
    else leftOut.push({ key, text: `Leg ${legLetter(group.leg)}, ${nameOf(group)}: ${text}` });
  }
  return { entities, leftOut };
}

const AWAY: readonly (readonly [number, number])[] = [[0, 1], [1, 0], [-1, 0], [0, -1], [1, 1], [-1, 1], [1, -1], [-1, -1]];
const CLOSE_PX = [11, 15];
/** px from the end of a leader to the words it points from: more than their letters reach below their middle. */
const LEADER_SHORT_PX = 5;
const LED_PX = [18, 28, 42, 60, 84, 116, 160, 210];

function* sizePlans(key: string, text: string, holes: TemplateHoles['holes'], px: number): Iterable<Plan> {
  const role = 'note text';
  const width = textWidth(text, role);
  const half = (CAP_HEIGHT / 2) * LETTER_PX[role] * px;
  const plan = (middle: Point, align: 'start' | 'middle' | 'end', lead?: readonly [Point, Point]): Plan => {
    const at = { x: middle.x, y: middle.y - half };
    const boxes: Box[] = [letteringBox(width, role, at, align, 0, px)];
    if (lead) boxes.push(lineBox('line', lead[0], lead[1], px));
    return {
      boxes,
      entities: () => [
        ...(lead ? [{ kind: 'path', key: `${key} leader`, role: 'leader', runs: [{ segments: [line(lead[0], lead[1])], closed: false }] } as const] : []),
        { kind: 'text', key, role, at, text, align, rotation: 0 },
      ],
    };
  };
  const few = holes.length > 12 ? [...holes.slice(0, 6), ...holes.slice(-6)] : holes;
  const place = (hole: TemplateHoles['holes'][number], [dx, dy]: readonly [number, number], off: number): { readonly at: Point; readonly align: 'start' | 'middle' | 'end' } => {
    const { bounds: b, centre } = hole;
    const x = dx > 0 ? b.maxX + off : dx < 0 ? b.minX - off : centre.x;
    const y = dy > 0 ? b.maxY + off + (dx === 0 ? half : 0) : dy < 0 ? b.minY - off - (dx === 0 ? half : 0) : centre.y;
    return { at: { x, y }, align: dx > 0 ? 'start' : dx < 0 ? 'end' : 'middle' };
  };
  for (const off of CLOSE_PX) {
    for (const hole of few) {
      for (const way of AWAY) {
        const { at, align } = place(hole, way, off * px);
        yield plan(at, align);
      }
    }
  }
  for (const off of LED_PX) {
    for (const hole of few) {
      for (const way of AWAY) {
        const { at, align } = place(hole, way, off * px);
        const edge = place(hole, way, 0).at;
        const back = LEADER_SHORT_PX * px;
        const end = align === 'start' ? { x: at.x - back, y: at.y } : align === 'end' ? { x: at.x + back, y: at.y } : { x: at.x, y: at.y + (way[1] > 0 ? -1 : 1) * (half + back) };
        yield plan(at, align, [edge, end]);
      }
    }
  }
}

const DATUM_OUT_PX = 14;
const DATUM_RING_PX = 5;

/** The datum: a small ring marked 0 off the first leg's start, from which every length runs. */
export function datumOnPaper(sheet: Sheet, { places, out }: TemplateShape['datum'], px: number, window?: Bounds): Lettered {
  const seen = window ? places.filter((at) => inWindow(at, window)) : places;
  if (seen.length === 0) return { entities: [], leftOut: [] };
  const role = 'running total';
  const half = (CAP_HEIGHT / 2) * LETTER_PX[role] * px;
  function* plans(): Iterable<Plan> {
    for (const [at, beyond] of seen.flatMap((at) => [0, 12, 30, 60].map((beyond) => [at, beyond] as const))) {
      const moved = (by: number): Point => ({ x: at.x + out.x * by * px, y: at.y + out.y * by * px });
      const middle = moved(DATUM_OUT_PX + beyond);
      const lead = line(at, moved(DATUM_OUT_PX + beyond - DATUM_RING_PX));
      for (const [x, y, align] of [[0, 17, 'middle'], [0, -17, 'middle'], [10, 0, 'start'], [-10, 0, 'end']] as const) {
        const base = { x: middle.x + x * px, y: middle.y + y * px - half };
        const nought = letteringBox(textWidth('0', role), role, base, align, 0, px);
        const leader = lineBox('extension', lead.from, lead.to);
        if (overlap(nought, leader)) continue;
        yield {
          // The line of the mark touches the metal it starts from; only its ring and nought must be clear.
          boxes: [box('text', middle, 1, 0, DATUM_RING_PX * px, DATUM_RING_PX * px), leader, nought],
          entities: () => [
            { kind: 'path', key: 'datum line', role: 'extension line', runs: [{ segments: [lead], closed: false }] },
            { kind: 'contours', key: 'datum', role: 'datum', contours: [{ kind: 'circle', centre: middle, radius: DATUM_RING_PX * px }] },
            { kind: 'text', key: 'datum nought', role, at: base, text: '0', align, rotation: 0 },
          ],
        };
      }
    }
  }
  const entities = placeClear(sheet, plans(), window);
  return entities ? { entities, leftOut: [] } : { entities: [], leftOut: [{ key: 'datum nought', text: 'Datum 0: the start of leg A' }] };
}
