/**
 * Running dimensions of cut-outs along one edge of the blank, all from one datum. Readings that would touch are spread and their
 * leaders cranked; a row too close for that is told by its first reading, pitch and total; if even so too many are left, the
 * lettering turns to read from the right. It is never made smaller.
 */
import { line } from '../core/geometry/segments';
import type { Point, Segment } from '../core/geometry/types';
import { lineBox, type Box } from './boxes';
import type { Entity, Pick, TextEntity } from './entities';
import { spread } from './spread';
import { CAP_HEIGHT, LETTER_PX, textBox, textWidth } from './textWidth';
import { rowText, short, type Words } from './words';

/** px from the edge of the part: where leaders leave their place, where they have reached it, and where the lettering begins. */
const CRANK_FROM_PX = 8;
const CRANK_TO_PX = 24;
export const LETTERING_FROM_PX = 28;
export const DATUM_OUT_PX = 24;
const DATUM_RADIUS_PX = 5;
/** px kept between readings, and how far a reading may be moved before the next way of writing is taken. */
const GAP_PX = 8;
const FURTHEST_PX = 48;

/** A reading of one opening: `at` from the datum; `from` is how far out its extension line begins (below 0: inside the part). */
export interface RunningReading {
  readonly at: number;
  readonly from: number;
}

/** Readings that belong to one cut-out, in order of `at`. */
export interface ReadingGroup {
  readonly key: string;
  readonly pick?: Pick;
  readonly readings: readonly RunningReading[];
  /** Where the readings are equally pitched: the field of the pitch. */
  readonly pitchField?: string;
  /** The overall length: set bold. */
  readonly total?: boolean;
}

/** Which edge the band runs along, and from where: `edge` is the part's own edge, mm. */
export interface BandPlace {
  readonly side: 'below' | 'left';
  readonly edge: number;
}

interface Label {
  readonly key: string;
  readonly at: number;
  readonly text: string;
  readonly group: ReadingGroup;
  /** px to either side when written level, and whether a leader comes down to it. */
  readonly before: number;
  readonly behind: number;
  readonly leader: boolean;
  readonly from: number;
  readonly field?: string;
}

const roleOf = (group: ReadingGroup): 'running total' | 'running text' => (group.total ? 'running total' : 'running text');
const width = (text: string): number => textWidth(text, 'running text');

function separate(group: ReadingGroup, words: Words): readonly Label[] {
  return group.readings.map((reading, i) => {
    const text = words.length(reading.at);
    const half = width(text) / 2;
    return { key: `${group.key} reading ${i}`, at: reading.at, text, group, before: half, behind: half, leader: true, from: reading.from };
  });
}

/** A row in short: first reading, gaps × pitch = total between, last reading; all in one where there is no room between. */
function inShort(group: ReadingGroup, words: Words, px: number): readonly Label[] {
  const all = separate(group, words);
  const first = all[0];
  const last = all.at(-1);
  if (!first || !last || group.pitchField === undefined) return all;
  const span = last.at - first.at;
  const gaps = all.length - 1;
  const said = short(words.say(group.pitchField));
  const row = rowText(gaps, said, span, words);
  const half = width(row) / 2;
  const field = { field: group.pitchField };
  if (span / px >= first.behind + 2 * half + last.before + 2 * GAP_PX) {
    const middle: Label = { key: `${group.key} row`, at: (first.at + last.at) / 2, text: row, group, before: half, behind: half, leader: false, from: 0, ...field };
    return [first, middle, last];
  }
  const text = `${first.text} + ${gaps} × ${said} = ${last.text}`;
  return [{ ...first, key: `${group.key} row`, text, behind: width(text) - first.before, ...field }];
}

const crowded = (group: ReadingGroup, px: number): boolean => {
  const [a, b] = group.readings;
  return group.pitchField !== undefined && group.readings.length > 2 && a !== undefined && b !== undefined && (b.at - a.at) / px < 52 + GAP_PX;
};

interface Band {
  readonly entities: readonly Entity[];
  readonly boxes: readonly Box[];
}

/**
 * The band, ready to stand along an edge of the part, and `out` mm further off it.
 * @param px mm to a reference px
 */
export function runningBand(groups: readonly ReadingGroup[], side: BandPlace['side'], words: Words, px: number): (edge: number, out?: number) => Band {
  const levelHeight = 0.52 * LETTER_PX['running text'];
  const across = side === 'left';

  const arranged = (labels: readonly Label[], turned: boolean): { readonly labels: readonly Label[]; readonly places: readonly number[]; readonly furthest: number } => {
    const sorted = labels.toSorted((a, b) => a.at - b.at);
    const stacked = turned || across;
    const datum = { at: 0, before: across ? levelHeight * px : 24 * px, behind: Math.max(DATUM_RADIUS_PX, stacked ? levelHeight : 0) * px, held: true };
    const readings = sorted.map((label) => ({
      at: label.at,
      before: (stacked ? levelHeight : label.before) * px,
      behind: (stacked ? levelHeight : label.behind) * px,
    }));
    const at0 = sorted.findIndex((label) => label.at >= 0);
    const zero = at0 < 0 ? sorted.length : at0;
    const all = spread([...readings.slice(0, zero), datum, ...readings.slice(zero)], (stacked ? 2 : GAP_PX) * px);
    const places = all.filter((_, i) => i !== zero);
    const furthest = Math.max(0, ...places.map((p, i) => Math.abs(p - (sorted[i]?.at ?? 0)))) / px;
    return { labels: sorted, places, furthest };
  };

  let turned = false;
  let best = arranged(groups.flatMap((group) => separate(group, words)), false);
  if (best.furthest > FURTHEST_PX) {
    const shortened = groups.flatMap((group) => (crowded(group, px) ? inShort(group, words, px) : separate(group, words)));
    best = arranged(shortened, false);
    if (best.furthest > 2 * FURTHEST_PX && !across) {
      turned = true;
      best = arranged(shortened, true);
    }
  }

  return (edge, out = 0) => {
    const at = (along: number, off: number): Point => (across ? { x: edge - out - off, y: along } : { x: along, y: edge - out - off });
    const entities: Entity[] = [];
    const boxes: Box[] = [];
    const leaders = new Map<ReadingGroup, Segment[][]>();
    best.labels.forEach((label, i) => {
      const to = best.places[i] ?? label.at;
      const text = lettering(label, at(to, LETTERING_FROM_PX * px), turned, across, px);
      entities.push(text);
      boxes.push(textBox(text, px));
      if (!label.leader) return;
      const begin = at(label.at, Math.min(label.from - out, (CRANK_FROM_PX - 2) * px));
      const knee = at(label.at, CRANK_FROM_PX * px);
      const end = at(to, CRANK_TO_PX * px);
      const straight = Math.abs(to - label.at) < 0.5 * px;
      const segments = straight ? [line(begin, end)] : [line(begin, knee), line(knee, end)];
      for (const s of segments) boxes.push(lineBox('extension', s.from, s.to));
      const mine = leaders.get(label.group);
      if (mine) mine.push(segments);
      else leaders.set(label.group, [segments]);
    });
    for (const [group, runs] of leaders) {
      entities.push({ kind: 'path', key: `${group.key} reading leaders`, role: 'extension line', runs: runs.map((segments) => ({ segments, closed: false })), ...(group.pick ? { pick: group.pick } : {}) });
    }
    return { entities, boxes };
  };
}

/** A reading at the end of its leader: level and below it, turned to read from the right, or beside the left edge (`across`). */
function lettering(label: Label, p: Point, turned: boolean, across: boolean, px: number): TextEntity {
  const role = roleOf(label.group);
  const half = (CAP_HEIGHT / 2) * LETTER_PX[role] * px;
  const common = { kind: 'text', key: label.key, role, text: label.text, ...(label.group.pick ? { pick: label.group.pick } : {}), ...(label.field === undefined ? {} : { field: label.field }) } as const;
  if (across) return { ...common, at: { x: p.x, y: p.y - half }, align: 'end', rotation: 0 };
  if (turned) return { ...common, at: { x: p.x + half, y: p.y }, align: 'end', rotation: Math.PI / 2 };
  const even = label.before === label.behind;
  return { ...common, at: { x: even ? p.x : p.x - label.before * px, y: p.y - 2 * half }, align: even ? 'middle' : 'start', rotation: 0 };
}

/** The datum of a band: a small ring marked 0, with its line from the edge. */
export function datumMark(key: string, place: BandPlace, from: number, px: number): { readonly entities: readonly Entity[]; readonly boxes: readonly Box[] } {
  const below = place.side === 'below';
  const at = (out: number): Point => (below ? { x: 0, y: place.edge - out } : { x: place.edge - out, y: 0 });
  const middle = at(DATUM_OUT_PX * px);
  const half = (CAP_HEIGHT / 2) * LETTER_PX['running total'] * px;
  const beside = below ? { x: -12 * px, y: middle.y - half } : { x: middle.x - 12 * px, y: -half };
  const text: TextEntity = { kind: 'text', key: `${key} nought`, role: 'running total', at: beside, text: '0', align: 'end', rotation: 0 };
  const lead = line(at(from), at((DATUM_OUT_PX - DATUM_RADIUS_PX) * px));
  return {
    entities: [
      { kind: 'path', key: `${key} line`, role: 'extension line', runs: [{ segments: [lead], closed: false }] },
      { kind: 'contours', key, role: 'datum', contours: [{ kind: 'circle', centre: middle, radius: DATUM_RADIUS_PX * px }] },
      text,
    ],
    boxes: [textBox(text, px), lineBox('extension', lead.from, lead.to), lineBox('line', middle, middle, DATUM_RADIUS_PX * px)],
  };
}
