// npm run openapi: writes the OpenAPI document of the service and the types made from it.
import { execFileSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { buildIfStale, root } from '../../test/harness/build.mjs';
import { loadPlatform } from '../../test/harness/platform.mjs';
import { startServer } from '../../test/harness/servers.mjs';

const folder = join(root, 'apps/web/src/api/generated');

async function readDocument() {
  const platform = await loadPlatform();
  const server = await startServer(platform);
  try {
    await platform.migrateDatabase(server.adminUrl);
    const api = await import(pathToFileURL(join(root, 'dist/apps/api/src/index.js')).href);
    const app = await api.createApp({ databaseUrl: server.adminUrl, logLevel: 'error' });
    const document = api.buildOpenApi(app);
    await app.close();
    return document;
  } finally {
    await server.stop();
  }
}

buildIfStale(['apps/api', 'libs']);
const document = await readDocument();
mkdirSync(folder, { recursive: true });
const file = join(folder, 'openapi.json');
writeFileSync(file, `${JSON.stringify(document, null, 2)}\n`);
const maker = join(root, 'node_modules/openapi-typescript/bin/cli.js');
const output = join(folder, 'schema.d.ts');
execFileSync(process.execPath, [maker, file, '--output', output], { stdio: 'ignore' });
console.log(`${Object.keys(document.paths).length} paths written to apps/web/src/api/generated`);
