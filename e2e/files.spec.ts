import { expect, test } from './bench';

const CHANGED = '26.5';

test.describe('files', () => {
  test('a job saved to a file opens again as it was, and undo brings the job before it back', async ({ bench, page }) => {
    await bench.open();
    await bench.enter('Foot, length', CHANGED);
    const saved = await bench.savedJob();
    await bench.enter('Foot, length', '40');
    await bench.openJobFile('mine.json', saved);
    await expect(page.getByRole('paragraph').filter({ hasText: /^Opened mine\.json\./ })).toBeVisible();
    await bench.goTo('Parts');
    await bench.tab('2 Front strap').click();
    await expect(bench.field('Foot, length')).toHaveValue('26.50');
    expect(await bench.savedJob()).toBe(saved);
    await bench.undo();
    // Undo goes back to where the job was opened.
    await bench.goTo('Parts');
    await bench.tab('2 Front strap').click();
    await expect(bench.field('Foot, length')).toHaveValue('40.00');
  });

  test('a file dropped on the page is opened', async ({ bench, page }) => {
    await bench.open();
    const saved = (await bench.savedJob()).replace('"name": "Roof-vent peg stay"', '"name": "Dropped stay"');
    const data = await page.evaluateHandle((text) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([text], 'dropped.json', { type: 'application/json' }));
      return transfer;
    }, saved);
    await page.dispatchEvent('main', 'drop', { dataTransfer: data });
    await expect(page.getByText('Dropped stay')).toBeVisible();
  });

  test('files that are no good are refused with a sentence, and the open job is untouched', async ({ bench, page }) => {
    await bench.open();
    await bench.enter('Foot, length', CHANGED);
    const saved = await bench.savedJob();
    const newer = saved.replace('"version": 1', '"version": 99');
    const broken = saved.replace('"way": "up"', '"way": "sideways"').replace('"quantity": "12"', '"quantity": 12');
    const files: readonly (readonly [name: string, text: string | Buffer, says: readonly RegExp[]])[] = [
      ['truncated.json', saved.slice(0, saved.length / 2), [/The file stops in the middle, on line \d+/]],
      ['newer.json', newer, [/made by a newer Bendwright \(version 99; this one reads up to 1\)/]],
      ['letter.json', 'Dear sir, please cut me twelve.', [/Line 1, place 1/]],
      ['list.json', '[1, 2, 3]', [/not a Bendwright job/]],
      ['other.json', '{"format":"recipe"}', [/It calls itself "recipe"/]],
      ['empty.json', '', [/./]],
      ['broken.json', broken, [/up.*down|down.*up/, /quantity/i]],
      ['picture.json', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 0xff, 0xfe, 0x80]), [/./]],
      ['nothing.json', saved.replace(/"parts": \[[\s\S]*\],\n {2}"dxf"/, '"parts": [],\n  "dxf"'), [/part/]],
    ];
    for (const [name, text, sentences] of files) {
      await bench.openJobFile(name, text);
      const refusal = page.getByText(`${name} was not opened; the job on the bench is untouched.`);
      await expect(refusal).toBeVisible();
      const faults = page.getByRole('listitem').filter({ hasText: /\S/ });
      await expect(faults.first()).toBeVisible();
      for (const says of sentences) await expect(faults.filter({ hasText: says }).first(), name).toBeVisible();
      await bench.button('Clear').click();
      await expect(refusal).toHaveCount(0);
    }
    await bench.goTo('Parts');
    await expect(bench.field('Foot, length')).toHaveValue('26.50');
    expect(await bench.savedJob()).toBe(saved);
  });

  test('a file of 50 MB is refused at once', async ({ bench, page }, testInfo) => {
    await bench.open();
    const { writeFile } = await import('node:fs/promises');
    const path = testInfo.outputPath('large.json');
    const before = await bench.savedJob();
    await writeFile(path, `${before.slice(0, -3)},"more":"${'x'.repeat(50_000_000)}"}`);
    await bench.goTo('Files');
    await page.getByLabel(/^Open a job/).setInputFiles(path);
    await expect(page.getByText('This file is too large to be a job. Choose one saved by Bendwright.')).toBeVisible();
    await bench.goTo('Parts');
    expect(await bench.savedJob()).toBe(before);
  });

  test('a file that was refused can be chosen once more after it was put right', async ({ bench, page }) => {
    await bench.open();
    const saved = await bench.savedJob();
    await bench.openJobFile('same.json', saved.slice(0, 200));
    await expect(page.getByRole('paragraph').filter({ hasText: /^same\.json was not opened/ })).toBeVisible();
    await bench.openJobFile('same.json', saved);
    await bench.goTo('Files');
    await expect(page.getByRole('paragraph').filter({ hasText: /^Opened same\.json/ })).toBeVisible();
    await expect(page.getByRole('paragraph').filter({ hasText: /^same\.json was not opened/ })).toHaveCount(0);
  });
});
