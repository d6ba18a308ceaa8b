/** The app as built, served and opened in the system's Chromium: for the benchmarks that need a browser. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Page } from '@playwright/test';
import { build, preview } from 'vite';

export interface Served {
  readonly page: Page;
  readonly address: string;
  /** The folder that is served. */
  readonly folder: string;
}

/** Builds into a folder of its own, opens a fresh browser without opening the page, and clears all of it away afterwards. */
export async function served(work: (served: Served) => Promise<void>): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'bendwright-bench-'));
  try {
    await build({ logLevel: 'error', build: { outDir: folder, emptyOutDir: true } });
    const server = await preview({ logLevel: 'error', build: { outDir: folder }, preview: { host: '127.0.0.1', port: 0 } });
    const browser = await chromium.launch({
      executablePath: process.env['CHROMIUM'] ?? '/usr/bin/chromium',
      args: ['--no-sandbox', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync', '--use-angle=swiftshader', '--enable-unsafe-swiftshader'],
    });
    try {
      const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, locale: 'en-GB' });
      const address = server.resolvedUrls?.local[0];
      if (address === undefined) throw new Error('The server of the built app gave no address.');
      await work({ page, address, folder });
    } finally {
      await browser.close();
      await server.close();
    }
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
