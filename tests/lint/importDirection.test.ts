import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';

/** The lint rule is only worth something if it can fail: each forbidden import is tried on a tree of its own. */
const root = resolve(import.meta.dirname, '../..');
const tree = mkdtempSync(join(tmpdir(), 'rooms-'));
cpSync(join(root, '.oxlintrc.json'), join(tree, '.oxlintrc.json'));
afterAll(() => rmSync(tree, { recursive: true }));

/** Whether the lint passes for a file in one room that imports from another. */
function passes(from: string, importLine: string): boolean {
  const file = join(tree, 'src', from, 'probe.ts');
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, `${importLine}\nexport const used: unknown = thing;\n`);
  try {
    execFileSync(join(root, 'node_modules/.bin/oxlint'), ['--config', '.oxlintrc.json', file], { cwd: tree, stdio: 'pipe' });
    return true;
  } catch (failure) {
    const said = String((failure as { stdout?: Buffer }).stdout);
    if (!said.includes('no-restricted-imports')) throw failure;
    return false;
  } finally {
    rmSync(file);
  }
}

const LEVELS = [['core'], ['job'], ['drawing'], ['export', 'store'], ['workers', 'ui', 'cli']] as const;
const rooms = LEVELS.flatMap((names, level) => names.map((name) => ({ name, level })));
const pairs = rooms.flatMap((from) => rooms.filter((to) => to.name !== from.name).map((to) => ({ from, to })));

describe('imports between rooms', () => {
  it.each(pairs)('$from.name -> $to.name', ({ from, to }) => {
    // Within the top level the screen may start workers and share nothing else; levels below may always be read.
    expect(passes(from.name, `import { thing } from '../${to.name}/thing';`)).toBe(to.level < from.level);
  });
  it('counts types, and deeper folders', () => {
    expect(passes('core', "import type { thing } from '../job/schema';")).toBe(false);
    expect(passes('drawing/blank', "import { thing } from '../../ui/canvas/thing';")).toBe(false);
  });
});
