import { linkSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { hasCode } from '../config/error-code.js';
import { StartupError } from '../config/startup-error.js';
import { findProcess } from './process-table.js';

const FILE = 'traybook.pid';

interface Owner {
  readonly pid: number;
  readonly started: string;
}

/** Makes this process the only one on a data folder; answers how to give it up. */
export function lockDataDir(dataDir: string): () => void {
  const file = join(dataDir, FILE);
  const own = `${file}.${process.pid}`;
  const content = `${process.pid}\n${findProcess(process.pid)?.started ?? ''}\n`;
  writeFileSync(own, content, { mode: 0o600 });
  try {
    // A link appears with its content in one step, and only if there is none.
    while (!linked(own, file)) takeAwayStale(file, dataDir);
  } finally {
    rmSync(own, { force: true });
  }
  return () => {
    if (read(file) === content) rmSync(file, { force: true });
  };
}

function takeAwayStale(file: string, dataDir: string): void {
  const found = read(file);
  if (found === undefined) return;
  const owner = parse(found);
  if (owner && findProcess(owner.pid)?.started === owner.started) {
    throw new StartupError(
      `Another Traybook (process ${owner.pid}) is using ${dataDir}: stop it first, ` +
        'or set TRAYBOOK_DATA to another folder.',
    );
  }
  const aside = `${file}.stale.${process.pid}`;
  try {
    renameSync(file, aside);
  } catch (error) {
    if (hasCode(error, 'ENOENT')) return; // another start cleared it away first
    throw error;
  }
  // Between reading and moving, another start may have put its own lock there: give it back.
  if (read(aside) !== found) linked(aside, file);
  rmSync(aside, { force: true });
}

function parse(content: string): Owner | undefined {
  const [pid = '', started = ''] = content.split('\n');
  return /^\d+$/.test(pid) ? { pid: Number(pid), started } : undefined;
}

function linked(from: string, to: string): boolean {
  try {
    linkSync(from, to);
    return true;
  } catch (error) {
    if (hasCode(error, 'EEXIST')) return false;
    throw error;
  }
}

function read(file: string): string | undefined {
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    if (hasCode(error, 'ENOENT')) return undefined;
    throw error;
  }
}
