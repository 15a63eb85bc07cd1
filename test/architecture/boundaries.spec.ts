import { execFile } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { beforeAll, describe, expect, it } from '@jest/globals';

// The rules of .dependency-cruiser.cjs against files that break each of them on purpose: a rule that
// no longer bites would let the real code slip unnoticed.

const HERE = fileURLToPath(new URL('./fixtures', import.meta.url));
const ROOT = fileURLToPath(new URL('../..', import.meta.url));

let found: string[];

beforeAll(async () => {
  const { stdout } = await promisify(execFile)(
    process.execPath,
    [
      'node_modules/dependency-cruiser/bin/dependency-cruise.mjs',
      '--config',
      `${HERE}/rules.cjs`,
      '--output-type',
      'json',
      HERE,
    ],
    { cwd: ROOT, maxBuffer: 64 * 1024 * 1024 },
  );
  const { summary } = JSON.parse(stdout) as {
    summary: { violations: { from: string; rule: { name: string } }[] };
  };
  found = summary.violations.map((v) => `${v.from.split('fixtures/')[1]}: ${v.rule.name}`).sort();
});

describe('the boundaries between contexts', () => {
  const broken: [what: string, violation: string][] = [
    ['stock imports visits', 'libs/stock/src/app/upward.ts: context-order-stock'],
    ['visits reaches into stock', 'libs/visits/src/app/deep.ts: context-front-door'],
    ['a rule asks the database', 'libs/stock/src/domain/impure.ts: domain-is-pure'],
    ['a rule knows the framework', 'libs/stock/src/domain/framework.ts: domain-is-pure'],
    ['measure knows somebody', 'libs/measure/src/knows.ts: pure-knows-nobody'],
    ['the service uses a side door', 'apps/api/src/side-door.ts: app-front-door'],
    ['two files go in circles', 'libs/catalogue/src/one.ts: no-circular'],
  ];
  it.each(broken)('are broken when %s', (_, violation) => {
    expect(found).toContain(violation);
  });

  it('let everything else pass', () => {
    expect(found.filter((violation) => violation.startsWith('libs/stock/src/index.ts'))).toEqual(
      [],
    );
  });
});
