/** Blocks set side by side where there is room, and one row of them under another. Paper mm. */
import type { Block, Laid } from './block';
import { stacked, unbroken } from './block';

/** mm between blocks, sideways and downwards. */
export const BESIDE = 6;
export const UNDER = 4;

const sumOf = (blocks: readonly Block[], width: (b: Block) => number): number => blocks.reduce((sum, b) => sum + width(b), 0);

/** Widths of blocks side by side in a room: between what each needs and what comes naturally, or between that and what each likes. */
function widthsIn(blocks: readonly Block[], room: number): readonly number[] {
  const least = sumOf(blocks, (b) => b.least);
  const natural = sumOf(blocks, (b) => b.natural);
  const liked = sumOf(blocks, (b) => b.liked);
  const share = (low: number, high: number): number => Math.min(1, Math.max(0, (room - low) / Math.max(1e-9, high - low)));
  if (room < natural) return blocks.map((b) => b.least + (b.natural - b.least) * share(least, natural));
  return blocks.map((b) => b.natural + (b.liked - b.natural) * share(natural, liked) + (Math.max(0, room - liked) * b.liked) / liked);
}

/** One row: blocks side by side in all of the width. */
function row(blocks: readonly Block[], width: number): { readonly laid: readonly Laid[]; readonly lefts: readonly number[]; readonly height: number } {
  const widths = widthsIn(blocks, width - BESIDE * (blocks.length - 1));
  const lefts: number[] = [];
  let x = 0;
  for (const w of widths) {
    lefts.push(x);
    x += w + BESIDE;
  }
  const laid = blocks.map((b, i) => b.at(widths[i] ?? b.least));
  return { laid, lefts, height: Math.max(...laid.map((l) => l.height)) };
}

function rowLaid(blocks: readonly Block[], width: number): Laid {
  const { laid, lefts, height } = row(blocks, width);
  const [only] = laid;
  if (laid.length === 1 && only) return only;
  return {
    ...unbroken(height, (at) => laid.flatMap((l, i) => l.draw({ x: at.x + (lefts[i] ?? 0), y: at.y }))),
    // Too high to stay side by side: one under another, so that each can be broken.
    split: (room) => {
      const parts = stacked(blocks.map((b) => b.at(Math.min(width, Math.max(b.least, b.liked)))), UNDER);
      return parts.split(room);
    },
  };
}

/** Blocks in rows, in order, as many to a row as can be read there. */
export function shelves(blocks: readonly Block[], width: number): Laid {
  const rows: Block[][] = [];
  let used = Infinity;
  for (const block of blocks) {
    if (used + BESIDE + block.least <= width) {
      rows.at(-1)?.push(block);
      used += BESIDE + block.least;
    } else {
      rows.push([block]);
      used = block.least;
    }
  }
  return stacked(rows.map((blocksOfRow) => rowLaid(blocksOfRow, width)), UNDER);
}

/** Blocks one under another in a column. */
export const column = (blocks: readonly Block[], width: number): Laid => stacked(blocks.map((b) => b.at(width)), UNDER);
