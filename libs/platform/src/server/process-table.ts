import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { hasCode } from '../config/error-code.js';

/** A running process: what was started, and when, so that a reused number is not taken for it. */
export interface RunningProcess {
  readonly command: string;
  readonly started: string;
}

/** The process of that number, if it runs; one that has ended but was not collected does not. */
export function findProcess(pid: number): RunningProcess | undefined {
  return existsSync('/proc/self/stat') ? fromProc(pid) : fromPs(pid);
}

function fromProc(pid: number): RunningProcess | undefined {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    // "pid (name) state ppid ..."; the name may hold blanks and brackets. Field 22 is the start.
    const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
    if (fields[0] === 'Z' || fields[0] === 'X') return undefined;
    const command = readFileSync(`/proc/${pid}/cmdline`, 'utf8').replaceAll('\0', ' ');
    return { command, started: fields[19] ?? '' };
  } catch (error) {
    if (hasCode(error, 'ENOENT', 'ESRCH')) return undefined;
    throw error;
  }
}

function fromPs(pid: number): RunningProcess | undefined {
  try {
    const line = execFileSync('ps', ['-o', 'lstart=,command=', '-p', String(pid)], {
      encoding: 'utf8',
    });
    return { started: line.slice(0, 24).trim(), command: line.slice(24).trim() };
  } catch (error) {
    // ps ends with 1 when there is no such process.
    if ((error as { status?: unknown }).status === 1) return undefined;
    throw error;
  }
}

/** Waits until the process has ended; false when it still runs after that time. */
export async function waitForEnd(pid: number, milliseconds: number): Promise<boolean> {
  const until = Date.now() + milliseconds;
  while (findProcess(pid)) {
    if (Date.now() > until) return false;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  return true;
}
