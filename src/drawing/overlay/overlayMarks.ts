/** The small letters of an overlay: what each stands at, and where it can stand. */
import { line } from '../../core/geometry/segments';
import type { Point } from '../../core/geometry/types';
import { placer } from '../../core/geometry/pose';
import { unreachable } from '../../core/result';
import type { Comparison, Row } from '../../job/compare/compareStocks';
import { datumOf } from '../../job/tables/bendRows';
import type { Shape } from '../../job/workOut';
import { lineBox } from '../boxes';
import type { Pick } from '../entities';
import type { Places, Plan, Sheet } from '../placement';
import { CAP_HEIGHT, LETTER_PX, letteringBox, textWidth } from '../textWidth';

export interface Mark {
  readonly key: string;
  readonly letters: readonly string[];
  readonly at: Point;
  readonly pick?: Pick;
}

/** Which view shows a row: what moves in the bent part stands in the section, all else on the blank. */
const viewOf = (row: Row): 'section' | 'blank' => (row.what === 'bent hole' ? 'section' : 'blank');

/** Marks of a view: letters that stand at one place are one mark. A row of openings is marked at its first. */
export function marksOf({ stocks, rows }: Comparison, view: 'section' | 'blank'): readonly Mark[] {
  const shapes = stocks.flatMap(({ worked: { shape } }) => shape ?? []);
  const marks = new Map<string, Mark>();
  const told = new Set<string>();
  for (const row of rows) {
    if (row.letter === undefined || viewOf(row) !== view || told.has(row.letter)) continue;
    told.add(row.letter);
    const { of } = row;
    const key = of ? `${of.kind} ${of.leg}${of.kind === 'cutout' ? ` ${of.cutout} ${of.item}` : ''}` : 'whole';
    const before = marks.get(key);
    if (before) {
      marks.set(key, { ...before, letters: [...before.letters, row.letter] });
      continue;
    }
    const at = shapes.map((shape) => placeOf(shape, row, view)).find((p) => p !== undefined);
    if (at) marks.set(key, { key, letters: [row.letter], at, ...(of ? { pick: pickOf(of) } : {}) });
  }
  return [...marks.values()];
}

const pickOf = (of: NonNullable<Row['of']>): Pick => (of.kind === 'cutout' ? { kind: 'cutout', leg: of.leg, cutout: of.cutout } : of);

function placeOf(shape: Shape, { of }: Row, view: 'section' | 'blank'): Point | undefined {
  const { layout, blank, folded } = shape;
  const { legs } = layout.part;
  const datum = datumOf(blank);
  const move = (p: Point): Point => ({ x: p.x - datum, y: p.y });
  // The part as a whole: the end that its length and width are measured to.
  if (!of) return move({ x: blank.bounds.maxX, y: blank.bounds.maxY });
  const index = legs.findIndex(({ id }) => id === of.leg);
  switch (of.kind) {
    case 'leg': {
      const pose = blank.legs[index];
      return pose && move(placer(pose)({ x: (layout.legs[index]?.straight ?? 0) / 2, y: 0 }));
    }
    case 'bend': {
      const bend = blank.bends.find(({ leg }) => leg === index);
      return bend && move(bend.centreLine[1]);
    }
    case 'cutout': {
      const found = blank.cutouts.findIndex((c) => c.leg === index && legs[index]?.cutouts[c.cutout]?.id === of.cutout && c.item === of.item);
      if (view === 'blank') return blank.cutouts[found] && move(blank.cutouts[found].centre);
      const centre = folded.cutouts[found]?.centre;
      return centre && { x: centre.x, y: centre.z };
    }
    default:
      return unreachable(of);
  }
}

const DISTANCES_PX = [16, 24, 34, 48, 68, 96, 140, 200, 280];
const DIRECTIONS = [90, 70, 110, 45, 135, -90, -70, -110, -45, -135, 0, 180, 20, 160].map((degrees) => (degrees * Math.PI) / 180);
const PLACES = DISTANCES_PX.flatMap((distance, i) => DIRECTIONS.map((direction, j) => ({ distance, direction, cost: i * 14 + j }))).toSorted((a, b) => a.cost - b.cost);
const DOT_PX = 2;
/** px kept free to either side of letters, so that two marks are not read as one. */
const APART_PX = 5;

/** Above everything: px to either side of what is marked. */
const ABOVE = [0, 30, -30, 60, -60, 110, -110];

/** The places that a mark may take; the last ones are above everything. */
export function markPlaces(mark: Mark, px: number, sheet: Sheet): Places {
  const said = mark.letters.join(', ');
  const width = textWidth(said, 'difference letter');
  return {
    key: `${mark.key} letters`,
    count: PLACES.length + ABOVE.length,
    cost: (index) => PLACES[index]?.cost ?? 900 + index,
    plan: (index) => {
      const place = PLACES[index];
      if (!place) return standing({ x: mark.at.x + (ABOVE[index - PLACES.length] ?? 0) * px, y: sheet.bounds().maxY + 18 * px });
      const [ux, uy] = [Math.cos(place.direction), Math.sin(place.direction)];
      // The letters' middle stands off by the distance and by half of what they take in that direction.
      const reach = (place.distance + Math.abs(ux) * (width / 2 + 4)) * px;
      return standing({ x: mark.at.x + ux * reach, y: mark.at.y + uy * reach });
    },
  };

  function standing(middle: Point): Plan {
    const base = { x: middle.x, y: middle.y - (CAP_HEIGHT / 2) * LETTER_PX['difference letter'] * px };
    const away = Math.hypot(middle.x - mark.at.x, middle.y - mark.at.y);
    const [ux, uy] = [(middle.x - mark.at.x) / away, (middle.y - mark.at.y) / away];
    // The leader ends at the box round the letters.
    const room = Math.min((width / 2 + 3) * px / Math.max(1e-9, Math.abs(ux)), 10 * px / Math.max(1e-9, Math.abs(uy)));
    const end = { x: middle.x - ux * room, y: middle.y - uy * room };
    const led = away > room + 2 * px;
    const start = { x: mark.at.x + ux * 3 * px, y: mark.at.y + uy * 3 * px };
    const common = mark.pick ? { pick: mark.pick } : {};
    return {
      boxes: [letteringBox(width + 2 * APART_PX, 'difference letter', base, 'middle', 0, px), ...(led ? [lineBox('extension', start, end)] : [])],
      entities: () => [
        { kind: 'contours', key: `${mark.key} dot`, role: 'arrow', contours: [{ kind: 'circle', centre: mark.at, radius: DOT_PX * px }], ...common },
        ...(led ? [{ kind: 'path' as const, key: `${mark.key} leader`, role: 'leader' as const, runs: [{ segments: [line(mark.at, end)], closed: false }], ...common }] : []),
        { kind: 'text', key: `${mark.key} letters`, role: 'difference letter', at: base, text: said, align: 'middle', rotation: 0, ...common },
      ],
    };
  }
}
