/** Dimensions of the section: where holes and rows stand along their leg, and how long each leg is. */
import type { Point } from '../core/geometry/types';
import type { Pick } from './entities';
import { dimension, figurePlaces, figureWidth, type DimensionSpec, type FigurePlace } from './dimension';
import { measuredBeyond, measuredFace, type RunLeg } from './mainRun';
import { reach, type Places, type Sheet } from './placement';
import { HOLE_PAST_PX } from './sectionShape';
import { basisWord, rowText, type Words } from './words';

/** px from a face to the first dimension line, and between dimension lines. */
const FIRST_ROW_PX = 28;
const ROW_PX = 28;
const ROWS = 9;
/** Cost of each further row, of the side away from the outside of the part, and of a figure beside its line. */
const ROW_COST = 10;
const SIDE_COST = 5;
const BESIDE_COST: Readonly<Record<FigurePlace, number>> = { gap: 0, beside: 0, after: 1, before: 2 };
const FIGURE_PLACES = ['gap', 'beside', 'after', 'before'] as const;

/** A length along a leg, from x0 to x1 in its frame; each end on a face (z), or on whichever face is nearer. */
interface Measured {
  readonly key: string;
  readonly x0: number;
  readonly x1: number;
  readonly z0?: number | undefined;
  readonly z1?: number | undefined;
  readonly clear0: boolean;
  readonly clear1: boolean;
  readonly text: string;
  readonly suffix: string;
  readonly field: string;
  readonly pick: Pick;
  /** Side to try first: 1 the marked face's, −1 the other's. */
  readonly side: 1 | -1;
}

/** Every place for one dimension along a leg: both sides, several rows outwards, and one outside all that is on the sheet. */
export function dimensionPlaces(run: RunLeg, measured: Measured, thickness: number, px: number, sheet: Sheet): Places {
  const back = measured.x1 < measured.x0;
  const ux = back ? -run.ux : run.ux;
  const uy = back ? -run.uy : run.uy;
  const clear = HOLE_PAST_PX * px;
  const width = figureWidth(measured.text, measured.suffix);
  const onSide = (side: 1 | -1) => {
    const face = side > 0 ? 0 : -thickness;
    const anchor = (x: number, z: number | undefined): Point => run.at(x, z === undefined ? face : side > 0 ? Math.max(z, 0) : Math.min(z, -thickness));
    const normal = { x: -run.uy * side, y: run.ux * side };
    const surface = run.at(0, face);
    const spec: DimensionSpec = {
      key: measured.key,
      from: anchor(measured.x0, measured.z0),
      to: anchor(measured.x1, measured.z1),
      ux,
      uy,
      level: 0,
      text: measured.text,
      suffix: measured.suffix,
      width,
      field: measured.field,
      pick: measured.pick,
      clearFrom: measured.clear0 ? clear : 0,
      clearTo: measured.clear1 ? clear : 0,
    };
    // The normal of a dimension is the leg's own; for a length that counts backwards it points the other way.
    return { normal, spec, base: surface.x * normal.x + surface.y * normal.y, sign: side * (back ? -1 : 1) };
  };
  const liked = onSide(measured.side);
  const other = onSide(measured.side === 1 ? -1 : 1);
  const offered = figurePlaces(liked.spec, px);
  // Row by row, the liked side first, each with its figure in every place there is.
  const perRow = 2 * FIGURE_PLACES.length;
  const figureOf = (index: number): FigurePlace => FIGURE_PLACES[index % FIGURE_PLACES.length] ?? 'gap';
  const rowOf = (index: number): number => Math.floor(index / perRow);
  const onLikedSide = (index: number): boolean => index % perRow < FIGURE_PLACES.length;
  return {
    key: measured.key,
    count: (ROWS + 1) * perRow,
    cost: (index) => (offered.includes(figureOf(index)) ? rowOf(index) * ROW_COST + (onLikedSide(index) ? 0 : SIDE_COST) + BESIDE_COST[figureOf(index)] : Infinity),
    plan: (index) => {
      const { normal, spec, base, sign } = onLikedSide(index) ? liked : other;
      const row = rowOf(index);
      const height = row < ROWS ? base + (FIRST_ROW_PX + row * ROW_PX) * px : reach(sheet.bounds(), normal.x, normal.y) + ROW_PX * px;
      return dimension({ ...spec, level: height * sign }, figureOf(index), px);
    },
  };
}

/** Positions of holes, and pitches of rows along the leg. */
export function holeDimensions(run: RunLeg, thickness: number, words: Words, side: 1 | -1): readonly Measured[] {
  const { leg, layout } = run;
  return leg.cutouts.flatMap((cutout, i) => {
    const items = layout.cutouts.filter((item) => item.cutout === i);
    const first = items[0];
    if (!first) return [];
    const { along, pattern } = cutout;
    const start = -measuredBeyond(run.startBend, along.basis, thickness);
    const end = run.straight + measuredBeyond(run.endBend, along.basis, thickness);
    const datum = { start, end, middle: (start + end) / 2 }[along.from];
    const place = along.from === 'end' ? datum - along.distance : datum + along.distance;
    const bend = along.from === 'start' ? run.startBend : along.from === 'end' ? run.endBend : undefined;
    const field = `${words.part}.legs.${leg.id}.cutouts.${cutout.id}`;
    const pick: Pick = { kind: 'cutout', leg: leg.id, cutout: cutout.id };
    const common = { pick, side, suffix: '', clear1: true };
    const found: Measured[] = [];
    if (along.distance !== 0) {
      const at = `${field}.along.distance`;
      found.push({ ...common, key: `${leg.id} ${cutout.id} position`, x0: datum, x1: place, z0: measuredFace(bend, along.basis, thickness), clear0: false, text: words.say(at), field: at });
    }
    const xs = items.map((item) => item.centre.x);
    const low = Math.min(...xs);
    const high = Math.max(...xs);
    const [count, pitch, key] =
      pattern.kind === 'row' && pattern.direction === 'along' ? ([pattern.count, pattern.pitch, 'pitch'] as const)
      : pattern.kind === 'grid' ? ([pattern.alongCount, pattern.alongPitch, 'alongPitch'] as const)
      : ([1, 0, ''] as const);
    if (count > 1 && pitch !== 0) {
      const at = `${field}.pattern.${key}`;
      const text = count === 2 ? words.say(at) : rowText(count - 1, words.say(at), high - low, words);
      found.push({ ...common, key: `${leg.id} ${cutout.id} row`, x0: low, x1: high, clear0: true, text, field: at });
    }
    return found;
  });
}

/** The length of a leg, to its own basis at each bent end. */
export function legDimension(run: RunLeg, thickness: number, words: Words, side: 1 | -1): Measured {
  const { leg, startBend, endBend } = run;
  const field = `${words.part}.legs.${leg.id}.length`;
  const used = [...(startBend ? [leg.startBasis] : []), ...(endBend ? [leg.endBasis] : [])];
  return {
    key: `${leg.id} length`,
    x0: -measuredBeyond(startBend, leg.startBasis, thickness),
    x1: run.straight + measuredBeyond(endBend, leg.endBasis, thickness),
    z0: measuredFace(startBend, leg.startBasis, thickness),
    z1: measuredFace(endBend, leg.endBasis, thickness),
    clear0: false,
    clear1: false,
    text: words.say(field),
    suffix: [...new Set(used)].map(basisWord).join(' to '),
    field,
    pick: { kind: 'leg', leg: leg.id },
    side,
  };
}
