import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { expect, test } from './bench';

const run = promisify(execFile);

/** All straight upright and level lines of a PDF's first page, mm, as an independent reader draws them. */
async function lineLengths(pdf: Buffer | Uint8Array): Promise<number[]> {
  const desk = await mkdtemp(join(tmpdir(), 'papers-'));
  try {
    await writeFile(join(desk, 'page.pdf'), pdf);
    await run('pdftocairo', ['-svg', '-noshrink', '-nocenter', '-paper', 'match', '-f', '1', '-l', '1', 'page.pdf', 'page.svg'], { cwd: desk });
    const svg = await readFile(join(desk, 'page.svg'), 'utf8');
    const lengths: number[] = [];
    for (const [path] of svg.matchAll(/<path[^>]*\bfill="none"[^>]*>/g)) {
      const d = /\bd="M ([-\d.]+) ([-\d.]+) L ([-\d.]+) ([-\d.]+)\s*"/.exec(path);
      const matrix = /matrix\(([^)]+)\)/.exec(path)?.[1]?.split(',').map(Number) ?? [1, 0, 0, 1, 0, 0];
      if (!d) continue;
      const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = d.slice(1).map(Number);
      const dx = (matrix[0] ?? 1) * (x1 - x0) + (matrix[2] ?? 0) * (y1 - y0);
      const dy = (matrix[1] ?? 0) * (x1 - x0) + (matrix[3] ?? 1) * (y1 - y0);
      // A point is 1/72 in.
      lengths.push((Math.hypot(dx, dy) * 25.4) / 72);
    }
    return lengths;
  } finally {
    await rm(desk, { recursive: true });
  }
}

/** Lines of this length to 0.01 mm: the check bars, one across and one up. */
const ofLength = (lengths: readonly number[], mm: number): number => lengths.filter((length) => Math.abs(length - mm) <= 0.01).length;

test.describe('papers', () => {
  test('the template as PDF is full size: both bars, both ways', async ({ bench, page }) => {
    await bench.open();
    await bench.goTo('Papers');
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: /^PDF/ }).click();
    const lengths = await lineLengths(await readFile(await (await download).path()));
    expect(ofLength(lengths, 100)).toBe(2);
    expect(ofLength(lengths, 101.6)).toBe(2);
  });

  test('what Chromium prints of the page is full size too', async ({ bench, page }) => {
    await bench.open();
    await bench.goTo('Papers');
    await expect(page.getByRole('heading', { level: 1, name: 'Papers' })).toBeAttached();
    await page.evaluate(() => {
      window.print = () => undefined;
    });
    await page.getByRole('button', { name: /^Print/ }).click();
    const lengths = await lineLengths(await page.pdf({ preferCSSPageSize: true }));
    expect(ofLength(lengths, 100)).toBe(2);
    expect(ofLength(lengths, 101.6)).toBe(2);
  });
});
