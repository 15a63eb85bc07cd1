// npm run build:web: checks and builds the browser app, unless what is there is newer than its sources.
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const built = join(root, 'dist/web/index.html');

function newest(folder) {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .reduce(
      (time, { parentPath, name }) => Math.max(time, statSync(join(parentPath, name)).mtimeMs),
      0,
    );
}

function isFresh() {
  if (!existsSync(built)) return false;
  const sources = Math.max(...['apps/web', 'libs/measure/src', 'libs/dentition/src'].map(newest));
  return statSync(built).mtimeMs > Math.max(sources, statSync(join(root, 'package.json')).mtimeMs);
}

if (!isFresh()) {
  const run = (...args) => execFileSync(process.execPath, args, { cwd: root, stdio: 'inherit' });
  run('node_modules/typescript7/bin/tsc', '-p', 'apps/web');
  run(
    'node_modules/vite/bin/vite.js',
    'build',
    '--config',
    'apps/web/vite.config.ts',
    '--logLevel',
    'warn',
  );
}
