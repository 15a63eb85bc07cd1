import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { StartupError } from '../config/startup-error.js';

/** The user PostgreSQL runs as when we are root, because it refuses to run as root. */
export interface EngineUser {
  readonly uid: number;
  readonly gid: number;
}

const NAME = 'postgres';

/** Undefined for an ordinary user, under whom the server simply runs. */
export function engineUser(): EngineUser | undefined {
  if (process.getuid?.() !== 0) return undefined;
  const found = lookUp();
  if (found) return found;
  const made = spawnSync('useradd', ['--system', '--shell', '/usr/sbin/nologin', NAME]);
  const user = made.status === 0 ? lookUp() : undefined;
  if (user) return user;
  throw new StartupError(
    `PostgreSQL does not run as root, and a user "${NAME}" could not be made: ` +
      'start Traybook as an ordinary user.',
  );
}

function lookUp(): EngineUser | undefined {
  const line = readFileSync('/etc/passwd', 'utf8')
    .split('\n')
    .find((entry) => entry.startsWith(`${NAME}:`));
  const [, , uid, gid] = line?.split(':') ?? [];
  return uid && gid ? { uid: Number(uid), gid: Number(gid) } : undefined;
}

/** Whether the user can come into a folder, and so needs every folder above it open to them. */
export function canEnter(user: EngineUser | undefined, folder: string): boolean {
  if (!user) return true;
  return spawnSync('test', ['-x', folder], { ...user, cwd: '/' }).status === 0;
}
