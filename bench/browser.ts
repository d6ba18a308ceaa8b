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
import { zigzag } from './sampleJobs';
import { served } from './served';

const EDITS = 50;
const WARM_UP = 10;
/** Aim of the project for the median. */
const AIM_MS = 8;

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

/** @returns ms at the median, less the empty round */
async function measure(page: Page, devtools: CDPSession, what: string, field: Locator, entries: readonly [string, string], shows: readonly [string, string], figure: Locator): Promise<number> {
  await field.click();
  const spent: Spent[] = [];
  for (let i = 0; i < WARM_UP + EDITS; i++) {
    const which = i % 2 === 0 ? 1 : 0;
    await field.press('ControlOrMeta+a');
    const took = await round(page, devtools, () => page.keyboard.insertText(entries[which]));
    if (i >= WARM_UP) spent.push(took);
    // An edit that did not arrive on the drawing would measure nothing.
    const text = await figure.textContent();
    if (!text?.includes(shows[which])) throw new Error(`After ${entries[which]} the section shows ${text}.`);
  }
  const empty: Spent[] = [];
  for (let i = 0; i < EDITS; i++) empty.push(await round(page, devtools, async () => undefined));
  const off = share(empty.map(({ all }) => all), 0.5);
  const at = (part: number): number => share(spent.map(({ all }) => all), part) - off;
  const of = (key: 'script' | 'layout'): string => share(spent.map((each) => each[key]), 0.5).toFixed(1);
  const median = at(0.5);
  console.log(
    `${what}: median ${median.toFixed(1)} ms, p90 ${at(0.9).toFixed(1)} ms (aim ${AIM_MS} ms at the median: ${median <= AIM_MS ? 'met' : `not met, ${(median / AIM_MS).toFixed(1)} times`}); ` +
      `of it script ${of('script')} ms, style and layout ${of('layout')} ms; ${EDITS} edits, ${WARM_UP} before them to warm up, an empty round of ${off.toFixed(2)} ms taken off`,
  );
  return median;
}

export async function benchBrowser(): Promise<void> {
  await served(async ({ page, address }) => {
    await page.goto(address);
    const section = page.getByRole('group', { name: /^Section:/ });
    await page.getByRole('img', { name: /^Front strap bent/ }).waitFor();
    const devtools = await page.context().newCDPSession(page);
    await devtools.send('Performance.enable', { timeDomain: 'threadTicks' });
    const figure = (of: string): Locator => section.getByRole('button', { name: new RegExp(`: ${of}, change$`) });

    const strap = await measure(page, devtools, 'Front strap, 3 bends, 8 holes', page.getByRole('textbox', { name: 'Peg leg, length', exact: true }), ['6*pitch + 22', '6*pitch + 22.5'], ['112', '112.5'], figure('peg leg length'));

    await page.getByRole('button', { name: 'Files', exact: true }).click();
    await page.getByLabel(/^Open a job/).setInputFiles({ name: 'zigzag.json', mimeType: 'application/json', buffer: Buffer.from(saveJob(zigzag(12, 300))) });
    await page.getByRole('paragraph').filter({ hasText: /^Opened zigzag\.json/ }).waitFor();
    await page.getByRole('button', { name: 'Parts', exact: true }).click();
    await page.getByRole('img', { name: /12 bends$/ }).waitFor();
    const middle = page.getByRole('textbox', { name: 'leg-6, length', exact: true });
    const typed = Number(await middle.inputValue());
    const large = await measure(page, devtools, 'Zigzag, 12 bends, 300 holes', middle, [String(typed), String(typed + 0.5)], [String(typed), String(typed + 0.5)], figure('leg-6 length'));

    console.log(`12 bends and 300 holes cost ${(large / strap).toFixed(1)} times the strap of 3 bends and 8 holes.`);
  });
}
