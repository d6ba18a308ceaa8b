/** Both drawings as they are looked at now. Kept while nothing they are made from has changed, so that each figure may ask. */
import { blankDrawing } from '../../drawing/blankDrawing';
import type { Drawing } from '../../drawing/entities';
import { sectionDrawing } from '../../drawing/sectionDrawing';
import type { Job, JobPart } from '../../job/schema';
import type { Shape, WorkedOut } from '../../job/workOut';
import { useBench } from '../../store/bench';
import { partOf, shapeOf } from '../../store/derived';
import { partWords } from './partWords';
import { fit, useView, type FigureName, type Fitted, type Measured, type Room, type Sight } from './view';

type Drawings = Readonly<Record<FigureName, Drawing>>;

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
  readonly byZoom: Map<number, Drawings>;
}

let kept: Kept | undefined;
let lastFit: { readonly part: string; readonly room: Room; readonly shape: Shape; readonly fitted: Fitted } | undefined;

function drawingsAt(job: Job, part: JobPart, worked: WorkedOut, shape: Shape, zoom: number): Drawings {
  if (!kept || kept.shape !== shape || kept.part !== part || kept.units !== job.units) kept = { shape, part, units: job.units, byZoom: new Map() };
  const before = kept.byZoom.get(zoom);
  if (before) return before;
  const words = partWords(job, part.id, worked.resolved.values);
  const lettering = { px: 1 / zoom };
  const made = { section: sectionDrawing(shape.layout, shape.folded, words, lettering), blank: blankDrawing(shape.layout, shape.blank, words, lettering) };
  kept.byZoom.set(zoom, made);
  return made;
}

/** Undefined where the part cannot be drawn and never could. */
export function figuresOf(job: Job, partId: string, room: Room, hand: Sight | null): FiguresNow | undefined {
  const part = job.parts.find(({ id }) => id === partId);
  if (!part || room.width <= 0) return undefined;
  const worked = partOf(job, partId);
  const { shape, stale } = shapeOf(job, partId);
  if (!shape) return undefined;
  const at = (zoom: number): Drawings => drawingsAt(job, part, worked, shape, zoom);
  const same = lastFit && lastFit.part === partId && lastFit.room === room ? lastFit.fitted : undefined;
  let fitted = same;
  if (!fitted || (!hand && lastFit?.shape !== shape)) {
    fitted = fit((zoom): Measured => at(zoom), room, same);
    lastFit = { part: partId, room, shape, fitted };
  }
  const sight = hand ?? fitted;
  return { job, part, worked, shape, stale, drawings: at(sight.zoom), sight, height: fitted.height };
}

export function useFigures(): FiguresNow | undefined {
  const job = useBench((state) => state.job);
  const part = useBench((state) => state.part);
  const room = useView((state) => state.room);
  const hand = useView((state) => state.hand);
  return figuresOf(job, part, room, hand);
}
