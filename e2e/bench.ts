/**
 * The bench as a maker meets it: everything is found by its role and its name and worked with pointer and keys. Each test has a
 * browser of its own with nothing kept in it. A warning, an error or a failed request in the console fails any test.
 */
import { readFile } from 'node:fs/promises';
import { expect, test as base, type Download, type Locator, type Page } from '@playwright/test';

export interface Spot {
  readonly x: number;
  readonly y: number;
}

export interface SavedFile {
  readonly name: string;
  readonly text: string;
}

type FigureName = 'Section' | 'Blank';

/** What the browser has to say about the driver of its drawing board, not about the page. */
const OF_THE_DRIVER = /GL Driver Message|GPU stall due to ReadPixels/;

/** Middle of an element on the screen, px. */
export async function middleOf(element: Locator): Promise<Spot> {
  const box = await boxOf(element);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

export async function boxOf(element: Locator): Promise<{ x: number; y: number; width: number; height: number }> {
  const box = await element.boundingBox();
  if (!box) throw new Error('The element is not on the screen.');
  return box;
}

export async function readDownload(download: Download): Promise<SavedFile> {
  return { name: download.suggestedFilename(), text: await readFile(await download.path(), 'utf8') };
}

export class Bench {
  readonly section: Locator;
  readonly blank: Locator;
  readonly checks: Locator;
  readonly cutIt: Locator;

  constructor(readonly page: Page) {
    this.section = page.getByRole('group', { name: /^Section:/ });
    this.blank = page.getByRole('group', { name: /^Blank:/ });
    this.checks = page.getByRole('region', { name: 'Checks', exact: true });
    this.cutIt = page.getByRole('region', { name: 'Cut it, or print it', exact: true });
  }

  /** Opens the app and waits until the drawings stand. */
  async open(): Promise<void> {
    await this.page.goto('/');
    await expect(this.section.locator('.outline').first()).toBeVisible();
  }

  // --- finding

  button(name: string | RegExp): Locator {
    return this.page.getByRole('button', typeof name === 'string' ? { name, exact: true } : { name });
  }

  field(name: string): Locator {
    return this.page.getByRole('textbox', { name, exact: true });
  }

  choice(name: string): Locator {
    return this.page.getByRole('combobox', { name, exact: true });
  }

  tab(name: string): Locator {
    return this.page.getByRole('navigation', { name: 'Parts of the job' }).getByRole('button', { name });
  }

  /** The row of the table of legs that has this field in it. */
  row(leg: string): Locator {
    return this.page.getByRole('row').filter({ has: this.field(`${leg}, length`) });
  }

  /** Names of the legs, in the order of the table. */
  async legs(): Promise<string[]> {
    const names = this.page.getByRole('textbox', { name: /^Name of leg [A-Z]+$/ });
    return Promise.all((await names.all()).map((name) => name.inputValue()));
  }

  figure(name: FigureName): Locator {
    return name === 'Section' ? this.section : this.blank;
  }

  /** A figure of a drawing that can be changed, such as `peg leg length`. */
  dimension(drawing: FigureName, of: string): Locator {
    return this.figure(drawing).getByRole('button', { name: new RegExp(`: ${of}, change$`, 'i') });
  }

  /** What is read out by a drawing that is worked by keys. */
  spoken(drawing: FigureName): Locator {
    return this.figure(drawing).locator('[aria-live=polite]');
  }

  // --- reading what stands on the screen

  /** Running dimensions under the blank that belong to holes, in the order drawn. */
  async runningDimensions(): Promise<number[]> {
    return (await this.blank.locator('.running-text text').allTextContents()).map(Number);
  }

  /** Overall length and width that the caption of the blank states. */
  async overall(): Promise<{ length: number; width: number }> {
    const words = await this.page.getByRole('region', { name: 'Blank', exact: true }).getByRole('paragraph').textContent();
    const found = /^\s*([\d.]+) × ([\d.]+),/.exec(words ?? '');
    if (!found) throw new Error(`The caption of the blank states no size: ${words}`);
    return { length: Number(found[1]), width: Number(found[2]) };
  }

  /** px to a mm on the blank, from the drawn outline and the length that the caption states. */
  async pxPerMm(): Promise<number> {
    const box = await boxOf(this.blank.locator('.outline').first());
    return box.width / (await this.overall()).length;
  }

  /** The figures of the job that is on the bench, as its file has them. */
  async savedJob(): Promise<string> {
    return (await this.download(this.cutIt.getByRole('button', { name: /^Save the job/ }))).text;
  }

  // --- doing

  /** Types over what stands in a field, key by key, and leaves it open. */
  async type(name: string | Locator, text: string): Promise<Locator> {
    const field = typeof name === 'string' ? this.field(name) : name;
    await field.click();
    // A field that gets the focus has all of its text marked.
    await field.press('ControlOrMeta+a');
    await (text === '' ? field.press('Delete') : field.pressSequentially(text));
    return field;
  }

  /** Puts a text in at once, as pasting does, and leaves the field open. */
  async paste(name: string, text: string): Promise<Locator> {
    const field = this.field(name);
    await field.click();
    await field.press('ControlOrMeta+a');
    await (text === '' ? field.press('Delete') : this.page.keyboard.insertText(text));
    return field;
  }

  /** Types and keeps it. */
  async enter(name: string | Locator, text: string): Promise<void> {
    await (await this.type(name, text)).press('Enter');
  }

  async goTo(place: 'Parts' | 'Compare stock' | 'Stock and sizes' | 'Papers' | 'Files'): Promise<void> {
    await this.page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: place, exact: true }).click();
  }

  async undo(): Promise<void> {
    await this.page.keyboard.press('ControlOrMeta+z');
  }

  async redo(): Promise<void> {
    await this.page.keyboard.press('ControlOrMeta+Shift+z');
  }

  /** Presses something that hands over a file. */
  async download(button: Locator): Promise<SavedFile> {
    const [download] = await Promise.all([this.page.waitForEvent('download'), button.click()]);
    return readDownload(download);
  }

  async dxf(): Promise<SavedFile> {
    return this.download(this.cutIt.getByRole('button', { name: /^DXF for the bureau/ }));
  }

  /** Presses where no hand or eye is in the way, to let go of what is chosen. */
  async letGo(): Promise<void> {
    await this.section.focus();
    await this.section.press('Escape');
  }

  /** Takes hold at a spot and moves in steps, px; lets go unless told to hold. */
  async drag(from: Spot, by: Spot, options: { hold?: boolean; steps?: number } = {}): Promise<void> {
    const { mouse } = this.page;
    await mouse.move(from.x, from.y);
    await mouse.down();
    await mouse.move(from.x + by.x, from.y + by.y, { steps: options.steps ?? 8 });
    if (!options.hold) await mouse.up();
  }

  /** Chooses a job file in the Files place. */
  async openJobFile(name: string, text: string | Buffer): Promise<void> {
    await this.goTo('Files');
    const buffer = typeof text === 'string' ? Buffer.from(text) : text;
    await this.page.getByLabel(/^Open a job/).setInputFiles({ name, mimeType: 'application/json', buffer });
  }

  /** The page must never slide sideways. */
  async expectNoSidewaysScroll(): Promise<void> {
    const over = await this.page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    expect(over, 'px by which the page is wider than the screen').toBeLessThanOrEqual(0);
  }
}

export const test = base.extend<{ bench: Bench; quietConsole: void }>({
  quietConsole: [
    async ({ page }, use) => {
      const said: string[] = [];
      page.on('console', (message) => {
        if (['warning', 'error'].includes(message.type()) && !OF_THE_DRIVER.test(message.text())) said.push(`${message.type()}: ${message.text()}`);
      });
      page.on('pageerror', (error) => said.push(`page error: ${error.message}`));
      // A page that is left breaks its own requests off; that is no fault.
      page.on('requestfailed', (request) => {
        if (request.failure()?.errorText !== 'net::ERR_ABORTED') said.push(`request failed: ${request.url()}`);
      });
      page.on('response', (response) => {
        if (response.status() >= 400) said.push(`${response.status()}: ${response.url()}`);
      });
      await use();
      expect(said, 'what the console said').toEqual([]);
    },
    { auto: true },
  ],
  bench: async ({ page }, use) => use(new Bench(page)),
});

export { expect };
