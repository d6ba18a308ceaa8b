/** The pages of one part that is larger than the paper. */
import type { Bounds } from '../../core/geometry/types';
import type { Entity } from '../entities';
import { figureOf, moved, type FaceWords } from './figure';
import type { Draft, Frame } from './sheetFrame';
import { block, type Row } from './templateLettering';
import type { TemplateShape } from './templateShape';
import { joins, keyPlan, tileCount, tilingOf, type Tile } from './tiles';
import type { TemplateSettings, TemplateSubject } from './types';

/** mm above the bars for the tile's name and the plan of all tiles. */
const NAME_STRIP_MM = 15;
const PLAN_FROM_MM = 20;
const PLAN_MM = { width: 50, height: 13 };
const NOTES_FROM_MM = 72;
const MOST_NOTES = 3;

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

/** One page for each tile of each copy. */
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
  const drawn = figures.map(({ tile, marks, figure }): { readonly tile: Tile; readonly entities: readonly Entity[] } => {
    const by = { x: space.minX - tile.window.minX, y: space.minY - tile.window.minY };
    const strip = { x: frame.work.minX, y: frame.work.minY };
    const named: readonly Row[] = [{ role: 'tile name', text: tile.name }, { role: 'note text', text: `of A1 to ${last}` }];
    const untold = figure.leftOut.filter(({ key }) => !told.has(key)).map(({ text }) => text);
    const notes = untold.length > MOST_NOTES ? [...untold.slice(0, MOST_NOTES - 1), `and ${untold.length - MOST_NOTES + 1} more with no room for lettering`] : untold;
    return {
      tile,
      entities: [
        ...moved([...marks.entities, ...figure.entities], by, `${index + 1} ${tile.name}`),
        ...block('tile', named, { x: strip.x, y: strip.y + NAME_STRIP_MM - 2 }, frame.px).entities(),
        ...keyPlan(tiling, tile, shape.outline, { x: strip.x + PLAN_FROM_MM, y: strip.y + 0.5 }, PLAN_MM),
        ...block('tile notes', notes.map((text): Row => ({ role: 'note text', text })), { x: strip.x + NOTES_FROM_MM, y: strip.y + NAME_STRIP_MM - 2 }, frame.px).entities(),
      ],
    };
  });
  return Array.from({ length: subject.copies }, (_, copy) =>
    drawn.map(({ tile, entities }): Draft => ({ name: `${subject.name}${subject.copies > 1 ? ` copy ${copy + 1}` : ''} tile ${tile.name}`, frame, entities })),
  ).flat();
}
