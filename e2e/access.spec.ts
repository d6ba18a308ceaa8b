import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, test, type Bench } from './bench';

const SCREENS = [
  { name: 'wide', width: 1440, height: 900 },
  { name: 'tablet', width: 1024, height: 768 },
  { name: 'phone', width: 390, height: 844 },
] as const;

async function expectNoFindings(page: Page, place: string, rules?: readonly string[]): Promise<void> {
  // Colours are judged when they stand still, not on the way from one to the next.
  await page.evaluate(() => Promise.all(document.getAnimations().map((animation) => animation.finished.catch(() => undefined))));
  const axe = new AxeBuilder({ page });
  const { violations } = await (rules ? axe.withRules([...rules]) : axe).analyze();
  const found = violations.map(({ id, help, nodes }) => `${id} (${help}): ${nodes.map(({ target, failureSummary }) => `${target.join(' ')} ${failureSummary ?? ''}`).join(' | ')}`);
  expect.soft(found, place).toEqual([]);
}

/** Goes through every place of the app in turn and looks at each. */
async function goRound(bench: Bench, look: (place: string) => Promise<void>): Promise<void> {
  const { page } = bench;
  await look('Parts, nothing chosen');
  await bench.button('Leg C, Peg leg').click();
  await look('Parts, a leg chosen');
  await bench.page.getByRole('region', { name: 'Sheet of leg C' }).getByRole('button', { name: 'Peg hole' }).click();
  await look('Parts, a hole chosen');
  await bench.row('Peg leg').getByRole('textbox', { name: 'Bend 3, angle' }).click();
  await look('Parts, a bend chosen');
  await bench.letGo();
  await bench.enter('Peg leg, length', '6*ptch');
  await bench.cutIt.getByRole('button', { name: /^DXF for the bureau/ }).click();
  await expect(bench.cutIt.getByText('Front strap is not ready to go out.')).toBeVisible();
  await look('Parts, an entry that will not do');
  await bench.undo();
  await bench.section.focus();
  await page.keyboard.press('c');
  await page.keyboard.press('Enter');
  await look('Parts, a field over its figure');
  await page.keyboard.press('Escape');
  await bench.button('New part').click();
  await look('New part');
  await page.getByRole('region', { name: 'New part' }).getByRole('button', { name: 'Close' }).click();
  await bench.button('Keys').click();
  await look('Keys');
  await bench.button('Keys').click();
  for (const place of ['Stock and sizes', 'Compare stock', 'Papers'] as const) {
    await bench.goTo(place);
    await expect(page.getByRole('heading', { level: 1, name: place })).toBeAttached();
    await look(place);
  }
  await bench.openJobFile('broken.json', '{"format":"bendwright job","version":9}');
  await expect(page.getByRole('paragraph').filter({ hasText: /^broken\.json was not opened/ })).toBeVisible();
  await look('Files, a file refused');
}

for (const { name, width, height } of SCREENS) {
  test.describe(name, () => {
    test.use({ viewport: { width, height }, hasTouch: name !== 'wide' });

    test('no finding of axe by day or in dim light, and no sideways scroll, in any place', async ({ bench, page }) => {
      test.setTimeout(240_000);
      await bench.open();
      await goRound(bench, async (place) => {
        await bench.expectNoSidewaysScroll();
        await expectNoFindings(page, `${place}, day`);
        // In dim light the same elements stand there in other colours.
        await page.emulateMedia({ colorScheme: 'dark' });
        await expect(bench.button('Day light')).toBeVisible();
        await expectNoFindings(page, `${place}, dim`, ['color-contrast']);
        await page.emulateMedia({ colorScheme: 'light' });
        await expect(bench.button('Dim light')).toBeVisible();
      });
    });
  });
}

test.describe('for fingers and eyes', () => {
  test.use({ viewport: { width: 1024, height: 768 }, hasTouch: true });

  test('buttons and fields of the tablet are large enough to be touched', async ({ bench, page }) => {
    await bench.open();
    const small = await page.getByRole('button').or(page.getByRole('textbox')).or(page.getByRole('combobox')).evaluateAll((all) =>
      all.flatMap((element) => {
        if (element.closest('svg')) return [];
        const { width, height } = element.getBoundingClientRect();
        // WCAG 2.2, 2.5.8: 24 by 24 px at the least.
        return width > 0 && (width < 24 || height < 24) ? [`${element.getAttribute('aria-label') ?? element.textContent}: ${width.toFixed(0)} × ${height.toFixed(0)}`] : [];
      }),
    );
    expect(small).toEqual([]);
  });
});

test.describe('with larger letters', () => {
  test('at twice the size nothing slides off sideways', async ({ bench, page }) => {
    // A browser zoom of 200 % gives the page half of the px (WCAG 1.4.10).
    await page.setViewportSize({ width: 720, height: 450 });
    await bench.open();
    await bench.expectNoSidewaysScroll();
    await bench.enter('Foot, length', '27');
    await expect(bench.dimension('Section', 'foot length')).toContainText('27');
  });
});
