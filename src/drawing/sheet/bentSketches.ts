/** Small sketches of the part after each bend in turn. Paper mm. */
import { inSpace, vector } from '../../core/geometry/frame';
import { including, NOTHING } from '../../core/geometry/bounds';
import { line } from '../../core/geometry/segments';
import type { Bounds, Point, Vector3 } from '../../core/geometry/types';
import { fold } from '../../core/part/fold';
import type { Folded, FoldedBend, Layout } from '../../core/part/layoutTypes';
import { mainChild, mainRun } from '../../core/part/mainRun';
import { ring, RING_PX } from '../balloon';
import type { Entity } from '../entities';
import { PAPER_PX_MM } from '../page';
import { CAP_HEIGHT, LETTER_PX } from '../textWidth';
import { heading, HEADING_HEIGHT, mm, text, unbroken, type Block, type Laid } from './block';

interface Outline {
  readonly polygons: readonly (readonly Point[])[];
  /** Middle of the bend that has just been made. */
  readonly made: Point;
  readonly bounds: Bounds;
}

export interface SketchStep {
  readonly bend: number;
  /** `45° up` */
  readonly says: string;
}

/** Chords to a bend: a sketch is a few centimetres wide. */
const CHORDS = 16;

/** A point of a bend zone: `share` of the way round, `z` out of the marked face. */
function inBend(bend: FoldedBend, thickness: number, share: number, z: number): Vector3 {
  if (bend.turn === 0) return inSpace(bend.frame, vector(bend.allowance * share, 0, z));
  const up = bend.way === 'up';
  // z of the axis that it is bent about.
  const axis = up ? bend.radius : -bend.radius - thickness;
  const angle = bend.turn * share;
  const reach = Math.abs(axis - z);
  return inSpace(bend.frame, vector(reach * Math.sin(angle), 0, axis + (up ? -1 : 1) * reach * Math.cos(angle)));
}

/** The strip through these legs, one after another, as a closed polygon. */
function strip(layout: Layout, folded: Folded, chain: readonly number[], flat: (v: Vector3) => Point): readonly Point[] {
  const face = (z: number): readonly Point[] =>
    chain.flatMap((leg) => {
      const frame = folded.legs[leg];
      const bend = folded.bends.find((b) => b.leg === leg);
      const straight = layout.legs[leg]?.straight ?? 0;
      const round = bend ? Array.from({ length: CHORDS + 1 }, (_, i) => inBend(bend, layout.part.thickness, i / CHORDS, z)) : [];
      const ends = frame ? [inSpace(frame, vector(0, 0, z)), inSpace(frame, vector(straight, 0, z))] : [];
      return [...round, ...ends].map(flat);
    });
  return [...face(0), ...face(-layout.part.thickness).toReversed()];
}

/** The part after the bends in `made`, seen so that the last of them shows: on the near edge, or for a side lug along its parent. */
function outlineAfter(layout: Layout, made: readonly number[], last: number): Outline {
  const bent = layout.legs.map((_, i) => (made.includes(i) ? 1 : 0));
  const folded = fold(layout, bent);
  const own = layout.part.legs[last]?.bend;
  const parent = own ? folded.legs[own.parent] : undefined;
  const bend = folded.bends.find((b) => b.leg === last);
  const { thickness } = layout.part;
  const seen = own && parent && own.edge !== 'end' ? lugView() : mainView();
  const middle = bend ? seen.flat(inBend(bend, thickness, 0.5, -thickness / 2)) : { x: 0, y: 0 };
  return { polygons: seen.polygons, made: middle, bounds: seen.polygons.flat().reduce(including, NOTHING) };

  function mainView(): { readonly flat: (v: Vector3) => Point; readonly polygons: readonly (readonly Point[])[] } {
    const flat = (v: Vector3): Point => ({ x: v.x, y: v.z });
    return { flat, polygons: [strip(layout, folded, mainRun(layout), flat)] };
  }

  function lugView(): { readonly flat: (v: Vector3) => Point; readonly polygons: readonly (readonly Point[])[] } {
    const under = own?.parent ?? 0;
    const frame = parent ?? { origin: vector(0, 0, 0), x: vector(1, 0, 0), y: vector(0, 1, 0), z: vector(0, 0, 1) };
    const dot = (a: Vector3, b: Vector3): number => a.x * b.x + a.y * b.y + a.z * b.z;
    // Looking along the parent from its end back to its start, its left edge is on the right.
    const flat = (v: Vector3): Point => {
      const d = vector(v.x - frame.origin.x, v.y - frame.origin.y, v.z - frame.origin.z);
      return { x: dot(d, frame.y), y: dot(d, frame.z) };
    };
    const lugs = (layout.legs[under]?.children ?? []).filter((child) => layout.part.legs[child]?.bend?.edge !== 'end');
    const half = Math.max(layout.part.legs[under]?.startWidth ?? 0, layout.part.legs[under]?.endWidth ?? 0) / 2;
    // The parent reaches to the tangent lines of its lugs, or to its edge where it has none.
    const edge = (side: 'left' | 'right'): number => {
      const seats = lugs.filter((lug) => layout.part.legs[lug]?.bend?.edge === side).map((lug) => layout.legs[lug]?.bend?.seat.y ?? 0);
      return seats.length > 0 ? Math.max(...seats.map(Math.abs)) : half;
    };
    const [right, left] = [-edge('right'), edge('left')];
    const body = [{ x: right, y: 0 }, { x: left, y: 0 }, { x: left, y: -thickness }, { x: right, y: -thickness }];
    const chainOf = (lug: number): readonly number[] => {
      const chain: number[] = [];
      for (let i: number | undefined = lug; i !== undefined; i = mainChild(layout.part, i)) chain.push(i);
      return chain;
    };
    return { flat, polygons: [body, ...lugs.map((lug) => strip(layout, folded, chainOf(lug), flat))] };
  }
}

/** mm: least width of one sketch with its words, height of the metal at the most, room between rows, for the words, round the metal. */
const LEAST_CELL = 34;
const TALLEST = 17;
const BETWEEN = 2;
const WORDS = 5.4;
const ROUND = 1.6;

/** @param steps every bend in the order of bending */
export function sketchesBlock(layout: Layout, steps: readonly SketchStep[]): Block {
  const outlines = steps.map((step, i) => outlineAfter(layout, steps.slice(0, i + 1).map((s) => s.bend), step.bend));
  const cells = Math.max(1, steps.length);
  const at = (width: number): Laid => {
    const columns = Math.max(1, Math.min(cells, Math.floor(width / LEAST_CELL)));
    const cell = width / columns;
    const ratioOf = (of: readonly Outline[]): number =>
      Math.min(1, ...of.map(({ bounds: b }) => Math.min((cell - 2 * ROUND - 2) / Math.max(1e-6, b.maxX - b.minX), TALLEST / Math.max(1e-6, b.maxY - b.minY))));
    const ofLug = (i: number): boolean => layout.part.legs[steps[i]?.bend ?? 0]?.bend?.edge !== 'end';
    const ratios = [ratioOf(outlines.filter((_, i) => !ofLug(i))), ratioOf(outlines.filter((_, i) => ofLug(i)))] as const;
    const rows: Laid[] = [];
    for (let first = 0; first < steps.length; first += columns) {
      const shown = outlines.slice(first, first + columns);
      const ratio = (i: number): number => (ofLug(i) ? ratios[1] : ratios[0]);
      const metal = Math.max(...shown.map(({ bounds: b }, i) => (b.maxY - b.minY) * ratio(first + i)));
      const height = metal + 2 * ROUND + WORDS;
      rows.push(unbroken(height, (p) => shown.flatMap((outline, i) => sketch(outline, first + i, { x: p.x + i * cell, y: p.y }, cell, metal, ratio(first + i)))));
    }
    return grid(rows, width, true);
  };
  return { least: LEAST_CELL * Math.min(cells, 2), natural: LEAST_CELL * Math.min(cells, 3), liked: LEAST_CELL * 1.15 * Math.min(cells, 6), at };

  function sketch({ polygons, made, bounds }: Outline, index: number, corner: Point, cell: number, metal: number, ratio: number): readonly Entity[] {
    const step = steps[index];
    if (!step) return [];
    const key = `sketch ${index}`;
    const spare = (cell - 2 - (bounds.maxX - bounds.minX) * ratio) / 2;
    const place = (p: Point): Point => ({
      x: corner.x + Math.max(ROUND, Math.min(spare, ROUND * 2)) + (p.x - bounds.minX) * ratio,
      y: corner.y - ROUND - metal + (p.y - bounds.minY) * ratio,
    });
    const words = corner.y - ROUND * 2 - metal - mm(RING_PX);
    const runs = polygons.map((polygon) => {
      const placed = polygon.map(place);
      return { segments: placed.map((p, i) => line(p, placed[(i + 1) % placed.length] ?? p)), closed: true };
    });
    return [
      { kind: 'path', key: `${key} metal`, role: 'sketch', runs },
      { kind: 'contours', key: `${key} made`, role: 'arrow', contours: [{ kind: 'circle', centre: place(made), radius: 0.75 }] },
      ...ring(`${key} bend`, { x: corner.x + ROUND + mm(RING_PX), y: words }, step.bend, { kind: 'bend', leg: '' }, PAPER_PX_MM),
      text(`${key} words`, 'sheet text', { x: corner.x + ROUND + mm(2 * RING_PX + 6), y: words - mm((CAP_HEIGHT / 2) * LETTER_PX['sheet text']) }, step.says),
    ];
  }
}

/** Rows of sketches under a heading; whole rows go over the page. */
function grid(rows: readonly Laid[], width: number, first: boolean): Laid {
  const height = HEADING_HEIGHT + rows.reduce((sum, row) => sum + row.height, 0) + BETWEEN * Math.max(0, rows.length - 1);
  return {
    height,
    draw: (at) => {
      let y = at.y - HEADING_HEIGHT;
      const drawn = [...heading('sketches', at, first ? 'After each bend' : 'After each bend, continued', [], width)];
      for (const row of rows) {
        drawn.push(...row.draw({ x: at.x, y }));
        y -= row.height + BETWEEN;
      }
      return drawn;
    },
    split: (room) => {
      let used = HEADING_HEIGHT;
      let fits = 0;
      while (fits < rows.length && used + (rows[fits]?.height ?? 0) <= room) used += (rows[fits++]?.height ?? 0) + BETWEEN;
      return fits === 0 || fits >= rows.length ? undefined : [grid(rows.slice(0, fits), width, first), grid(rows.slice(fits), width, false)];
    },
  };
}
