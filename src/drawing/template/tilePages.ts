/** The pages of one part that is larger than the paper. */
import type { Bounds } from '../../core/geometry/types';
import type { Entity } from '../entities';
import { figureOf, moved, partRows, type FaceWords } from './figure';
import type { Draft, Frame } from './sheetFrame';
import { block, blockHeight, type Row } from './templateLettering';
import type { TemplateShape } from './templateShape';
import { joins, keyPlan, tileCount, tilingOf, type Tile } from './tiles';
import type { TemplateSettings, TemplateSubject } from './types';

/** mm above the bars for the tile's name and the plan of all tiles. */
const NAME_STRIP_MM = 15;
const PLAN_FROM_MM = 20;
const PLAN_MM = { width: 50, height: 13 };
const NOTES_FROM_MM = 72;
const MOST_NOTES = 3;
/** mm from the top of the list of what found no place on any tile. */
const LIST_DOWN_MM = 2;

export interface ToTile {
  readonly subject: TemplateSubject;
  readonly index: number;
  readonly frame: Frame;
  readonly shape: TemplateShape;
  readonly quarter: boolean;
}

function room({ work }: Frame): Bounds & { readonly width: number; readonly height: number } {
  const minY = work.minY + NAME_STRIP_MM;
  return { ...work, minY, width: work.maxX - work.minX, height: work.maxY - minY };
}

/** How many tiles one copy takes. */
export const tilesOf = ({ frame, shape }: ToTile, { overlap }: TemplateSettings): number => tileCount(shape.bounds, room(frame), overlap);

/** Rows one below another at the top of a sheet's room, on as many sheets as they take. */
function listed(name: string, rows: readonly Row[], frame: Frame): readonly Draft[] {
  const { work, px } = frame;
  const each = Math.max(1, Math.floor((work.maxY - work.minY - LIST_DOWN_MM) / (blockHeight(rows, px) / rows.length)));
  return Array.from({ length: Math.ceil(rows.length / each) }, (_, i) => ({
    name,
    frame,
    entities: block('list', rows.slice(i * each, (i + 1) * each), { x: work.minX, y: work.maxY - LIST_DOWN_MM }, px).entities(),
  }));
}

/**
 * One page for each tile of each copy. What finds no place on a tile stands above the check bars, and where that is too much, on
 * a sheet of its own after the tiles. A part that fits one tile once its lettering is put apart has no tile name.
 */
export function tilePages({ subject, index, frame, shape, quarter }: ToTile, settings: TemplateSettings, says: FaceWords): readonly Draft[] {
  const space = room(frame);
  const tiling = tilingOf(shape.bounds, space, settings.overlap);
  const last = tiling.tiles.at(-1)?.name ?? '';
  const figures = tiling.tiles.map((tile) => {
    const marks = joins(tiling, tile);
    return { tile, marks, figure: figureOf(subject, settings, says, frame.px, quarter, { shape, bounds: tile.window, taken: marks.boxes }) };
  });
  // What another tile tells need not be told again.
  const told = new Set(figures.flatMap(({ figure }) => figure.entities.map((entity) => entity.key)));
  const single = tiling.tiles.length === 1;
  const lists: Row[] = [];
  const drawn = figures.map(({ tile, marks, figure }): { readonly tile: Tile; readonly entities: readonly Entity[] } => {
    const by = { x: space.minX - tile.window.minX, y: space.minY - tile.window.minY };
    const strip = { x: frame.work.minX, y: frame.work.minY };
    const top = strip.y + NAME_STRIP_MM - 2;
    const named: readonly Row[] = [{ role: 'tile name', text: tile.name }, { role: 'note text', text: `of A1 to ${last}` }];
    const untold = figure.leftOut.filter(({ key }) => !told.has(key)).map(({ text }): Row => ({ role: 'note text', text }));
    const crowded = untold.length > MOST_NOTES;
    if (crowded) lists.push({ role: 'part name', text: single ? 'No room on the part' : `No room on tile ${tile.name}` }, ...untold);
    const notes = crowded ? [{ role: 'note text', text: `No room for ${untold.length} labels: see the list` } as const] : untold;
    return {
      tile,
      entities: [
        ...moved([...marks.entities, ...figure.entities], by, `${index + 1} ${tile.name}`),
        ...(single ? [] : block('tile', named, { x: strip.x, y: top }, frame.px).entities()),
        ...(single ? [] : keyPlan(tiling, tile, shape.outline, { x: strip.x + PLAN_FROM_MM, y: strip.y + 0.5 }, PLAN_MM)),
        ...block('tile notes', notes, { x: strip.x + (single ? 0 : NOTES_FROM_MM), y: top }, frame.px).entities(),
      ],
    };
  });
  const list = lists.length > 0 ? listed(`${subject.name} list`, [...partRows(subject, says(subject))[0] ?? [], ...lists], frame) : [];
  const copies = Array.from({ length: subject.copies }, (_, copy) =>
    drawn.map(({ tile, entities }): Draft => ({ name: `${subject.name}${subject.copies > 1 ? ` copy ${copy + 1}` : ''}${single ? '' : ` tile ${tile.name}`}`, frame, entities })),
  );
  return [...copies.flat(), ...list];
}
