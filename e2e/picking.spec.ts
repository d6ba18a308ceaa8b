import { boxOf, expect, middleOf, test, type Bench, type Spot } from './bench';

/** A leg, a bend or a hole is lit in the section, on the blank and in the table, and its sheet is open. */
async function expectLit(bench: Bench, what: { sheet: string; row?: string; section: number; blank: number }): Promise<void> {
  await expect(bench.page.getByRole('region', { name: `Sheet of ${what.sheet}`, exact: true })).toBeVisible();
  await expect(bench.section.locator('.leg-area.lit, .bend-zone.lit, .hole-edge.lit')).toHaveCount(what.section);
  await expect(bench.blank.locator('.leg-area.lit, .bend-zone.lit, .hole.lit')).toHaveCount(what.blank);
  if (what.row) await expect(bench.row(what.row)).toHaveAttribute('aria-current', 'true');
}

const PEG_LEG = { sheet: 'leg C', row: 'Peg leg', section: 2, blank: 2 } as const;
const PEGS = { sheet: 'Peg hole', section: 1, blank: 1 } as const;
const BEND_3 = { sheet: 'bend 3', section: 1, blank: 1 } as const;

async function tap(bench: Bench, spot: Spot): Promise<void> {
  await bench.page.mouse.click(spot.x, spot.y);
}

/** Middle of the nth thing of a kind on a drawing. */
const nth = (bench: Bench, drawing: 'Section' | 'Blank', kind: string, index: number): Promise<Spot> => middleOf(bench.figure(drawing).locator(`.${kind}`).nth(index));

test.describe('pick in one, lit in all', () => {
  test.beforeEach(async ({ bench }) => bench.open());

  test('a leg picked on the blank, between its holes', async ({ bench }) => {
    const leg = await boxOf(bench.blank.locator('.leg-area').nth(2));
    await tap(bench, { x: leg.x + leg.width * 0.5, y: leg.y + leg.height - 4 });
    await expectLit(bench, PEG_LEG);
  });

  test('a leg picked in the section', async ({ bench }) => {
    const areas = bench.section.locator('.leg-area');
    const boxes = await Promise.all([0, 1, 2, 3].map((i) => boxOf(areas.nth(i))));
    // The lip is the only one that is higher than it is wide.
    const lip = boxes.find(({ width, height }) => height > 2 * width);
    if (!lip) throw new Error('No leg stands up in the section.');
    await tap(bench, { x: lip.x + lip.width / 2, y: lip.y + lip.height / 3 });
    await expectLit(bench, { sheet: 'leg D', row: 'Lip', section: 1, blank: 1 });
  });

  test('a hole picked on the blank', async ({ bench }) => {
    const row = await boxOf(bench.blank.locator('.hole').nth(1));
    await tap(bench, { x: row.x + row.height / 2, y: row.y + row.height / 2 });
    await expectLit(bench, PEGS);
    await expect(bench.field('Peg hole, diameter')).toHaveValue('3.20');
  });

  test('a hole picked in the section', async ({ bench }) => {
    await tap(bench, await nth(bench, 'Section', 'hole-edge', 0));
    await expectLit(bench, { sheet: 'Foot hole', section: 1, blank: 1 });
  });

  test('a bend picked on the blank', async ({ bench }) => {
    await tap(bench, await nth(bench, 'Blank', 'bend-zone', 2));
    await expectLit(bench, BEND_3);
  });

  test('a leg and a bend picked in the table, and let go again', async ({ bench }) => {
    await bench.button('Leg C, Peg leg').click();
    await expectLit(bench, PEG_LEG);
    await bench.row('Peg leg').getByRole('textbox', { name: 'Bend 3, angle' }).click();
    await expectLit(bench, BEND_3);
    await bench.letGo();
    await expect(bench.section.locator('.lit')).toHaveCount(0);
    await expect(bench.page.getByRole('region', { name: 'The part', exact: true })).toBeVisible();
  });

  test('legs and a bend picked on the bent part', async ({ bench, page }) => {
    await bench.button('Stand it up').click();
    const picture = await boxOf(page.getByRole('img', { name: /^Front strap bent/ }));
    // Stood up, the picture shows what the section shows, fitted to its own frame with 4 % clear on each side (any clear room
    // would do: the spots are taken from the middles of things).
    const metal = await Promise.all((await bench.section.locator('.leg-area, .bend-zone').all()).map(boxOf));
    const left = Math.min(...metal.map(({ x }) => x));
    const right = Math.max(...metal.map(({ x, width }) => x + width));
    const top = Math.min(...metal.map(({ y }) => y));
    const bottom = Math.max(...metal.map(({ y, height }) => y + height));
    const scale = Math.min((picture.width * 0.92) / (right - left), (picture.height * 0.92) / (bottom - top));
    const spot = ({ x, y }: Spot): Spot => ({
      x: picture.x + picture.width / 2 + (x - (left + right) / 2) * scale,
      y: picture.y + picture.height / 2 + (y - (top + bottom) / 2) * scale,
    });
    const legs = await Promise.all([0, 1, 2, 3].map((i) => boxOf(bench.section.locator('.leg-area').nth(i))));
    const longest = legs.toSorted((a, b) => b.width - a.width)[0];
    if (!longest) throw new Error('There is no leg in the section.');
    await tap(bench, spot({ x: longest.x + longest.width / 2, y: longest.y + longest.height / 2 }));
    await expectLit(bench, PEG_LEG);
    const lip = legs.find(({ width, height }) => height > 2 * width) ?? longest;
    await tap(bench, spot({ x: lip.x + lip.width / 2, y: lip.y + lip.height / 2 }));
    await expectLit(bench, { sheet: 'leg D', row: 'Lip', section: 1, blank: 1 });
    // Beside the part there is nothing to take hold of.
    await tap(bench, { x: picture.x + 12, y: picture.y + 6 });
    await expect(bench.section.locator('.lit')).toHaveCount(0);
  });

  test('what is picked elsewhere is lit on the bent part too', async ({ bench, page }) => {
    const picture = page.getByRole('img', { name: /^Front strap bent/ });
    await expect(page.getByRole('slider', { name: 'Bend' })).toBeVisible();
    const plain = await picture.screenshot();
    await bench.button('Leg C, Peg leg').click();
    await expect(async () => expect((await picture.screenshot()).equals(plain)).toBe(false)).toPass();
    await bench.letGo();
    await expect(async () => expect((await picture.screenshot()).equals(plain)).toBe(true)).toPass();
  });

  test('a check shows what it speaks of', async ({ bench }) => {
    await bench.checks.getByRole('button', { name: /Peg hole 1 starts/ }).click();
    await expectLit(bench, PEGS);
  });
});
