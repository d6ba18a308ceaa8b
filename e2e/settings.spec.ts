import { expect, test } from './bench';
import { INCHES, MILLIMETRES, readDxf } from './dxfFile';

test.describe('units, layers and bend lines', () => {
  test.beforeEach(async ({ bench }) => bench.open());

  test('lengths are shown in decimal inches or in fractions; the part stays the same', async ({ bench }) => {
    const before = readDxf((await bench.dxf()).text);
    await bench.goTo('Stock and sizes');
    await bench.choice('Lengths are shown in').selectOption('decimal inches');
    await bench.goTo('Parts');
    // 26 mm are 1.024 in, 112 mm are 4.409 in.
    await expect(bench.field('Foot, length')).toHaveValue('1.024');
    await expect(bench.dimension('Section', 'peg leg length')).toContainText('4.409');
    expect((await bench.overall()).length).toBeCloseTo(before.size.length / 25.4, 3);

    await bench.goTo('Stock and sizes');
    await bench.choice('Lengths are shown in').selectOption('inches and fractions');
    await bench.choice('Finest fraction').selectOption('1/16');
    await bench.goTo('Parts');
    // 26 mm are 16.38 sixteenths: 1 in, not exactly.
    await expect(bench.field('Foot, length')).toHaveValue('~1');
    await bench.tab('3 Wall bracket').click();
    await expect(bench.field('Wall leg, length')).toHaveValue('1 3/8');
    await bench.tab('2 Front strap').click();
    expect(readDxf((await bench.dxf()).text).size).toEqual(before.size);
  });

  test('another plain unit writes the old one into the entries and moves nothing', async ({ bench }) => {
    const before = readDxf((await bench.dxf()).text);
    const overall = await bench.overall();
    await bench.goTo('Stock and sizes');
    await bench.choice('A plain number is').selectOption('inches');
    await bench.goTo('Parts');
    expect(await bench.overall()).toEqual(overall);
    await bench.field('Foot, length').focus();
    await expect(bench.field('Foot, length')).toHaveValue('26 mm');
    const after = readDxf((await bench.dxf()).text);
    expect(after.size.length).toBeCloseTo(before.size.length, 8);
    expect(after.circles.map(({ x, y, radius }) => [x, y, radius].map((n) => n.toFixed(6)))).toEqual(before.circles.map(({ x, y, radius }) => [x, y, radius].map((n) => n.toFixed(6))));
    // From now on a plain number is inches.
    await bench.enter('Foot, length', '1 1/2');
    await expect(bench.dimension('Section', 'foot length')).toContainText('38.1');
    await bench.undo();
    await bench.undo();
    await bench.goTo('Parts');
    await bench.field('Foot, length').focus();
    await expect(bench.field('Foot, length')).toHaveValue('26');
  });

  test('the DXF in inches says so and holds inches', async ({ bench }) => {
    const metric = readDxf((await bench.dxf()).text);
    expect(metric.unit).toBe(MILLIMETRES);
    await bench.goTo('Files');
    await bench.choice('Unit of the file').selectOption('inches');
    const inches = readDxf((await bench.download(bench.button('DXF of Front strap'))).text);
    expect(inches.unit).toBe(INCHES);
    expect(inches.size.length * 25.4).toBeCloseTo(metric.size.length, 6);
    expect((inches.circles[0]?.radius ?? 0) * 25.4).toBeCloseTo(metric.circles[0]?.radius ?? -1, 6);
  });

  test('bend lines go out on their own layer, not at all, or as nicks', async ({ bench }) => {
    await bench.goTo('Files');
    const get = async () => readDxf((await bench.download(bench.button('DXF of Front strap'))).text);
    const layer = await get();
    expect(layer.entities.filter(({ layer }) => layer === 'BENDS')).toHaveLength(3);
    await bench.choice('Bends are shown').selectOption('not at all');
    const none = await get();
    expect(none.entities.filter(({ type }) => type === 'LINE')).toHaveLength(0);
    expect(none.layers).not.toContain('BENDS');
    expect(none.outline.vertices).toHaveLength(layer.outline.vertices?.length ?? 0);
    await bench.choice('Bends are shown').selectOption('as nicks in the edges');
    const nicks = await get();
    expect(nicks.entities.filter(({ type }) => type === 'LINE')).toHaveLength(0);
    // Three bends with a nick at both ends, each of three points more.
    expect(nicks.outline.vertices?.length).toBe((none.outline.vertices?.length ?? 0) + 18);
    expect(nicks.size).toEqual(none.size);
  });

  test('layers are renamed; a name that DXF cannot hold is refused with a sentence', async ({ bench, page }) => {
    await bench.goTo('Files');
    await bench.enter('Layer of the outline', 'Cut outside');
    await bench.enter('Layer of the cut-outs', 'Cut inside');
    const dxf = readDxf((await bench.download(bench.button('DXF of Front strap'))).text, 'Cut outside');
    expect(new Set(dxf.circles.map(({ layer }) => layer))).toEqual(new Set(['Cut inside']));
    expect(dxf.layers).toContain('Cut outside');

    const field = await bench.type('Layer of the outline', 'a<b>');
    await expect(field).toHaveAttribute('aria-invalid', 'true');
    await bench.button('DXF of Front strap').click();
    await expect(page.getByRole('paragraph').filter({ hasText: 'Front strap is not ready to go out.' })).toBeVisible();
    await field.press('Escape');
    await bench.type('Layer of the outline', '');
    await expect(bench.field('Layer of the outline')).toHaveAttribute('aria-invalid', 'true');
  });

  test('the step for dragging is the job’s own', async ({ bench }) => {
    await bench.goTo('Stock and sizes');
    await bench.enter('Step for lengths', '5');
    await bench.goTo('Parts');
    const px = await bench.pxPerMm();
    const hole = await bench.blank.locator('.hole').first().boundingBox();
    if (!hole) throw new Error('There is no hole on the blank.');
    await bench.drag({ x: hole.x + hole.width / 2, y: hole.y + hole.height / 2 }, { x: Math.round(px * 3), y: 0 });
    expect((await bench.runningDimensions())[0]).toBe(10);
  });

  test('another stock or rule moves the blank and leaves the folded sizes', async ({ bench }) => {
    const before = await bench.overall();
    await bench.button('Sizes and rule').click();
    await bench.choice('Brass, half hard, 1.6 sheet, rule').selectOption({ label: 'DIN 6935' });
    await bench.goTo('Parts');
    expect((await bench.overall()).length).not.toBe(before.length);
    await expect(bench.field('Peg leg, length')).toHaveValue('112.00');
    await bench.undo();
    await bench.goTo('Parts');
    expect(await bench.overall()).toEqual(before);
  });
});
