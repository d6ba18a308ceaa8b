/**
 * What goes over the net before the first view can be used: every file that the page asks for until the section stands drawn, and
 * the fonts that its lettering asks for then. Texts are counted as gzip (level 9, as a server packs ahead), fonts as they are, for
 * they are packed already; headers are not counted. The 3D view is asked for by the first view and loads behind it: counted apart.
 */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { served } from './served';

/** Aim of the project. */
const AIM_KB = 230;
const PACKED = /\.woff2$/;
const FOLDED = /\/FoldedView-[^/]*\.(js|css)$/;

interface Asked {
  readonly path: string;
  /** ms after the page was asked for. */
  readonly at: number;
}

const kB = (bytes: number): string => `${(bytes / 1000).toFixed(1).padStart(7)} kB`;

export async function benchFirstLoad(): Promise<void> {
  await served(async ({ page, address, folder }) => {
    await page.addInitScript(() => {
      new MutationObserver((_, watch) => {
        if (!document.querySelector('[role=group] svg .outline')) return;
        performance.mark('first view');
        watch.disconnect();
      }).observe(document, { subtree: true, childList: true });
    });
    await page.goto(address, { waitUntil: 'networkidle' });
    await page.getByRole('img', { name: /bent:/ }).waitFor();
    await page.waitForLoadState('networkidle');
    const { asked, drawn } = await page.evaluate(() => ({
      asked: performance.getEntriesByType('resource').map(({ name, startTime }) => ({ path: new URL(name).pathname, at: startTime })),
      drawn: performance.getEntriesByName('first view')[0]?.startTime ?? Number.NaN,
    }));
    if (!(drawn > 0)) throw new Error('The first view was never drawn.');
    const size = async (path: string): Promise<number> => {
      const bytes = await readFile(join(folder, path === '/' ? 'index.html' : path));
      return PACKED.test(path) ? bytes.length : gzipSync(bytes, { level: 9 }).length;
    };
    const all: readonly Asked[] = [{ path: '/', at: 0 }, ...asked.filter(({ path }) => path !== '/')];
    const unique = [...new Map(all.map((each) => [each.path, each])).values()];
    const groups = {
      'before the first view': unique.filter(({ path, at }) => !FOLDED.test(path) && (at <= drawn || PACKED.test(path))),
      'the 3D view, behind it': unique.filter(({ path }) => FOLDED.test(path)),
      'other, behind it': unique.filter(({ path, at }) => !FOLDED.test(path) && at > drawn && !PACKED.test(path)),
    };
    for (const [name, files] of Object.entries(groups)) {
      if (files.length === 0) continue;
      const sizes = await Promise.all(files.map(({ path }) => size(path)));
      files.forEach(({ path }, i) => console.log(`  ${kB(sizes[i] ?? 0)}  ${path}`));
      const sum = sizes.reduce((total, bytes) => total + bytes, 0);
      const aim = name === 'before the first view' ? ` (aim under ${AIM_KB} kB: ${sum < AIM_KB * 1000 ? 'met' : 'not met'}, ${((100 * sum) / (AIM_KB * 1000)).toFixed(0)} % of it)` : '';
      console.log(`${kB(sum)}  ${name}${aim}`);
    }
  });
}
