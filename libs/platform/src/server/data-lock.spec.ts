import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { StartupError } from '../config/startup-error.js';
import { lockDataDir } from './data-lock.js';
import { findProcess } from './process-table.js';

let folder: string;
let file: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), `traybook-test-${process.pid}-`));
  file = join(folder, 'traybook.pid');
});

afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

describe('lockDataDir', () => {
  it('lets one process in, and the next when the first has left', () => {
    const unlock = lockDataDir(folder);
    expect(() => lockDataDir(folder)).toThrow(StartupError);
    expect(() => lockDataDir(folder)).toThrow(`process ${process.pid}`);
    unlock();
    expect(existsSync(file)).toBe(false);
    lockDataDir(folder)();
  });

  it.each([
    ['that is not running', '4194000\n123\n'],
    ['whose number another program has now', `${process.pid}\nsome other start\n`],
    ['that cannot be told', 'half a li'],
  ])('takes over from a process %s', (_what, left) => {
    writeFileSync(file, left);
    const unlock = lockDataDir(folder);
    expect(readFileSync(file, 'utf8')).toBe(
      `${process.pid}\n${findProcess(process.pid)?.started}\n`,
    );
    unlock();
  });

  it('does not give up the lock of another', () => {
    const unlock = lockDataDir(folder);
    writeFileSync(file, '1\nsomebody else\n');
    unlock();
    expect(existsSync(file)).toBe(true);
  });
});
