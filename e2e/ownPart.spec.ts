import { expect, test, type Bench } from './bench';
import { readDxf } from './dxfFile';

interface Start {
  readonly shape: string;
  readonly part: string;
  readonly legs: number;
  readonly holes: number;
  /** The leg that is given another length, and by how much, mm. */
  readonly leg: string;
  readonly to: string;
  readonly by: number;
}

const STARTS: readonly Start[] = [
  { shape: 'Flat', part: 'Plate', legs: 1, holes: 4, leg: 'Plate', to: '90', by: 10 },
  { shape: 'Angle', part: 'Angle', legs: 2, holes: 0, leg: 'Shelf leg', to: '42.5', by: 12.5 },
  { shape: 'Channel', part: 'Channel', legs: 3, holes: 0, leg: 'Base', to: '2*20 + 3', by: 3 },
  { shape: 'Crank', part: 'Crank', legs: 3, holes: 0, leg: 'Arm', to: '64', by: 4 },
  { shape: 'Strap with feet', part: 'Strap', legs: 5, holes: 2, leg: 'Bridge', to: '49', by: -1 },
  { shape: 'Free chain', part: 'Part', legs: 4, holes: 0, leg: 'Leg B', to: '33', by: 3 },
];

async function begin(bench: Bench, shape: string): Promise<void> {
  await bench.button('New part').click();
  await bench.page.getByRole('region', { name: 'New part' }).getByRole('button', { name: new RegExp(`^${shape}`) }).click();
}

test.describe('a part of their own', () => {
  for (const { shape, part, legs, holes, leg, to, by } of STARTS) {
    test(`from the starting shape ${shape} to a DXF`, async ({ bench }) => {
      await bench.open();
      await begin(bench, shape);
      await expect(bench.tab(`5 ${part}`)).toHaveAttribute('aria-current', 'true');
      expect(await bench.legs()).toHaveLength(legs);
      const before = await bench.overall();
      await bench.enter(`${leg}, length`, to);
      const after = await bench.overall();
      expect(after.length - before.length).toBeCloseTo(by, 6);
      await bench.enter('Name of the part', `My ${shape.toLowerCase()}`);
      await bench.enter(`My ${shape.toLowerCase()}, number off`, '3');
      const file = await bench.dxf();
      expect(file.name).toMatch(new RegExp(`^My ${shape.toLowerCase()} - .* - 3 off\\.dxf$`));
      const dxf = readDxf(file.text);
      expect(dxf.size.length).toBeCloseTo(after.length, 2);
      expect(dxf.size.width).toBeCloseTo(after.width, 2);
      expect(dxf.circles).toHaveLength(holes);
    });
  }

  test('the stock chosen for the new part is the one that it is cut from', async ({ bench }) => {
    await bench.open();
    await bench.button('New part').click();
    await bench.choice('Stock of the new part').selectOption('Stainless, 1.0 sheet');
    await bench.page.getByRole('region', { name: 'New part' }).getByRole('button', { name: /^Angle/ }).click();
    await expect(bench.choice('Angle, stock').locator('option:checked')).toHaveText('Stainless, 1.0 sheet');
    const stainless = await bench.overall();
    await bench.choice('Angle, stock').selectOption('Brass, half hard, 1.6 sheet');
    const brass = await bench.overall();
    expect(brass.length).not.toBe(stainless.length);
  });

  test('another job with one part, begun in Files, can be taken back', async ({ bench }) => {
    await bench.open();
    await bench.goTo('Files');
    await bench.button('channel').click();
    expect(await bench.legs()).toEqual(['Left upstand', 'Base', 'Right upstand']);
    await expect(bench.page.getByRole('navigation', { name: 'Parts of the job' }).getByRole('button')).toHaveCount(2);
    await bench.undo();
    await bench.goTo('Parts');
    await expect(bench.tab('2 Front strap')).toBeVisible();
  });
});
