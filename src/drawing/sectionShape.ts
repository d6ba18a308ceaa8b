/** The metal of the section: outlines, bends, hatching and holes, as entities and as boxes that lettering keeps off. */
import { contourBounds } from '../core/geometry/bounds';
import { arcAbout, line } from '../core/geometry/segments';
import type { Segment } from '../core/geometry/types';
import { lineBox, ringBoxes, type Box } from './boxes';
import type { Entity, PathEntity, Pick } from './entities';
import { HATCH_PX, hatchAngles, hatchStrip } from './hatch';
import type { RunBend, RunLeg } from './mainRun';

/** px that the centre line of a hole runs past the faces. */
export const HOLE_PAST_PX = 9;

interface Opening {
  readonly from: number;
  readonly to: number;
  readonly middle: number;
}

/** Stretches of a leg that a cut-out opens, along the leg, each once however many holes stand side by side. */
function openings(leg: RunLeg, cutout: number): readonly Opening[] {
  const found = new Map<number, Opening>();
  for (const item of leg.layout.cutouts) {
    if (item.cutout !== cutout || found.has(item.centre.x)) continue;
    const b = contourBounds(item.contour);
    found.set(item.centre.x, { from: Math.max(0, b.minX), to: Math.min(leg.straight, b.maxX), middle: item.centre.x });
  }
  return [...found.values()];
}

/** Overlapping stretches made one, in order. */
function merged(stretches: readonly Opening[]): readonly Opening[] {
  const joined: Opening[] = [];
  for (const next of stretches.toSorted((a, b) => a.from - b.from)) {
    const last = joined.at(-1);
    if (last && next.from <= last.to) joined[joined.length - 1] = { ...last, to: Math.max(last.to, next.to) };
    else joined.push(next);
  }
  return joined;
}

export interface SectionShape {
  readonly entities: readonly Entity[];
  readonly boxes: readonly Box[];
}

export function sectionShape(run: readonly RunLeg[], thickness: number, px: number): SectionShape {
  const angles = hatchAngles(run.map((leg) => Math.atan2(leg.uy, leg.ux)));
  const under: Entity[] = [];
  const over: Entity[] = [];
  const boxes: Box[] = [];
  run.forEach((leg, i) => {
    const shape = legShape(leg, thickness, angles[i] ?? 0, px);
    under.push(...shape.under);
    over.push(...shape.over);
    const middle = -thickness / 2;
    boxes.push(lineBox('metal', leg.at(0, middle), leg.at(leg.straight, middle), thickness / 2), ...shape.ticks);
    if (leg.startBend) {
      const bend = bendShape(leg.startBend, thickness);
      under.push(bend.under);
      over.push(bend.over);
      boxes.push(...bend.boxes);
    }
  });
  return { entities: [...under, ...over], boxes };
}

function legShape(run: RunLeg, thickness: number, angle: number, px: number): { readonly under: readonly Entity[]; readonly over: readonly Entity[]; readonly ticks: readonly Box[] } {
  const { leg, straight, at } = run;
  const pick: Pick = { kind: 'leg', leg: leg.id };
  const corners = [at(0, 0), at(0, -thickness), at(straight, -thickness), at(straight, 0)] as const;
  const marked = line(corners[3], corners[0]);
  const start = line(corners[0], corners[1]);
  const back = line(corners[1], corners[2]);
  const end = line(corners[2], corners[3]);
  const path = (key: string, role: PathEntity['role'], runs: PathEntity['runs'], of: Pick = pick): PathEntity => ({ kind: 'path', key: `${leg.id} ${key}`, role, pick: of, runs });

  const holes: Entity[] = [];
  const all: Opening[] = [];
  const ticks: Box[] = [];
  leg.cutouts.forEach((cutout, i) => {
    const mine = openings(run, i);
    all.push(...mine);
    const of: Pick = { kind: 'cutout', leg: leg.id, cutout: cutout.id };
    const past = HOLE_PAST_PX * px;
    const centreLines = mine.map(({ middle }) => line(at(middle, past), at(middle, -thickness - past)));
    ticks.push(...centreLines.map((s) => lineBox('extension', s.from, s.to)));
    const edges = merged(mine).flatMap(({ from, to }) => [from, to].map((x) => ({ segments: [line(at(x, 0), at(x, -thickness))], closed: false })));
    holes.push(
      path(`${cutout.id} hole edge`, 'hole edge', edges, of),
      path(`${cutout.id} centre line`, 'centre line', centreLines.map((s) => ({ segments: [s], closed: false })), of),
    );
  });

  const solid: Segment[] = [];
  let x = 0;
  for (const opening of [...merged(all), { from: straight, to: straight, middle: straight }]) {
    if (opening.from > x) solid.push(...hatchStrip(x, opening.from, -thickness, 0, at, angle, HATCH_PX * px));
    x = Math.max(x, opening.to);
  }

  // A bent end has no edge, so the outline is open there: two runs if both ends are bent.
  const outline: PathEntity['runs'] =
    !run.startBend && !run.endBend ? [{ segments: [marked, start, back, end], closed: true }]
    : !run.startBend ? [{ segments: [marked, start, back], closed: false }]
    : !run.endBend ? [{ segments: [back, end, marked], closed: false }]
    : [{ segments: [back], closed: false }, { segments: [marked], closed: false }];

  return {
    under: [
      path('area', 'leg area', [{ segments: [marked, start, back, end], closed: true }]),
      path('hatch', 'hatch', solid.map((segment) => ({ segments: [segment], closed: false }))),
    ],
    over: [path('outline', 'outline', outline), ...holes],
    ticks,
  };
}

function bendShape(bend: RunBend, thickness: number): { readonly under: Entity; readonly over: Entity; readonly boxes: readonly Box[] } {
  const { centre, start, sweep, figures } = bend;
  const outer = arcAbout(centre, figures.radius + thickness, start, sweep);
  const inner = arcAbout(centre, figures.radius, start + sweep, -sweep);
  const pick: Pick = { kind: 'bend', leg: bend.leg.id };
  // With no inside radius the inner arc is a point: the zone is a sector, and only the outer arc is drawn.
  const sharp = figures.radius === 0;
  const zone: Segment[] = sharp ? [outer, line(outer.to, centre), line(centre, outer.from)] : [outer, line(outer.to, inner.from), inner, line(inner.to, outer.from)];
  const arcs = sharp ? [outer] : [outer, inner];
  return {
    under: { kind: 'path', key: `${bend.leg.id} bend zone`, role: 'bend zone', pick, runs: [{ segments: zone, closed: true }] },
    over: { kind: 'path', key: `${bend.leg.id} bend outline`, role: 'outline', pick, runs: arcs.map((arc) => ({ segments: [arc], closed: false })) },
    boxes: ringBoxes('metal', centre, figures.radius, figures.radius + thickness, start, sweep),
  };
}
