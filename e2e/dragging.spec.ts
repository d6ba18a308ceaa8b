import { boxOf, expect, middleOf, test, type Bench } from './bench';

const value = async (bench: Bench, field: string): Promise<number> => Number(await bench.field(field).inputValue());

/** Whether a figure sits on the job's step, half a millimetre in the example. */
const onStep = (mm: number): boolean => Math.abs(mm * 2 - Math.round(mm * 2)) < 1e-6;

test.describe('dragging and looking', () => {
  test.beforeEach(async ({ bench }) => bench.open());

  test('a leg is drawn out in the section, on the job’s step, and one undo takes the drag back', async ({ bench }) => {
    const px = await bench.pxPerMm();
    const lip = (await Promise.all([0, 1, 2, 3].map((i) => boxOf(bench.section.locator('.leg-area').nth(i))))).find(({ width, height }) => height > 2 * width);
    if (!lip) throw new Error('No leg stands up in the section.');
    await bench.drag({ x: lip.x + lip.width / 2, y: lip.y + 2 }, { x: 0, y: -Math.round(px * 3.2) });
    const after = await value(bench, 'Lip, length');
    expect(after).toBeGreaterThan(14);
    expect(after).toBeLessThan(16.3);
    expect(onStep(after)).toBe(true);
    await expect(bench.button(`Undo lip length 12 to ${after}`)).toBeVisible();
    // The drag ends in the field over the figure, to be put right by typing.
    await expect(bench.field('Lip length')).toBeFocused();
    await bench.field('Lip length').press('Escape');
    await bench.undo();
    await expect(bench.field('Lip, length')).toHaveValue('12.00');
    await expect(bench.button('Undo')).toHaveAttribute('aria-disabled', 'true');
    await bench.redo();
    await expect.poll(() => value(bench, 'Lip, length')).toBe(after);
  });

  test('a leg drawn near the length of another takes that length, and says so', async ({ bench }) => {
    const px = await bench.pxPerMm();
    const lip = (await Promise.all([0, 1, 2, 3].map((i) => boxOf(bench.section.locator('.leg-area').nth(i))))).find(({ width, height }) => height > 2 * width);
    if (!lip) throw new Error('No leg stands up in the section.');
    await bench.drag({ x: lip.x + lip.width / 2, y: lip.y + 2 }, { x: 0, y: -Math.round(px * 5.8) }, { hold: true });
    await expect(bench.section.getByRole('status')).toContainText('18.00 inside');
    await expect(bench.section.getByRole('status')).toContainText('same as crank');
    await bench.page.mouse.up();
    await expect(bench.field('Lip, length')).toHaveValue('18.00');
  });

  test('a bend drawn along in the section lengthens the leg before it', async ({ bench }) => {
    const px = await bench.pxPerMm();
    const overall = await bench.overall();
    const zones = await Promise.all((await bench.section.locator('.bend-zone').all()).map(boxOf));
    const last = zones.toSorted((a, b) => b.x - a.x)[0];
    if (!last) throw new Error('There is no bend in the section.');
    await bench.drag({ x: last.x + last.width / 2, y: last.y + last.height / 2 }, { x: -Math.round(px * 6), y: 0 });
    const after = await value(bench, 'Peg leg, length');
    expect(after).toBeGreaterThan(103);
    expect(after).toBeLessThan(109);
    expect((await bench.overall()).length - overall.length).toBeCloseTo(after - 112, 6);
  });

  test('a hole is moved on the blank, on the step, and the running dimensions follow', async ({ bench }) => {
    const px = await bench.pxPerMm();
    const before = await bench.runningDimensions();
    const foot = await middleOf(bench.blank.locator('.hole').first());
    await bench.drag(foot, { x: Math.round(px * 3.1), y: 0 });
    const moved = (await bench.runningDimensions())[0] ?? 0;
    expect(moved - (before[0] ?? 0)).toBeGreaterThan(2);
    expect(moved - (before[0] ?? 0)).toBeLessThan(4.2);
    expect(onStep(moved)).toBe(true);
    expect(await bench.runningDimensions()).toEqual([moved, ...before.slice(1)]);
    await expect(bench.field('Foot hole, distance across')).toHaveValue('0.00');
    await bench.page.keyboard.press('Escape');
    await bench.undo();
    expect(await bench.runningDimensions()).toEqual(before);
    await expect(bench.button('Undo')).toHaveAttribute('aria-disabled', 'true');
  });

  test('Alt while dragging leaves the step', async ({ bench, page }) => {
    const px = await bench.pxPerMm();
    const foot = await middleOf(bench.blank.locator('.hole').first());
    await page.keyboard.down('Alt');
    await bench.drag(foot, { x: Math.round(px * 3.3), y: 0 });
    await page.keyboard.up('Alt');
    const moved = (await bench.runningDimensions())[0] ?? 0;
    // The move is by whole pixels, so that it lands beside the step unless it is drawn to it.
    expect(Math.abs(moved - 8 - Math.round(px * 3.3) / px)).toBeLessThan(0.03);
    expect(onStep(moved)).toBe(false);
  });

  test('Esc during a drag takes it back at once and leaves no step', async ({ bench, page }) => {
    const before = await bench.savedJob();
    const foot = await middleOf(bench.blank.locator('.hole').first());
    await bench.drag(foot, { x: 40, y: 0 }, { hold: true });
    expect((await bench.runningDimensions())[0]).not.toBe(8);
    await page.keyboard.press('Escape');
    await expect.poll(async () => (await bench.runningDimensions())[0]).toBe(8);
    await page.mouse.up();
    expect((await bench.runningDimensions())[0]).toBe(8);
    await expect(bench.button('Undo')).toHaveAttribute('aria-disabled', 'true');
    expect(await bench.savedJob()).toBe(before);
  });

  test('the wheel zooms about the pointer, a drag on paper pans, Fit brings all back', async ({ bench, page }) => {
    const outline = bench.blank.locator('.outline').first();
    const fitted = await boxOf(outline);
    const host = await boxOf(bench.blank);
    const hole = bench.blank.locator('.hole').first();
    const before = await middleOf(hole);
    await bench.blank.focus();
    await page.mouse.move(before.x, before.y);
    await page.mouse.wheel(0, -300);
    await expect.poll(async () => (await boxOf(outline)).width).toBeGreaterThan(fitted.width * 1.5);
    const zoomed = await middleOf(hole);
    expect(Math.hypot(zoomed.x - before.x, zoomed.y - before.y)).toBeLessThan(1.5);
    await expect(bench.button('Fit')).toHaveAttribute('aria-pressed', 'false');

    // The upper left corner of the figure is bare paper.
    await bench.drag({ x: host.x + 8, y: host.y + 8 }, { x: 60, y: 0 });
    const panned = await middleOf(hole);
    expect(panned.x - zoomed.x).toBeCloseTo(60, 0);

    await bench.button('Fit').click();
    await expect(bench.button('Fit')).toHaveAttribute('aria-pressed', 'true');
    const again = await boxOf(outline);
    expect(again.width).toBeCloseTo(fitted.width, 0);
    expect(again.x).toBeCloseTo(fitted.x, 0);
    await bench.button('Closer').click();
    await expect.poll(async () => (await boxOf(outline)).width / fitted.width).toBeCloseTo(1.25, 1);
    await bench.button('Further').click();
    await expect.poll(async () => (await boxOf(outline)).width / fitted.width).toBeCloseTo(1, 1);
  });

  test('the bent part is turned by a drag and by arrow keys', async ({ bench, page }) => {
    const picture = page.getByRole('img', { name: /^Front strap bent/ });
    await expect(page.getByRole('slider', { name: 'Bend' })).toBeVisible();
    const before = await picture.screenshot();
    const middle = await middleOf(picture);
    await bench.drag(middle, { x: 60, y: 10 });
    await expect(async () => expect((await picture.screenshot()).equals(before)).toBe(false)).toPass();
    const turned = await picture.screenshot();
    await picture.focus();
    await picture.press('ArrowRight');
    await expect(async () => expect((await picture.screenshot()).equals(turned)).toBe(false)).toPass();
    // Turning the picture changes nothing of the job.
    await expect(bench.button('Undo')).toHaveAttribute('aria-disabled', 'true');
  });
});

test.describe('by touch', () => {
  test.use({ hasTouch: true, viewport: { width: 1024, height: 768 } });

  test('two fingers spread on the blank bring it closer', async ({ bench, page, context }) => {
    await bench.open();
    await bench.blank.scrollIntoViewIfNeeded();
    const outline = bench.blank.locator('.outline').first();
    const before = await boxOf(outline);
    const at = await middleOf(bench.blank);
    const touch = await context.newCDPSession(page);
    const fingers = (apart: number) => [{ x: at.x - apart, y: at.y, id: 1 }, { x: at.x + apart, y: at.y, id: 2 }];
    await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: fingers(40) });
    for (const apart of [50, 60, 70, 80]) await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: fingers(apart) });
    await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    await expect.poll(async () => (await boxOf(outline)).width / before.width).toBeCloseTo(2, 1);
    await expect(bench.button('Undo')).toHaveAttribute('aria-disabled', 'true');
    await bench.button('Fit').tap();
    await expect.poll(async () => (await boxOf(outline)).width / before.width).toBeCloseTo(1, 2);
  });

  test('one finger drags a hole, and the figure stands clear of the finger', async ({ bench, page, context }) => {
    await bench.open();
    await bench.blank.scrollIntoViewIfNeeded();
    const hole = await middleOf(bench.blank.locator('.hole').first());
    const touch = await context.newCDPSession(page);
    await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ ...hole, id: 1 }] });
    for (const by of [8, 16, 24, 32]) await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: [{ x: hole.x + by, y: hole.y, id: 1 }] });
    const live = bench.blank.getByRole('status');
    await expect(live).toBeVisible();
    const box = await boxOf(live);
    expect(box.y + box.height).toBeLessThan(hole.y - 20);
    await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    expect((await bench.runningDimensions())[0]).toBeGreaterThan(10);
  });
});
