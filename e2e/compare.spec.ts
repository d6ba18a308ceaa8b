import { execFileSync } from 'node:child_process';
import AxeBuilder from '@axe-core/playwright';
import type { Locator, Page } from '@playwright/test';
import { expect, test, type Bench } from './bench';

/**
 * An angle worked by hand in two thicknesses. K 0.4, inside radius = thickness, 90°: allowance π/2 × 1.4 t, outside setback 2 t.
 *   t 1.6: allowance 3.5186, straights 40 − 3.2 = 36.80 and 30 − 3.2 = 26.80, developed 67.12, bend line 36.8 + 1.7593 = 38.56.
 *   t 1.0: allowance 2.1991, straights 38.00 and 28.00, developed 68.20, bend line 38 + 1.0996 = 39.10.
 * Hole 20 from the outside of leg A along leg B: on the blank at 36.8 + 3.5186 + 16.8 = 57.12, resp. 38 + 2.1991 + 18 = 58.20; bent, 18.4, resp.
 * 19.0 above the marked face of leg A, so 0.60 off its mate. Pegs 6, 9 and 12 from there on.
 */
const leg = (id: string, name: string, length: string, more: object = {}) => ({
  id, name, length, startBasis: 'outside', endBasis: 'outside', startWidth: '16', endWidth: '16', startShape: { kind: 'square' }, endShape: { kind: 'square' }, cutouts: [], ...more,
});
const hole = (id: string, name: string, at: string, pattern: object = { kind: 'single' }) => ({
  id, name, shape: { kind: 'round', diameter: '2' }, along: { from: 'start', basis: 'outside', distance: at }, across: { from: 'centre', distance: '0' }, pattern,
});
const stock = (id: string, name: string, thickness: string) => ({ id, name, metal: 'brass', thickness, radius: 'thickness', density: '8500', rule: { kind: 'fixedK', k: '0.4' } });
const jobWith = (lengthOfB: string) => JSON.stringify({
  format: 'bendwright job',
  version: 1,
  name: 'Shelf of the greenhouse',
  units: { plain: 'mm', show: 'mm', denominator: 64 },
  scale: '1',
  step: { length: '0.5', angle: '5' },
  sizes: [],
  stocks: [stock('thick', 'Brass 1.6', '1.6'), stock('thin', 'Brass 1.0', '1')],
  parts: [{
    id: 'angle', name: 'Angle', stock: 'thick', quantity: '2',
    legs: [
      leg('a', 'Wall side', '40'),
      leg('b', 'Shelf side', lengthOfB, {
        bend: { parent: 'a', edge: 'end', angle: '90', way: 'up', radius: 'radius' },
        cutouts: lengthOfB === '30' ? [hole('h', 'Hole', '20'), hole('p', 'Peg', '8', { kind: 'row', direction: 'along', count: '3', pitch: '3' })] : [],
      }),
    ],
  }],
  dxf: { unit: 'mm', bendLines: 'layer', layers: { outline: 'OUTLINE', cutouts: 'CUTOUTS', bends: 'BENDS' } },
});

async function openAngle(bench: Bench, lengthOfB = '30'): Promise<void> {
  await bench.open();
  await bench.openJobFile('angle.json', jobWith(lengthOfB));
  await expect(bench.page.getByText('Shelf of the greenhouse')).toBeAttached();
  await bench.goTo('Compare stock');
  await expect(tableOf(bench.page)).toBeVisible();
}

const tableOf = (page: Page): Locator => page.getByRole('region', { name: 'What differs, side by side' });
/** The row that begins so; its cells as text, without the letter. */
const row = (page: Page, called: string): Locator => tableOf(page).getByRole('row').filter({ has: page.getByRole('button', { name: called, exact: true }) });
const figures = (page: Page, called: string): Promise<string[]> => row(page, called).locator('td.num').allTextContents();
const overlay = (page: Page, of: 'Sections' | 'Blanks'): Locator => page.getByRole('img', { name: new RegExp(`^${of} of `) });
const letter = (page: Page, which: string): Locator => overlay(page, 'Blanks').locator('.difference-letter').filter({ hasText: new RegExp(`(^|, )${which}($|, )`) });

test.describe('1.0 or 1.6', () => {
  test('the hand-worked figures of both stand side by side, with their differences', async ({ bench, page }) => {
    await openAngle(bench);
    expect(await figures(page, 'Developed length')).toEqual(['67.12', '68.20', '+1.08']);
    expect(await figures(page, 'Leg A, straight')).toEqual(['36.80', '38.00', '+1.20']);
    expect(await figures(page, 'Bend 1, centre line')).toEqual(['38.56', '39.10', '+0.54']);
    expect(await figures(page, 'Bend 1, allowance')).toEqual(['3.52', '2.20', '−1.32']);
    expect(await figures(page, 'Hole, along the blank')).toEqual(['57.12', '58.20', '+1.08']);
    expect(await figures(page, 'Hole, off its mate')).toEqual(['', '', '0.60']);
    // 16 wide less the area of four holes of 2: × t × 8.5e-3. 1061.33 mm² × 1.6 and 1078.62 × 1.0.
    expect(await figures(page, 'Mass of one')).toEqual(['14.43 g', '9.17 g', '−5.27 g']);
  });

  test('a pattern is one row until it is opened', async ({ bench, page }) => {
    await openAngle(bench);
    expect(await figures(page, 'Peg 1 to 3, along the blank')).toEqual(['45.12 to 51.12', '46.20 to 52.20', '+1.08']);
    await expect(row(page, 'Peg 2, along the blank')).toHaveCount(0);
    await page.getByRole('button', { name: 'Peg 1 to 3, along the blank: each hole' }).click();
    expect(await figures(page, 'Peg 2, along the blank')).toEqual(['48.12', '49.20', '+1.08']);
  });

  test('what is the same in all stands apart, and can be seen', async ({ bench, page }) => {
    await openAngle(bench);
    await expect(row(page, 'Blank, width')).toHaveCount(0);
    await page.getByRole('button', { name: /^The same in all/ }).click();
    expect(await figures(page, 'Blank, width')).toEqual(['16.00', '16.00', 'same']);
  });

  test('inside sizes kept give other figures, for all legs or for one', async ({ bench, page }) => {
    await openAngle(bench);
    await bench.choice('All legs, keep').selectOption('inside sizes');
    // 40 and 30 outside are 38.4 and 28.4 inside at 1.6; at 1.0 the straights are 37.4 and 27.4, developed 64.8 + 2.1991.
    expect(await figures(page, 'Developed length')).toEqual(['67.12', '67.00', '−0.12']);
    expect(await figures(page, 'Leg B, straight')).toEqual(['26.80', '27.40', '+0.60']);
    await expect(row(page, 'Hole, off its mate')).toHaveCount(0);
    await bench.choice('Leg B, keep').selectOption('as typed');
    await expect(bench.choice('All legs, keep')).toHaveValue('mixed');
    expect(await figures(page, 'Leg B, straight')).toEqual(['26.80', '28.00', '+1.20']);
  });

  test('a row lights its letter in the overlay, and a letter its row', async ({ bench, page }) => {
    await openAngle(bench);
    await bench.button('Bend 1, centre line').click();
    const which = await row(page, 'Bend 1, centre line').locator('td.letter').textContent();
    await expect(letter(page, which ?? 'none')).toHaveClass(/lit/);
    await expect(page.locator('.overlay-ring')).toHaveCount(1);
    const other = await row(page, 'Leg A, straight').locator('td.letter').textContent();
    await letter(page, other ?? 'none').click();
    await expect(bench.button('Leg A, straight')).toHaveAttribute('aria-pressed', 'true');
    await expect(bench.button('Bend 1, centre line')).toHaveAttribute('aria-pressed', 'false');
    await expect(letter(page, which ?? 'none')).not.toHaveClass(/lit/);
  });

  test('the drawings go closer and move by hand, and a drag takes hold of nothing', async ({ bench, page }) => {
    await openAngle(bench);
    const outline = overlay(page, 'Blanks').locator('.outline').first();
    const width = async (): Promise<number> => (await outline.boundingBox())?.width ?? 0;
    const fitted = await width();
    await bench.button('Closer').click();
    // One step is a quarter; the box has the width of a line in it.
    await expect.poll(async () => Math.abs((await width()) / fitted - 1.25)).toBeLessThan(0.01);
    const before = (await outline.boundingBox())?.x ?? 0;
    const box = await overlay(page, 'Blanks').boundingBox();
    if (!box) throw new Error('No overlay is in sight.');
    await bench.drag({ x: box.x + 300, y: box.y + box.height - 8 }, { x: -60, y: 0 });
    await expect.poll(async () => ((await outline.boundingBox())?.x ?? 0) - before).toBeCloseTo(-60, 0);
    await expect(page.locator('.overlay-ring')).toHaveCount(0);
    await bench.button('Fit').click();
    await expect.poll(async () => Math.abs((await width()) / fitted - 1)).toBeLessThan(0.01);
  });
});

test.describe('choosing', () => {
  test('a stock becomes the part’s own in one step, and undo takes it back', async ({ bench, page }) => {
    await openAngle(bench);
    await bench.choice('All legs, keep').selectOption('inside sizes');
    await bench.button('Make Angle of Brass 1.0').click();
    // Now the thin one comes first, and the thick one is told against it.
    expect(await figures(page, 'Developed length')).toEqual(['67.00', '67.12', '+0.12']);
    await bench.goTo('Parts');
    expect((await bench.overall()).length).toBeCloseTo(67, 2);
    await expect(bench.field('Shelf side, length')).toHaveValue('28.40');
    await expect(bench.button('Undo stock of Angle to Brass 1.0')).toBeVisible();
    await bench.undo();
    expect(await figures(page, 'Developed length')).toEqual(['67.12', '67.00', '−0.12']);
    await bench.goTo('Parts');
    expect((await bench.overall()).length).toBeCloseTo(67.12, 2);
    await expect(bench.field('Shelf side, length')).toHaveValue('30.00');
  });

  test('another thickness is typed, compared at once, and taken back', async ({ bench, page }) => {
    await openAngle(bench);
    await bench.enter('Also compare with the thickness', '1.2');
    // 1.2: straights 37.6 and 27.6, allowance 2.6389.
    expect(await figures(page, 'Developed length')).toEqual(['67.12', '67.84', '+0.72', '68.20', '+1.08']);
    await expect(page.getByRole('checkbox', { name: /^Brass 1\.2/ })).toBeChecked();
    await bench.undo();
    await expect(page.getByRole('checkbox', { name: /^Brass 1\.2/ })).toHaveCount(0);
    await bench.enter('Also compare with the thickness', 'thin');
    await expect(page.getByText(/no size called thin/)).toBeVisible();
  });

  test('the last other stock stays ticked, and the part’s own always', async ({ bench, page }) => {
    await openAngle(bench);
    for (const name of [/^Brass 1\.6/, /^Brass 1\.0/]) {
      const box = page.getByRole('checkbox', { name });
      // By key: a box that may not be unticked stays in reach and says why.
      await box.focus();
      await box.press('Space');
      await expect(box).toBeChecked();
    }
    await expect(page.locator('output')).toContainText('Two stocks are the least');
  });

  test('the link on the job card leads here', async ({ bench, page }) => {
    await bench.open();
    await bench.button('What would another thickness do?').click();
    await expect(tableOf(page)).toBeVisible();
    await bench.tab('Wall bracket').click();
    await expect(tableOf(page)).toBeVisible();
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Compare stock: Wall bracket');
  });
});

test.describe('what will not do', () => {
  test('a stock in which the part cannot be made shows why, and the others their figures', async ({ bench, page }) => {
    // 2.5 outside is 0.70 too short at 1.6 and leaves 0.50 at 1.0: developed 38 + 0.5 + 2.1991.
    await openAngle(bench, '2.5');
    const own = page.getByRole('columnheader', { name: /^Brass 1\.6 .*made of it now/ });
    await expect(own).toContainText('too short for its bend by 0.70 mm');
    expect(await figures(page, 'Developed length')).toEqual(['–', '40.70', '–']);
    await bench.button('Make Angle of Brass 1.0').click();
    const other = page.getByRole('columnheader', { name: /^Brass 1\.6 / }).first();
    await expect(other).toContainText('too short for its bend by 0.70 mm');
    await expect(page.getByRole('region', { name: 'What becomes too tight or too short' })).toContainText('too short for its bend by 0.70 mm');
    await expect(bench.button('Make Angle of Brass 1.6')).toHaveAttribute('aria-disabled', 'true');
    await bench.button('Make Angle of Brass 1.6').press('Enter');
    await expect(page.locator('output')).toContainText('Angle cannot be laid out in Brass 1.6.');
    expect((await figures(page, 'Developed length'))[0]).toBe('40.70');
  });

  for (const colorScheme of ['light', 'dark'] as const) {
    test(`no finding of axe with a row lit, a pattern open and a column that cannot be made, ${colorScheme}`, async ({ bench, page }) => {
      // Three screens, each looked at whole.
      test.setTimeout(240_000);
      await page.emulateMedia({ colorScheme });
      await openAngle(bench);
      await page.getByRole('button', { name: 'Peg 1 to 3, along the blank: each hole' }).click();
      await bench.button('Peg 2, along the blank').click();
      await bench.enter('Also compare with the thickness', '16');
      await bench.enter('Also compare with the thickness', '-1');
      await expect(page.getByText('A thickness must be above 0.')).toBeVisible();
      for (const width of [1440, 1024, 390]) {
        await page.setViewportSize({ width, height: 844 });
        await bench.expectNoSidewaysScroll();
        const { violations } = await new AxeBuilder({ page }).analyze();
        expect(violations.map(({ id, nodes }) => `${width}: ${id} ${nodes.map(({ target }) => target.join(' ')).join(', ')}`)).toEqual([]);
      }
    });
  }
});

test.describe('taken along', () => {
  test('the table as CSV has the hand-worked figures', async ({ bench, page }) => {
    await openAngle(bench);
    const file = await bench.download(page.getByRole('button', { name: /^Table as CSV/ }));
    expect(file.name).toBe('Angle - compare.csv');
    const rows = file.text.trimEnd().split('\r\n').map((line) => line.split(','));
    expect(rows[0]).toEqual(['letter', 'what', 'unit', 'Brass 1.6', 'Brass 1.0', '"Brass 1.0', ' difference"']);
    const developed = rows.find(([, what]) => what === 'Developed length')?.slice(3).map(Number) ?? [];
    const worked = [63.6 + Math.PI * 0.7 * 1.6, 66 + Math.PI * 0.7];
    expect(developed).toHaveLength(3);
    for (const [i, value] of [...worked, (worked[1] ?? 0) - (worked[0] ?? 0)].entries()) expect(developed[i]).toBeCloseTo(value, 6);
  });

  test('the comparison on paper is a PDF that can be read', async ({ bench, page }) => {
    await openAngle(bench);
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: /^Comparison on paper/ }).click()]);
    expect(download.suggestedFilename()).toBe('Angle - compare.pdf');
    const text = execFileSync('pdftotext', ['-layout', await download.path(), '-'], { encoding: 'utf8' });
    expect(text).toMatch(/Developed length\s+67\.12\s+68\.20\s+\+?1\.08/);
    expect(text).toContain('Brass 1.0');
  });
});
