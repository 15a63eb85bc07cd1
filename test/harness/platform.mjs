import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { transformSync } from '@swc/core';
import { root } from './build.mjs';

const SOURCE = join(root, 'libs/platform/src');
const swcrc = JSON.parse(readFileSync(join(root, '.swcrc'), 'utf8'));

/**
 * The parts of platform that the harness itself needs, compiled for this run only: what runs before
 * Jest is not compiled by it, and dist may be missing, old or in the middle of being written.
 */
export async function loadPlatform() {
  const folder = join(root, 'dist', `harness-${process.pid}`);
  try {
    for (const part of ['config', 'server', 'migrate']) compile(part, folder);
    const load = (file) => import(pathToFileURL(join(folder, file)).href);
    const { startEmbeddedServer } = await load('server/start-embedded-server.js');
    const { findProcess } = await load('server/process-table.js');
    const { migrateDatabase } = await load('migrate/migrate-database.js');
    return { startEmbeddedServer, findProcess, migrateDatabase };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function compile(part, folder) {
  for (const file of readdirSync(join(SOURCE, part))) {
    if (!file.endsWith('.ts') || file.endsWith('.spec.ts')) continue;
    const filename = join(SOURCE, part, file);
    const { code } = transformSync(readFileSync(filename, 'utf8'), {
      ...swcrc,
      filename,
      configFile: false,
      swcrc: false,
    });
    const target = join(folder, part, file.replace(/\.ts$/, '.js'));
    mkdirSync(dirname(target), { recursive: true });
    writeFileSync(target, code);
  }
}
