/** Both drawings as they are looked at now. Kept while nothing they are made from has changed, so that each figure may ask. */
import { blankDrawing } from '../../drawing/blankDrawing';
import type { PlacedDrawing } from '../../drawing/placement';
import { sectionDrawing } from '../../drawing/sectionDrawing';
import type { Job, JobPart } from '../../job/schema';
import type { Shape, WorkedOut } from '../../job/workOut';
import { bench, useBench } from '../../store/bench';
import { partOf, shapeOf } from '../../store/derived';
import { partWords } from '../../drawing/partWords';
import { fit, useView, view, type FigureName, type Fitted, type Measured, type Room, type Sight } from './view';

type Drawings = Readonly<Record<FigureName, PlacedDrawing>>;

export interface FiguresNow {
  readonly job: Job;
  readonly part: JobPart;
  readonly worked: WorkedOut;
  readonly shape: Shape;
  /** The drawings show the last shape that could be worked out. */
  readonly stale: boolean;
  readonly drawings: Drawings;
  readonly sight: Sight;
  /** px */
  readonly height: Readonly<Record<FigureName, number>>;
}

interface Kept {
  readonly shape: Shape;
  readonly part: JobPart;
  readonly units: Job['units'];
  /** Lettering was kept where it had been. */
  readonly steady: boolean;
  readonly byZoom: Map<number, Drawings>;
}

let kept: Kept | undefined;
/** The drawings made last: while a figure is typed or dragged, lettering keeps its places in them. */
let last: { readonly part: string; readonly zoom: number; readonly drawings: Drawings } | undefined;
let lastFit: { readonly part: string; readonly room: Room; readonly shape: Shape; readonly steady: boolean; readonly fitted: Fitted } | undefined;
/** What the last good shape was lettered with: while an entry is wrong the drawing holds its figures too. */
let lettered: { readonly shape: Shape; readonly job: Job; readonly part: JobPart; readonly values: ReadonlyMap<string, number> } | undefined;

function drawingsAt(job: Job, part: JobPart, values: ReadonlyMap<string, number>, shape: Shape, steady: boolean, zoom: number): Drawings {
  // Once a gesture is over, all lettering is placed afresh, so that the drawing does not depend on how the part came about.
  const same = kept && kept.shape === shape && kept.part === part && kept.units === job.units && (steady || !kept.steady);
  if (!kept || !same) kept = { shape, part, units: job.units, steady, byZoom: new Map() };
  const before = kept.byZoom.get(zoom);
  if (before) return before;
  const words = partWords(job, part.id, values);
  const lettering = { px: 1 / zoom };
  const places = steady && last?.part === part.id && last.zoom === zoom ? last.drawings : undefined;
  const made = {
    section: sectionDrawing(shape.layout, shape.folded, words, lettering, places?.section.places),
    blank: blankDrawing(shape.layout, shape.blank, words, lettering, places?.blank.places),
  };
  kept.byZoom.set(zoom, made);
  last = { part: part.id, zoom, drawings: made };
  return made;
}

/** What a fit has to hold: all that is always on show. */
const measured = ({ section, blank }: Drawings): Measured => ({
  section: { extent: section.extent, bounds: section.shown },
  blank: { extent: blank.extent, bounds: blank.shown },
});

/**
 * Undefined where the part cannot be drawn and never could.
 * @param steady while a figure is typed or dragged
 */
export function figuresOf(job: Job, partId: string, room: Room, hand: Sight | null, steady: boolean): FiguresNow | undefined {
  const part = job.parts.find(({ id }) => id === partId);
  if (!part || room.width <= 0) return undefined;
  const worked = partOf(job, partId);
  const { shape, stale } = shapeOf(job, partId);
  if (!shape) return undefined;
  if (!stale) lettered = { shape, job, part, values: worked.resolved.values };
  const from = stale && lettered?.shape === shape ? lettered : { job, part, values: worked.resolved.values };
  const at = (zoom: number): Drawings => drawingsAt(from.job, from.part, from.values, shape, steady, zoom);
  const before = lastFit && lastFit.part === partId && lastFit.room === room ? lastFit : undefined;
  let fitted = before?.fitted;
  // A fit that was held for a gesture is looked at again once the gesture is over.
  if (!fitted || (!hand && (before?.shape !== shape || (before.steady && !steady)))) {
    fitted = fit((zoom) => measured(at(zoom)), room, fitted && { fitted, steady });
    lastFit = { part: partId, room, shape, steady, fitted };
  }
  const sight = hand ?? fitted;
  return { job, part, worked, shape, stale, drawings: at(sight.zoom), sight, height: fitted.height };
}

/** Both figures as the bench and the view stand. */
export const figuresNow = (): FiguresNow | undefined => {
  const { job, part, mark, editing } = bench.getState();
  const { room, hand } = view.getState();
  return figuresOf(job, part, room, hand, mark !== null || editing !== null);
};

export function useFigures(): FiguresNow | undefined {
  const job = useBench((state) => state.job);
  const part = useBench((state) => state.part);
  const steady = useBench((state) => state.mark !== null || state.editing !== null);
  const room = useView((state) => state.room);
  const hand = useView((state) => state.hand);
  return figuresOf(job, part, room, hand, steady);
}
