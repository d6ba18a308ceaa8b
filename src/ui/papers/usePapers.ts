import { useEffect, useRef, useState } from 'react';
import type { LaidPapers, PaperWish } from '../../drawing/papers/types';
import type { Job } from '../../job/schema';

interface Question {
  readonly job: Job;
  readonly wish: PaperWish;
}

export interface Papers {
  /** The last that were laid; undefined before the first. */
  readonly laid: LaidPapers | undefined;
  /** Whether they are those of what is wished now. */
  readonly current: boolean;
  /** Whether the part of the program that lays them is missing. */
  readonly failed: boolean;
}

/** Asks a worker, one question at a time; while it works only the newest of the questions that wait is kept. */
function layer(tell: (answer: LaidPapers, to: Question) => void, fail: () => void) {
  const worker = new Worker(new URL('../../workers/papers.ts', import.meta.url), { type: 'module' });
  let asked: Question | undefined;
  let waiting: Question | undefined;
  const send = (question: Question): void => {
    asked = question;
    // A worker takes no address.
    // oxlint-disable-next-line unicorn/require-post-message-target-origin
    worker.postMessage(question);
  };
  worker.addEventListener('message', ({ data }: MessageEvent<LaidPapers>) => {
    const answered = asked;
    asked = undefined;
    if (waiting) send(waiting);
    waiting = undefined;
    if (answered) tell(data, answered);
  });
  worker.addEventListener('error', fail);
  return {
    ask: (question: Question): void => {
      if (asked) waiting = question;
      else send(question);
    },
    stop: (): void => worker.terminate(),
  };
}

/** The papers of a job, laid as it changes. Keep the wish the same object while it wishes the same. */
export function usePapers(job: Job, wish: PaperWish): Papers {
  const [answer, setAnswer] = useState<{ readonly laid: LaidPapers; readonly to: Question }>();
  const [failed, setFailed] = useState(false);
  const asks = useRef<ReturnType<typeof layer>>(undefined);

  useEffect(() => {
    const made = layer(
      (laid, to) => setAnswer({ laid, to }),
      () => setFailed(true),
    );
    asks.current = made;
    return made.stop;
  }, []);

  // Behind the effect above, so that there is someone to ask.
  useEffect(() => asks.current?.ask({ job, wish }), [job, wish]);

  return { laid: answer?.laid, current: answer !== undefined && answer.to.job === job && answer.to.wish === wish, failed };
}
