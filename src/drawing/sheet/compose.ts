/** Puts figures and blocks on as few sheets as serve: the drawing as large as it can be without driving tables off for nothing. Paper mm. */
import type { Point } from '../../core/geometry/types';
import type { Entity } from '../entities';
import { SAFE_MARGINS, sheetOf, type PaperName } from '../template/paperSizes';
import type { Page } from '../page';
import type { Block, Laid } from './block';
import { cautionsFoot } from './cautions';
import { rule } from './block';
import { figureFitter, type Detail, type FigureMaker, type Fit, type Fitted } from './figures';
import { BESIDE, column, shelves, UNDER } from './shelves';
import { titleBlock, TITLE_HEIGHT, type TitleCell } from './titleBlock';

export interface SheetSettings {
  readonly paper: PaperName;
  readonly turn: 'upright' | 'lying';
  /** The day as it is to be printed. */
  readonly date: string;
}

export interface Contents {
  readonly figures: readonly FigureMaker[];
  /** In the order in which they are read. */
  readonly blocks: readonly SheetBlock[];
}

export interface SheetBlock {
  readonly block: Block;
  readonly kind: 'bends' | 'sketches' | 'holes' | 'notes';
}

/** Room inside the border of a sheet. */
interface Inner {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** mm: from the border line to what is printed inside it. */
const INSIDE = 3.2;

function frameOf({ paper, turn }: SheetSettings) {
  const sheet = sheetOf(paper, turn === 'lying', SAFE_MARGINS);
  // Half the width of the border's line stays inside the margins too.
  const half = 0.35;
  const left = sheet.left + half;
  const bottom = sheet.bottom + half;
  const width = sheet.width - sheet.left - sheet.right - 2 * half;
  const height = sheet.height - sheet.top - sheet.bottom - 2 * half;
  const inner: Inner = { left: left + INSIDE, top: bottom + height - INSIDE, width: width - 2 * INSIDE, height: height - TITLE_HEIGHT - 2 * INSIDE };
  return { sheet, left, bottom, width, height, inner };
}

export const innerOf = (settings: SheetSettings): Inner => frameOf(settings).inner;

/** One arrangement of a sheet: how it draws, and at what scale. */
interface Arranged {
  readonly fitted: Fitted;
  readonly draw: () => readonly Entity[];
}

/** Widths that a column beside the drawings may have, as shares of the sheet. */
const CARD_SHARES = [0.26, 0.3, 0.36, 0.44];

/** Every arrangement of figures and blocks on one sheet that fits. */
function* arrangements(fit: Fit, blocks: readonly SheetBlock[], inner: Inner): Generator<Arranged> {
  const { left, top, width, height } = inner;
  const at = (x: number, down: number): Point => ({ x: left + x, y: top - down });
  const under = (laid: Laid | undefined): number => (laid && laid.height > 0 ? laid.height + UNDER : 0);
  const divide = (key: string, a: Point, b: Point): Entity => rule(key, 'sheet rule', [a, b]);
  const of = (...kinds: readonly SheetBlock['kind'][]): readonly Block[] => blocks.filter((b) => kinds.includes(b.kind)).map((b) => b.block);

  for (const share of blocks.length > 0 ? CARD_SHARES : []) {
    const card = Math.round(width * share);
    const main = width - card - 2 * BESIDE;
    for (const [cardBlocks, wide, tables] of [
      [of('sketches', 'notes'), of('bends', 'holes'), 'whole'],
      [of('sketches', 'notes'), of('bends', 'holes'), 'main'],
      [of('notes'), of('bends', 'holes', 'sketches'), 'whole'],
      [of('notes'), of('bends', 'holes', 'sketches'), 'main'],
      [blocks.map((b) => b.block), [], 'main'],
    ] as const) {
      if (cardBlocks.length === 0 || cardBlocks.some((b) => b.least > card)) continue;
      const zoneWidth = tables === 'whole' ? width : main;
      if (wide.some((b) => b.least > zoneWidth)) continue;
      const zone = shelves(wide, zoneWidth);
      const beside = column(cardBlocks, card);
      const room = height - under(wide.length > 0 ? zone : undefined);
      if (room <= 0 || beside.height > (tables === 'whole' ? room : height)) continue;
      const fitted = fit(main, room);
      if (!fitted) continue;
      const x = main + BESIDE;
      yield {
        fitted,
        draw: () => [
          ...fitted.draw(at(0, 0)),
          divide('divide card', at(x, 0), at(x, tables === 'whole' ? room : height)),
          ...beside.draw(at(main + 2 * BESIDE, 0)),
          ...(wide.length > 0 ? [divide('divide', at(0, room + UNDER / 2), at(zoneWidth, room + UNDER / 2)), ...zone.draw(at(0, height - zone.height))] : []),
        ],
      };
    }
  }

  // Figures over everything else.
  {
    const zone = shelves(blocks.map((b) => b.block), width);
    const room = height - under(zone);
    const fitted = room > 0 ? fit(width, room) : undefined;
    if (fitted) yield { fitted, draw: () => [...fitted.draw(at(0, 0)), ...(blocks.length > 0 ? [divide('divide', at(0, room + UNDER / 2), at(width, room + UNDER / 2))] : []), ...zone.draw(at(0, height - zone.height))] };
  }
}

function best(fit: Fit, blocks: readonly SheetBlock[], inner: Inner): Arranged | undefined {
  let found: Arranged | undefined;
  for (const arranged of arrangements(fit, blocks, inner)) {
    if (!found || arranged.fitted.rank < found.fitted.rank) found = arranged;
  }
  return found;
}

/** Which blocks may leave the first sheet, a step further each time. */
const LEAVING: readonly (readonly SheetBlock['kind'][])[] = [[], ['holes'], ['sketches'], ['holes', 'sketches'], ['bends', 'sketches'], ['holes', 'bends', 'sketches'], ['holes', 'bends', 'sketches', 'notes']];

/** A drawing may be this many steps of the series smaller for the sake of one sheet. */
const STEPS_GIVEN = 1;

/** What stands on one sheet, and to what scale its figures are drawn. */
export interface Body {
  readonly scale: string;
  readonly entities: readonly Entity[];
}

export interface Composed {
  /** How much lettering the figures kept. */
  readonly detail: Detail;
  readonly bodies: readonly Body[];
}

const NO_SCALE = '–';

/** Figures with as many blocks beside them as stay without making them much smaller; the blocks that had to leave. */
function withBlocks(fit: Fit, blocks: readonly SheetBlock[], inner: Inner, given: number): { readonly body: Body; readonly left: readonly SheetBlock[] } | undefined {
  const alone = best(fit, [], inner);
  if (!alone) return undefined;
  for (const leaving of LEAVING) {
    const stay = blocks.filter((b) => !leaving.includes(b.kind));
    if (leaving.length > 0 && stay.length === blocks.length) continue;
    const arranged = best(fit, stay, inner);
    if (!arranged || arranged.fitted.rank > alone.fitted.rank + given) continue;
    return { body: { scale: arranged.fitted.scale.says, entities: arranged.draw() }, left: blocks.filter((b) => leaving.includes(b.kind)) };
  }
  return { body: { scale: alone.fitted.scale.says, entities: alone.draw() }, left: blocks };
}

const LEAST_FIRST: readonly Detail[] = ['bare', 'no holes', 'all'];

/**
 * All figures on the first sheet; where they are too many for one, each on its own; where even so one is too crowded, with fewer dimensions.
 * @param given steps of the series that figures may be smaller for the sake of one sheet
 */
export function compose({ figures, blocks }: Contents, settings: SheetSettings, given = STEPS_GIVEN): Composed {
  const whole = innerOf(settings);
  const foot = cautionsFoot(whole.width);
  const inner: Inner = { ...whole, height: whole.height - foot.height - UNDER / 2 };
  const footDrawn = foot.draw({ x: whole.left, y: whole.top - whole.height + foot.height });
  const bodies: Body[] = [];
  let left: readonly SheetBlock[] = blocks;
  let least: Detail = 'all';
  const take = (shown: NonNullable<ReturnType<typeof withBlocks>>, detail: Detail): void => {
    bodies.push(shown.body);
    left = shown.left;
    if (LEAST_FIRST.indexOf(detail) < LEAST_FIRST.indexOf(least)) least = detail;
  };
  const place = (): void => {
    for (const detail of ['all', 'no holes'] as const) {
      const together = withBlocks(figureFitter(figures, detail), left, inner, given);
      if (together) return take(together, detail);
      const apart = figures.map((figure) => withBlocks(figureFitter([figure], detail), [], inner, given));
      if (apart.every((shown) => shown !== undefined)) return each(detail);
    }
    return each('bare');
  };
  const each = (detail: Detail): void => {
    for (const figure of figures) {
      const shown = withBlocks(figureFitter([figure], detail), left, inner, given);
      if (shown) take(shown, detail);
    }
  };
  place();
  bodies.push(...flow(left.map((b) => b.block), bodies.length > 0 ? whole : inner));
  return { detail: least, bodies: bodies.map((body, i) => (i === 0 ? { ...body, entities: [...body.entities, ...footDrawn] } : body)) };
}

/** Blocks on as many sheets as they need. */
export function flow(blocks: readonly Block[], inner: Inner): readonly Body[] {
  const bodies: Body[] = [];
  if (blocks.length === 0) return bodies;
  let left: Laid | undefined = shelves(blocks, inner.width);
  while (left) {
    const at = { x: inner.left, y: inner.top };
    const halves: readonly [Laid, Laid] | undefined = left.height > inner.height ? left.split(inner.height) : undefined;
    bodies.push({ scale: NO_SCALE, entities: (halves ? halves[0] : left).draw(at) });
    left = halves?.[1];
  }
  return bodies;
}

/** A sheet with its border and title block. */
export function sheetPage(name: string, body: readonly Entity[], tall: readonly TitleCell[], low: readonly TitleCell[], settings: SheetSettings): Page {
  const { sheet, left, bottom, width, height } = frameOf(settings);
  const [right, top] = [left + width, bottom + height];
  const corners = [{ x: left, y: bottom }, { x: right, y: bottom }, { x: right, y: top }, { x: left, y: top }];
  const border: Entity = {
    kind: 'path',
    key: 'border',
    role: 'sheet border',
    runs: [{ closed: true, segments: corners.map((from, i) => ({ kind: 'line', from, to: corners[(i + 1) % 4] ?? from })) }],
  };
  const entities = [border, ...titleBlock(tall, low, { x: left, y: bottom + TITLE_HEIGHT }, width), ...body];
  return { name, width: sheet.width, height: sheet.height, entities: entities.map(withoutPick) };
}

/** Nothing on paper can be picked or changed. */
function withoutPick(entity: Entity): Entity {
  if (entity.pick === undefined && entity.field === undefined) return entity;
  const { pick: _pick, field: _field, ...rest } = entity;
  return rest;
}

