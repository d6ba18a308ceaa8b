import { readFile } from 'node:fs/promises';
import { readPaths } from '../tests/export/pdf/poppler';
import { expect, test } from './bench';

/** How many straight lines of a PDF's first page are of this length to 0.01 mm, as an independent reader finds them. */
function linesOf(pdf: Uint8Array, mm: number): number {
  const lines = readPaths(pdf, 1).flatMap(({ pieces }) => pieces.filter((piece) => piece.length === 2));
  return lines.filter(([from, to]) => from && to && Math.abs(Math.hypot(to.x - from.x, to.y - from.y) - mm) <= 0.01).length;
}

test.describe('papers', () => {
  test('the template as PDF is full size: a bar of 100 mm and one of 4 in, both ways', async ({ bench, page }) => {
    await bench.open();
    await bench.goTo('Papers');
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: /^PDF/ }).click();
    const pdf = await readFile(await (await download).path());
    expect(linesOf(pdf, 100)).toBe(2);
    expect(linesOf(pdf, 101.6)).toBe(2);
  });

  test('what the browser prints of the page is full size too', async ({ bench, page }) => {
    await bench.open();
    await bench.goTo('Papers');
    await page.evaluate(() => {
      window.print = () => undefined;
    });
    await page.getByRole('button', { name: /^Print/ }).click();
    const pdf = await page.pdf({ preferCSSPageSize: true });
    expect(linesOf(pdf, 100)).toBe(2);
    expect(linesOf(pdf, 101.6)).toBe(2);
  });
});
