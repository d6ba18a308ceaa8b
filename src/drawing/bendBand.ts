/**
 * Bends above the blank: ringed number, way and angle, and the running dimension of the centre line. Where labels would be pushed
 * too far the ring goes above the words, and then the lettering turns to read from the right.
 */
import { line } from '../core/geometry/segments';
import type { Point } from '../core/geometry/types';
import { lineBox, type Box } from './boxes';
import { ring, ringBox, RING_PX, RING_TO_WORDS_PX } from './balloon';
import type { Entity, Pick, TextEntity } from './entities';
import { spread } from './spread';
import { CAP_HEIGHT, LETTER_PX, textBox, textWidth } from './textWidth';

export interface BendLabel {
  readonly leg: string;
  readonly number: number;
  /** `45° up`. */
  readonly words: string;
  readonly field: string;
  /** Running dimension of the centre line as text, and where it is. */
  readonly reading: string;
  readonly at: number;
  /** y of the end of the drawn centre line, mm. */
  readonly lineEnd: number;
}

type Manner = 'beside' | 'stacked' | 'turned';

/** px above the part's upper edge. */
const CRANK_FROM_PX = 9;
const CRANK_TO_PX = 24;
const READING_PX = 28;
const WORDS_PX = 48;
const GAP_PX = 10;
const FURTHEST_PX = 46;
/** From the line's end to its leader. */
const LINE_END_GAP_PX = 2;

const span = (label: BendLabel): number => Math.max(textWidth(label.words, 'bend text'), textWidth(label.reading, 'running total'));

function reachOf(label: BendLabel, manner: Manner): readonly [number, number] {
  const half = span(label) / 2;
  switch (manner) {
    case 'beside':
      return [half + RING_TO_WORDS_PX + RING_PX, half];
    case 'stacked':
      return [half, half];
    case 'turned':
      return [RING_PX + 1, RING_PX + 1];
  }
}

export function bendBand(labels: readonly BendLabel[], edge: number, px: number): { readonly entities: readonly Entity[]; readonly boxes: readonly Box[] } {
  const sorted = labels.toSorted((a, b) => a.at - b.at);
  const arranged = (manner: Manner): readonly number[] =>
    spread(
      sorted.map((label) => {
        const [before, behind] = reachOf(label, manner);
        return { at: label.at, before: before * px, behind: behind * px };
      }),
      (manner === 'turned' ? 2 : GAP_PX) * px,
    );
  const tooFar = (places: readonly number[]): boolean => places.some((p, i) => Math.abs(p - (sorted[i]?.at ?? 0)) > FURTHEST_PX * px);

  let manner: Manner = 'beside';
  let places = arranged(manner);
  if (tooFar(places)) places = arranged((manner = 'stacked'));
  if (tooFar(places)) places = arranged((manner = 'turned'));

  const entities: Entity[] = [];
  const boxes: Box[] = [];
  sorted.forEach((label, i) => {
    const to = places[i] ?? label.at;
    const pick: Pick = { kind: 'bend', leg: label.leg };
    const key = `${label.leg} bend`;
    const y = (up: number): number => edge + up * px;
    const begin: Point = { x: label.at, y: label.lineEnd + LINE_END_GAP_PX * px };
    const knee: Point = { x: label.at, y: Math.max(begin.y, y(CRANK_FROM_PX)) };
    const end: Point = { x: to, y: y(CRANK_TO_PX) };
    const straight = Math.abs(to - label.at) < 0.5 * px;
    const lead = straight ? [line(begin, end)] : knee.y > begin.y ? [line(begin, knee), line(knee, end)] : [line(begin, end)];
    const half = (CAP_HEIGHT / 2) * LETTER_PX['bend text'] * px;
    const text = (part: string, role: 'bend text' | 'running total', said: string, at: Point, align: TextEntity['align'], rotation = 0): TextEntity => ({
      kind: 'text',
      key: `${key} ${part}`,
      role,
      pick,
      at,
      text: said,
      align,
      rotation,
      ...(role === 'bend text' ? { field: label.field } : {}),
    });
    const turnedAt = (up: number): Point => ({ x: to + half, y: y(up) });
    const readingLength = textWidth(label.reading, 'running total');
    const wordsLength = textWidth(label.words, 'bend text');
    const left = to - (span(label) / 2) * px;
    const [reading, words, ringAt] =
      manner === 'turned' ?
        [
          text('reading', 'running total', label.reading, turnedAt(READING_PX), 'start', Math.PI / 2),
          text('words', 'bend text', label.words, turnedAt(READING_PX + readingLength + 8), 'start', Math.PI / 2),
          { x: to, y: y(READING_PX + readingLength + wordsLength + 16 + RING_PX) },
        ]
      : manner === 'stacked' ?
        [
          text('reading', 'running total', label.reading, { x: to, y: y(READING_PX) }, 'middle'),
          text('words', 'bend text', label.words, { x: to, y: y(WORDS_PX) }, 'middle'),
          { x: to, y: y(WORDS_PX + 16 + RING_PX) },
        ]
      : [
          text('reading', 'running total', label.reading, { x: left, y: y(READING_PX) }, 'start'),
          text('words', 'bend text', label.words, { x: left, y: y(WORDS_PX) }, 'start'),
          { x: left - RING_TO_WORDS_PX * px, y: y((READING_PX + WORDS_PX) / 2 + 5) },
        ];
    entities.push({ kind: 'path', key: `${key} leader`, role: 'leader', pick, runs: [{ segments: lead, closed: false }] }, ...ring(key, ringAt, label.number, pick, px), words, reading);
    boxes.push(ringBox(ringAt, px), textBox(words, px), textBox(reading, px), ...lead.map((s) => lineBox('extension', s.from, s.to)));
  });
  return { entities, boxes };
}
