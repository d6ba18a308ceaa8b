import { expect, test } from './bench';
import { MILLIMETRES, readDxf } from './dxfFile';

test.describe('the main job', () => {
  test('opens on the finished example, with all its views drawn', async ({ bench, page }) => {
    await bench.open();
    await expect(page).toHaveTitle('Roof-vent peg stay: Bendwright');
    await expect(bench.tab('2 Front strap')).toHaveAttribute('aria-current', 'true');
    await expect(page.getByRole('navigation', { name: 'Parts of the job' }).getByRole('button')).toHaveCount(5);
    await expect(bench.dimension('Section', 'peg leg length')).toContainText('112');
    expect(await bench.runningDimensions()).toHaveLength(8);
    await expect(page.getByRole('img', { name: 'Front strap bent: 4 legs, 3 bends' })).toBeVisible();
    await expect(bench.checks.getByRole('listitem').first()).toBeVisible();
    expect(await bench.legs()).toEqual(['Foot', 'Crank', 'Peg leg', 'Lip']);
  });

  test('a leg typed 2 mm longer makes section and blank 2 mm longer, and the DXF says what the screen says', async ({ bench }) => {
    await bench.open();
    const before = { overall: await bench.overall(), running: await bench.runningDimensions() };
    await bench.enter('Peg leg, length', '6*pitch + 24');
    await expect(bench.dimension('Section', 'peg leg length')).toContainText('114');
    const after = { overall: await bench.overall(), running: await bench.runningDimensions() };
    expect(after.overall.length - before.overall.length).toBeCloseTo(2, 6);
    expect(after.overall.width).toBe(before.overall.width);
    // The holes are counted from the start of the leg and stay; its far bend moves.
    expect(after.running).toEqual(before.running);
    await expect(bench.blank.locator('.running-total').filter({ hasText: '167.46' })).toBeVisible();
    await expect(bench.blank.locator('.running-total').filter({ hasText: '155.37' })).toBeVisible();

    const file = await bench.dxf();
    expect(file.name).toBe('Front strap - Brass, half hard, 1.6 sheet - 12 off.dxf');
    const dxf = readDxf(file.text);
    expect(dxf.unit).toBe(MILLIMETRES);
    expect(dxf.layers.toSorted()).toEqual(['0', 'BENDS', 'CUTOUTS', 'OUTLINE']);
    expect(dxf.size.length).toBeCloseTo(after.overall.length, 2);
    expect(dxf.size.width).toBeCloseTo(after.overall.width, 2);
    const circles = dxf.circles.toSorted((a, b) => a.x - b.x);
    expect(circles.map(({ x }) => x.toFixed(2))).toEqual(after.running.map((x) => x.toFixed(2)));
    expect(circles.map(({ radius }) => radius)).toEqual([1.55, 1.6, 1.6, 1.6, 1.6, 1.6, 1.6, 1.6]);
    expect(new Set(circles.map(({ layer }) => layer))).toEqual(new Set(['CUTOUTS']));
    // The reader is given bend lines only where they were asked for, on their own layer.
    const lines = dxf.entities.filter(({ type }) => type === 'LINE');
    expect(lines.map(({ layer, vertices }) => [layer, vertices?.[0]?.x.toFixed(2)])).toEqual([['BENDS', '25.55'], ['BENDS', '43.33'], ['BENDS', '155.37']]);
    await expect(bench.cutIt.getByText(`Saved ${file.name}.`)).toBeVisible();
  });

  test('a named size typed in Stock and sizes moves every hole that uses it', async ({ bench }) => {
    await bench.open();
    const before = await bench.runningDimensions();
    await bench.goTo('Stock and sizes');
    await bench.enter('Size pitch', '16');
    await bench.goTo('Parts');
    const after = await bench.runningDimensions();
    expect(after.map((x, i) => (x - (before[i] ?? 0)).toFixed(2))).toEqual(['0.00', '0.00', '1.00', '2.00', '3.00', '4.00', '5.00', '6.00']);
    await expect(bench.dimension('Section', 'peg leg length')).toContainText('118');
  });

  test('the SVG of the blank is at true size', async ({ bench, context }) => {
    await bench.open();
    const { length, width } = await bench.overall();
    const file = await bench.download(bench.cutIt.getByRole('button', { name: /^SVG of the blank/ }));
    expect(file.name).toMatch(/^Front strap.*\.svg$/);
    const paper = await context.newPage();
    await paper.setContent(file.text.replace(/^<\?xml[^>]*>/, ''));
    // A browser draws a millimetre as 96/25.4 px.
    const drawn = await paper.locator('#outline path').evaluate((path: SVGGraphicsElement) => {
      const box = path.getBBox();
      const px = path.getScreenCTM()?.a ?? 0;
      return { length: box.width * px, width: box.height * px };
    });
    expect(drawn.length / (96 / 25.4)).toBeCloseTo(length, 1);
    expect(drawn.width / (96 / 25.4)).toBeCloseTo(width, 1);
    await expect(paper.locator('#cutouts circle')).toHaveCount(8);
  });

  test('all parts go out as files of their own, named by part, stock and quantity', async ({ bench, page }) => {
    await bench.open();
    const names: string[] = [];
    page.on('download', (download) => names.push(download.suggestedFilename()));
    await bench.cutIt.getByRole('button', { name: /^All parts/ }).click();
    await expect(bench.cutIt.getByText('4 of 4 parts saved as DXF files.')).toBeVisible();
    await expect(() => expect(names).toHaveLength(4)).toPass();
    expect(names).toEqual([
      'Back plate - Mild steel, 1.5 sheet - 12 off.dxf',
      'Front strap - Brass, half hard, 1.6 sheet - 12 off.dxf',
      'Wall bracket - Mild steel, 1-16 in strip - 12 off.dxf',
      'Lever - Stainless, 1.0 sheet - 6 off.dxf',
    ]);
  });

  test('the slider bends the part from flat to finished', async ({ bench, page }) => {
    await bench.open();
    const slider = page.getByRole('slider', { name: 'Bend' });
    const picture = page.getByRole('img', { name: /^Front strap bent/ });
    const stage = page.getByRole('region', { name: 'Folded' }).getByRole('status');
    await expect(slider).toHaveValue('180');
    await expect(stage).toHaveText('finished');
    const finished = await picture.screenshot();
    await slider.focus();
    await slider.press('Home');
    await expect(slider).toHaveValue('0');
    await expect(stage).toHaveText(/flat/i);
    await expect(async () => expect((await picture.screenshot()).equals(finished)).toBe(false)).toPass();
    const flat = await picture.screenshot();
    await slider.press('End');
    await expect(stage).toHaveText('finished');
    await expect(async () => expect((await picture.screenshot()).equals(flat)).toBe(false)).toPass();
  });
});
