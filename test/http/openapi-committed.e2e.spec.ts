import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from '@jest/globals';
import { buildOpenApi } from '../../apps/api/src/index.js';
import { TestService } from './service.js';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const GENERATED = join(ROOT, 'apps/web/src/api/generated');

it('the committed document is that of the service (else: npm run openapi)', async () => {
  const service = await TestService.start();
  const document = buildOpenApi(service.app);
  await service.stop();
  const committed = readFileSync(join(GENERATED, 'openapi.json'), 'utf8');
  expect(JSON.parse(committed)).toEqual(JSON.parse(JSON.stringify(document)));
});

it('the committed types are made from the committed document (else: npm run openapi)', () => {
  const folder = mkdtempSync(join(tmpdir(), 'traybook-schema-'));
  const made = join(folder, 'schema.d.ts');
  const maker = join(ROOT, 'node_modules/openapi-typescript/bin/cli.js');
  execFileSync(process.execPath, [maker, join(GENERATED, 'openapi.json'), '--output', made], {
    stdio: 'ignore',
  });
  expect(readFileSync(join(GENERATED, 'schema.d.ts'), 'utf8')).toBe(readFileSync(made, 'utf8'));
  rmSync(folder, { recursive: true });
});
