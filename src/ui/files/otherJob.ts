/** Another job on the bench, begun from nothing or from the example. Undo brings the one before back. */
import { exampleJob } from '../../job/exampleJob';
import type { Job } from '../../job/schema';
import { startingPart, type StartingShape } from '../../job/startingShapes';
import { putOnBench, showPart } from '../../store/bench';
import { SHOWN_FIRST } from './openings';

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
