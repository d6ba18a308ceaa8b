/**
 * What follows from the job on the bench, worked out when asked for and kept while its inputs are the same objects. Jobs
 * are never changed in place, so an untouched part keeps its answer.
 */
import { workOut, type Shape, type WorkedOut } from '../job/workOut';
import type { Job } from '../job/schema';

interface Kept {
  readonly inputs: readonly unknown[];
  readonly worked: WorkedOut;
}

const kept = new Map<string, Kept>();
const lastGood = new Map<string, Shape>();

/** Everything of the job that a part's geometry reads. */
function inputs(job: Job, partId: string): readonly unknown[] {
  const part = job.parts.find((p) => p.id === partId);
  return [part, job.stocks.find((s) => s.id === part?.stock), job.sizes, job.scale, job.units];
}

/** The part worked out; the same object as before while nothing that it reads has changed. */
export function partOf(job: Job, partId: string): WorkedOut {
  const now = inputs(job, partId);
  const before = kept.get(partId);
  if (before && now.every((input, i) => input === before.inputs[i])) return before.worked;
  const worked = workOut(job, partId);
  kept.set(partId, { inputs: now, worked });
  if (worked.shape) lastGood.set(partId, worked.shape);
  return worked;
}

/** The shape to draw: the present one, or the last that could be drawn (`stale`), or none. */
export function shapeOf(job: Job, partId: string): { readonly shape: Shape | undefined; readonly stale: boolean } {
  const worked = partOf(job, partId);
  if (worked.shape) return { shape: worked.shape, stale: false };
  const held = lastGood.get(partId);
  const part = job.parts.find((p) => p.id === partId);
  // A held shape of another part (a job just opened, legs gone) would light the wrong leg up.
  const same = held?.layout.part.legs.every((leg) => part?.legs.some((l) => l.id === leg.id)) ?? false;
  return { shape: same ? held : undefined, stale: true };
}
