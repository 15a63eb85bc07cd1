import { createHash } from 'node:crypto';
import { mkdirSync, rmdirSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { errorMessage, hasCode } from '../config/error-code.js';
import { StartupError } from '../config/startup-error.js';
import { canEnter, engineUser } from './engine-user.js';

export interface DataDir {
  readonly path: string;
  /** True when the usual place was out of PostgreSQL's reach, so that the book is in a temp folder. */
  readonly temporary: boolean;
}

/** TRAYBOOK_DATA, or .traybook in the working folder, or a temp folder if root has hidden that. */
export function chooseDataDir(wanted: string | undefined, workingDir = process.cwd()): DataDir {
  if (wanted !== undefined) return { path: resolve(wanted), temporary: false };
  const usual = join(workingDir, '.traybook');
  if (canEnter(engineUser(), workingDir)) return { path: usual, temporary: false };
  // Two working folders are two books.
  const mark = createHash('sha256').update(workingDir).digest('hex').slice(0, 8);
  return { path: join(tmpdir(), `traybook-${mark}`), temporary: true };
}

/** Makes the folder if need be, with nothing in it but what the server puts there. */
export function prepareDataDir(dataDir: string): void {
  const user = engineUser();
  const made = makeDir(dataDir, user ? 0o711 : 0o700);
  if (!canEnter(user, dataDir)) {
    if (made) rmdirSync(dataDir);
    throw new StartupError(
      `PostgreSQL (user "postgres") cannot reach ${dataDir}: set TRAYBOOK_DATA to a folder ` +
        'that is not inside a private one, or start Traybook as an ordinary user.',
    );
  }
  const owner = statSync(dataDir).uid;
  const self = process.getuid?.();
  if (self !== undefined && owner !== self) {
    throw new StartupError(
      `${dataDir} belongs to another user: set TRAYBOOK_DATA to a folder of your own.`,
    );
  }
}

function makeDir(dataDir: string, mode: number): boolean {
  try {
    mkdirSync(dirname(dataDir), { recursive: true });
    mkdirSync(dataDir, { mode });
    return true;
  } catch (error) {
    if (hasCode(error, 'EEXIST') && statSync(dataDir).isDirectory()) return false;
    if (hasCode(error, 'EEXIST', 'EACCES', 'ENOTDIR', 'EROFS', 'EPERM', 'ENOSPC')) {
      throw new StartupError(`The data folder ${dataDir} cannot be made: ${errorMessage(error)}.`);
    }
    throw error;
  }
}
