import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type pg from 'pg';
import { DataSource, type EntityMetadata } from 'typeorm';
import { asOwner } from '../harness/database.js';
import { TestService } from '../http/service.js';

// Migrations are written by hand; entities must say the same as the schema they made.

let service: TestService;
let owner: pg.Client;
let entities: readonly EntityMetadata[];

beforeAll(async () => {
  service = await TestService.start();
  owner = await asOwner(service.databaseUrl);
  entities = service.app.get(DataSource).entityMetadatas;
});

afterAll(async () => {
  await owner.end();
  await service.stop();
});

const TYPES: Record<string, string> = {
  bpchar: 'char',
  bool: 'boolean',
  int4: 'integer',
  timestamptz: 'timestamptz',
};

function typeOf(column: EntityMetadata['columns'][number]): string {
  const type = TYPES[String(column.type)] ?? String(column.type);
  return column.isArray ? `_${type}` : type;
}

describe('entities and migrations', () => {
  it('name the same columns with the same types', async () => {
    expect(entities.length).toBeGreaterThan(3);
    for (const entity of entities) {
      const { rows } = await owner.query<{ name: string; type: string; nullable: boolean }>(
        `SELECT column_name AS name, udt_name AS type, is_nullable = 'YES' AS nullable
         FROM information_schema.columns WHERE table_name = $1`,
        [entity.tableName],
      );
      const inSchema = rows.map((r) => `${r.name} ${TYPES[r.type] ?? r.type} ${r.nullable}`).sort();
      const inEntity = entity.columns
        .map((c) => `${c.databaseName} ${typeOf(c)} ${c.isNullable}`)
        .sort();
      const missing = inEntity.filter((column) => !inSchema.includes(column));
      expect({ table: entity.tableName, missing }).toEqual({
        table: entity.tableName,
        missing: [],
      });
    }
  });
});

describe('every table of a practice', () => {
  it('has row-level security, a policy, and a practice that cannot be left out', async () => {
    const { rows } = await owner.query<{ name: string; secured: boolean; policies: number }>(
      `SELECT c.relname AS name, c.relrowsecurity AS secured,
         (SELECT count(*)::int FROM pg_policy p WHERE p.polrelid = c.oid) AS policies
       FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
       WHERE c.relkind = 'r' AND n.nspname = 'public'
         AND c.relname NOT IN ('first_start_links') AND c.relname NOT LIKE 'traybook_migration%'`,
    );
    expect(rows.length).toBeGreaterThan(20);
    for (const row of rows) expect(row).toMatchObject({ secured: true, policies: 1 });
    const open = await owner.query(
      `SELECT table_name FROM information_schema.columns
       WHERE table_schema = 'public' AND column_name = 'practice_id' AND is_nullable = 'YES'
         AND table_name IN (SELECT relname FROM pg_class WHERE relkind = 'r')`,
    );
    expect(open.rows).toEqual([]);
  });

  it('only takes money and quantities as exact decimals', async () => {
    const { rows } = await owner.query(
      `SELECT table_name, column_name FROM information_schema.columns
       WHERE table_schema = 'public' AND data_type IN ('real', 'double precision', 'money')`,
    );
    expect(rows).toEqual([]);
  });
});
