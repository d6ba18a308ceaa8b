/** Blanks of the greenhouse vent stay, laid out by hand, for the tests of what is written. */
import { contourArea, signedArea } from '../../src/core/geometry/area';
import { pathBounds } from '../../src/core/geometry/bounds';
import { arcAbout, contourLength, line, pathLength, withEnds } from '../../src/core/geometry/segments';
import type { ClosedPath, Contour, Point, Segment } from '../../src/core/geometry/types';
import type { Blank, BlankBend, BlankCutout } from '../../src/core/part/layoutTypes';
import type { CutoutShape } from '../../src/core/part/types';

export const at = (x: number, y: number): Point => ({ x, y });

export function polygon(points: readonly Point[]): ClosedPath {
  return points.map((p, i) => line(p, points[(i + 1) % points.length] ?? p));
}

/** Oblong with round ends, lying along x. */
export function slotPath(centre: Point, length: number, width: number): ClosedPath {
  const r = width / 2;
  const half = length / 2 - r;
  const [a, b] = [at(centre.x + half, centre.y), at(centre.x - half, centre.y)];
  const [lowRight, highRight] = [at(a.x, a.y - r), at(a.x, a.y + r)];
  const [highLeft, lowLeft] = [at(b.x, b.y + r), at(b.x, b.y - r)];
  return [
    line(lowLeft, lowRight),
    withEnds(arcAbout(a, r, -Math.PI / 2, Math.PI), lowRight, highRight),
    line(highRight, highLeft),
    withEnds(arcAbout(b, r, Math.PI / 2, Math.PI), highLeft, lowLeft),
  ];
}

/** Upright rectangle with round corners. */
export function roundedPath(low: Point, high: Point, r: number): ClosedPath {
  const corners: readonly (readonly [Point, number])[] = [
    [at(high.x - r, low.y + r), -Math.PI / 2],
    [at(high.x - r, high.y - r), 0],
    [at(low.x + r, high.y - r), Math.PI / 2],
    [at(low.x + r, low.y + r), Math.PI],
  ];
  const arcs = corners.map(([centre, start]) => arcAbout(centre, r, start, Math.PI / 2));
  return arcs.flatMap((arc, i): readonly Segment[] => [line(arcs[(i + 3) % 4]?.to ?? arc.from, arc.from), arc]);
}

const figures = { turn: Math.PI / 2, radius: 1.6, k: 0.4, allowance: 3.5, outsideSetback: 3.2, insideSetback: 1.6, centreLineSetback: 2.4, deduction: 2.9 };

/** A bend across the blank at `x`, from the lower edge (its right side) to the upper one. */
export function bendAcross(leg: number, x: number, low: number, high: number): BlankBend {
  const lineAt = (x: number): readonly [Point, Point] => [at(x, low), at(x, high)];
  const half = figures.allowance / 2;
  return {
    leg, figures, way: 'up', startTangent: lineAt(x - half), centreLine: lineAt(x), endTangent: lineAt(x + half),
    zone: polygon([at(x - half, low), at(x + half, low), at(x + half, high), at(x - half, high)]),
  };
}

export function blankOf(outline: ClosedPath, contours: readonly Contour[], bends: readonly BlankBend[] = []): Blank {
  const shape: CutoutShape = { kind: 'round', diameter: 1 };
  const cutouts = contours.map((contour, cutout): BlankCutout => {
    const b = contour.kind === 'circle' ? undefined : pathBounds(contour.segments);
    const centre = contour.kind === 'circle' ? contour.centre : at(((b?.minX ?? 0) + (b?.maxX ?? 0)) / 2, ((b?.minY ?? 0) + (b?.maxY ?? 0)) / 2);
    return { leg: 0, cutout, item: 0, centre, heading: 0, shape, contour };
  });
  const bounds = pathBounds(outline);
  return {
    outline, legs: [{ x: 0, y: 0, heading: 0 }], plans: [outline], bends, cutouts, bounds,
    developedLength: bounds.maxX - bounds.minX,
    area: signedArea(outline) - contours.reduce((sum, c) => sum + contourArea(c), 0),
    cutLength: pathLength(outline) + contours.reduce((sum, c) => sum + contourLength(c), 0),
    pierces: 1 + contours.length,
  };
}

const circle = (x: number, y: number, radius: number): Contour => ({ kind: 'circle', centre: at(x, y), radius });
const path = (segments: ClosedPath): Contour => ({ kind: 'path', segments });

/** Front strap 120 × 20: one end full round, two bends, three peg holes, a slot and an opening with round corners. */
export function frontStrap(): Blank {
  const outline: ClosedPath = [
    line(at(0, 0), at(110, 0)),
    withEnds(arcAbout(at(110, 10), 10, -Math.PI / 2, Math.PI), at(110, 0), at(110, 20)),
    line(at(110, 20), at(0, 20)),
    line(at(0, 20), at(0, 0)),
  ];
  const cutouts = [circle(110, 10, 3), circle(52.123456789, 10, 1.6), circle(64, 10, 1.6), path(slotPath(at(18, 10), 14, 4.2)), path(roundedPath(at(80, 6), at(90, 14), 1.5))];
  return blankOf(outline, cutouts, [bendAcross(1, 35, 0, 20), bendAcross(2, 97, 0, 20)]);
}

/** A round back plate: one arc of a full turn. */
export function roundPlate(): Blank {
  return blankOf([arcAbout(at(25, 25), 25, 0, 2 * Math.PI)], [path([arcAbout(at(25, 25), 4, Math.PI / 3, -2 * Math.PI)])]);
}

/** Ready-made settings of a job for the DXF. */
export const settings = {
  unit: 'mm',
  bendLines: 'layer',
  layers: { outline: 'OUTLINE', cutouts: 'CUT-OUTS', bends: 'BENDS' },
} as const;
