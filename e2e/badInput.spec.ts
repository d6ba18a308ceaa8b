import { expect, test, type Bench } from './bench';
import { readDxf } from './dxfFile';

/** What will not do as a leg's length, an angle, a radius or a thickness, and the sentence that must come. */
const LENGTHS = [['', /length/i], ['-5', /-5|short|above|least/i], ['1e9', /./], ['99999999', /most is/], ['0', /short|0/]] as const;
const ANGLES = [['', /angle/i], ['0', /0/], ['181', /180/], ['-90', /-90|above|between|0/]] as const;

async function refusesToGoOut(bench: Bench): Promise<void> {
  await bench.cutIt.getByRole('button', { name: /^DXF for the bureau/ }).click();
  await expect(bench.cutIt.getByText('Front strap is not ready to go out.')).toBeVisible();
  await bench.cutIt.getByRole('button', { name: 'Clear' }).click();
}

/** A sentence about what is wrong stands at the field or among the checks. */
async function told(bench: Bench, says: RegExp): Promise<void> {
  await expect(bench.checks.getByRole('listitem').filter({ has: bench.page.getByRole('img', { name: 'Put this right' }) }).filter({ hasText: says }).first()).toBeVisible();
}

test.describe('bad input', () => {
  test.beforeEach(async ({ bench }) => bench.open());

  test('lengths and angles that will not do', async ({ bench }) => {
    for (const [text, says] of LENGTHS) {
      await bench.enter('Foot, length', text);
      await told(bench, says);
      await refusesToGoOut(bench);
    }
    await bench.enter('Foot, length', '26');
    for (const [text, says] of ANGLES) {
      await bench.enter('Bend 3, angle', text);
      await told(bench, says);
      await refusesToGoOut(bench);
    }
    await bench.enter('Bend 3, angle', '90');
    await bench.dxf();
  });

  test('a bend of 180° and a bend without radius are drawn and go out', async ({ bench }) => {
    await bench.enter('Bend 3, angle', '180');
    await expect(bench.dimension('Section', 'bend 3 angle')).toContainText('180°');
    const radius = bench.row('Peg leg').getByRole('textbox', { name: 'Bend 3, inside radius' });
    await bench.enter(radius, '0');
    await expect(radius).toHaveAttribute('aria-invalid', 'false');
    const dxf = readDxf((await bench.dxf()).text);
    expect(dxf.size.length).toBeCloseTo((await bench.overall()).length, 2);
  });

  test('a sheet without thickness', async ({ bench, page }) => {
    await bench.goTo('Stock and sizes');
    for (const text of ['0', '-1', 'thick']) {
      const field = await bench.type('Brass, half hard, 1.6 sheet, thickness', text);
      await expect(field).toHaveAttribute('aria-invalid', 'true');
      await field.press('Enter');
      await bench.goTo('Parts');
      await told(bench, /thickness/i);
      await refusesToGoOut(bench);
      await bench.goTo('Stock and sizes');
    }
    await bench.enter('Brass, half hard, 1.6 sheet, thickness', '1.6');
    await bench.goTo('Parts');
    await expect(page.getByRole('img', { name: 'Put this right' })).toHaveCount(0);
  });

  test('a section that runs through itself is drawn, told and kept back', async ({ bench }) => {
    await bench.enter('Bend 1, angle', '135');
    await bench.choice('Bend 2, way').selectOption('up');
    await bench.enter('Bend 2, angle', '135');
    await told(bench, /itself|through|meet/i);
    await refusesToGoOut(bench);
  });

  test('a hole larger than its leg, and a hole across a bend', async ({ bench }) => {
    await bench.button('Leg A, Foot').click();
    await bench.page.getByRole('region', { name: 'Sheet of leg A' }).getByRole('button', { name: 'Foot hole' }).click();
    await bench.enter('Foot hole, diameter', '60');
    await told(bench, /Foot hole/);
    await refusesToGoOut(bench);
    await bench.enter('Foot hole, diameter', '3.1');
    await bench.enter('Foot hole, distance along', '25');
    await expect(bench.checks.getByText(/Foot hole.*bend 1/i).first()).toBeVisible();
    await bench.enter('Foot hole, diameter', '0');
    await told(bench, /diameter|hole/i);
    await bench.enter('Foot hole, diameter', '-3');
    await told(bench, /diameter|hole/i);
  });

  test('forty bends', async ({ bench, page }) => {
    await bench.button('New part').click();
    await page.getByRole('region', { name: 'New part' }).getByRole('button', { name: /^Angle/ }).click();
    const job = JSON.parse(await bench.savedJob()) as { parts: { name: string; legs: { id: string; name: string; bend?: { parent: string; way: string } }[] }[] };
    const part = job.parts.at(-1);
    const pattern = part?.legs[1];
    if (!part || !pattern?.bend) throw new Error('The starting shape has no bend.');
    const { bend } = pattern;
    part.name = 'Forty';
    part.legs = [part.legs[0] ?? pattern, ...Array.from({ length: 40 }, (_, i) => ({ ...pattern, id: `leg-${i + 2}`, name: '', bend: { ...bend, parent: `leg-${i + 1}`, way: i % 2 === 0 ? 'up' : 'down' } }))];
    await bench.openJobFile('forty.json', JSON.stringify(job));
    await bench.goTo('Parts');
    await bench.tab('5 Forty').click();
    expect(await bench.legs()).toHaveLength(41);
    await expect(bench.blank.locator('.bend-zone')).toHaveCount(40);
    const before = await bench.overall();
    await bench.enter('Leg AO, length', '35');
    expect((await bench.overall()).length - before.length).toBeCloseTo(5, 6);
    expect(readDxf((await bench.dxf()).text).entities.filter(({ layer }) => layer === 'BENDS')).toHaveLength(40);
    await bench.expectNoSidewaysScroll();
  });

  test('ten thousand holes: still worked with, and cut to the last one', async ({ bench, page }) => {
    await bench.button('New part').click();
    await page.getByRole('region', { name: 'New part' }).getByRole('button', { name: /^Flat/ }).click();
    await bench.enter('Plate, length', '520');
    // Typing in its row has taken hold of the leg.
    const sheet = page.getByRole('region', { name: 'Sheet of leg A' });
    await bench.enter('Plate, width', '520');
    await sheet.getByRole('button', { name: 'Corner hole' }).click();
    await bench.enter('Corner hole, diameter', '2');
    await bench.enter('Corner hole, pitch along', '5');
    await bench.enter('Corner hole, pitch across', '5');
    await bench.enter('Corner hole, how many along', '100');
    await bench.enter('Corner hole, how many across', '100');
    await expect(page.getByRole('img', { name: 'Put this right' })).toHaveCount(0);
    const field = bench.field('Corner hole, diameter');
    await field.click();
    await field.press('ControlOrMeta+a');
    await field.press('3');
    await field.press('Enter');
    const dxf = readDxf((await bench.dxf()).text);
    expect(dxf.circles).toHaveLength(10_000);
    expect(new Set(dxf.circles.map(({ radius }) => radius))).toEqual(new Set([1.5]));
    await bench.enter('Corner hole, how many along', '1000');
    await told(bench, /20000 is the most/);
  });

  test('names of any kind do no harm on the screen, in files or in file names', async ({ bench, page }) => {
    const names = [
      `A "quoted" 'name'`,
      'up/down\\left:right',
      'peg 📌 stay',
      '<script>document.title="got in"</script>',
      `</title></svg><img src=x onerror="document.title='got in'">`,
      '../../etc/passwd',
      'CON',
      'ступа 支柱',
    ];
    for (const name of names) {
      const field = bench.field('Name of the part');
      await field.fill(name);
      await field.press('Enter');
      await expect(page.getByRole('heading', { level: 1 })).toHaveText(name);
      const dxf = await bench.dxf();
      readDxf(dxf.text);
      const svg = await bench.download(bench.cutIt.getByRole('button', { name: /^SVG of the blank/ }));
      for (const file of [dxf, svg]) expect(file.name, name).not.toMatch(/[/\\:*?"<>|]|^\.|^CON\./);
      const title = await page.evaluate((text) => {
        const read = new DOMParser().parseFromString(text, 'image/svg+xml');
        return { fault: read.querySelector('parsererror')?.textContent, title: read.querySelector('title')?.textContent, scripts: read.querySelectorAll('script, img').length };
      }, svg.text);
      expect(title).toEqual({ fault: undefined, title: name, scripts: 0 });
    }
    // A line break cannot be typed; pasted, it must not break the line or the file.
    await bench.field('Name of the part').fill('two\nlines');
    await bench.field('Name of leg A').fill('<b>"Foot"</b> 📌');
    readDxf((await bench.dxf()).text);
    await expect(page).not.toHaveTitle('got in');
    await expect(bench.page.locator('main script, main img[src="x"]')).toHaveCount(0);
    await bench.expectNoSidewaysScroll();
  });

  test('a job file with line breaks and markup in its names opens, is drawn and goes out', async ({ bench, page }) => {
    const job = JSON.parse(await bench.savedJob()) as { name: string; parts: { name: string }[]; stocks: { name: string }[] };
    job.name = 'stay\r\n<script>document.title="got in"</script>';
    for (const part of job.parts) part.name = `  line\nbreak "${part.name}" <b>`;
    for (const stock of job.stocks) stock.name = `0\nSECTION\n${stock.name}`;
    await bench.openJobFile('names.json', JSON.stringify(job));
    await bench.goTo('Parts');
    await bench.page.getByRole('navigation', { name: 'Parts of the job' }).getByRole('button').nth(1).click();
    const file = await bench.dxf();
    expect(readDxf(file.text).circles).toHaveLength(8);
    expect(file.name).not.toMatch(/[\r\n]/);
    await expect(page).not.toHaveTitle('got in');
  });
});
