/** Section and blank of a part on a sheet: to the largest standard scale that fits, lettering at its full size. Paper mm. */
import type { Bounds, Point } from '../../core/geometry/types';
import type { Drawing, Entity, Lettering, Role } from '../entities';
import { PAPER_PX_MM } from '../page';
import { heading, HEADING_HEIGHT } from './block';
import { onPaper } from './onPaper';
import { DRAWING_SCALES, type DrawingScale } from './scales';

/** A drawing and the words over it. */
export interface Figure {
  readonly key: string;
  readonly title: string;
  /** What is said beside the title, from the fullest on; the first that fits is. */
  readonly notes: readonly string[];
  readonly drawing: Drawing;
}

/** A figure that is yet to be drawn. */
export interface FigureMaker {
  /** What the part covers in mm of its own, without lettering: what cannot be smaller. */
  readonly extent: Bounds;
  /** The figure with lettering of `px` mm of the part to a px of paper. */
  readonly at: (lettering: Lettering) => Figure;
}

/** A maker that draws each size once. */
export function makerOf(extent: Bounds, draw: (lettering: Lettering) => Figure): FigureMaker {
  const made = new Map<string, Figure>();
  return {
    extent,
    at: (lettering) => {
      const key = `${lettering.px} ${lettering.withoutHoles === true}`;
      const before = made.get(key);
      if (before) return before;
      const now = draw(lettering);
      made.set(key, now);
      return now;
    },
  };
}

/** How much lettering figures have: all of it, all but where the holes stand, or none. */
export type Detail = 'all' | 'no holes' | 'bare';

/** A scale at which the figures fit a room, and how they stand in it. */
export interface Fitted {
  readonly scale: DrawingScale;
  /** Place of the scale in the series: 0 is the largest. */
  readonly rank: number;
  /** Draws the figures; `at` is the upper left corner of the room. */
  readonly draw: (at: Point) => readonly Entity[];
}

const BETWEEN = 4;

/** For the screen only: on it they show for the leg that is chosen. */
const NOT_ON_PAPER: ReadonlySet<Role> = new Set<Role>(['tangent text', 'leg area']);
/** What is left of a figure whose lettering will not fit. */
const BARE: ReadonlySet<Role> = new Set<Role>(['outline', 'hole', 'bend zone', 'bend centre line', 'hole edge', 'ghost 1', 'ghost 2', 'ghost 3', 'ghost 4']);
const BARE_ROUND = 3;

export type Fit = (width: number, height: number) => Fitted | undefined;

/**
 * The largest scale at which the figures fit a room, all their lettering with them.
 */
export function figureFitter(makers: readonly FigureMaker[], detail: Detail): Fit {
  const metalFits = (ratio: number, width: number, height: number): boolean =>
    makers.every(({ extent: b }) => (b.maxX - b.minX) * ratio <= width && (b.maxY - b.minY) * ratio <= height);
  return (width, height) => {
    for (const [rank, scale] of DRAWING_SCALES.entries()) {
      if (!metalFits(scale.ratio, width, height)) continue;
      const draw = arranged(makers.map((maker) => maker.at({ px: PAPER_PX_MM / scale.ratio, withoutHoles: detail !== 'all' })), scale.ratio, width, height, detail === 'bare');
      if (draw) return { scale, rank, draw };
    }
    return undefined;
  };
}

const boundsOf = ({ drawing }: Figure, ratio: number, bare: boolean): Bounds => {
  const b = bare ? drawing.extent : drawing.bounds;
  const round = bare ? BARE_ROUND : 0;
  return { minX: b.minX * ratio - round, maxX: b.maxX * ratio + round, minY: b.minY * ratio - round, maxY: b.maxY * ratio + round };
};

/** How the figures stand in the room: one over another with the datum in one line, one over another, or side by side; undefined where none fits. */
function arranged(figures: readonly Figure[], ratio: number, width: number, height: number, bare: boolean): Fitted['draw'] | undefined {
  const boxes = figures.map((figure) => boundsOf(figure, ratio, bare));
  const wide = boxes.map((b) => b.maxX - b.minX);
  const high = boxes.map((b) => b.maxY - b.minY + HEADING_HEIGHT);
  const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
  const place = (i: number, x: number, top: number, at: Point, room: number): readonly Entity[] => {
    const figure = figures[i];
    const box = boxes[i];
    if (!figure || !box) return [];
    const placing = { ratio, x: at.x + x, y: at.y - top - HEADING_HEIGHT - box.maxY };
    const shown = figure.drawing.entities.filter((e) => (bare ? BARE.has(e.role) : !NOT_ON_PAPER.has(e.role)));
    return [
      ...heading(figure.key, { x: at.x, y: at.y - top }, figure.title, figure.notes, room),
      ...shown.map((e) => onPaper(e, `${figure.key} ${e.key}`, placing)),
    ];
  };

  const stackHigh = sum(high) + BETWEEN * (figures.length - 1);
  if (stackHigh <= height) {
    // The room left over goes between and round the figures in even shares.
    const spare = Math.min(12, (height - stackHigh) / (figures.length + 1));
    const tops: number[] = [];
    let top = 0;
    for (const h of high) {
      tops.push(top);
      top += h + BETWEEN + spare;
    }
    const minX = Math.min(...boxes.map((b) => b.minX));
    const maxX = Math.max(...boxes.map((b) => b.maxX));
    if (maxX - minX <= width) {
      const x = (width - (maxX - minX)) / 2 - minX;
      return (at) => figures.flatMap((_, i) => place(i, x, tops[i] ?? 0, at, width));
    }
    if (wide.every((w) => w <= width)) {
      return (at) => figures.flatMap((_, i) => place(i, (width - (wide[i] ?? 0)) / 2 - (boxes[i]?.minX ?? 0), tops[i] ?? 0, at, width));
    }
  }
  const beside = sum(wide) + 2 * BETWEEN * (figures.length - 1);
  if (beside <= width && high.every((h) => h <= height)) {
    const spare = (width - beside) / figures.length;
    return (at) => {
      let x = 0;
      return figures.flatMap((_, i) => {
        const own = (wide[i] ?? 0) + spare;
        const cell = { x: at.x + x, y: at.y };
        x += own + 2 * BETWEEN;
        return place(i, spare / 2 - (boxes[i]?.minX ?? 0), 0, cell, own);
      });
    };
  }
  return undefined;
}
