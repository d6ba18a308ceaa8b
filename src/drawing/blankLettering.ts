/** Lettering on the blank itself: leg letters, tangent readings, and the balloons of bends whose lines run along it. */
import type { Point } from '../core/geometry/types';
import { placer } from '../core/geometry/pose';
import type { Blank, Layout } from '../core/part/layoutTypes';
import { legLetter } from '../core/part/names';
import { balloon, letter, standingBalloon } from './balloon';
import { bendWords, runsAcross } from './blankBends';
import { originOf, pastEdges } from './blankShape';
import { readable } from './dimension';
import { mainRunIndices } from './mainRun';
import type { Candidate, Sheet } from './placement';
import { CAP_HEIGHT, LETTER_PX, letteringBox, textWidth } from './textWidth';
import type { Words } from './words';

/** One thing to place; its candidates are made when its turn comes, since they look at what is on the sheet by then. */
export type ToPlace = () => readonly Candidate[];

const moved = (blank: Blank) => {
  const origin = originOf(blank);
  return (p: Point): Point => ({ x: p.x - origin, y: p.y });
};

/** Balloons beside the ends of bends whose lines run along the blank, such as those of side lugs. */
export function lugBalloons(layout: Layout, blank: Blank, words: Words, px: number, sheet: Sheet): readonly ToPlace[] {
  const move = moved(blank);
  return blank.bends.filter((bend) => !runsAcross(bend)).map((bend) => () => {
    const said = bendWords(layout, bend, words);
    const balloonOf = balloon(`${said.leg} bend`, bend.leg, said.words, said.field, { kind: 'bend', leg: said.leg });
    const ends = pastEdges(bend, px).map(move).toSorted((a, b) => a.x - b.x);
    const candidates: Candidate[] = [];
    const standing = (cost: number, from: Point, at: Point, side: 'start' | 'end'): void => {
      candidates.push({ cost, plan: () => standingBalloon(balloonOf, from, at, side, px) });
    };
    [ends[1], ends[0]].forEach((from, i) => {
      if (!from) return;
      const way = i === 0 ? 1 : -1;
      [20, 32, 48, 70, 100].forEach((out, j) => {
        for (const rise of [0, 14, -14, 28, -28, 44, -44]) {
          standing(j * 8 + Math.abs(rise) / 4 + i * 3, from, { x: from.x + way * out * px, y: from.y + rise * px }, way === 1 ? 'start' : 'end');
        }
      });
    });
    const end = ends[1];
    if (end) standing(300, end, { x: end.x + 20 * px, y: sheet.bounds().maxY + 18 * px }, 'start');
    return candidates;
  });
}

/** Distance of every leg's tangent lines from the datum, written along the line; shown for the chosen leg only. */
export function tangentReadings(layout: Layout, blank: Blank, words: Words, px: number, sheet: Sheet): readonly ToPlace[] {
  const move = moved(blank);
  const { legs } = layout.part;
  return blank.bends.flatMap((bend) => {
    const parent = legs[bend.leg]?.bend?.parent;
    const own = legs[bend.leg];
    const before = parent === undefined ? undefined : legs[parent];
    if (!own || !before || parent === undefined) return [];
    return [
      { leg: before.id, key: `${before.id} tangent to ${own.id}`, tangent: bend.startTangent, middle: bend.endTangent },
      { leg: own.id, key: `${own.id} tangent`, tangent: bend.endTangent, middle: bend.startTangent },
    ].map(({ leg, key, tangent, middle }) => () => {
      const [from, to] = [move(tangent[0]), move(tangent[1])];
      const other = move(middle[0]);
      const length = Math.hypot(to.x - from.x, to.y - from.y);
      const ux = length > 0 ? (to.x - from.x) / length : 0;
      const uy = length > 0 ? (to.y - from.y) / length : 1;
      const side = (other.x - from.x) * -uy + (other.y - from.y) * ux > 0 ? -1 : 1;
      const across = Math.abs(uy) >= Math.abs(ux);
      const text = words.length(across ? (from.x + to.x) / 2 : (from.y + to.y) / 2);
      const rotation = readable(Math.atan2(uy, ux));
      const half = (CAP_HEIGHT / 2) * LETTER_PX['tangent text'] * px;
      const width = textWidth(text, 'tangent text') * px;
      const standing = (cost: number, middleAt: Point): Candidate => {
        const at = { x: middleAt.x + Math.sin(rotation) * half, y: middleAt.y - Math.cos(rotation) * half };
        return {
          cost,
          plan: () => ({
            boxes: [letteringBox(width / px, 'tangent text', at, 'middle', rotation, px)],
            entities: () => [{ kind: 'text', key, role: 'tangent text', pick: { kind: 'leg', leg }, at, text, align: 'middle', rotation }],
          }),
        };
      };
      const off = half + 5 * px;
      const beside = (along: number, out: number): Point => ({ x: from.x + ux * along - uy * out * side, y: from.y + uy * along + ux * out * side });
      const room = width / 2 + 4 * px;
      const places = [length - room, room, length * 0.75, length * 0.25, length / 2, length + room, -room, length + room + width, -room - width];
      const candidates = places.flatMap((along, i) => [standing(i * 4, beside(along, off)), standing(i * 4 + 30, beside(along, off + 16 * px)), standing(i * 4 + 60, beside(along, -off))]);
      candidates.push(standing(500, { x: beside(length, off).x, y: sheet.bounds().maxY + width }));
      return candidates;
    });
  });
}

const LETTER_SHARES = [0.5, 0.6, 0.4, 0.7, 0.3, 0.8, 0.2, 0.9, 0.1];
const LETTER_HEIGHTS = [0.28, -0.28, 0.36, -0.36, 0.18, -0.18, 0];

/** The letter of every leg, on the leg if there is room, else just beside it. */
export function blankLetters(layout: Layout, blank: Blank, px: number, sheet: Sheet): readonly ToPlace[] {
  const move = moved(blank);
  const main = new Set(mainRunIndices(layout));
  return layout.part.legs.map((leg, i) => () => {
    const pose = blank.legs[i];
    const laid = layout.legs[i];
    if (!pose || !laid) return [];
    const toBlank = placer(pose);
    const at = (x: number, y: number): Point => move(toBlank({ x, y }));
    const stand = letter(leg.id, legLetter(i), px);
    const standing = (cost: number, middle: Point): Candidate => ({ cost, plan: () => stand(middle) });
    const candidates = LETTER_SHARES.flatMap((share, j) =>
      LETTER_HEIGHTS.map((height, k) => {
        const wide = leg.startWidth + (leg.endWidth - leg.startWidth) * share;
        return standing(j * 3 + k * 4, at(laid.straight * share, height * wide));
      }),
    );
    // Beside the leg: above and below a main leg, right and left of a lug.
    const wide = Math.max(leg.startWidth, leg.endWidth) / 2;
    for (const out of [15, 30, 50, 75, 110]) {
      const off = wide + out * px;
      candidates.push(standing(80 + out, at(laid.straight / 2, -off)), standing(81 + out, at(laid.straight / 2, off)));
    }
    const last = at(laid.straight / 2, 0);
    candidates.push(standing(900, { x: last.x, y: sheet.bounds().minY - 16 * px * (main.has(i) ? 1 : 2) }));
    return candidates;
  });
}
