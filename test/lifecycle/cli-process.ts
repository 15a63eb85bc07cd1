import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { chmodSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { projectFolder } from '../../libs/platform/src/config/project-folder.js';
import { findProcess } from '../../libs/platform/src/server/process-table.js';

const ROOT = projectFolder();
const SETTINGS = ['DATABASE_URL', 'HOST', 'PORT', 'TRAYBOOK_DATA', 'TRAYBOOK_LOG'];

export function ensureBuilt(): void {
  const folders = ['apps/api', 'apps/cli', 'libs', 'test/demo'];
  execFileSync(process.execPath, ['test/harness/ensure-built.mjs', ...folders], { cwd: ROOT });
}

/** A working folder that root's PostgreSQL can reach too. */
export function workingFolder(): { path: string; remove(): void } {
  const path = mkdtempSync(`/tmp/traybook-test-${process.pid}-`);
  chmodSync(path, 0o755);
  return { path, remove: () => rmSync(path, { recursive: true, force: true }) };
}

/** Every file below a folder, without what a running server writes by itself. */
export function listing(folder: string): string[] {
  return readdirSync(folder, { recursive: true }).map(String).sort();
}

export class CliProcess {
  stdout = '';
  stderr = '';
  private readonly child: ChildProcess;
  private readonly exit: Promise<number | string>;

  constructor(
    command: string | readonly string[],
    cwd: string,
    settings: Readonly<Record<string, string>> = {},
  ) {
    const inherited = Object.entries(process.env).filter(([name]) => !SETTINGS.includes(name));
    const env = { ...Object.fromEntries(inherited), PORT: '0', ...settings };
    const main = join(ROOT, 'dist/apps/cli/src/main.js');
    this.child = spawn(process.execPath, [main, ...[command].flat()], { cwd, env });
    this.child.stdout?.on('data', (chunk: Buffer) => {
      this.stdout += chunk.toString();
    });
    this.child.stderr?.on('data', (chunk: Buffer) => {
      this.stderr += chunk.toString();
    });
    this.exit = new Promise((resolve) => {
      this.child.once('close', (code, signal) => resolve(code ?? signal ?? 'unknown'));
    });
  }

  get pid(): number {
    if (this.child.pid === undefined) throw new Error('The process did not start');
    return this.child.pid;
  }

  /** The address of the service, once it is ready. */
  async ready(): Promise<string> {
    const ended = this.exit.then((code) => {
      throw new Error(`Ended with ${code} before it was ready:\n${this.stdout}${this.stderr}`);
    });
    const look = async () => {
      for (;;) {
        const url = /Ready in [\d.]+ s: (\S+)/.exec(this.stdout)?.[1];
        if (url) return url;
        await new Promise((resolve) => setTimeout(resolve, 20));
      }
    };
    return Promise.race([look(), ended]);
  }

  send(signal: NodeJS.Signals): void {
    this.child.kill(signal);
  }

  /** What it ended with: an exit code, or the signal that killed it. */
  ended(): Promise<number | string> {
    return this.exit;
  }
}

/** The number of the PostgreSQL process of a data folder, if it runs. */
export function serverPid(dataDir: string): number | undefined {
  const file = join(dataDir, 'postgresql', 'postmaster.pid');
  if (!existsSync(file)) return undefined;
  const pid = Number(readFileSync(file, 'utf8').split('\n')[0]);
  return findProcess(pid) ? pid : undefined;
}
