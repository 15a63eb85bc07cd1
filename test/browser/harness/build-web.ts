import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../../..', import.meta.url));
const SOURCES = ['apps/web', 'libs/measure/src', 'libs/dentition/src'];
const BUILDS = join(ROOT, 'dist/web-tests');
const HOUR = 3_600_000;

function filesOf(folder: string): string[] {
  return readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && !/\.(md|spec\.ts|d\.ts)$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
}

function digestOfSources(): string {
  const hash = createHash('sha256');
  for (const file of SOURCES.flatMap(filesOf)) hash.update(file).update(readFileSync(file));
  return hash.digest('hex').slice(0, 16);
}

/**
 * The browser app as built from the sources of this moment; a build is used again until they change.
 * It has a folder of its own, so that nobody's build takes the files from under a running test.
 */
export function builtWeb(): string {
  const folder = join(BUILDS, digestOfSources());
  if (!existsSync(join(folder, 'index.html'))) build(folder);
  return `${folder}/`;
}

function build(folder: string): void {
  const draft = `${folder}.${process.pid}`;
  const vite = join(ROOT, 'node_modules/vite/bin/vite.js');
  const args = ['build', '--config', 'apps/web/vite.config.ts', '--outDir', draft];
  const env = { ...process.env, NODE_ENV: 'production' };
  const run = spawnSync(process.execPath, [vite, ...args, '--logLevel', 'warn'], {
    cwd: ROOT,
    encoding: 'utf8',
    env,
  });
  if (run.status !== 0) throw new Error(`The web app did not build:\n${run.stdout}${run.stderr}`);
  removeOld();
  // Another worker may have been faster; what it built is the same.
  if (existsSync(folder)) rmSync(draft, { recursive: true });
  else renameSync(draft, folder);
}

function removeOld(): void {
  for (const name of readdirSync(BUILDS)) {
    const folder = join(BUILDS, name);
    if (Date.now() - statSync(folder).mtimeMs > HOUR) rmSync(folder, { recursive: true });
  }
}
