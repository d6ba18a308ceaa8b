/** A blank larger than the paper, spread over tiles that share a strip with each neighbour and the register crosses in it. */
import { line } from '../../core/geometry/segments';
import type { Bounds, Point, Segment } from '../../core/geometry/types';
import { lineBox, uprightBox, type Box } from '../boxes';
import type { Entity } from '../entities';
import { placedSegment } from '../../core/geometry/pose';

/** mm: drawn past the blank on all sides; half an arm of a cross and its circle; crosses at an edge of the whole stand in by this. */
const PAST_MM = 3;
export const CROSS_ARM_MM = 4;
const CROSS_RING_MM = 1.5;
const IN_FROM_EDGE_MM = 6;

export interface Tile {
  /** `B2`: row by letter from the top, column by number from the left. */
  readonly name: string;
  readonly column: number;
  /** From the bottom. */
  readonly row: number;
  /** On the blank as it lies on the paper. */
  readonly window: Bounds;
}

export interface Tiling {
  readonly columns: number;
  readonly rows: number;
  readonly tiles: readonly Tile[];
  /** Middles of the strips in common. */
  readonly seamsX: readonly number[];
  readonly seamsY: readonly number[];
  readonly crosses: readonly Point[];
  readonly whole: Bounds;
}

/** A, B, … Z, AA, AB, … */
export function rowLetters(row: number): string {
  const letter = String.fromCharCode(65 + (row % 26));
  return row < 26 ? letter : rowLetters(Math.floor(row / 26) - 1) + letter;
}

/** How many tiles of this room a length takes. */
const needed = (length: number, room: number, overlap: number): number => (length <= room ? 1 : Math.ceil((length - overlap) / (room - overlap) - 1e-9));

export const tileCount = (b: Bounds, room: { readonly width: number; readonly height: number }, overlap: number): number =>
  needed(b.maxX - b.minX + 2 * PAST_MM, room.width, overlap) * needed(b.maxY - b.minY + 2 * PAST_MM, room.height, overlap);

/** The tiles of a blank, whole windows with the blank in their middle. Room and overlap in mm, room more than twice the overlap. */
export function tilingOf(b: Bounds, room: { readonly width: number; readonly height: number }, overlap: number): Tiling {
  const along = (low: number, high: number, size: number): { readonly begins: readonly number[]; readonly seams: readonly number[]; readonly low: number; readonly high: number } => {
    const count = needed(high - low + 2 * PAST_MM, size, overlap);
    const span = count * size - (count - 1) * overlap;
    const begin = (low + high - span) / 2;
    const begins = Array.from({ length: count }, (_, i) => begin + i * (size - overlap));
    return { begins, seams: begins.slice(1).map((at) => at + overlap / 2), low: begin, high: begin + span };
  };
  const x = along(b.minX, b.maxX, room.width);
  const y = along(b.minY, b.maxY, room.height);
  const rows = y.begins.length;
  const tiles = y.begins
    .flatMap((minY, row) =>
      x.begins.map((minX, column): Tile => ({ name: `${rowLetters(rows - 1 - row)}${column + 1}`, column, row, window: { minX, minY, maxX: minX + room.width, maxY: minY + room.height } })),
    )
    .toSorted((a, c) => c.row - a.row || a.column - c.column);
  const ends = (low: number, high: number): readonly number[] => [low + IN_FROM_EDGE_MM, high - IN_FROM_EDGE_MM];
  const at = (xs: readonly number[], ys: readonly number[]): readonly Point[] => xs.flatMap((px) => ys.map((py) => ({ x: px, y: py })));
  const crosses = [...at(x.seams, [...y.seams, ...ends(y.low, y.high)]), ...at(ends(x.low, x.high), y.seams)];
  return { columns: x.begins.length, rows, tiles, seamsX: x.seams, seamsY: y.seams, crosses, whole: { minX: x.low, minY: y.low, maxX: x.high, maxY: y.high } };
}

/** Seams and register crosses that this tile shows, with boxes that keep lettering off them. */
export function joins(tiling: Tiling, { window }: Tile): { readonly entities: readonly Entity[]; readonly boxes: readonly Box[] } {
  const { minX, minY, maxX, maxY } = window;
  const inside = (value: number, low: number, high: number): boolean => value > low && value < high;
  const seams = [
    ...tiling.seamsX.filter((x) => inside(x, minX, maxX)).map((x) => line({ x, y: minY }, { x, y: maxY })),
    ...tiling.seamsY.filter((y) => inside(y, minY, maxY)).map((y) => line({ x: minX, y }, { x: maxX, y })),
  ];
  const crosses = tiling.crosses.filter((c) => inside(c.x, minX, maxX) && inside(c.y, minY, maxY));
  // An arm never leaves the tile; both tiles keep the same middle.
  const reach = (c: Point): number => Math.min(CROSS_ARM_MM, c.x - minX, maxX - c.x, c.y - minY, maxY - c.y);
  const entities: Entity[] = [];
  if (seams.length > 0) entities.push({ kind: 'path', key: 'seams', role: 'tile edge', runs: seams.map((s) => ({ segments: [s], closed: false })) });
  crosses.forEach((c, i) => {
    const arm = reach(c);
    const strokes = [line({ x: c.x - arm, y: c.y }, { x: c.x + arm, y: c.y }), line({ x: c.x, y: c.y - arm }, { x: c.x, y: c.y + arm })];
    entities.push(
      { kind: 'path', key: `register ${i}`, role: 'register mark', runs: strokes.map((s) => ({ segments: [s], closed: false })) },
      { kind: 'contours', key: `register ring ${i}`, role: 'register mark', contours: [{ kind: 'circle', centre: c, radius: Math.min(CROSS_RING_MM, arm) }] },
    );
  });
  return {
    entities,
    boxes: [
      ...seams.map((s) => lineBox('line', s.from, s.to, 0.4)),
      ...crosses.map((c) => uprightBox('metal', { minX: c.x - CROSS_ARM_MM, minY: c.y - CROSS_ARM_MM, maxX: c.x + CROSS_ARM_MM, maxY: c.y + CROSS_ARM_MM })),
    ],
  };
}

/** A small plan of all tiles with the blank's outline; the tile at hand is grey. `at`: its lower left corner. */
export function keyPlan(tiling: Tiling, here: Tile, outline: readonly Segment[], at: Point, room: { readonly width: number; readonly height: number }): readonly Entity[] {
  const { whole } = tiling;
  const [width, height] = [whole.maxX - whole.minX, whole.maxY - whole.minY];
  const scale = Math.min(room.width / width, room.height / height);
  const small = (p: Point): Point => ({ x: at.x + (p.x - whole.minX) * scale, y: at.y + (p.y - whole.minY) * scale });
  const path = (key: string, role: 'key plan' | 'key plan here', corners: readonly Point[]): Entity => ({
    kind: 'path',
    key,
    role,
    runs: [{ segments: corners.map((c, i) => line(small(c), small(corners[(i + 1) % corners.length] ?? c))), closed: true }],
  });
  const edges = (low: number, seams: readonly number[], high: number): readonly number[] => [low, ...seams, high];
  const [xs, ys] = [edges(whole.minX, tiling.seamsX, whole.maxX), edges(whole.minY, tiling.seamsY, whole.maxY)];
  const corners = (column: number, row: number): readonly Point[] => {
    const [x0, x1, y0, y1] = [xs[column] ?? 0, xs[column + 1] ?? 0, ys[row] ?? 0, ys[row + 1] ?? 0];
    return [{ x: x0, y: y0 }, { x: x1, y: y0 }, { x: x1, y: y1 }, { x: x0, y: y1 }];
  };
  return [
    path('plan here', 'key plan here', corners(here.column, here.row)),
    ...tiling.tiles.map((tile) => path(`plan ${tile.name}`, 'key plan', corners(tile.column, tile.row))),
    { kind: 'path', key: 'plan outline', role: 'key plan', runs: [{ segments: outline.map((s) => shrunk(s, small, scale)), closed: true }] },
  ];
}

function shrunk(segment: Segment, small: (p: Point) => Point, scale: number): Segment {
  const placed = placedSegment(segment, small);
  return placed.kind === 'arc' ? { ...placed, radius: placed.radius * scale } : placed;
}
