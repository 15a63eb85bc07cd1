import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import type { EngineUser } from './engine-user.js';

// Nothing from our own environment reaches the server: PGPORT, PGDATA and their like would change it.
const ENVIRONMENT = { LC_ALL: 'C', PATH: '/usr/sbin:/usr/bin:/sbin:/bin:/usr/local/bin' };

export interface Launch {
  readonly program: string;
  readonly args: readonly string[];
  readonly folder: string;
  readonly user: EngineUser | undefined;
  /** The file that takes what the program says; it outlives us. */
  readonly log: number;
}

let tied: boolean | undefined;

/** Whether the system can end a program when the process that started it dies (Linux). */
function canTie(): boolean {
  tied ??= spawnSync('setpriv', ['--pdeathsig', 'INT', 'true'], { env: ENVIRONMENT }).status === 0;
  return tied;
}

/**
 * Starts a program in a session of its own, so that Ctrl-C reaches us alone and we stop it in our own
 * time; where possible it is told to shut down when we are killed.
 */
export function launch({ program, args, folder, user, log }: Launch): ChildProcess {
  const options = {
    cwd: folder,
    env: ENVIRONMENT,
    detached: true,
    stdio: ['ignore', log, log] as ['ignore', number, number],
  };
  if (!canTie()) return spawn(program, args, { ...options, ...user });
  const identity = user
    ? ['--reuid', String(user.uid), '--regid', String(user.gid), '--clear-groups']
    : [];
  return spawn('setpriv', ['--pdeathsig', 'INT', ...identity, program, ...args], options);
}

/** Resolves when the process has ended, with what it ended with. */
export function ended(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    child.once('error', reject);
    child.once('exit', (code, signal) => resolve(signal ?? `code ${code}`));
  });
}
