import { expect, test } from './bench';
import { readDxf } from './dxfFile';

/** Entry, and what it comes to: the figure shown in the table, in millimetres. By the length of the inch, 25.4 mm, and the job's scale of 4. */
const READ: readonly (readonly [entry: string, shows: string])[] = [
  ['3/8in', '9.53'],
  ['3/8"', '9.53'],
  ['12,5', '12.50'],
  ['12.5', '12.50'],
  ['20 mm', '20.00'],
  [`1' 3-1/2"`, '393.70'],
  ['(2+1/4)in', '57.15'],
  [`full 3' 6"`, '266.70'],
  ['pitch + 2*thickness', '18.20'],
];

/** Entries that cannot be read, and what must be in the sentence about them. */
const REFUSED: readonly (readonly [entry: string, says: RegExp])[] = [
  ['ptch + 2', /ptch.*pitch/],
  ['26/0', /nought|zero|divi/i],
  ['20 mm * 3 mm', /length is wanted/],
  ['45°', /length is wanted/],
  ['2 kg', /kg/],
  ['', /length/i],
  ['1,500', /1,500/],
];

test.describe('numbers as people type them', () => {
  test('lengths in fractions, feet, commas, names and full size are read', async ({ bench }) => {
    await bench.open();
    for (const [entry, shows] of READ) {
      await bench.enter('Foot, length', entry);
      await bench.field('Name of the part').focus();
      await expect(bench.field('Foot, length'), entry).toHaveValue(shows);
      await expect(bench.page.locator('.row-says'), entry).toHaveCount(0);
      // What was typed is kept: it stands there again when the field has the focus.
      await bench.field('Foot, length').focus();
      await expect(bench.field('Foot, length')).toHaveValue(entry);
    }
  });

  test('what cannot be read is told at the field; the drawing, the entry and the file stay safe', async ({ bench, page }) => {
    await bench.open();
    const overall = await bench.overall();
    for (const [entry, says] of REFUSED) {
      // At once: on the way key by key some of these pass through entries that are good.
      const field = await bench.paste('Foot, length', entry);
      await expect(field, entry).toHaveAttribute('aria-invalid', 'true');
      await expect(field, entry).toHaveAccessibleDescription(says);
      await expect(field, entry).toHaveValue(entry);
    }
    // The last good drawing stays, and shows that it is not what is typed.
    expect(await bench.overall()).toEqual(overall);
    await expect(bench.section).toHaveClass(/stale/);
    await expect(bench.blank).toHaveClass(/stale/);
    await expect(page.getByText('The last shape that could be bent.')).toBeVisible();

    const sentence = await bench.field('Foot, length').evaluate((input) => document.getElementById(input.getAttribute('aria-describedby')?.split(' ')[0] ?? '')?.textContent ?? '');
    await bench.cutIt.getByRole('button', { name: /^DXF for the bureau/ }).click();
    await expect(bench.cutIt.getByText('Front strap is not ready to go out.')).toBeVisible();
    await expect(bench.cutIt.getByText(sentence)).toBeVisible();
    await expect(bench.tab('2 Front strap')).toContainText('1 to put right');

    await bench.enter('Foot, length', '26');
    await expect(bench.section).not.toHaveClass(/stale/);
    await expect(bench.field('Foot, length')).toHaveAttribute('aria-invalid', 'false');
    expect(readDxf((await bench.dxf()).text).size.length).toBeCloseTo(overall.length, 2);
  });

  test('Esc puts back what stood there before, even out of a wrong entry', async ({ bench }) => {
    await bench.open();
    const before = await bench.savedJob();
    const field = await bench.type('Foot, length', '3 pigs');
    await expect(field).toHaveAttribute('aria-invalid', 'true');
    await field.press('Escape');
    await expect(field).toHaveValue('26');
    await expect(field).toHaveAttribute('aria-invalid', 'false');
    await expect(bench.section).not.toHaveClass(/stale/);
    await expect(bench.button('Undo')).toHaveAttribute('aria-disabled', 'true');
    expect(await bench.savedJob()).toBe(before);
  });

  test('names that need each other in a circle are told with the whole circle', async ({ bench, page }) => {
    await bench.open();
    await bench.goTo('Stock and sizes');
    const field = await bench.type('Size pitch', 'pegHole + 1');
    await expect(field).toHaveAttribute('aria-invalid', 'false');
    await field.press('Enter');
    await bench.enter('Size pegHole', 'pitch - 1');
    await expect(bench.field('Size pegHole')).toHaveAttribute('aria-invalid', 'true');
    await expect(page.getByText(/go round in a circle: .*pitch needs pegHole/).first()).toBeVisible();
    await bench.goTo('Parts');
    await expect(bench.tab('2 Front strap')).toContainText('to put right');
    await bench.cutIt.getByRole('button', { name: /^DXF for the bureau/ }).click();
    await expect(bench.cutIt.getByText(/circle/).first()).toBeVisible();
  });

  test('a field opened over its figure in the section takes the same entries', async ({ bench }) => {
    await bench.open();
    await bench.dimension('Section', 'peg leg length').click();
    const field = bench.field('Peg leg length');
    await expect(field).toBeFocused();
    await field.pressSequentially('6*pitch + 1in');
    await expect(field).toHaveAccessibleDescription(/115\.40/);
    await field.press('Enter');
    await expect(field).toHaveCount(0);
    await expect(bench.field('Peg leg, length')).toHaveValue('115.40');
    await expect(bench.dimension('Section', 'peg leg length')).toContainText('115.4');

    await bench.dimension('Section', 'foot length').click();
    await bench.field('Foot length').pressSequentially('1/0');
    await expect(bench.field('Foot length')).toHaveAttribute('aria-invalid', 'true');
    await bench.field('Foot length').press('Escape');
    await expect(bench.field('Foot, length')).toHaveValue('26.00');
  });

  test('arrow keys step a number by 0.1, with Shift by 1', async ({ bench }) => {
    await bench.open();
    const field = bench.field('Lip, length');
    await field.focus();
    await field.press('ArrowUp');
    await expect(field).toHaveValue('12.1');
    await field.press('Shift+ArrowUp');
    await expect(field).toHaveValue('13.1');
    await field.press('Enter');
    await expect(bench.dimension('Section', 'lip length')).toContainText('13.1');
    // All of it is one step of undo.
    await bench.undo();
    await expect(bench.dimension('Section', 'lip length')).toContainText('12');
    await expect(bench.button('Undo')).toHaveAttribute('aria-disabled', 'true');
  });
});
