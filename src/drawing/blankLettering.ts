/** Lettering on the blank itself: leg letters, tangent readings, and the balloons of bends whose lines run along it. */
import type { Point } from '../core/geometry/types';
import { placer } from '../core/geometry/pose';
import type { Blank, Layout } from '../core/part/layoutTypes';
import { legLetter } from '../core/part/names';
import { balloon, letter, standingBalloon } from './balloon';
import { bendWords, runsAcross } from './blankBends';
import { originOf, pastEdges } from './blankShape';
import { readable } from './dimension';
import type { Places, Plan, Sheet } from './placement';
import { CAP_HEIGHT, LETTER_PX, letteringBox, textWidth } from './textWidth';
import type { Words } from './words';

/** One thing to place; its places are made when its turn comes, since the last of them looks at what is on the sheet by then. */
export type ToPlace = () => Places;

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
  return blank.bends.filter((bend) => !runsAcross(bend)).map((bend) => () => {
    const said = bendWords(layout, bend, words);
    const key = `${said.leg} bend`;
    const balloonOf = balloon(key, bend.leg, said.words, said.field, { kind: 'bend', leg: said.leg });
    const [left, right] = pastEdges(bend, px).map(move).toSorted((a, b) => a.x - b.x) as [Point, Point];
    const standing = (from: Point, at: Point, side: 'start' | 'end'): Plan => standingBalloon(balloonOf, from, at, side, px);
    return {
      key,
      count: LUG_BALLOON_PLACES.length + 1,
      cost: (index) => LUG_BALLOON_PLACES[index]?.cost ?? 300,
      plan: (index) => {
        const place = LUG_BALLOON_PLACES[index];
        if (!place) return standing(right, { x: right.x + 20 * px, y: sheet.bounds().maxY + 18 * px }, 'start');
        const from = place.right ? right : left;
        return standing(from, { x: from.x + (place.right ? place.out : -place.out) * px, y: from.y + place.rise * px }, place.right ? 'start' : 'end');
      },
    };
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
      const standing = (middleAt: Point): Plan => {
        const at = { x: middleAt.x + Math.sin(rotation) * half, y: middleAt.y - Math.cos(rotation) * half };
        return {
          boxes: [letteringBox(width / px, 'tangent text', at, 'middle', rotation, px)],
          entities: () => [{ kind: 'text', key, role: 'tangent text', pick: { kind: 'leg', leg }, at, text, align: 'middle', rotation }],
        };
      };
      const off = half + 5 * px;
      const beside = (along: number, out: number): Point => ({ x: from.x + ux * along - uy * out * side, y: from.y + uy * along + ux * out * side });
      const room = width / 2 + 4 * px;
      const alongs = [length - room, room, length * 0.75, length * 0.25, length / 2, length + room, -room, length + room + width, -room - width];
      return {
        key,
        count: TANGENT_PLACES.length + 1,
        cost: (index) => TANGENT_PLACES[index]?.cost ?? 500,
        plan: (index) => {
          const place = TANGENT_PLACES[index];
          if (!place) return standing({ x: beside(length, off).x, y: sheet.bounds().maxY + width });
          return standing(beside(alongs[place.place] ?? 0, place.off === undefined ? -off : off + place.off * px));
        },
      };
    });
  });
}

/** Where a letter may stand on its leg, best first: shares of the length and of the width. */
const ON_LEG = [0.5, 0.6, 0.4, 0.7, 0.3, 0.8, 0.2, 0.9, 0.1]
  .flatMap((share, j) => [0.28, -0.28, 0.36, -0.36, 0.18, -0.18, 0].map((height, k) => ({ share, height, cost: j * 3 + k * 4 })))
  .toSorted((a, b) => a.cost - b.cost);

/** Where it may stand beside its leg, px: below and above a main leg, right and left of a lug. */
const BESIDE_LEG = [15, 30, 50, 75, 110].flatMap((out) => [{ out, way: -1, cost: 80 + out }, { out, way: 1, cost: 81 + out }]);

/** The letter of every leg, on the leg if there is room, else just beside it. */
export function blankLetters(layout: Layout, blank: Blank, px: number, sheet: Sheet): readonly ToPlace[] {
  const move = moved(blank);
  return layout.part.legs.flatMap((leg, i): readonly ToPlace[] => {
    const pose = blank.legs[i];
    const laid = layout.legs[i];
    if (!pose || !laid) return [];
    return [() => {
      const toBlank = placer(pose);
      const at = (x: number, y: number): Point => move(toBlank({ x, y }));
      const stand = letter(leg.id, legLetter(i), px);
      const wide = Math.max(leg.startWidth, leg.endWidth) / 2;
      return {
        key: `${leg.id} letter`,
        count: ON_LEG.length + BESIDE_LEG.length + 1,
        cost: (index) => (ON_LEG[index] ?? BESIDE_LEG[index - ON_LEG.length])?.cost ?? 900,
        plan: (index) => {
          const on = ON_LEG[index];
          if (on) return stand(at(laid.straight * on.share, on.height * (leg.startWidth + (leg.endWidth - leg.startWidth) * on.share)));
          const beside = BESIDE_LEG[index - ON_LEG.length];
          if (beside) return stand(at(laid.straight / 2, beside.way * (wide + beside.out * px)));
          return stand({ x: at(laid.straight / 2, 0).x, y: sheet.bounds().minY - 16 * px });
        },
      };
    }];
  });
}
