import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../..', import.meta.url));

function sources(folder) {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true })
    .filter((file) => file.endsWith('.ts') && !file.endsWith('.spec.ts'))
    .map((file) => join(folder, file));
}

function isStale(source) {
  const built = join(root, 'dist', source.slice(root.length)).replace(/\.ts$/, '.js');
  return !existsSync(built) || statSync(built).mtimeMs < statSync(source).mtimeMs;
}

/**
 * Compiles when something below these folders is newer than what was built from it. A type error
 * elsewhere stops nobody from running a test: `npm test` checks types on its own.
 */
export function buildIfStale(folders) {
  const stale = () => folders.flatMap((folder) => sources(join(root, folder))).find(isStale);
  if (stale() === undefined) return;
  const compiler = join(root, 'node_modules/typescript7/bin/tsc');
  const run = spawnSync(process.execPath, [compiler, '-p', root], { cwd: root, encoding: 'utf8' });
  const left = stale();
  if (left !== undefined)
    throw new Error(`${left} could not be built:\n${run.stdout}${run.stderr}`);
}
