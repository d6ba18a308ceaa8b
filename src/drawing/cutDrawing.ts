/** What is cut and marked, and nothing else: the drawing that the DXF, the cut SVG and the costing read. */
import { contourArea, signedArea } from '../core/geometry/area';
import { contourBounds, joined, pathBounds } from '../core/geometry/bounds';
import { line, contourLength, pathLength } from '../core/geometry/segments';
import type { ClosedPath, Contour, Segment } from '../core/geometry/types';
import type { Blank, BlankBend, BlankCutout } from '../core/part/layoutTypes';
import { bad, good } from '../core/result';
import type { Result } from '../core/result';
import type { ContoursEntity, Drawing, Entity, PathEntity } from './entities';
import { NICK_SHARE, nickAt } from './nick';

export interface CutOptions {
  /** How bends are shown: not at all, as lines on their own layer, or as nicks in the outline at both ends of each centre line. */
  readonly bendLines: 'none' | 'layer' | 'nicks';
  /** mm; sets the size of the nicks. */
  readonly thickness: number;
}

export interface CutDrawing {
  readonly drawing: Drawing;
  /** mm², with the nicks taken out. */
  readonly area: number;
  /** mm of cut, round the nicks; bend lines on a layer are marked, not cut, and do not count. */
  readonly cutLength: number;
  readonly pierces: number;
  /** One sentence for each nick that has no place, so that nothing is left out unsaid. */
  readonly leftOut: readonly string[];
}

function withNicks(blank: Blank, contours: readonly Contour[], thickness: number): { readonly outline: ClosedPath; readonly leftOut: readonly string[] } {
  const size = NICK_SHARE * thickness;
  const begin = blank.outline[0]?.from;
  const nicks = new Set<Segment>();
  const leftOut: string[] = [];
  let outline = blank.outline;
  for (const bend of blank.bends) {
    const [right, left] = bend.centreLine;
    for (const [side, at, far] of [['right', right, left], ['left', left, right]] as const) {
      const nicked = nickAt(outline, at, far, size, contours, nicks);
      if (nicked.placed) {
        outline = nicked.outline;
        for (const edge of nicked.sides) nicks.add(edge);
      } else {
        leftOut.push(`Bend ${bend.leg} has no nick at its ${side} end: ${nicked.because}. Choose bend lines on a layer, or mark that end by hand.`);
      }
    }
  }
  // The outline begins where it began before, away from the nicks: a cutter may start at the first point.
  const start = outline.findIndex((s) => s.from.x === begin?.x && s.from.y === begin.y);
  return { outline: start > 0 ? [...outline.slice(start), ...outline.slice(0, start)] : outline, leftOut };
}

function holes(cutouts: readonly BlankCutout[]): readonly ContoursEntity[] {
  const byCutout = new Map<string, Contour[]>();
  for (const { leg, cutout, contour } of cutouts) {
    const key = `cutout/${leg}/${cutout}`;
    const group = byCutout.get(key);
    if (group) group.push(contour);
    else byCutout.set(key, [contour]);
  }
  return [...byCutout].map(([key, contours]) => ({ kind: 'contours', role: 'hole', key, contours }));
}

const bendLine = (bend: BlankBend): PathEntity => ({
  kind: 'path',
  role: 'bend centre line',
  key: `bend/${bend.leg}`,
  runs: [{ segments: [line(...bend.centreLine)], closed: false }],
});

/**
 * The blank as it goes to the cutter: the outline as one closed path, every opening, and the bends as asked for.
 * Refuses a blank without an outline and, for nicks, a thickness that is not above 0. A nick without a place is left out
 * and said in `leftOut`.
 */
export function cutDrawing(blank: Blank, options: CutOptions): Result<CutDrawing> {
  if (blank.outline.length === 0) return bad('outline', 'This part has no outline yet. Give its legs a length and a width first.');
  const nicked = options.bendLines === 'nicks';
  if (nicked && !(options.thickness > 0 && Number.isFinite(options.thickness))) {
    return bad('thickness', 'Nicks are sized from the thickness. Give the stock a thickness above 0 mm.');
  }
  const contours = blank.cutouts.map((c) => c.contour);
  const { outline, leftOut } = nicked ? withNicks(blank, contours, options.thickness) : { outline: blank.outline, leftOut: [] };
  const lines = options.bendLines === 'layer' ? blank.bends.map(bendLine) : [];
  const entities: readonly Entity[] = [
    { kind: 'path', role: 'outline', key: 'outline', runs: [{ segments: outline, closed: true }] },
    ...holes(blank.cutouts),
    ...lines,
  ];
  const extent = contours.reduce((b, contour) => joined(b, contourBounds(contour)), pathBounds(outline));
  const bounds = lines.reduce((b, { runs }) => runs.reduce((inner, run) => joined(inner, pathBounds(run.segments)), b), extent);
  return good({
    drawing: { entities, extent, bounds },
    area: signedArea(outline) - contours.reduce((sum, contour) => sum + contourArea(contour), 0),
    cutLength: pathLength(outline) + contours.reduce((sum, contour) => sum + contourLength(contour), 0),
    pierces: 1 + contours.length,
    leftOut,
  });
}
