/** `npm run bench`: all benchmarks, or those named: `npm run bench -- core`. Times are of this machine; compare the ratios. */
import { benchBrowser } from './browser';
import { benchCore } from './core';
import { benchFirstLoad } from './firstLoad';

const all: Readonly<Record<string, () => Promise<void>>> = { core: benchCore, browser: benchBrowser, firstLoad: benchFirstLoad };
const wanted = process.argv.slice(2);
for (const [name, bench] of Object.entries(all)) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  console.log(`== ${name}`);
  await bench();
}
