/**
 * From an edit to all views updated: what the main thread of the page spends on it, in Chromium.
 *
 * One edit is one input event on the field of a leg's length in the table, sent by the browser as typing does (the whole new
 * entry at once). Counted is every task of the page's main thread from that event until two frames later, by the browser's own
 * account (Performance.getMetrics, in time of the thread, so that other programs on the machine do not count): reading the entry, the part,
 * section, blank, table, checks and tabs, React and svg.js, style, layout, the records of painting, and the drawing calls of the
 * 3D view. Not counted: rasterising and the graphics process, which run beside it. What the same round takes without an edit is
 * measured too and taken off.
 */
import type { CDPSession, Locator, Page } from '@playwright/test';
import { saveJob } from '../src/job/saveJob';
import type { Job } from '../src/job/schema';
import { plateWithHoles, zigzag } from './sampleJobs';
import { served } from './served';

/** Aim of the project for the median, ms. */
const OFTEN = { aim: 8, edits: 50, warmUp: 10 };
/** A part of ten thousand holes must still be worked with. Fewer edits: without a graphics card painting it takes seconds beside the main thread. */
const SELDOM = { aim: 2000, edits: 10, warmUp: 2 };

interface Spent {
  readonly all: number;
  readonly script: number;
  readonly layout: number;
}

async function counters(devtools: CDPSession): Promise<Spent> {
  const { metrics } = await devtools.send('Performance.getMetrics');
  const ms = (name: string): number => 1000 * (metrics.find((metric) => metric.name === name)?.value ?? Number.NaN);
  return { all: ms('TaskDuration'), script: ms('ScriptDuration'), layout: ms('LayoutDuration') + ms('RecalcStyleDuration') };
}

const twoFrames = (page: Page): Promise<void> =>
  page.evaluate(() => new Promise<void>((done) => { requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done, 0))); }));

/** One round with or without an edit in it. */
async function round(page: Page, devtools: CDPSession, edit: () => Promise<void>): Promise<Spent> {
  await twoFrames(page);
  const before = await counters(devtools);
  await edit();
  await twoFrames(page);
  const after = await counters(devtools);
  return { all: after.all - before.all, script: after.script - before.script, layout: after.layout - before.layout };
}

function share(values: readonly number[], part: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * part))] ?? Number.NaN;
}

interface Edited {
  readonly what: string;
  readonly field: Locator;
  /** The figure in the section that shows the field. */
  readonly figure: Locator;
  /** Two entries in turn, and what the figure shows for each. */
  readonly entries: readonly [string, string];
  readonly shows: readonly [string, string];
  readonly aim: number;
  readonly edits: number;
  readonly warmUp: number;
}

/** @returns ms at the median, less the empty round */
async function measure(page: Page, devtools: CDPSession, { what, field, figure, entries, shows, aim, edits, warmUp }: Edited): Promise<number> {
  await field.click();
  const spent: Spent[] = [];
  for (let i = 0; i < warmUp + edits; i++) {
    const which = i % 2 === 0 ? 1 : 0;
    await field.press('ControlOrMeta+a');
    const took = await round(page, devtools, () => page.keyboard.insertText(entries[which]));
    if (i >= warmUp) spent.push(took);
    // An edit that did not arrive on the drawing would measure nothing.
    const text = await figure.textContent();
    if (!text?.includes(shows[which])) throw new Error(`After ${entries[which]} the section shows ${text}.`);
  }
  const empty: Spent[] = [];
  for (let i = 0; i < edits; i++) empty.push(await round(page, devtools, async () => undefined));
  const off = share(empty.map(({ all }) => all), 0.5);
  const at = (part: number): number => share(spent.map(({ all }) => all), part) - off;
  const of = (key: 'script' | 'layout'): string => share(spent.map((each) => each[key]), 0.5).toFixed(1);
  const median = at(0.5);
  console.log(
    `${what}: median ${median.toFixed(1)} ms, p90 ${at(0.9).toFixed(1)} ms (aim ${aim} ms at the median: ${median <= aim ? 'met' : `not met, ${(median / aim).toFixed(1)} times`}); ` +
      `of it script ${of('script')} ms, style and layout ${of('layout')} ms; ${edits} edits, ${warmUp} before them to warm up, an empty round of ${off.toFixed(2)} ms taken off`,
  );
  return median;
}

/** Puts a job on the bench through the Files place and goes back to its part. */
async function open(page: Page, name: string, job: Job): Promise<void> {
  await page.getByRole('button', { name: 'Files', exact: true }).click();
  await page.getByLabel(/^Open a job/).setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(saveJob(job)) });
  await page.getByRole('paragraph').filter({ hasText: `Opened ${name}` }).waitFor();
  await page.getByRole('button', { name: 'Parts', exact: true }).click();
}

export async function benchBrowser(): Promise<void> {
  await served(async ({ page, address }) => {
    await page.goto(address);
    const section = page.getByRole('group', { name: /^Section:/ });
    await page.getByRole('img', { name: /^Front strap bent/ }).waitFor();
    const devtools = await page.context().newCDPSession(page);
    await devtools.send('Performance.enable', { timeDomain: 'threadTicks' });
    const figure = (of: string): Locator => section.getByRole('button', { name: new RegExp(`: ${of}, change$`) });

    const typing = (field: string): Locator => page.getByRole('textbox', { name: field, exact: true });

    const strap = await measure(page, devtools, {
      what: 'Front strap, 3 bends, 8 holes',
      field: typing('Peg leg, length'),
      figure: figure('peg leg length'),
      entries: ['6*pitch + 22', '6*pitch + 22.5'],
      shows: ['112', '112.5'],
      ...OFTEN,
    });

    await open(page, 'zigzag.json', zigzag(12, 300));
    await page.getByRole('img', { name: /12 bends$/ }).waitFor();
    const typed = Number(await typing('leg-6, length').inputValue());
    const turns = [String(typed), String(typed + 0.5)] as const;
    const large = await measure(page, devtools, { what: 'Zigzag, 12 bends, 300 holes', field: typing('leg-6, length'), figure: figure('leg-6 length'), entries: turns, shows: turns, ...OFTEN });

    await open(page, 'plate.json', plateWithHoles(10_000));
    const plate = ['520', '520.5'] as const;
    const largest = await measure(page, devtools, { what: 'Flat plate, 10 000 holes', field: typing('plate, length'), figure: figure('plate length'), entries: plate, shows: plate, ...SELDOM });

    console.log(`12 bends and 300 holes cost ${(large / strap).toFixed(1)} times the strap of 3 bends and 8 holes; 10 000 holes cost ${(largest / strap).toFixed(1)} times.`);
  });
}
