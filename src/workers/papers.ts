/** Lays papers off the main thread: a full sheet takes a second or two on a slow machine. One answer to each question. */
import { layPapers } from '../drawing/papers/layPapers';
import type { PaperWish } from '../drawing/papers/types';
import type { Job } from '../job/schema';

interface Asked {
  readonly job: Job;
  readonly wish: PaperWish;
}

// Types of the window are loaded for the whole project, so those of a worker cannot be; these two are all that is used.
onmessage = ({ data }: MessageEvent<Asked>): void => {
  (postMessage as (answer: unknown) => void)(layPapers(data.job, data.wish));
};
