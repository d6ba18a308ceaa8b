/** The main run of a part seen from the side, with its dimensions. */
import { joined, NOTHING } from '../core/geometry/bounds';
import type { Bounds, Point } from '../core/geometry/types';
import type { Folded, Layout } from '../core/part/layoutTypes';
import { legLetter } from '../core/part/names';
import { balloon, letter, standingBalloon } from './balloon';
import type { Entity, Lettering, Pick } from './entities';
import { mainRun, type RunBend, type RunLeg } from './mainRun';
import { drawnBounds, emptySheet, type PlacedDrawing, type Places, type Plan, type Sheet, type TakenPlaces } from './placement';
import { dimensionPlaces, holeDimensions, legDimension } from './sectionDimensions';
import { sectionShape } from './sectionShape';
import type { Words } from './words';

/**
 * The section, looking on the near edge: x along the first leg from its start, y out of its marked face, mm. Side lugs are not
 * shown. Leg lengths run between the points that their basis names: on the outer face, the inner face or the centre line, from
 * tangent line plus setback to tangent line plus setback.
 * @param before places that lettering keeps while they will do, so that nothing jumps while a figure is typed or dragged
 */
export function sectionDrawing(layout: Layout, folded: Folded, words: Words, lettering: Lettering, before?: TakenPlaces): PlacedDrawing {
  const { thickness } = layout.part;
  const { px } = lettering;
  const run = mainRun(layout, folded);
  const shape = sectionShape(run, thickness, px);
  const extent = shape.boxes.filter((b) => b.matter === 'metal').reduce<Bounds>((b, box) => joined(b, box), NOTHING);
  const sheet = emptySheet(px, before);
  sheet.add(shape.boxes);
  const entities: Entity[] = [...shape.entities];

  const middle = { x: (extent.minX + extent.maxX) / 2, y: (extent.minY + extent.maxY) / 2 };
  const sides = run.map((leg) => outerSide(leg, middle, thickness));
  if (!lettering.withoutHoles) run.forEach((leg, i) => {
    // Shorter ones first, so nearer the part: then the extension lines of longer ones pass outside their figures.
    const measuredHoles = holeDimensions(leg, thickness, words, sides[i] === 1 ? -1 : 1).toSorted((a, b) => Math.abs(a.x1 - a.x0) - Math.abs(b.x1 - b.x0));
    for (const measured of measuredHoles) entities.push(...sheet.place(dimensionPlaces(leg, measured, thickness, px, sheet)));
  });
  // Letters go on the side that the lengths will not take, and before them: a letter far from its leg says nothing.
  run.forEach((leg, i) => entities.push(...sheet.place(letterPlaces(leg, thickness, sides[i] === 1 ? -1 : 1, px, sheet))));
  run.forEach((leg, i) => {
    const measured = legDimension(leg, thickness, words, sides[i] ?? 1);
    entities.push(...sheet.place(dimensionPlaces(leg, measured, thickness, px, sheet)));
  });
  for (const { endBend } of run) if (endBend) entities.push(...sheet.place(balloonPlaces(endBend, thickness, words, px, sheet)));

  const { minX, minY, maxX, maxY } = extent;
  const bounds = drawnBounds(sheet.bounds(), shape.boxes, px);
  return { entities, extent: { minX, minY, maxX, maxY }, bounds, shown: bounds, places: sheet.taken() };
}

/** The side of a leg that looks away from the middle of the part; the underside where that is not clear. */
function outerSide(run: RunLeg, middle: Point, thickness: number): 1 | -1 {
  const p = run.at(run.straight / 2, -thickness / 2);
  const height = (p.x - middle.x) * -run.uy + (p.y - middle.y) * run.ux;
  return height > thickness ? 1 : -1;
}

const LEADER_PX = [34, 50, 72, 104, 150, 210];
const LEADER_TURNS = [0, 30, -30, 60, -60, 85, -85, 110, -110, 140, -140].map((degrees) => (degrees * Math.PI) / 180);

/** Where a balloon may stand about its bend, best first: length of its leader, turn from straight out, words on the other side. */
const BALLOON_PLACES = LEADER_PX.flatMap((length, i) =>
  LEADER_TURNS.flatMap((turn, j) => [false, true].map((flipped) => ({ length, turn, flipped, cost: i * 9 + j * 2 + (flipped ? 12 : 0) }))),
).toSorted((a, b) => a.cost - b.cost);

function balloonPlaces(bend: RunBend, thickness: number, words: Words, px: number, sheet: Sheet): Places {
  const pick: Pick = { kind: 'bend', leg: bend.leg.id };
  const key = `${bend.leg.id} bend`;
  const field = `${words.part}.legs.${bend.leg.id}.bend.angle`;
  const text = `${words.say(field).replace(/°$/, '')}° ${bend.way}`;
  const out = bend.start + bend.sweep / 2;
  const onRing = (radius: number): Point => ({ x: bend.centre.x + radius * Math.cos(out), y: bend.centre.y + radius * Math.sin(out) });
  const outer = onRing(bend.figures.radius + thickness);
  const inner = onRing(bend.figures.radius);
  const said = balloon(key, bend.index, text, field, pick);
  const standing = (from: Point, at: Point, side: 'start' | 'end'): Plan => standingBalloon(said, from, at, side, px);
  return {
    key,
    count: BALLOON_PLACES.length + 1,
    cost: (index) => BALLOON_PLACES[index]?.cost ?? 200,
    plan: (index) => {
      const place = BALLOON_PLACES[index];
      if (!place) return standing(outer, { x: outer.x, y: sheet.bounds().minY - 20 * px }, 'start');
      const { length, turn, flipped } = place;
      const from = Math.abs(turn) > Math.PI / 2 ? inner : outer;
      const at = { x: from.x + length * px * Math.cos(out + turn), y: from.y + length * px * Math.sin(out + turn) };
      return standing(from, at, at.x >= from.x === !flipped ? 'start' : 'end');
    },
  };
}

/** Where a letter may stand by its leg, best first: share of the length, px off the face, on the side that is liked less. */
const LETTER_PLACES = [18, 30, 44, 60, 80, 110]
  .flatMap((off, i) => [0.5, 0.6, 0.4, 0.7, 0.3, 0.82, 0.18].flatMap((share, j) => [false, true].map((flipped) => ({ off, share, flipped, cost: i * 30 + j * 3 + (flipped ? 10 : 0) }))))
  .toSorted((a, b) => a.cost - b.cost);

function letterPlaces(run: RunLeg, thickness: number, side: 1 | -1, px: number, sheet: Sheet): Places {
  const stand = letter(run.leg.id, legLetter(run.index), px);
  // The letter's square stands upright, so by a leg that slopes its middle has to keep further off.
  const slope = 7 * Math.abs(2 * run.ux * run.uy);
  return {
    key: `${run.leg.id} letter`,
    count: LETTER_PLACES.length + 1,
    cost: (index) => LETTER_PLACES[index]?.cost ?? 900,
    plan: (index) => {
      const place = LETTER_PLACES[index];
      if (!place) return stand({ x: run.at(run.straight / 2, 0).x, y: sheet.bounds().minY - 16 * px });
      const marked = (side === 1) === !place.flipped;
      const far = (place.off + slope) * px;
      return stand(run.at(run.straight * place.share, marked ? far : -thickness - far));
    },
  };
}
