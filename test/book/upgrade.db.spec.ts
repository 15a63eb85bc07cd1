import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type pg from 'pg';
import { migrateDatabase } from '#lib/platform';
import { readMigrations } from '../../libs/platform/src/migrate/migration-files.js';
import { fillBook, idOf } from '../harness/book-rows.js';
import { asOwner, createBareDatabase, type TestDatabase } from '../harness/database.js';

// A book that was filled before doses could be shared, assistants timed and work linked.

const FIRST = '20261127110000-procedures-add-sharing-lines.sql';

// Everything that was there, as it was: the new columns come in addition.
const VISITS = 'SELECT to_jsonb(v) - $1::text[] AS row FROM visits v ORDER BY id';
const RESTORATIONS = 'SELECT to_jsonb(r) - $1::text[] AS row FROM restorations r ORDER BY id';
const LINES = 'SELECT to_jsonb(u) - $1::text[] AS row FROM usage_lines u ORDER BY id';
const NEW = [
  ...['without_anaesthetic', 'shares_dose', 'assistant_minutes', 'length_mm', 'width_mm'],
  ...['volume_source', 'redo_of', 'booked_visit_id'],
];

let database: TestDatabase;
let owner: pg.Client;
let before: unknown[];

const rowsOf = async (sql: string) => (await owner.query<object>(sql, [NEW])).rows;
const everything = async () => [
  await rowsOf(VISITS),
  await rowsOf(RESTORATIONS),
  await rowsOf(LINES),
];

beforeAll(async () => {
  database = await createBareDatabase();
  await migrateDatabase(
    database.url,
    readMigrations().filter(({ file }) => file < FIRST),
  );
  owner = await asOwner(database.url);
  await fillBook(owner);
  await owner.query(
    `INSERT INTO consumables (id, practice_id, name, category, stock_unit)
     VALUES ($1, $2, 'Cartridge', 'Anaesthetic', 'piece')`,
    [idOf.consumable(90), idOf.practice(1)],
  );
  for (const [n, consumable] of [1, 90].entries()) {
    await owner.query(
      `INSERT INTO template_lines (id, practice_id, template_id, version, line_number,
         consumable_id, driver, placed, dispensed)
       VALUES (gen_random_uuid(), $1, $2, 1, $3, $4, 'restoration', 0, 1)`,
      [idOf.practice(1), idOf.template(1), n + 1, idOf.consumable(consumable)],
    );
  }
  before = await everything();
  await migrateDatabase(database.url);
});

afterAll(async () => {
  await owner.end();
  await database.drop();
});

describe('a book from before visits had more depth', () => {
  it('keeps every visit, restoration and line as it was', async () => {
    expect(await everything()).toEqual(before);
    const { rows } = await owner.query(
      `SELECT DISTINCT v.without_anaesthetic, u.shares_dose, r.assistant_minutes, r.volume_source,
              r.redo_of
       FROM visits v JOIN restorations r ON r.visit_id = v.id JOIN usage_lines u ON u.visit_id = v.id`,
    );
    expect(rows).toEqual([
      {
        without_anaesthetic: false,
        shares_dose: false,
        assistant_minutes: null,
        volume_source: null,
        redo_of: null,
      },
    ]);
  });

  it('plans an assistant for as long as the chair, and a dose for each restoration', async () => {
    const versions = await owner.query(
      'SELECT DISTINCT minutes, assistant_minutes FROM template_versions',
    );
    expect(versions.rows).toEqual([{ minutes: 30, assistant_minutes: 30 }]);
    const lines = await owner.query(
      'SELECT shares_dose, anaesthetic FROM template_lines ORDER BY line_number',
    );
    expect(lines.rows).toEqual([
      { shares_dose: false, anaesthetic: false },
      { shares_dose: false, anaesthetic: true },
    ]);
  });

  it('refuses what would contradict itself', async () => {
    const refused = (change: string) =>
      expect(
        owner.query(`UPDATE restorations SET ${change} WHERE id = $1`, [idOf.restoration(1)]),
      ).rejects.toThrow(/violates check constraint/);
    await refused('length_mm = 4');
    await refused("length_mm = 4, width_mm = 3, volume_source = 'planning value'");
    await refused("volume_source = 'dimensions'");
    await refused('redo_of = id');
    await refused('assistant_minutes = 1441');
  });
});
