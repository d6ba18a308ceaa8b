/** `npm start`: installs what is missing, builds, serves on this machine and prints the address. Stop it with Ctrl C. */
import { spawn } from 'node:child_process';
import { build, installPackages, root, stop, tool } from './lib.mjs';

installPackages();
build();

const port = process.env.PORT ?? '4321';
const server = spawn(tool('vite'), ['preview', '--host', '127.0.0.1', '--port', port, '--strictPort'], { cwd: root, stdio: ['ignore', 'pipe', 'inherit'] });
let said = false;
server.stdout.on('data', (text) => {
  if (said || !String(text).includes(port)) return;
  said = true;
  console.log(`\nBendwright is at http://127.0.0.1:${port}/ (stop it with Ctrl C)`);
});
server.on('exit', (code) => {
  if (code) stop(`The server stopped. If port ${port} is taken, try another: PORT=4400 npm start`);
});
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => server.kill(signal));
