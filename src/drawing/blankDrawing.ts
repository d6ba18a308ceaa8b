/** The flat blank, marked face up, with running dimensions from the first leg's start. */
import { contourBounds } from '../core/geometry/bounds';
import type { Bounds, ClosedPath, Point } from '../core/geometry/types';
import type { Blank, BlankBend, BlankCutout, Layout } from '../core/part/layoutTypes';
import type { Cutout } from '../core/part/types';
import { bendBand, type BendLabel } from './bendBand';
import { bendWords, runsAcross } from './blankBends';
import { blankLetters, lugBalloons, tangentReadings } from './blankLettering';
import { blankShape, byCutout, originOf, pastEdges } from './blankShape';
import { dimension, figurePlaces, figureWidth, type DimensionSpec, type FigurePlace } from './dimension';
import type { Entity, Lettering } from './entities';
import { drawnBounds, emptySheet, movedClear, type PlacedDrawing, type TakenPlaces } from './placement';
import { datumMark, runningBand, type BandPlace, type ReadingGroup, type RunningReading } from './runningBand';
import type { Words } from './words';

/** Two openings nearer than this along the datum share a reading, mm: readings show two places. */
const SAME_READING_MM = 1e-6;
/** px from the end of the part to the overall width's line. */
const WIDTH_LINE_PX = 24;

/** Rows and places of the overall width's figure, best first. */
const WIDTH_PLACES = [0, 1, 2, 4, 8].flatMap((row) =>
  (['gap', 'beside', 'after', 'before'] as const).map((figure: FigurePlace, i) => ({ row, figure, cost: row * 10 + i })),
);

/**
 * The blank: x from the first leg's start, y from the lower edge of the whole blank, mm.
 * @param before places that lettering keeps while they will do, so that nothing jumps while a figure is typed or dragged
 */
export function blankDrawing(layout: Layout, blank: Blank, words: Words, lettering: Lettering, before?: TakenPlaces): PlacedDrawing {
  const { px } = lettering;
  const origin = originOf(blank);
  const extent: Bounds = { minX: blank.bounds.minX - origin, minY: blank.bounds.minY, maxX: blank.bounds.maxX - origin, maxY: blank.bounds.maxY };
  const shape = blankShape(layout, blank, px);
  const sheet = emptySheet(px, before);
  sheet.add(shape.boxes);
  const entities: Entity[] = [...shape.entities];
  const take = (drawn: { readonly entities: readonly Entity[]; readonly boxes: Parameters<typeof sheet.add>[0] }): void => {
    sheet.add(drawn.boxes);
    entities.push(...drawn.entities);
  };

  const axis = blank.legs[0]?.y ?? 0;
  const left: BandPlace = { side: 'left', edge: extent.minX };
  // Readings are of all bends, and of the openings unless they are left out.
  const read: Blank = lettering.withoutHoles ? { ...blank, cutouts: [] } : blank;
  const heights = heightReadings(layout, read, words, axis, extent.minX, px);
  if (heights.length > 0) {
    take(datumMark('height datum', left, 4 * px, px));
    take(runningBand(heights, 'left', words, px)(extent.minX));
  }
  const lowest = (path: ClosedPath, x: number): number => extent.minY - lowestAt(path, x, axis) + 4 * px;
  const total: ReadingGroup = { key: 'overall length', total: true, readings: [{ at: extent.maxX, from: lowest(blank.outline, blank.bounds.maxX) }] };
  const lengths = [...lengthReadings(layout, read, words, extent.minY, px), total];
  const band = runningBand(lengths, 'below', words, px);
  const datumFrom = lowest(blank.plans[0] ?? [], origin);
  take(movedClear(sheet, px, (out) => {
    const datum = datumMark('datum', { side: 'below', edge: extent.minY - out }, datumFrom - out, px);
    const drawn = band(extent.minY, out);
    return { entities: [...datum.entities, ...drawn.entities], boxes: [...datum.boxes, ...drawn.boxes] };
  }));
  const bends = blank.bends.filter(runsAcross).map((bend) => bendLabel(layout, bend, words, origin, px));
  take(movedClear(sheet, px, (out) => bendBand(bends, extent.maxY + out, px)));

  const across = words.length(extent.maxY - extent.minY);
  const width: DimensionSpec = {
    key: 'overall width',
    from: { x: extent.maxX, y: extent.minY },
    to: { x: extent.maxX, y: extent.maxY },
    ux: 0,
    uy: 1,
    level: -(extent.maxX + WIDTH_LINE_PX * px),
    text: across,
    width: figureWidth(across),
  };
  const widthFigures = figurePlaces(width, px);
  entities.push(
    ...sheet.place({
      key: width.key,
      count: WIDTH_PLACES.length,
      cost: (index) => {
        const place = WIDTH_PLACES[index];
        return place && widthFigures.includes(place.figure) ? place.cost : Infinity;
      },
      plan: (index) => {
        const { row, figure } = WIDTH_PLACES[index] ?? { row: 0, figure: 'after' };
        return dimension({ ...width, level: width.level - row * 26 * px }, figure, px);
      },
    }),
  );

  for (const places of lugBalloons(layout, blank, words, px, sheet)) entities.push(...sheet.place(places()));
  for (const places of blankLetters(layout, blank, px, sheet)) entities.push(...sheet.place(places()));
  const shown = drawnBounds(sheet.bounds(), shape.boxes, px);
  // Last, since they show for the chosen leg only: they take what room is left.
  for (const places of tangentReadings(layout, blank, words, px, sheet)) entities.push(...sheet.place(places()));
  return { entities, extent, bounds: drawnBounds(sheet.bounds(), shape.boxes, px), shown, places: sheet.taken() };
}

/** Lowest y at which a path stands at x: the lower corner of a square edge; `otherwise` where a rounded end only touches it. */
function lowestAt(path: ClosedPath, x: number, otherwise: number): number {
  const onEdge = path.flatMap((s) => [s.from, s.to]).filter((p) => Math.abs(p.x - x) < SAME_READING_MM);
  return onEdge.reduce((low, p) => Math.min(low, p.y), otherwise);
}

function bendLabel(layout: Layout, bend: BlankBend, words: Words, origin: number, px: number): BendLabel {
  const [from, to] = bend.centreLine;
  const at = (from.x + to.x) / 2 - origin;
  const ends = pastEdges(bend, px);
  return { ...bendWords(layout, bend, words), number: bend.leg, reading: words.length(at), at, lineEnd: Math.max(ends[0].y, ends[1].y) };
}

/** Readings given already, found again by where they are. */
class TakenReadings {
  private readonly byPlace = new Map<number, number[]>();

  has(at: number): boolean {
    const place = Math.floor(at / SAME_READING_MM);
    return [place - 1, place, place + 1].some((near) => this.byPlace.get(near)?.some((t) => Math.abs(t - at) < SAME_READING_MM));
  }

  add(at: number): void {
    const place = Math.floor(at / SAME_READING_MM);
    const there = this.byPlace.get(place);
    if (there) there.push(at);
    else this.byPlace.set(place, [at]);
  }
}

/** Readings of one cut-out in one direction, each place once, from the opening nearest the band. */
function readingsOf(items: readonly BlankCutout[], at: (p: Point) => number, from: (item: BlankCutout) => number, taken: TakenReadings): readonly RunningReading[] {
  const sorted = items.map((item) => ({ at: at(item.centre), from: from(item) })).toSorted((a, b) => a.at - b.at);
  const found: RunningReading[] = [];
  for (const reading of sorted) {
    const last = found.at(-1);
    if (last && reading.at - last.at < SAME_READING_MM) found[found.length - 1] = { at: last.at, from: Math.max(last.from, reading.from) };
    else found.push(reading);
  }
  const fresh = found.filter((reading) => !taken.has(reading.at));
  for (const reading of fresh) taken.add(reading.at);
  return fresh;
}

function group(layout: Layout, items: readonly BlankCutout[], suffix: string, readings: readonly RunningReading[], words: Words): readonly ReadingGroup[] {
  const first = items[0];
  const leg = first && layout.part.legs[first.leg];
  const cutout = first && leg?.cutouts[first.cutout];
  if (!leg || !cutout || readings.length === 0) return [];
  const pitch = pitchKey(cutout, first, suffix);
  const stride = (readings[1]?.at ?? 0) - (readings[0]?.at ?? 0);
  const even = readings.every((reading, i) => i === 0 || Math.abs(reading.at - (readings[i - 1]?.at ?? 0) - stride) < SAME_READING_MM);
  return [{
    key: `${leg.id} ${cutout.id}${suffix}`,
    pick: { kind: 'cutout', leg: leg.id, cutout: cutout.id },
    readings,
    ...(pitch !== undefined && even ? { pitchField: `${words.part}.legs.${leg.id}.cutouts.${cutout.id}.pattern.${pitch}` } : {}),
  }];
}

/** Which pitch of the pattern runs in the direction of the band; undefined where none does exactly. */
function pitchKey(cutout: Cutout, item: BlankCutout, suffix: string): string | undefined {
  const level = Math.abs(Math.sin(item.heading)) < 1e-9;
  const upright = Math.abs(Math.cos(item.heading)) < 1e-9;
  if (!level && !upright) return undefined;
  const along = level === (suffix === '');
  switch (cutout.pattern.kind) {
    case 'single':
      return undefined;
    case 'row':
      return (cutout.pattern.direction === 'along') === along ? 'pitch' : undefined;
    case 'grid':
      return along ? 'alongPitch' : 'acrossPitch';
  }
}

const MARK_CLEAR_PX = 9;

function lengthReadings(layout: Layout, blank: Blank, words: Words, edge: number, px: number): readonly ReadingGroup[] {
  const origin = originOf(blank);
  const taken = new TakenReadings();
  return byCutout(blank.cutouts).flatMap((items) =>
    group(layout, items, '', readingsOf(items, (p) => p.x - origin, (item) => edge - contourBounds(item.contour).minY + MARK_CLEAR_PX * px, taken), words),
  );
}

/** Heights from the lower edge, where openings stand off the centre line of the main run, and of bends whose lines run along. */
function heightReadings(layout: Layout, blank: Blank, words: Words, axis: number, edge: number, px: number): readonly ReadingGroup[] {
  const origin = originOf(blank);
  const taken = new TakenReadings();
  const holes = byCutout(blank.cutouts)
    .filter((items) => items.some((item) => Math.abs(item.centre.y - axis) > SAME_READING_MM))
    .flatMap((items) => {
      const from = (item: BlankCutout): number => edge - (contourBounds(item.contour).minX - origin) + MARK_CLEAR_PX * px;
      return group(layout, items, ' height', readingsOf(items, (p) => p.y, from, taken), words);
    });
  const bends = blank.bends.filter((bend) => !runsAcross(bend)).flatMap((bend): readonly ReadingGroup[] => {
    const [a, b] = pastEdges(bend, px);
    const at = (a.y + b.y) / 2;
    if (taken.has(at)) return [];
    taken.add(at);
    const leg = layout.part.legs[bend.leg]?.id ?? String(bend.leg);
    return [{ key: `${leg} bend height`, pick: { kind: 'bend', leg }, readings: [{ at, from: edge - (Math.min(a.x, b.x) - origin) + 2 * px }] }];
  });
  return [...holes, ...bends];
}
