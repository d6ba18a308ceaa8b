/**
 * The browser keeps the job on the bench: written on every change, brought back on the next visit. While a write is running
 * later changes wait and only the last of them is written. There is one place for it: with two tabs open each writes its own
 * job there and the last change wins, in whichever tab it was made; a job that matters goes to a file.
 */
import { del, get, set } from 'idb-keyval';
import { saveJob } from '../job/saveJob';
import type { Job } from '../job/schema';
import { bench, freshBench, report, showPart } from './bench';

const PLACE = 'bendwright job';
/** What was kept and could not be read is moved here, so that the next change does not write over it. */
const UNREAD = 'bendwright job, unread';
/**
 * Where the last change goes when the page is left before the browser has written it: local storage, because it alone is
 * written at once. The next visit moves it on. A job too large for it is then as the last finished write left it.
 */
const LEFT_BEHIND = 'bendwright job, left behind';

/** A database that does not answer in this time is taken to be missing, so that the sheet does not wait for ever. */
const PATIENCE_MS = 3000;

interface Kept {
  /** The text of a job file. */
  readonly job: string;
  /** Id of the part that was in view. */
  readonly part: string;
}

const isKept = (held: unknown): held is Kept =>
  typeof held === 'object' && held !== null && 'job' in held && typeof held.job === 'string' && 'part' in held && typeof held.part === 'string';

const inTime = <Value>(promise: Promise<Value>): Promise<Value> =>
  Promise.race([promise, new Promise<never>((_, refuse) => setTimeout(() => refuse(new Error('its storage does not answer')), PATIENCE_MS))]);

/** Why the browser refused, in words a maker can use. */
function because(thrown: unknown): string {
  const name = thrown instanceof DOMException || thrown instanceof Error ? thrown.name : '';
  if (name === 'QuotaExceededError') return 'its storage is full';
  if (name === 'SecurityError' || name === 'InvalidStateError' || name === 'NotAllowedError') return 'it does not allow this page to keep anything';
  return thrown instanceof Error && thrown.message ? thrown.message.replace(/\.$/, '') : 'it gave no reason';
}

/** What the last visit had no time to write, moved to where the job is kept. */
async function takeLeftBehind(): Promise<unknown> {
  const text = readLocal();
  if (text === null) return undefined;
  const held: unknown = JSON.parse(text);
  if (!isKept(held)) return undefined;
  try {
    await inTime(set(PLACE, held));
    localStorage.removeItem(LEFT_BEHIND);
  } catch {
    // It stays where it is, safe for the next visit; the next write will say what is wrong.
  }
  return held;
}

function readLocal(): string | null {
  try {
    return localStorage.getItem(LEFT_BEHIND);
  } catch {
    return null;
  }
}

/** Leaves the job in local storage where the last change is not written yet. */
function leaveBehind(): void {
  const { job, part } = bench.getState();
  if (job === safe) return;
  try {
    localStorage.setItem(LEFT_BEHIND, JSON.stringify({ job: saveJob(job), part } satisfies Kept));
  } catch {
    // Denied or too small: the write under way is all that can be done, and the page is going.
  }
}

/** Whether the store did not answer when the app opened, so that what it holds was never seen. */
let unseen = false;

/** Before the first write over a job that was never seen, that job is put aside. */
async function saveUnseen(): Promise<void> {
  if (!unseen) return;
  const held = await inTime(get<unknown>(PLACE));
  if (held !== undefined) await inTime(set(UNREAD, held));
  unseen = false;
}

/** The text of a job that was put aside on an earlier visit; undefined where there is none or the store does not answer. */
export async function jobPutAside(): Promise<string | undefined> {
  try {
    const held = await inTime(get<unknown>(UNREAD));
    if (held === undefined) return undefined;
    return isKept(held) ? held.job : JSON.stringify(held);
  } catch {
    return undefined;
  }
}

/** Lets go of the job that was put aside. */
export const forgetPutAside = (): Promise<void> => del(UNREAD);

/** Puts the job kept by this browser on the bench. @returns whether there was one that could be read */
export async function restore(): Promise<boolean> {
  try {
    const held = (await takeLeftBehind()) ?? (await inTime(get<unknown>(PLACE)));
    if (held === undefined) return false;
    // Loaded only where there is a job to bring back: the first visit does without the schema.
    const { openJob } = await import('../job/openJob');
    const opened = isKept(held) ? openJob(held.job) : undefined;
    if (isKept(held) && opened?.ok) {
      bench.setState(freshBench(opened.job));
      showPart(held.part);
      return true;
    }
    await inTime(set(UNREAD, held));
    const fault = opened?.ok === false ? opened.faults[0]?.says : undefined;
    report(`The job that this browser kept could not be read${fault ? `: ${fault}` : '.'} It was put aside and the example is open instead. Files has it.`);
  } catch (thrown) {
    unseen = true;
    report(`This browser did not bring the job back: ${because(thrown)}. The example is open instead.`);
  }
  return false;
}

let written: Job | null = null;
/** The last job that is known to be written. */
let safe: Job | null = null;
let writing = false;
/** Whether the sentence on the screen is ours, to be taken back once a write succeeds. */
let failed = false;

async function write(): Promise<void> {
  if (writing) return;
  writing = true;
  let { job, part } = bench.getState();
  while (job !== written) {
    written = job;
    try {
      // Each write waits for the one before: the last change must be the last written.
      // oxlint-disable-next-line no-await-in-loop
      await saveUnseen();
      // oxlint-disable-next-line no-await-in-loop
      await inTime(set(PLACE, { job: saveJob(job), part } satisfies Kept));
      safe = job;
      if (failed) report(null);
      failed = false;
    } catch (thrown) {
      failed = true;
      report(`This browser would not keep the job: ${because(thrown)}. Save it to a file.`);
    }
    ({ job, part } = bench.getState());
  }
  writing = false;
}

/** Begins to keep the job; what is on the bench now counts as kept. @returns stops it */
export function keepSaved(): () => void {
  written = bench.getState().job;
  safe = written;
  let { part } = bench.getState();
  const stop = bench.subscribe((state) => {
    if (state.part !== part && state.job === written) written = null;
    part = state.part;
    void write();
  });
  globalThis.addEventListener?.('pagehide', leaveBehind);
  return () => {
    stop();
    globalThis.removeEventListener?.('pagehide', leaveBehind);
  };
}
