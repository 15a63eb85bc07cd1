import { type ChildProcess, spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { fileURLToPath } from 'node:url';

const CLI = fileURLToPath(new URL('../../apps/cli/src/main.js', import.meta.url));

export interface Started {
  readonly child: ChildProcess;
  readonly url: string;
  readonly seconds: number;
}

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  await new Promise((resolve) => server.close(resolve));
  if (address === null || typeof address === 'string') throw new Error('No free port');
  return address.port;
}

/** Starts the service as a user does and waits until it answers. */
export async function startService(environment: Record<string, string>): Promise<Started> {
  const port = await freePort();
  const begin = performance.now();
  const child = spawn(process.execPath, [CLI, 'start'], {
    env: { ...withoutSettings(process.env), ...environment, PORT: String(port) },
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  const url = `http://127.0.0.1:${port}`;
  for (;;) {
    if (child.exitCode !== null) throw new Error(`The service ended with ${child.exitCode}`);
    const answers = await fetch(`${url}/api/health`).then(
      (response) => response.ok,
      () => false,
    );
    if (answers) break;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  return { child, url, seconds: (performance.now() - begin) / 1000 };
}

function withoutSettings({ DATABASE_URL, TRAYBOOK_DATA, ...rest }: NodeJS.ProcessEnv) {
  return rest;
}

export async function stopService({ child }: Started): Promise<void> {
  const ended = new Promise((resolve) => child.once('exit', resolve));
  child.kill('SIGTERM');
  await ended;
}

/** Resident memory of a process in MB (Linux); undefined elsewhere. */
export function residentMegabytes(pid: number | undefined): number | undefined {
  try {
    const status = readFileSync(`/proc/${pid}/status`, 'utf8');
    const kilobytes = /VmRSS:\s+(\d+)/.exec(status)?.[1];
    return kilobytes === undefined ? undefined : Number(kilobytes) / 1024;
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return undefined;
    throw error;
  }
}
