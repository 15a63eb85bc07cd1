import { type ChildProcess } from 'node:child_process';
import { closeSync, existsSync, openSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { StartupError } from '../config/startup-error.js';
import type { EngineUser } from './engine-user.js';
import { ended, launch } from './launch.js';
import { findProcess, waitForEnd } from './process-table.js';

export interface Cluster {
  readonly postgres: string;
  /** PostgreSQL's own data folder. */
  readonly folder: string;
  readonly logFile: string;
  readonly user: EngineUser | undefined;
  readonly settings: Readonly<Record<string, string>>;
}

export interface Postmaster {
  readonly port: number;
  readonly pid: number;
  readonly ended: Promise<string>;
}

const FAST_SHUTDOWN = 'SIGINT';
const AT_ONCE = 'SIGQUIT';

function pidFile(folder: string): string[] {
  const file = join(folder, 'postmaster.pid');
  return existsSync(file)
    ? readFileSync(file, 'utf8')
        .split('\n')
        .map((line) => line.trim())
    : [];
}

/**
 * Ends a server that outlived the Traybook that started it, and clears away a lock file whose number
 * now belongs to some other program. The caller holds the lock on the data folder.
 */
export async function stopOrphan(folder: string): Promise<void> {
  const [number = '', knownFolder = folder] = pidFile(folder);
  const pid = Number(number);
  if (!Number.isInteger(pid) || pid <= 0) return;
  const found = findProcess(pid);
  if (!found) return; // PostgreSQL clears its own stale file
  const ours = [folder, knownFolder].some((path) => found.command.includes(path));
  if (!found.command.includes('postgres')) {
    rmSync(join(folder, 'postmaster.pid'), { force: true });
  } else if (ours) {
    await stopServer(pid);
  }
  // Another server's number: PostgreSQL looks closer than we can, and says so if it is a conflict.
}

/** Fast shutdown: transactions are rolled back, everything is written out. */
export async function stopServer(pid: number): Promise<void> {
  for (const [signal, patience] of [
    [FAST_SHUTDOWN, 30_000],
    [AT_ONCE, 10_000],
  ] as const) {
    if (!findProcess(pid)) return;
    process.kill(pid, signal);
    if (await waitForEnd(pid, patience)) return;
  }
  throw new Error(`PostgreSQL (process ${pid}) does not stop`);
}

/** Starts the server on a free port of this machine and waits until it answers. */
export async function startServer(cluster: Cluster): Promise<Postmaster> {
  for (let attempt = 1; ; attempt += 1) {
    const port = await freePort();
    const log = openSync(cluster.logFile, 'w', 0o600);
    const child = launch({
      program: cluster.postgres,
      args: serverArgs(cluster, port),
      folder: cluster.folder,
      user: cluster.user,
      log,
    });
    closeSync(log);
    const end = ended(child);
    const outcome = await Promise.race([end, isReady(child, cluster.folder)]);
    if (outcome === true && child.pid !== undefined) return { port, pid: child.pid, ended: end };
    const said = logTail(cluster.logFile);
    // Somebody took the port between our choosing it and the server's using it.
    if (attempt < 3 && said.includes('could not create any TCP/IP sockets')) continue;
    throw new StartupError(
      `The PostgreSQL server in ${cluster.folder} did not start (${outcome}). It said: ${said}`,
    );
  }
}

function serverArgs(cluster: Cluster, port: number): string[] {
  const settings = {
    listen_addresses: '127.0.0.1',
    unix_socket_directories: '',
    timezone: 'UTC',
    log_timezone: 'UTC',
    ...cluster.settings,
  };
  const flags = Object.entries(settings).flatMap(([name, value]) => ['-c', `${name}=${value}`]);
  return ['-D', cluster.folder, '-p', String(port), ...flags];
}

/** The eighth line of postmaster.pid says when the server answers; recovery may take its time. */
async function isReady(child: ChildProcess, folder: string): Promise<true | string> {
  while (child.exitCode === null && child.signalCode === null) {
    const lines = pidFile(folder);
    if (lines[0] === String(child.pid) && lines[7] === 'ready') return true;
    await new Promise((resolve) => setTimeout(resolve, 15));
  }
  return 'ended early';
}

export function logTail(file: string): string {
  const lines = readFileSync(file, 'utf8').trim().split('\n');
  return lines.slice(-6).join(' | ');
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      const port = typeof address === 'object' && address ? address.port : 0;
      probe.close(() => resolve(port));
    });
  });
}
