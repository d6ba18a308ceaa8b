/** Lettering on the blank itself: leg letters, tangent readings, and the balloons of bends whose lines run along it. */
import type { Point } from '../core/geometry/types';
import { placer } from '../core/geometry/pose';
import type { Blank, Layout } from '../core/part/layoutTypes';
import { legLetter } from '../core/part/names';
import { balloon, letter, standingBalloon } from './balloon';
import { bendWords, runsAcross } from './blankBends';
import { originOf, pastEdges } from './blankShape';
import { readable } from './dimension';
import type { Candidate, Sheet } from './placement';
import { CAP_HEIGHT, LETTER_PX, letteringBox, textWidth } from './textWidth';
import type { Words } from './words';

/** One thing to place; its candidates are made when its turn comes, since they look at what is on the sheet by then. */
export type ToPlace = () => Iterable<Candidate>;

const moved = (blank: Blank) => {
  const origin = originOf(blank);
  return (p: Point): Point => ({ x: p.x - origin, y: p.y });
};

/** Where a balloon may stand by the ends of a bend's line, best first, px. */
const LUG_BALLOON_PLACES = [true, false]
  .flatMap((right) => [20, 32, 48, 70, 100].flatMap((out, j) => [0, 14, -14, 28, -28, 44, -44].map((rise) => ({ right, out, rise, cost: j * 8 + Math.abs(rise) / 4 + (right ? 0 : 3) }))))
  .toSorted((a, b) => a.cost - b.cost);

/** Balloons beside the ends of bends whose lines run along the blank, such as those of side lugs. */
export function lugBalloons(layout: Layout, blank: Blank, words: Words, px: number, sheet: Sheet): readonly ToPlace[] {
  const move = moved(blank);
  return blank.bends.filter((bend) => !runsAcross(bend)).map((bend) => function* () {
    const said = bendWords(layout, bend, words);
    const balloonOf = balloon(`${said.leg} bend`, bend.leg, said.words, said.field, { kind: 'bend', leg: said.leg });
    const ends = pastEdges(bend, px).map(move).toSorted((a, b) => a.x - b.x);
    const standing = (cost: number, from: Point, at: Point, side: 'start' | 'end'): Candidate => ({ cost, plan: () => standingBalloon(balloonOf, from, at, side, px) });
    for (const { right, out, rise, cost } of LUG_BALLOON_PLACES) {
      const from = ends[right ? 1 : 0];
      if (from) yield standing(cost, from, { x: from.x + (right ? out : -out) * px, y: from.y + rise * px }, right ? 'start' : 'end');
    }
    const end = ends[1];
    if (end) yield standing(300, end, { x: end.x + 20 * px, y: sheet.bounds().maxY + 18 * px }, 'start');
  });
}

/** Which of nine places along the line, and px further into the leg (undefined: on the side of the bend), best first. */
const TANGENT_PLACES = [0, 1, 2, 3, 4, 5, 6, 7, 8]
  .flatMap((place) => [0, 16, undefined].map((off, j) => ({ place, off, cost: place * 4 + j * 30 })))
  .toSorted((a, b) => a.cost - b.cost);

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
    ].map(({ leg, key, tangent, middle }) => function* () {
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
      for (const { place, off: out, cost } of TANGENT_PLACES) yield standing(cost, beside(places[place] ?? 0, out === undefined ? -off : off + out * px));
      yield standing(500, { x: beside(length, off).x, y: sheet.bounds().maxY + width });
    });
  });
}

/** Where a letter may stand on its leg, best first: shares of the length and of the width. */
const ON_LEG = [0.5, 0.6, 0.4, 0.7, 0.3, 0.8, 0.2, 0.9, 0.1]
  .flatMap((share, j) => [0.28, -0.28, 0.36, -0.36, 0.18, -0.18, 0].map((height, k) => ({ share, height, cost: j * 3 + k * 4 })))
  .toSorted((a, b) => a.cost - b.cost);

/** The letter of every leg, on the leg if there is room, else just beside it. */
export function blankLetters(layout: Layout, blank: Blank, px: number, sheet: Sheet): readonly ToPlace[] {
  const move = moved(blank);
  return layout.part.legs.map((leg, i) => function* () {
    const pose = blank.legs[i];
    const laid = layout.legs[i];
    if (!pose || !laid) return;
    const toBlank = placer(pose);
    const at = (x: number, y: number): Point => move(toBlank({ x, y }));
    const stand = letter(leg.id, legLetter(i), px);
    const standing = (cost: number, middle: Point): Candidate => ({ cost, plan: () => stand(middle) });
    for (const { share, height, cost } of ON_LEG) {
      const wide = leg.startWidth + (leg.endWidth - leg.startWidth) * share;
      yield standing(cost, at(laid.straight * share, height * wide));
    }
    // Beside the leg: below and above a main leg, right and left of a lug.
    const wide = Math.max(leg.startWidth, leg.endWidth) / 2;
    for (const out of [15, 30, 50, 75, 110]) {
      const off = wide + out * px;
      yield standing(80 + out, at(laid.straight / 2, -off));
      yield standing(81 + out, at(laid.straight / 2, off));
    }
    const last = at(laid.straight / 2, 0);
    yield standing(900, { x: last.x, y: sheet.bounds().minY - 16 * px });
  });
}
