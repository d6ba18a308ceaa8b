/** A list of sentences under a heading, each with a small sign before it where it has one. Paper mm. */
import { line } from '../../core/geometry/segments';
import type { Point } from '../../core/geometry/types';
import type { Entity } from '../entities';
import { PAPER_PX_MM } from '../page';
import { baseDrop, heading, HEADING_HEIGHT, lineHeight, mm, text, unbroken, stacked, type Block, type Laid } from './block';
import type { TextRole } from '../textWidth';
import { brokenTo, printed } from './wording';

export interface Sentence {
  /** A triangle for what to look at, a cross for what is wrong, nothing for what is only told. */
  readonly sign: 'care' | 'stop' | 'none';
  readonly says: string;
}

/** mm: a narrower column breaks the sentences into shreds; a wider line is hard to follow. */
const LEAST = 52;
const LIKED = 84;
const BETWEEN = 0.9;
const INDENT = 4.6;

export function sentencesBlock(key: string, title: string, said: readonly Sentence[], role: TextRole = 'sheet text'): Block {
  const indent = said.some((s) => s.sign !== 'none') ? INDENT : 0;
  const at = (width: number): Laid => {
    const title0 = unbroken(HEADING_HEIGHT - BETWEEN, (p) => heading(key, p, title, [], width));
    const items = said.map((sentence, i) => item(`${key} ${i}`, sentence, role, indent, width));
    const [first, ...rest] = items;
    // The heading stays with what it heads.
    const together = first ? unbroken(title0.height + BETWEEN + first.height, stacked([title0, first], BETWEEN).draw) : title0;
    return stacked([together, ...rest], BETWEEN);
  };
  return { least: LEAST, natural: LEAST, liked: LIKED, at };
}

function item(key: string, { sign, says }: Sentence, role: TextRole, indent: number, width: number): Laid {
  const lines = brokenTo(printed(says), role, (width - indent) / PAPER_PX_MM);
  const step = lineHeight(role);
  return unbroken(lines.length * step, (at) => [
    ...signMark(`${key} sign`, sign, { x: at.x + 1.6, y: at.y - step * 0.52 }),
    ...lines.map((said, i) => text(`${key} line ${i}`, role, { x: at.x + indent, y: at.y - baseDrop(role) - i * step }, said)),
  ]);
}

/** px: half the side of a sign. */
const SIGN_PX = 8;

function signMark(key: string, sign: Sentence['sign'], middle: Point): readonly Entity[] {
  const r = mm(SIGN_PX);
  const p = (x: number, y: number): Point => ({ x: middle.x + x * r, y: middle.y + y * r });
  switch (sign) {
    case 'none':
      return [];
    case 'stop':
      return [{ kind: 'path', key, role: 'warning sign', runs: [line(p(-0.8, -0.8), p(0.8, 0.8)), line(p(-0.8, 0.8), p(0.8, -0.8))].map((s) => ({ segments: [s], closed: false })) }];
    case 'care': {
      const [a, b, c] = [p(-1, -0.8), p(1, -0.8), p(0, 0.95)];
      return [
        { kind: 'path', key, role: 'warning sign', runs: [{ segments: [line(a, b), line(b, c), line(c, a)], closed: true }] },
        { kind: 'path', key: `${key} bar`, role: 'sheet rule', runs: [{ segments: [line(p(0, 0.4), p(0, -0.2))], closed: false }, { segments: [line(p(0, -0.42), p(0, -0.6))], closed: false }] },
      ];
    }
  }
}
