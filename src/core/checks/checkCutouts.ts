/** Checks of cut-outs: inside the blank, clear of its edge, of each other and of the bends. */
import { inside, lineToSegment } from '../geometry/meet';
import { segmentBounds } from '../geometry/bounds';
import { TOUCHING_MM } from '../geometry/tolerance';
import { bendCalled, cutoutCalled, figure, legCalled } from '../part/names';
import type { Bounds, Segment } from '../geometry/types';
import type { Blank, BlankCutout, Finding, Layout, Place } from '../part/layoutTypes';
import { cutoutCore, reachTowards, type CutoutCore } from './cutoutCore';

interface Boxed {
  readonly segment: Segment;
  readonly box: Bounds;
}

const placeOf = (c: BlankCutout): Place => ({ leg: c.leg, what: 'cutout', cutout: c.cutout });
const keyOf = (what: string, c: BlankCutout): string => `${what} ${c.leg} ${c.cutout}`;

/** Keeps the worst finding of a kind for each cut-out of the part, so that a row of 300 holes speaks once. */
class Worst {
  private readonly by = new Map<string, { finding: Finding; badness: number }>();
  add(finding: Finding, badness: number): void {
    const before = this.by.get(finding.key);
    if (!before || badness > before.badness) this.by.set(finding.key, { finding, badness });
  }
  list(): Finding[] {
    return [...this.by.values()].map(({ finding }) => finding);
  }
}

/** Least distance from a cut-out to the outline, mm, negative where it crosses it; looks no farther than `enough`. */
function webToOutline(core: CutoutCore, c: BlankCutout, outline: readonly Boxed[], enough: number): number {
  const far = core.reach + enough;
  let least = enough + core.grow;
  for (const { segment, box } of outline) {
    if (box.minX > c.centre.x + far || box.maxX < c.centre.x - far || box.minY > c.centre.y + far || box.maxY < c.centre.y - far) continue;
    for (const l of core.lines) least = Math.min(least, lineToSegment(l, segment));
  }
  return least - core.grow;
}

function checkEdges(layout: Layout, blank: Blank, cores: readonly CutoutCore[], worst: Worst): void {
  const { part } = layout;
  const outline = blank.outline.map((segment) => ({ segment, box: segmentBounds(segment) }));
  blank.cutouts.forEach((c, i) => {
    const core = cores[i];
    if (!core) return;
    // Names are made only where something is said: most holes have nothing to say.
    const called = () => cutoutCalled(part, c.leg, c.cutout, c.item);
    const web = webToOutline(core, c, outline, part.thickness);
    if (!inside(blank.outline, c.centre)) {
      worst.add({ level: 'stop', key: keyOf('off', c), place: placeOf(c), says: `${called()} stands off the metal. Move it on to ${legCalled(part, c.leg)}.` }, 1e6);
    } else if (web <= TOUCHING_MM) {
      const out = web < 0 ? ` by ${figure(-web)} mm` : '';
      worst.add({ level: 'stop', key: keyOf('off', c), place: placeOf(c), says: `${called()} breaks through the edge of the blank${out}. Make it smaller or move it inwards.` }, -web);
    } else if (web < part.thickness - TOUCHING_MM) {
      worst.add({ level: 'care', key: keyOf('web', c), place: placeOf(c), says: `${called()} leaves ${figure(web)} mm of metal to the edge. Less than one thickness, ${figure(part.thickness)} mm, may burn away.` }, -web);
    }
  });
}

function checkSizes(layout: Layout, worst: Worst): void {
  const { part } = layout;
  part.legs.forEach((leg, i) =>
    leg.cutouts.forEach((cutout, j) => {
      const { shape } = cutout;
      const across = shape.kind === 'round' ? shape.diameter : Math.min(shape.width, shape.length);
      if (across < part.thickness - TOUCHING_MM) {
        worst.add({ level: 'care', key: `small ${i} ${j}`, place: { leg: i, what: 'cutout', cutout: j }, says: `${cutoutCalled(part, i, j)} is ${figure(across)} mm across. Smaller than the thickness, ${figure(part.thickness)} mm, a laser may not pierce it cleanly.` }, 1);
      }
    }),
  );
}

const NONE: readonly number[] = [];

/** Pairs of cut-outs near enough to touch: a grid of cells as large as the largest cut-out, neighbours compared. */
function checkPairs(layout: Layout, blank: Blank, cores: readonly CutoutCore[], worst: Worst): void {
  const { part } = layout;
  const largest = cores.reduce((most, core) => Math.max(most, core.reach), 0);
  const cell = 2 * largest + part.thickness;
  // One number a cell: parts are at most metres across and cells at least tenths of a millimetre, so none share a key.
  const keyOfCell = (cx: number, cy: number): number => cx * 1_000_003 + cy;
  const cells = new Map<number, number[]>();
  blank.cutouts.forEach((c, i) => {
    const core = cores[i];
    if (!core) return;
    const cx = Math.floor(c.centre.x / cell);
    const cy = Math.floor(c.centre.y / cell);
    for (let dx = -1; dx <= 1; dx++) {
      for (let dy = -1; dy <= 1; dy++) {
        for (const k of cells.get(keyOfCell(cx + dx, cy + dy)) ?? NONE) {
          const other = blank.cutouts[k];
          const otherCore = cores[k];
          if (!other || !otherCore) continue;
          const apart = Math.hypot(c.centre.x - other.centre.x, c.centre.y - other.centre.y);
          if (apart > core.reach + otherCore.reach + part.thickness) continue;
          let web = Infinity;
          for (const a of core.lines) for (const b of otherCore.lines) web = Math.min(web, lineToSegment(a, b));
          web -= core.grow + otherCore.grow;
          if (holds(c, core, other) || holds(other, otherCore, c)) web = Math.min(web, 0);
          const both = () => `${cutoutCalled(part, c.leg, c.cutout, c.item)} and ${cutoutCalled(part, other.leg, other.cutout, other.item)}`;
          if (web <= TOUCHING_MM) worst.add({ level: 'stop', key: keyOf('overlap', c), place: placeOf(c), says: `${both()} run into each other. Move them apart by ${figure(Math.max(-web, 0) + part.thickness)} mm or more.` }, -web);
          else if (web < part.thickness - TOUCHING_MM) worst.add({ level: 'care', key: keyOf('bridge', c), place: placeOf(c), says: `${both()} leave ${figure(web)} mm of metal between them. Less than one thickness, ${figure(part.thickness)} mm, may burn away.` }, -web);
        }
      }
    }
    const key = keyOfCell(cx, cy);
    const here = cells.get(key);
    if (here) here.push(i);
    else cells.set(key, [i]);
  });
}

/** Whether the centre of `other` lies inside the opening `c`: one opening within another shares no edge with it. */
function holds(c: BlankCutout, core: CutoutCore, other: BlankCutout): boolean {
  const d = Math.hypot(c.centre.x - other.centre.x, c.centre.y - other.centre.y);
  if (d > core.reach) return false;
  return c.contour.kind === 'circle' ? d < c.contour.radius : inside(c.contour.segments, other.centre);
}

/**
 * Cut-outs against the bends next to their leg. Nearer than 2 t + r to the tangent line a hole is drawn oval in the bend:
 * common practice, no source (guides that were read say 2 t, or 3 t + r).
 */
function checkBends(layout: Layout, blank: Blank, cores: readonly CutoutCore[], worst: Worst): boolean {
  const { part } = layout;
  let clear = true;
  const near = part.legs.map((_, leg) => blank.bends.filter((bend) => bend.leg === leg || part.legs[bend.leg]?.bend?.parent === leg));
  blank.cutouts.forEach((c, i) => {
    const core = cores[i];
    if (!core) return;
    for (const bend of near[c.leg] ?? []) {
      const own = bend.leg === c.leg;
      const [from, to] = own ? bend.endTangent : bend.startTangent;
      // The normal of the tangent line that points from the bend into this leg.
      const across = Math.atan2(to.y - from.y, to.x - from.x) + (own ? -Math.PI / 2 : Math.PI / 2);
      const centreOff = (c.centre.x - from.x) * Math.cos(across) + (c.centre.y - from.y) * Math.sin(across);
      const gap = centreOff - reachTowards(core, c.centre, across + Math.PI);
      const along = Math.atan2(to.y - from.y, to.x - from.x);
      const besideCentre = (c.centre.x - from.x) * Math.cos(along) + (c.centre.y - from.y) * Math.sin(along);
      const lineLength = Math.hypot(to.x - from.x, to.y - from.y);
      if (besideCentre < -core.reach || besideCentre > lineLength + core.reach) continue;
      const limit = 2 * part.thickness + bend.figures.radius;
      const called = () => cutoutCalled(part, c.leg, c.cutout, c.item);
      const past = -centreOff - bend.figures.allowance;
      if (past > TOUCHING_MM) {
        worst.add({ level: 'stop', key: keyOf('beyond', c), place: placeOf(c), says: `${called()} stands ${figure(past)} mm beyond ${bendCalled(bend.leg).toLowerCase()}, off ${legCalled(part, c.leg)}. Give it to the leg it stands on, or move it back.` }, past);
      } else if (gap < -TOUCHING_MM) {
        worst.add({ level: 'care', key: keyOf('bend', c), place: placeOf(c), says: `${called()} reaches ${figure(-gap)} mm into ${bendCalled(bend.leg).toLowerCase()}. It will not stay true when that is bent.` }, -gap + limit);
      } else if (gap < limit - TOUCHING_MM) {
        worst.add({ level: 'care', key: keyOf('bend', c), place: placeOf(c), says: `${called()} starts ${figure(gap)} mm from ${bendCalled(bend.leg).toLowerCase()}. Nearer than ${figure(limit)} mm it may pull oval.` }, limit - gap);
      }
      if (gap < limit - TOUCHING_MM) clear = false;
    }
  });
  return clear;
}

/** All findings on cut-outs, and whether every one keeps clear of the bends. */
export function checkCutouts(layout: Layout, blank: Blank): { readonly findings: readonly Finding[]; readonly clearOfBends: boolean } {
  const worst = new Worst();
  const cores = blank.cutouts.map((c) => cutoutCore(c.shape, c.centre, c.heading));
  checkEdges(layout, blank, cores, worst);
  checkSizes(layout, worst);
  checkPairs(layout, blank, cores, worst);
  const clearOfBends = checkBends(layout, blank, cores, worst);
  return { findings: worst.list(), clearOfBends };
}
