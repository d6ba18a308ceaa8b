/**
 * `npm test`: installs what is missing (packages, a browser, the independent readers), then types, lint, unused code, unit
 * tests and published checks, build, end-to-end tests. The last line counts every test; no tests counts as a failure.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { build, installPackages, root, run, stop, tool } from './lib.mjs';

const has = (command, args) => spawnSync(command, args, { stdio: 'ignore' }).status === 0;

/** Debian packages that the tests need, each with a way to tell whether it is there. */
const NEEDED = [
  { name: 'chromium', there: () => process.env.CHROMIUM !== undefined || existsSync('/usr/bin/chromium') },
  { name: 'python3-ezdxf', there: () => has('/usr/bin/python3', ['-c', 'import ezdxf']) },
  { name: 'poppler-utils', there: () => existsSync('/usr/bin/pdftocairo') },
];

function installReaders() {
  const missing = NEEDED.filter((n) => !n.there()).map((n) => n.name);
  if (missing.length === 0) return;
  console.log(`Installing ${missing.join(', ')} …`);
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const sudo = process.getuid?.() === 0 ? [] : ['sudo'];
  const apt = (...args) => {
    const [command, ...rest] = [...sudo, 'apt-get', ...args];
    return run(command, rest, { env, stdio: ['ignore', 'ignore', 'inherit'] });
  };
  apt('update', '-qq');
  apt('install', '-y', '-qq', '--no-install-recommends', 'fonts-liberation', ...missing);
  const still = NEEDED.filter((n) => !n.there()).map((n) => n.name);
  if (still.length > 0) stop(`The tests need ${still.join(' and ')}. Install them by hand (on Debian: apt-get install ${still.join(' ')}), or name a Chromium in CHROMIUM.`);
}

const results = join(root, 'test-results');
const read = (file) => (existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : undefined);

function stage(title, command, args) {
  const begun = Date.now();
  console.log(`\n== ${title}`);
  const code = run(command, args, { env: { ...process.env, FORCE_COLOR: '0' } });
  console.log(`== ${title}: ${code === 0 ? 'good' : 'FAILED'} (${((Date.now() - begun) / 1000).toFixed(1)} s)`);
  return code === 0;
}

installPackages();
installReaders();
rmSync(results, { recursive: true, force: true });
mkdirSync(results, { recursive: true });

const stages = [
  stage('Types', tool('tsc'), ['--noEmit']),
  stage('Lint', tool('oxlint'), ['--type-aware', '--deny-warnings']),
  stage('Unused code', tool('knip'), []),
  stage('Unit tests and published checks', tool('vitest'), ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${join(results, 'unit.json')}`]),
];
build();
stages.push(stage('End to end, in Chromium', tool('playwright'), ['test']));

const unit = read(join(results, 'unit.json'));
const e2e = read(join(results, 'e2e.json'))?.stats;
const passed = (unit?.numPassedTests ?? 0) + (e2e?.expected ?? 0);
const failed = (unit?.numFailedTests ?? 0) + (e2e?.unexpected ?? 0) + (e2e?.flaky ?? 0);
const skipped = (unit?.numPendingTests ?? 0) + (unit?.numTodoTests ?? 0) + (e2e?.skipped ?? 0);
const good = stages.every(Boolean) && failed === 0 && (unit?.numPassedTests ?? 0) > 0 && (e2e?.expected ?? 0) > 0;
console.log(`\n${good ? 'All stages are good.' : 'Something failed: look above.'}`);
console.log(`tests: ${passed} passed, ${failed} failed, ${skipped} skipped`);
process.exit(good ? 0 : 1);
