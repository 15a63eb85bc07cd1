import { execFile } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { expect } from '@jest/globals';
import { projectFolder } from '../../libs/platform/src/index.js';
import { ensureBuilt, workingFolder } from '../lifecycle/cli-process.js';

/** The command on a book in which one practice has a history and others have none. */
export async function expectReplayCommand(databaseUrl: string): Promise<void> {
  ensureBuilt();
  const folder = workingFolder();
  try {
    const main = join(projectFolder(), 'dist/apps/cli/src/main.js');
    const run = (...args: string[]) =>
      promisify(execFile)(process.execPath, [main, 'replay', ...args], {
        cwd: folder.path,
        env: { ...process.env, DATABASE_URL: databaseUrl },
      });
    const { stdout } = await run('--csv', 'items.csv', '--from', '2026-03-30');
    expect(stdout).toMatch(/foresee practice: \d items, 2026-03-30 to /);
    expect(stdout).toMatch(/item-days with something missing +\d+ +\d+/);
    expect(stdout).toContain('fresh practice: too short a history');
    const lines = (await readFile(join(folder.path, 'items.csv'), 'utf8')).split('\r\n');
    expect(lines[0]).toMatch(/^practice,consumable,shade,unit,old_rule,/);
    const bib = lines.find((line) => line.startsWith('foresee practice,Patient bib,,piece,'));
    expect(bib?.split(',')).toHaveLength(lines[0]?.split(',').length ?? 0);
    await expect(run('--from', '2020-01-01')).rejects.toMatchObject({
      ...{ code: 1, stderr: expect.stringContaining('from must be from 2025-12-29 to') },
    });
  } finally {
    folder.remove();
  }
}
