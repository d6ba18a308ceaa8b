import { readFile } from 'node:fs/promises';
import { expect, test } from './bench';

test.describe('compare stock', () => {
  test('another stock side by side, chosen and taken back', async ({ bench, page }) => {
    await bench.open();
    await bench.goTo('Compare stock');
    const table = page.getByRole('region', { name: 'What differs, side by side' });
    const developed = table.getByRole('row').filter({ hasText: 'Developed length' });
    await expect(developed).toContainText('165.46');
    // Stainless 1.0, radius 1.5, DIN 6935: k = 0.65 + ½ log10 1.5 = 0.7380, K 0.3690; allowances 1.4679 at 45° and 2.9358 at 90°;
    // straights 26 − 1.0355, 18 − 2 × 0.8284, 112 − 1.0355 − 2.5, 12 − 1.5, worked by hand: 166.14.
    await expect(developed).toContainText('166.14');
    await expect(developed).toContainText('+0.68');
    await page.getByRole('button', { name: 'Make Front strap of Stainless, 1.0 sheet' }).click();
    await expect(developed).toContainText('166.14');
    await bench.goTo('Parts');
    expect((await bench.overall()).length).toBeCloseTo(166.14, 2);
    await bench.undo();
    await bench.goTo('Parts');
    expect((await bench.overall()).length).toBeCloseTo(165.46, 2);
  });

  test('the table goes out as CSV', async ({ bench, page }) => {
    await bench.open();
    await bench.goTo('Compare stock');
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: /^Table as CSV/ }).click();
    const file = await download;
    expect(file.suggestedFilename()).toMatch(/\.csv$/);
    const lines = (await readFile(await file.path(), 'utf8')).trimEnd().split('\r\n');
    expect(lines[0]).toContain('Stainless, 1.0 sheet');
    expect(lines.find((line) => line.includes('Developed length'))).toMatch(/165\.46.*166\.14/);
  });
});
