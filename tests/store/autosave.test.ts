import { beforeEach, describe, expect, it, vi } from 'vitest';
import { exampleJob } from '../../src/job/exampleJob';
import { writeField } from '../../src/job/fields';
import { openJob } from '../../src/job/openJob';
import { saveJob } from '../../src/job/saveJob';
import { forgetPutAside, jobPutAside, keepSaved, restore } from '../../src/store/autosave';
import { apply, bench, freshBench } from '../../src/store/bench';

const storage = vi.hoisted(() => ({ held: new Map<unknown, unknown>(), writes: 0, hold: undefined as Promise<void> | undefined, refuse: undefined as Error | undefined, deaf: undefined as Error | undefined }));

vi.mock('idb-keyval', () => ({
  get: (key: unknown) => (storage.deaf ? Promise.reject(storage.deaf) : Promise.resolve(storage.held.get(key))),
  del: async (key: unknown) => void storage.held.delete(key),
  set: async (key: unknown, value: unknown) => {
    if (storage.refuse) throw storage.refuse;
    await storage.hold;
    storage.writes += 1;
    storage.held.set(key, value);
  },
}));

const settle = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 5));
const rename = (name: string): void => apply((job) => writeField(job, 'name', name), { label: 'name' });
const keptName = (): string | undefined => {
  const held = storage.held.get('bendwright job') as { job: string } | undefined;
  const opened = held && openJob(held.job);
  return opened?.ok ? opened.job.name : undefined;
};

let stop = (): void => undefined;

beforeEach(() => {
  stop();
  storage.held.clear();
  storage.writes = 0;
  storage.hold = undefined;
  storage.refuse = undefined;
  storage.deaf = undefined;
  vi.unstubAllGlobals();
  bench.setState(freshBench(exampleJob));
});

describe('keeping the job', () => {
  it('writes nothing until something changes, then the job as it is', async () => {
    stop = keepSaved();
    await settle();
    expect(storage.writes).toBe(0);
    rename('Vent stay');
    await settle();
    expect(keptName()).toBe('Vent stay');
  });

  it('leaves out what came and went while a write was running, and writes the last', async () => {
    stop = keepSaved();
    let go = (): void => undefined;
    storage.hold = new Promise((resolve) => (go = resolve));
    for (const name of ['a', 'b', 'c', 'd']) rename(name);
    go();
    await settle();
    expect(keptName()).toBe('d');
    expect(storage.writes).toBe(2);
  });

  it('says plainly that the storage is full, and takes it back once a write succeeds', async () => {
    stop = keepSaved();
    storage.refuse = new DOMException('', 'QuotaExceededError');
    rename('Vent stay');
    await settle();
    expect(bench.getState().trouble).toBe('This browser would not keep the job: its storage is full. Save it to a file.');
    storage.refuse = undefined;
    rename('Vent stay 2');
    await settle();
    expect(bench.getState().trouble).toBeNull();
  });
});

describe('bringing the job back', () => {
  it('puts the kept job and the part in view on the bench', async () => {
    storage.held.set('bendwright job', { job: saveJob({ ...exampleJob, name: 'Kept' }), part: 'lever' });
    expect(await restore()).toBe(true);
    expect(bench.getState().job.name).toBe('Kept');
    expect(bench.getState().part).toBe('lever');
    expect(bench.getState().past).toHaveLength(0);
  });

  it('has nothing to bring back on a first visit and says nothing', async () => {
    expect(await restore()).toBe(false);
    expect(bench.getState().trouble).toBeNull();
  });

  it('puts aside what it cannot read, and says so', async () => {
    const held = { job: '{"format": "something else"}', part: 'x' };
    storage.held.set('bendwright job', held);
    expect(await restore()).toBe(false);
    expect(storage.held.get('bendwright job, unread')).toEqual(held);
    expect(bench.getState().trouble).toContain('could not be read');
    expect(bench.getState().job).toBe(exampleJob);
  });

  it('puts a job aside that it could not see, before the first change is written over it', async () => {
    const held = { job: saveJob({ ...exampleJob, name: 'Unseen' }), part: 'lever' };
    storage.held.set('bendwright job', held);
    storage.deaf = new Error('its storage does not answer');
    expect(await restore()).toBe(false);
    storage.deaf = undefined;
    stop = keepSaved();
    rename('New');
    await settle();
    expect(keptName()).toBe('New');
    expect(await jobPutAside()).toBe(held.job);
    await forgetPutAside();
    expect(await jobPutAside()).toBeUndefined();
  });
});

describe('a page left before its last change is written', () => {
  it('leaves the change in local storage, and the next visit moves it on', async () => {
    const local = new Map<string, string>();
    const listeners = new Map<string, () => void>();
    vi.stubGlobal('localStorage', { getItem: (k: string) => local.get(k) ?? null, setItem: (k: string, v: string) => local.set(k, v), removeItem: (k: string) => local.delete(k) });
    vi.stubGlobal('addEventListener', (name: string, heard: () => void) => listeners.set(name, heard));
    vi.stubGlobal('removeEventListener', (name: string) => listeners.delete(name));
    stop = keepSaved();
    storage.hold = new Promise(() => undefined);
    rename('Last words');
    await settle();
    listeners.get('pagehide')?.();
    expect(local.size).toBe(1);
    storage.hold = undefined;
    bench.setState(freshBench(exampleJob));
    expect(await restore()).toBe(true);
    expect(bench.getState().job.name).toBe('Last words');
    expect(local.size).toBe(0);
    expect(keptName()).toBe('Last words');
  });
});
