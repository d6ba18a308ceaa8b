import { expect, test, type Bench } from './bench';
import { readDxf } from './dxfFile';

const legSheet = (bench: Bench, letter: string) => bench.page.getByRole('region', { name: `Sheet of leg ${letter}`, exact: true });

/** Takes hold of a leg in the table and presses a word on its sheet. */
async function does(bench: Bench, letter: string, words: string): Promise<void> {
  await bench.page.getByRole('button', { name: new RegExp(`^Leg ${letter}, `) }).click();
  await legSheet(bench, letter).getByRole('button', { name: words, exact: true }).click();
}

/** Name of the step that undo would take back, as the button tells it. */
const nextUndo = (bench: Bench) => bench.button(/^Undo/);

test.describe('legs and cut-outs', () => {
  test.beforeEach(async ({ bench }) => bench.open());

  test('legs are added, split, moved, reversed and deleted; each step has a name and goes back to the very same job', async ({ bench, page }) => {
    const start = await bench.savedJob();
    const developed = (await bench.overall()).length;

    await does(bench, 'A', 'Add leg after');
    expect(await bench.legs()).toEqual(['Foot', '', 'Crank', 'Peg leg', 'Lip']);
    await expect(nextUndo(bench)).toHaveAccessibleName('Undo adding a leg');
    expect((await bench.overall()).length).toBeGreaterThan(developed + 10);
    await bench.enter('Name of leg B', 'Riser');

    await does(bench, 'D', 'Split the leg in its middle by a bend of 90°');
    expect(await bench.legs()).toHaveLength(6);
    await expect(nextUndo(bench)).toHaveAccessibleName('Undo splitting Peg leg');

    await does(bench, 'B', 'Move down');
    expect((await bench.legs()).slice(0, 3)).toEqual(['Foot', 'Crank', 'Riser']);
    await expect(nextUndo(bench)).toHaveAccessibleName('Undo moving Riser');

    await does(bench, 'A', 'Reverse order');
    expect((await bench.legs()).at(-1)).toBe('Foot');
    await expect(nextUndo(bench)).toHaveAccessibleName('Undo reversing the order of the legs');

    await page.getByRole('button', { name: /^Leg [A-Z], Crank$/ }).click();
    await page.keyboard.press('Delete');
    expect(await bench.legs()).not.toContain('Crank');
    await expect(nextUndo(bench)).toHaveAccessibleName(/^Undo deleting leg [A-Z] \(Crank\)$/);

    const end = await bench.savedJob();
    const steps = 6;
    for (let i = 0; i < steps; i++) await bench.undo();
    await expect(bench.button('Undo')).toHaveAttribute('aria-disabled', 'true');
    expect(await bench.savedJob()).toBe(start);
    expect((await bench.overall()).length).toBe(developed);
    for (let i = 0; i < steps; i++) await bench.redo();
    await expect(bench.button('Redo')).toHaveAttribute('aria-disabled', 'true');
    expect(await bench.savedJob()).toBe(end);
  });

  test('reversing twice gives the same job again, and once a blank of the same size', async ({ bench }) => {
    const start = await bench.savedJob();
    const size = await bench.overall();
    await bench.button('Reverse the order of the legs').click();
    expect(await bench.legs()).toEqual(['Lip', 'Peg leg', 'Crank', 'Foot']);
    expect(await bench.overall()).toEqual(size);
    await bench.button('Reverse the order of the legs').click();
    expect(await bench.savedJob()).toBe(start);
  });

  test('a leg that has only room for its bends is told by name and amount', async ({ bench }) => {
    // Centre-line setback of 45° at r 2, t 1.6: 2.8 tan 22.5° = 1.16 at each end.
    await bench.enter('Crank, length', '2');
    await expect(bench.checks.getByText(/^Leg B \(Crank\) is too short for its two bends by 0\.32 mm\./).first()).toBeVisible();
    await bench.cutIt.getByRole('button', { name: /^DXF for the bureau/ }).click();
    await expect(bench.cutIt.getByText(/^Leg B \(Crank\) is too short for its two bends by 0\.32 mm\./)).toBeVisible();
  });

  test('a cut-out is added, changed to a slot in a row, copied, moved and deleted', async ({ bench }) => {
    const start = await bench.savedJob();
    await bench.choice('Leg for a new hole').selectOption('Foot');
    await bench.button('Add a hole').click();
    await expect(nextUndo(bench)).toHaveAccessibleName('Undo adding a hole');
    expect(await bench.runningDimensions()).toHaveLength(9);
    const sheet = bench.page.getByRole('region', { name: /^Sheet of Hole 2$/ });
    await expect(sheet).toBeVisible();
    await bench.enter('Hole 2, diameter', '3');
    await bench.enter('Hole 2, distance along', '17');
    expect(await bench.runningDimensions()).toContain(17);
    await bench.choice('Hole 2, made').selectOption('in a row');
    await bench.choice('Hole 2, row runs').selectOption('across the leg');
    await bench.enter('Hole 2, pitch', '6');
    expect(readDxf((await bench.dxf()).text).circles.filter(({ radius }) => radius === 1.5).map(({ x, y }) => [x, Math.abs(y - 8)])).toEqual([[17, 3], [17, 3]]);

    await bench.choice('Hole 2, made').selectOption('once');
    await bench.choice('Hole 2, kind').selectOption('slot');
    await expect(bench.page.getByRole('region', { name: /^Sheet of Slot 2$/ })).toBeVisible();
    await bench.enter('Slot 2, length', '5');
    const dxf = readDxf((await bench.dxf()).text);
    const slot = dxf.entities.find(({ type, layer }) => type === 'LWPOLYLINE' && layer === 'CUTOUTS');
    // A slot is two straights and two half turns: bulge 1.
    expect(slot?.vertices?.map(({ bulge }) => Math.abs(bulge ?? 0)).toSorted()).toEqual([0, 0, 1, 1]);

    await bench.page.getByRole('region', { name: /^Sheet of Slot 2$/ }).getByRole('button', { name: 'Copy', exact: true }).click();
    await expect(nextUndo(bench)).toHaveAccessibleName('Undo copying a hole');
    const copy = bench.page.getByRole('region', { name: /^Sheet of Slot 3$/ });
    await bench.choice('Slot 3, in leg').selectOption('Lip');
    await expect(bench.page.getByRole('region', { name: 'Sheet of leg D', exact: true }).or(bench.page.getByRole('region', { name: /^Sheet of Slot/ }))).toBeVisible();
    await bench.undo();
    await expect(copy).toBeVisible();
    await copy.getByRole('button', { name: 'Delete', exact: true }).click();
    await expect(copy).toHaveCount(0);
    await expect(nextUndo(bench)).toHaveAccessibleName(/^Undo deleting/);

    // Back to the start: as many times as there is something to undo.
    while ((await nextUndo(bench).getAttribute('aria-disabled')) !== 'true') await bench.undo();
    expect(await bench.savedJob()).toBe(start);
    expect(await bench.runningDimensions()).toHaveLength(8);
  });

  test('parts are copied, moved, deleted and had back', async ({ bench, page }) => {
    const start = await bench.savedJob();
    const tabs = page.getByRole('navigation', { name: 'Parts of the job' }).getByRole('button');
    await bench.button('Copy the part').click();
    await expect(tabs).toHaveCount(6);
    await bench.undo();
    await bench.button('Move the part left').click();
    await expect(tabs.first()).toContainText('1 Front strap');
    await bench.button('Delete the part').click();
    await expect(tabs).toHaveCount(4);
    await bench.undo();
    await bench.undo();
    await expect(tabs.nth(1)).toContainText('2 Front strap');
    expect(await bench.savedJob()).toBe(start);
  });

  test('what cannot be done stays in its place and says why', async ({ bench, page }) => {
    await bench.tab('4 Lever').click();
    const reverse = bench.button('Reverse the order of the legs');
    await expect(reverse).toHaveAttribute('aria-disabled', 'true');
    // By pointer: a word that cannot be used now is still there to be pressed and answers.
    await reverse.click({ force: true });
    await expect(page.getByRole('status').filter({ hasText: 'There is only one leg.' })).toBeAttached();
    await bench.button('Leg A, Lever').click();
    await page.keyboard.press('Delete');
    await expect(page.getByRole('status').filter({ hasText: 'The last leg of a part stays.' })).toBeAttached();
    expect(await bench.legs()).toEqual(['Lever']);
  });
});
