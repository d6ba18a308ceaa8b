/** Shared by the start and test commands. Plain Node: it runs before anything is installed. */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { createHash } from 'node:crypto';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = resolve(dirname(fileURLToPath(import.meta.url)), '..');

/** Runs a command in the project with its output on show; its exit code. */
export function run(command, args, options = {}) {
  const done = spawnSync(command, args, { cwd: root, stdio: 'inherit', ...options });
  if (done.error) console.error(`${command}: ${done.error.message}`);
  return done.status ?? 1;
}

/** Ends the whole command with a plain sentence. */
export function stop(sentence) {
  console.error(`\n${sentence}`);
  process.exit(1);
}

/** A tool of the project, by its name in node_modules/.bin. */
export const tool = (name) => join(root, 'node_modules/.bin', name);

/** Installs the packages of the lock file, unless that was done for this very lock file before. */
export function installPackages() {
  const stamp = join(root, 'node_modules/.installed-from');
  const wanted = createHash('sha256').update(readFileSync(join(root, 'package-lock.json'))).digest('hex');
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted) return;
  console.log('Installing the packages of the lock file …');
  if (run('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error']) !== 0) stop('The packages could not be installed. Look above for the reason.');
  writeFileSync(stamp, wanted);
}

/** Builds the app into dist/. */
export function build() {
  if (run(tool('vite'), ['build', '--logLevel', 'warn']) !== 0) stop('The build failed. Look above for the reason.');
}
