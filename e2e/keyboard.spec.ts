import type { Page } from '@playwright/test';
import { expect, readDownload, test } from './bench';
import { readDxf } from './dxfFile';

/** Goes on with Tab until the focus is on what has this role and name; fails after a hundred. @returns how many it took */
async function tabTo(page: Page, role: 'button' | 'textbox' | 'combobox' | 'group' | 'slider' | 'link', name: string | RegExp): Promise<number> {
  const wanted = page.getByRole(role, typeof name === 'string' ? { name, exact: true } : { name });
  for (let pressed = 1; pressed <= 100; pressed++) {
    await page.keyboard.press('Tab');
    const here = page.locator(':focus');
    if ((await here.and(wanted).count()) > 0) {
      // Whoever works by keys must see where the keys are.
      const ring = await here.first().evaluate((element) => {
        const { outlineStyle, outlineWidth, boxShadow, borderBottomStyle } = getComputedStyle(element);
        const frame = element.closest('.entry-frame, .text');
        const around = frame ? getComputedStyle(frame) : undefined;
        return (outlineStyle !== 'none' && outlineWidth !== '0px') || boxShadow !== 'none' || (around !== undefined && (around.outlineStyle !== 'none' || around.boxShadow !== 'none')) || borderBottomStyle === 'double';
      });
      expect(ring, `${String(name)} shows that it has the focus`).toBe(true);
      return pressed;
    }
  }
  throw new Error(`Tab does not come to ${String(name)}.`);
}

test.describe('by keys alone', () => {
  test('from an empty part to the DXF, without a pointer', async ({ bench, page }) => {
    await bench.open();
    const { keyboard } = page;

    await tabTo(page, 'button', 'New part');
    await keyboard.press('Enter');
    await tabTo(page, 'button', /^Crank/);
    await keyboard.press('Enter');
    await expect(bench.tab('5 Crank')).toHaveAttribute('aria-current', 'true');

    await tabTo(page, 'textbox', 'Name of the part');
    await keyboard.press('ControlOrMeta+a');
    await keyboard.type('Vent arm');
    await tabTo(page, 'textbox', 'Vent arm, number off');
    await keyboard.type('4');
    await tabTo(page, 'textbox', 'Arm, length');
    await keyboard.type('2.5in + 1.5');
    await keyboard.press('Enter');
    await expect(bench.field('Arm, length')).toHaveValue('2.5in + 1.5');

    await tabTo(page, 'combobox', 'Vent arm, stock');
    await keyboard.type('Stainless');
    await expect(bench.choice('Vent arm, stock').locator('option:checked')).toHaveText('Stainless, 1.0 sheet');
    const size = await bench.overall();

    await tabTo(page, 'button', /^DXF for the bureau/);
    const [download] = await Promise.all([page.waitForEvent('download'), keyboard.press('Enter')]);
    const file = await readDownload(download);
    expect(file.name).toBe('Vent arm - Stainless, 1.0 sheet - 4 off.dxf');
    expect(readDxf(file.text).size.length).toBeCloseTo(size.length, 2);
  });

  test('in the section: leg to bend to leg, to the holes, and into the figure', async ({ bench, page }) => {
    await bench.open();
    const { keyboard } = page;
    await tabTo(page, 'group', /^Section:/);
    const said = bench.spoken('Section');
    await keyboard.press('ArrowRight');
    await expect(said).toHaveText('Leg A, foot, 26.00 outside');
    await keyboard.press('ArrowRight');
    await expect(said).toHaveText('Bend 1, 45°, up');
    await keyboard.press('ArrowRight');
    await expect(said).toHaveText('Leg B, crank, 18.00 centre line');
    await keyboard.press('c');
    await expect(said).toHaveText('Leg C, peg leg, 112.00 outside');
    await keyboard.press('ArrowDown');
    await expect(said).toHaveText('Peg hole, leg C, 7.50 from the start');
    await keyboard.press('ArrowUp');
    await keyboard.press('Enter');
    await expect(bench.field('Peg leg length')).toBeFocused();
    await keyboard.type('115');
    await keyboard.press('Enter');
    await expect(bench.field('Peg leg, length')).toHaveValue('115.00');
    await expect(bench.section).toBeFocused();
    await keyboard.press('ControlOrMeta+z');
    await expect(bench.field('Peg leg, length')).toHaveValue('112.00');
    await keyboard.press('Escape');
    await expect(bench.section.locator('.lit')).toHaveCount(0);
  });

  test('Tab goes from figure to figure on a drawing', async ({ bench, page }) => {
    await bench.open();
    await bench.section.focus();
    await page.keyboard.press('a');
    await page.keyboard.press('F2');
    const open = bench.section.getByRole('textbox');
    await expect(open).toBeFocused();
    const first = await open.getAttribute('aria-label');
    await page.keyboard.press('Tab');
    await expect(open).toBeFocused();
    await expect(open).not.toHaveAccessibleName(first ?? '');
    await page.keyboard.press('Shift+Tab');
    await expect(open).toHaveAccessibleName(first ?? '');
    await page.keyboard.press('Escape');
    await expect(open).toHaveCount(0);
  });

  test('the keys of the panel do what it says', async ({ bench, page }) => {
    await bench.open();
    const { keyboard } = page;
    await keyboard.press('F1');
    await expect(page.getByRole('region', { name: 'Keys' })).toBeVisible();
    await expect(page.getByRole('heading', { name: 'Keys' })).toBeFocused();
    await keyboard.press('F1');
    await expect(page.getByRole('region', { name: 'Keys' })).toHaveCount(0);
    await keyboard.press('Alt+2');
    await expect(page.getByRole('heading', { name: 'Stock and sizes' })).toBeAttached();
    await keyboard.press('Alt+3');
    await expect(page.getByRole('heading', { name: 'Files', exact: true })).toBeAttached();
    await keyboard.press('Alt+1');
    await keyboard.press('Alt+PageDown');
    await expect(bench.tab('3 Wall bracket')).toHaveAttribute('aria-current', 'true');
    await keyboard.press('Alt+PageUp');
    await expect(bench.tab('2 Front strap')).toHaveAttribute('aria-current', 'true');
    const [dxf] = await Promise.all([page.waitForEvent('download'), keyboard.press('ControlOrMeta+e')]);
    expect(dxf.suggestedFilename()).toMatch(/\.dxf$/);
    const [job] = await Promise.all([page.waitForEvent('download'), keyboard.press('ControlOrMeta+s')]);
    expect(job.suggestedFilename()).toBe('Roof-vent peg stay.bendwright.json');
  });

  test('the first Tab leads straight to the sheet', async ({ bench, page }) => {
    await bench.open();
    await page.keyboard.press('Tab');
    await expect(page.getByRole('link', { name: 'Go to the sheet' })).toBeFocused();
    await page.keyboard.press('Enter');
    await expect(page.getByRole('main')).toBeFocused();
  });
});
