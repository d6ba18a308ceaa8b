/** Ways to put a job on the bench. Each can be taken back by undo. */
import { exampleJob } from '../../job/exampleJob';
import { openJob } from '../../job/openJob';
import type { Fault } from '../../job/schemaFaults';
import type { Job } from '../../job/schema';
import { startingPart, type StartingShape } from '../../job/startingShapes';
import { bench, freshBench, putOnBench, showPart } from '../../store/bench';

/** The example opens on its second part, the strap: it has bends, holes and something to look at. */
const SHOWN_FIRST = 'strap';

/** The finished example, on a bench that has nothing on it yet. */
export function openExample(): void {
  const { trouble } = bench.getState();
  bench.setState({ ...freshBench(exampleJob), trouble });
  showPart(SHOWN_FIRST);
}

export function startFromExample(): void {
  putOnBench(exampleJob, 'starting from the example');
  showPart(SHOWN_FIRST);
}

/** A job with one part and the stocks of the example, which are figures for common metals. */
export function emptyJob(shape: StartingShape): Job {
  const { stocks } = exampleJob;
  return {
    ...exampleJob,
    name: '',
    scale: '1',
    sizes: [],
    parts: [startingPart(shape, { id: 'part-1', stock: stocks[0]?.id ?? '', plain: exampleJob.units.plain })],
  };
}

export const startEmpty = (shape: StartingShape): void => putOnBench(emptyJob(shape), 'starting an empty job');

/** A file larger than this is no job; it is not read into memory. */
const MOST_BYTES = 20_000_000;

export type OpenedFile = { readonly ok: true; readonly name: string; readonly notes: readonly string[] } | { readonly ok: false; readonly name: string; readonly faults: readonly Fault[] };

/** Opens a job file. The job on the bench stays untouched where the file has a fault. */
export async function openFile(file: File): Promise<OpenedFile> {
  const refuse = (says: string): OpenedFile => ({ ok: false, name: file.name, faults: [{ where: 'the file', says }] });
  if (file.size > MOST_BYTES) return refuse('This file is too large to be a job. Choose one saved by Bendwright.');
  let text: string;
  try {
    text = await file.text();
  } catch {
    return refuse('The browser could not read this file. Look whether it is still there, and choose it again.');
  }
  const opened = openJob(text);
  if (!opened.ok) return { ok: false, name: file.name, faults: opened.faults };
  putOnBench(opened.job, `opening ${file.name}`);
  return { ok: true, name: file.name, notes: opened.notes };
}
