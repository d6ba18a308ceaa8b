/**
 * What the bench has on it: the job, its history, what is in view and what is chosen. Everything else (blanks, bent parts,
 * drawings, checks) is worked out from these, never stored: see `derived.ts`.
 */
import { createStore } from 'zustand/vanilla';
import { useStore } from 'zustand';
import { exampleJob } from '../job/exampleJob';
import type { Job } from '../job/schema';
import type { Pick } from '../drawing/entities';

/** One place of the app. */
export type Room = 'parts' | 'compare' | 'stock' | 'papers' | 'files';

/** A job as it was before a change, and what that change was called. */
interface Past {
  readonly job: Job;
  readonly label: string;
  /** What to show when the change is taken back or made again. */
  readonly room: Room;
  readonly part: string;
  readonly chosen: Pick | null;
}

export interface Bench {
  readonly job: Job;
  readonly past: readonly Past[];
  readonly future: readonly Past[];
  /** Set while a field or a drag is under way: changes with the same mark are one step of undo. */
  readonly mark: string | null;
  readonly room: Room;
  /** Id of the part in view. */
  readonly part: string;
  readonly chosen: Pick | null;
  /** Path of the field that is being edited in a drawing, if any. */
  readonly editing: string | null;
  /** A plain sentence when the browser could not keep the job; null when all is well. */
  readonly trouble: string | null;
}

const firstPart = (job: Job): string => job.parts[0]?.id ?? '';

export const freshBench = (job: Job): Bench => ({
  job,
  past: [],
  future: [],
  mark: null,
  room: 'parts',
  part: firstPart(job),
  chosen: null,
  editing: null,
  trouble: null,
});

export const bench = createStore<Bench>()(() => freshBench(exampleJob));

/** Reads part of the bench in a component. */
export const useBench = <Slice>(read: (state: Bench) => Slice): Slice => useStore(bench, read);

/** Jobs are never changed in place and share what did not change, so a history without end costs little. */
const present = (state: Bench, label: string): Past => ({
  job: state.job,
  label,
  room: state.room,
  part: state.part,
  chosen: state.chosen,
});

export interface Change {
  /** What undo calls it: `peg leg 110 to 112`. */
  readonly label: string;
  /** Changes under one mark are one step of undo (the keystrokes of a field, the moves of a drag). Ended by `endMark`. */
  readonly mark?: string;
  /** Shown and chosen afterwards, where the change brings something new. */
  readonly part?: string;
  readonly chosen?: Pick | null;
}

/** Changes the job. A change that leaves the same job is no step. */
export function apply(edit: (job: Job) => Job, change: Change): void {
  bench.setState((state) => {
    const job = edit(state.job);
    if (job === state.job) return state;
    const sameStep = change.mark !== undefined && change.mark === state.mark;
    return {
      ...state,
      job,
      past: sameStep ? relabelled(state.past, change.label) : [...state.past, present(state, change.label)],
      future: [],
      mark: change.mark ?? null,
      part: inJob(job, change.part ?? state.part),
      chosen: stillThere(job, change.part ?? state.part, change.chosen === undefined ? state.chosen : change.chosen),
    };
  });
}

const relabelled = (past: readonly Past[], label: string): readonly Past[] => {
  const last = past.at(-1);
  return last && last.label !== label ? [...past.slice(0, -1), { ...last, label }] : past;
};

const inJob = (job: Job, part: string): string => (job.parts.some((p) => p.id === part) ? part : firstPart(job));

/** The choice, or null where what was chosen is no longer in the part. */
function stillThere(job: Job, partId: string, chosen: Pick | null): Pick | null {
  if (!chosen) return null;
  const leg = job.parts.find((p) => p.id === partId)?.legs.find((l) => l.id === chosen.leg);
  if (!leg) return null;
  if (chosen.kind === 'cutout' && !leg.cutouts.some((c) => c.id === chosen.cutout)) return null;
  if (chosen.kind === 'bend' && !leg.bend) return null;
  return chosen;
}

/** The next change under the same mark begins a new step. */
export const endMark = (): void => bench.setState({ mark: null });

/** Takes back everything done under a mark, without a trace in redo: Esc in a field or during a drag. */
export function dropMark(mark: string): void {
  bench.setState((state) => {
    const last = state.past.at(-1);
    if (state.mark !== mark || !last) return state;
    return { ...state, job: last.job, past: state.past.slice(0, -1), mark: null };
  });
}

export function undo(): void {
  bench.setState((state) => {
    const last = state.past.at(-1);
    if (!last) return state;
    return { ...state, job: last.job, past: state.past.slice(0, -1), future: [present(state, last.label), ...state.future], mark: null, ...shown(last.job, last) };
  });
}

export function redo(): void {
  bench.setState((state) => {
    const next = state.future[0];
    if (!next) return state;
    return { ...state, job: next.job, past: [...state.past, present(state, next.label)], future: state.future.slice(1), mark: null, ...shown(next.job, next) };
  });
}

const shown = (job: Job, step: Past) => {
  const part = inJob(job, step.part);
  return { part, chosen: stillThere(job, part, step.chosen), room: step.room, editing: null };
};

export const choose = (chosen: Pick | null): void => bench.setState({ chosen });
export const showPart = (part: string): void => bench.setState({ part, chosen: null, room: 'parts', editing: null });
/** Another part in a place that shows one; elsewhere it is shown where parts are. */
export const turnToPart = (part: string): void => bench.setState(({ room }) => ({ part, chosen: null, room: room === 'compare' ? room : 'parts', editing: null }));
export const goTo = (room: Room): void => bench.setState({ room, editing: null });
export const edit = (field: string | null): void => bench.setState({ editing: field });
export const report = (trouble: string | null): void => bench.setState({ trouble });

/** Puts another job on the bench. The one that was there can be had back by undo. */
export function putOnBench(job: Job, label: string): void {
  bench.setState((state) => ({ ...freshBench(job), past: [...state.past, present(state, label)], trouble: state.trouble }));
}
