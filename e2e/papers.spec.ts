import { readFile } from 'node:fs/promises';
import AxeBuilder from '@axe-core/playwright';
import type { Locator, Page } from '@playwright/test';
import { boundsOf, readFonts, readPaths, readSizes, readText, type ReadPath } from '../tests/export/pdf/poppler';
import { expect, test, type Bench } from './bench';

const NAME = 'Łącznik ½ Ωμέγα Жёлтый';

/** The drawn page. */
const paper = (page: Page): Locator => page.getByRole('img', { name: /^(Template|Wrap-round|Shop sheet), / });
const kind = (page: Page, name: string): Locator => page.getByRole('radio', { name: new RegExp(`^${name}`) });
const caption = (page: Page): Locator => page.getByRole('region', { name: 'Page', exact: true }).getByRole('paragraph').first();

async function openPapers(bench: Bench): Promise<void> {
  await bench.open();
  await bench.goTo('Papers');
  await expect(paper(bench.page)).toBeVisible();
}

async function savePdf(bench: Bench): Promise<{ readonly name: string; readonly bytes: Uint8Array }> {
  const [download] = await Promise.all([bench.page.waitForEvent('download'), bench.button(/^PDF/).click()]);
  return { name: download.suggestedFilename(), bytes: new Uint8Array(await readFile(await download.path())) };
}

/** What the browser makes of the page when it prints, as a PDF of its own. */
const printView = async (page: Page): Promise<Uint8Array> => new Uint8Array(await page.pdf({ preferCSSPageSize: true }));

const long = (path: ReadPath): readonly [number, number] => {
  const b = boundsOf(path.pieces.slice(0, 1));
  return [b.maxX - b.minX, b.maxY - b.minY];
};

/** Lengths of the check bars of a page, mm: a bar is a line with a tick at both ends. */
function bars(pdf: Uint8Array, page = 1): { readonly across: readonly number[]; readonly up: readonly number[] } {
  const found = readPaths(pdf, page).filter((path) => path.pieces.length === 3 && !path.closed).map(long);
  const sorted = (lengths: readonly number[]): number[] => lengths.filter((length) => length > 50).toSorted((a, b) => a - b);
  return { across: sorted(found.map(([width]) => width)), up: sorted(found.map(([, height]) => height)) };
}

const TO_A_HUNDREDTH = { mm: expect.closeTo(100, 2), inch: expect.closeTo(101.6, 2) };
const TRUE_BARS = { across: [TO_A_HUNDREDTH.mm, TO_A_HUNDREDTH.inch], up: [TO_A_HUNDREDTH.mm, TO_A_HUNDREDTH.inch] };

/** Length of the drawn 100 mm bar across, in mm of paper. */
const drawnBar = (page: Page): Promise<number> =>
  paper(page).evaluate((drawn) => Math.max(...[...drawn.querySelectorAll<SVGPathElement>('.check-bar')].map((bar) => bar.getBBox().width).filter((width) => width < 103.5 || width > 105.5)));

test.describe('the page on screen', () => {
  test('is the template of the part in view, and grows with the copies', async ({ bench, page }) => {
    await openPapers(bench);
    await expect(caption(page)).toHaveText('1 page, A4 upright');
    await expect(paper(page).locator('.part-name', { hasText: 'Front strap' })).toHaveCount(1);
    await bench.type('Front strap, copies', '3');
    await expect(paper(page).getByText(/^Front strap/)).toHaveCount(3);
    await bench.type('Front strap, copies', '24');
    await expect(caption(page)).toHaveText(/^Page 1 of \d+, A4/);
    await bench.button('Next page').click();
    await expect(caption(page)).toHaveText(/^Page 2 of \d+, A4/);
    await expect(page.getByRole('button', { name: /^Print / })).toContainText(/^Print \d+ sheets of A4/);
    await bench.type('Front strap, copies', '0');
    await expect(page.getByText('Front strap: the number of copies must be a whole number from 1.').first()).toBeVisible();
    await page.getByRole('checkbox', { name: '2 Front strap' }).uncheck();
    await expect(page.getByText('There is nothing to print. Choose at least one part.').first()).toBeVisible();
    await page.getByRole('checkbox', { name: '4 Lever' }).check();
    await expect(paper(page).getByText(/^Lever/)).toHaveCount(1);
  });

  test('comes closer, goes further, stands at true size', async ({ bench, page }) => {
    await openPapers(bench);
    const width = async (): Promise<number> => (await paper(page).boundingBox())?.width ?? 0;
    await bench.button('True size').click();
    // 210 mm at 96 px to the inch.
    await expect.poll(width).toBeCloseTo((210 * 96) / 25.4, 0);
    await bench.button('Closer').click();
    await expect.poll(width).toBeCloseTo((1.25 * 210 * 96) / 25.4, 0);
    await bench.button('Fit').click();
    const stage = await page.getByRole('region', { name: /^The page, full size/ }).boundingBox();
    const whole = await paper(page).boundingBox();
    expect(whole?.height).toBeLessThanOrEqual(stage?.height ?? 0);
    await page.getByRole('region', { name: /^The page, full size/ }).press('+');
    await expect.poll(width).toBeCloseTo((whole?.width ?? 0) * 1.25, 0);
  });

  test('follows the part, the paper and the face', async ({ bench, page }) => {
    await openPapers(bench);
    await kind(page, 'Shop sheet').check({ force: true });
    await expect(paper(page).getByText('26', { exact: true }).first()).toBeAttached();
    await bench.goTo('Parts');
    await bench.enter('Foot, length', '31');
    await bench.goTo('Papers');
    await expect(paper(page).getByText('31', { exact: true }).first()).toBeAttached();
    await kind(page, 'Template').check({ force: true });
    await bench.choice('Size of the paper').selectOption('A3');
    await expect(caption(page)).toHaveText('1 page, A3 upright');
    await bench.choice('Which way the paper lies').selectOption('lying');
    await expect(caption(page)).toHaveText('1 page, A3 lying');
    await bench.choice('Face').selectOption('other');
    await expect(paper(page).getByText(/other face up/).first()).toBeAttached();
    await kind(page, 'Wrap-round').check({ force: true });
    await expect(paper(page).getByText(/wraps round the bent part, other face/).first()).toBeAttached();
  });

  test('of a shop sheet bears names in other scripts, and the job card leads to it', async ({ bench, page }) => {
    await bench.open();
    await bench.enter('Name of the part', NAME);
    await bench.cutIt.getByRole('button', { name: /^Shop sheet/ }).click();
    await expect(paper(page).getByText(NAME)).toBeAttached();
    const { name, bytes } = await savePdf(bench);
    expect(name).toBe(`${NAME} - Brass, half hard, 1.6 sheet - 12 off - shop sheet.pdf`);
    expect(readText(bytes)).toContain(NAME);
    expect(readFonts(bytes).every((font) => font.embedded && font.unicode)).toBe(true);
    await bench.goTo('Parts');
    await bench.tab('4 Lever').click();
    await bench.cutIt.getByRole('button', { name: /^Paper template/ }).click();
    await expect(paper(page).getByText(/^Lever/)).toHaveCount(1);
  });
});

test.describe('full size', () => {
  test('the PDF has bars of 100 mm and 4 in, and every hole where the blank has it', async ({ bench }) => {
    await bench.open();
    const [holes, { length, width }] = [await bench.runningDimensions(), await bench.overall()];
    await bench.goTo('Papers');
    await expect(paper(bench.page)).toBeVisible();
    const { bytes } = await savePdf(bench);
    expect(bars(bytes)).toEqual(TRUE_BARS);
    const closed = readPaths(bytes, 1).filter((path) => path.closed && Math.abs(path.width - 0.2) < 0.01).map((path) => boundsOf(path.pieces));
    const size = closed.map((b) => [b.maxX - b.minX, b.maxY - b.minY].toSorted((a, b) => b - a));
    const outline = closed[size.findIndex(([most]) => Math.abs((most ?? 0) - length) <= 0.01)];
    if (!outline) throw new Error('No outline of that length is on the page.');
    const upright = outline.maxY - outline.minY > outline.maxX - outline.minX;
    expect(upright ? outline.maxX - outline.minX : outline.maxY - outline.minY).toBeCloseTo(width, 2);
    const along = closed.filter((b) => b !== outline && b.maxX < outline.maxX && b.minX > outline.minX && b.maxY < outline.maxY && b.minY > outline.minY).map((b) => (upright ? (b.minY + b.maxY) / 2 - outline.minY : (b.minX + b.maxX) / 2 - outline.minX));
    expect(along.toSorted((a, b) => a - b)).toEqual(holes.map((at) => expect.closeTo(at, 2)));
  });

  for (const size of ['A4', 'A3', 'Letter', 'Legal'] as const) {
    test(`what the browser itself prints on ${size} is true, page by page, with nothing of the screen`, async ({ bench, page }) => {
      await openPapers(bench);
      await bench.choice('Size of the paper').selectOption(size);
      await page.getByRole('checkbox', { name: '1 Back plate' }).check();
      await bench.type('Back plate, copies', '9');
      await expect(caption(page)).toHaveText(new RegExp(`^Page 1 of \\d+, ${size}`));
      await expect(page.getByText(/being laid out/)).toHaveCount(0);
      const pages = Number(/of (\d+)/.exec((await caption(page).textContent()) ?? '')?.[1]);
      const pdf = await printView(page);
      expect(readSizes(pdf)).toHaveLength(pages);
      for (let n = 1; n <= pages; n++) expect(bars(pdf, n)).toEqual(TRUE_BARS);
      const text = readText(pdf);
      expect(text).toContain('Print at 100 %, no fit to page.');
      for (const word of ['Bendwright', 'What to print', 'Undo']) expect(text).not.toContain(word);
    });
  }
});

test.describe('a printer that is out', () => {
  test('is corrected by what the bars measured, is remembered, and can be let go of', async ({ bench, page }) => {
    await openPapers(bench);
    expect(await drawnBar(page)).toBeCloseTo(101.6, 2);
    await bench.type('The 100 mm bar across the page measured, mm', '98.6');
    await expect.poll(() => drawnBar(page)).toBeCloseTo(101.6 / 0.986, 1);
    await expect(page.getByText('Printed at 101.42 % across and 100.00 % up, to come out true.')).toBeVisible();
    // 100 / 0.986 across; a printer that makes 98.6 of 100 prints that as 100.
    const { bytes } = await savePdf(bench);
    expect(bars(bytes).across.map((length) => length * 0.986)).toEqual([TO_A_HUNDREDTH.mm, TO_A_HUNDREDTH.inch]);
    expect(bars(bytes).up).toEqual(TRUE_BARS.up);
    // The measure belonged to the print before; its correction stays in force, and is there on the next visit.
    await expect(bench.field('The 100 mm bar across the page measured, mm')).toHaveValue('');
    await bench.choice('Size of the paper').selectOption('Letter');
    await page.reload();
    await bench.goTo('Papers');
    await expect(bench.choice('Size of the paper')).toHaveValue('Letter');
    await expect(page.getByText(/^Printed at 101\.42 % across/)).toBeVisible();
    await bench.button('No correction').click();
    await expect(page.getByText('No correction: printed as drawn.')).toBeVisible();
    await expect.poll(() => drawnBar(page)).toBeCloseTo(101.6, 2);
  });

  test('is not stretched for a figure that cannot be', async ({ bench, page }) => {
    await openPapers(bench);
    for (const [bar, figure, says] of [
      ['The 100 mm bar up the page measured, mm', '80', /^The bar up is 100 mm long and was given as 80 mm\. It must measure 95/],
      ['The 4 in bar across the page measured, in', '40', /^The bar across is 4 in long and was given as 40 in\./],
    ] as const) {
      const field = await bench.type(bar, figure);
      await expect(page.getByText(says)).toBeVisible();
      await expect(field).toHaveAttribute('aria-invalid', 'true');
      expect(await drawnBar(page)).toBeCloseTo(101.6, 2);
      await bench.type(bar, '');
      await expect(page.getByText(says)).toHaveCount(0);
    }
  });
});

test.describe('to the printer', () => {
  /** Counts what goes to the printer and keeps the window of the system away. */
  const countPrints = (page: Page): Promise<unknown> =>
    page.addInitScript(() => {
      Object.assign(globalThis, { prints: 0, print: () => Object.assign(globalThis, { prints: Number(Reflect.get(globalThis, 'prints')) + 1 }) });
    });
  const prints = (page: Page): Promise<unknown> => page.evaluate(() => Reflect.get(globalThis, 'prints'));

  test('Ctrl P prints the template of the part in view from anywhere, in Papers what is in view', async ({ bench, page }) => {
    await countPrints(page);
    await bench.open();
    await bench.tab('4 Lever').click();
    await page.keyboard.press('ControlOrMeta+p');
    await expect(paper(page).getByText(/^Lever/)).toHaveCount(1);
    await expect.poll(() => prints(page)).toBe(1);
    await kind(page, 'Shop sheet').check({ force: true });
    await expect(page.getByRole('img', { name: /^Shop sheet, shop sheet lever/ })).toBeVisible();
    await page.keyboard.press('ControlOrMeta+p');
    await expect.poll(() => prints(page)).toBe(2);
    await expect(kind(page, 'Shop sheet')).toBeChecked();
    await bench.button(/^Print/).click();
    await expect.poll(() => prints(page)).toBe(3);
  });

  test('a part in error goes neither to the printer nor into a PDF, and says why', async ({ bench, page }) => {
    await countPrints(page);
    await bench.open();
    await bench.enter('Lip, length', '1');
    await bench.goTo('Papers');
    const why = /^Not printed\. Leg D.* too short for its bend/;
    await expect(page.getByText(why)).toBeVisible();
    await expect(paper(page)).toHaveCount(0);
    await bench.button(/^Print/).click();
    await expect(page.getByText('Nothing was printed.', { exact: true })).toBeVisible();
    await bench.button(/^PDF/).click();
    await expect(page.getByText('No PDF was made.', { exact: true })).toBeVisible();
    expect(await prints(page)).toBe(0);
    // The others go out, and it is told which did not.
    await page.getByRole('checkbox', { name: '4 Lever' }).check();
    await expect(paper(page).getByText(/^Lever/)).toHaveCount(1);
    const { name, bytes } = await savePdf(bench);
    expect(name).toMatch(/^Lever - .* - template\.pdf$/);
    expect(readText(bytes)).not.toContain('Front strap');
    await expect(page.getByRole('paragraph').filter({ hasText: /^Front strap is not printed\./ })).toBeVisible();
  });
});

for (const [screen, width, height] of [['wide', 1440, 900], ['tablet', 1024, 768], ['phone', 390, 844]] as const) {
  test.describe(`papers, ${screen}`, () => {
    test.use({ viewport: { width, height } });

    test('no finding of axe by day or in dim light with pages drawn and a bar refused', async ({ bench, page }) => {
      test.slow();
      await openPapers(bench);
      await bench.type('The 100 mm bar up the page measured, mm', '80');
      await expect(page.getByText(/^The bar up is 100 mm long/)).toBeVisible();
      for (const each of ['Template', 'Shop sheet']) {
        await kind(page, each).check({ force: true });
        await expect(page.getByRole('img', { name: new RegExp(`^${each}, `) })).toBeVisible();
        for (const colorScheme of ['light', 'dark'] as const) {
          await page.emulateMedia({ colorScheme });
          await expect(bench.button(colorScheme === 'dark' ? 'Day light' : 'Dim light')).toBeVisible();
          await page.evaluate(() => Promise.all(document.getAnimations().map((animation) => animation.finished.catch(() => undefined))));
          const { violations } = await new AxeBuilder({ page }).analyze();
          expect.soft(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(' | ')}`), `${each}, ${colorScheme}`).toEqual([]);
          await bench.expectNoSidewaysScroll();
        }
      }
    });
  });
}
