import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import type pg from 'pg';
import { asOwner } from '../harness/database.js';
import {
  consumablesOf,
  openSmallBook,
  type SmallBook,
  TestService,
  type Visit,
  visitBody,
  withFreshCatalogue,
} from './book.js';
import { expectRulesHold } from './invariants.js';
import { firstHolding, layersOf, shelve } from './stock-steps.js';

let service: TestService;
let owner: pg.Client;
let shared: SmallBook;
let s: SmallBook;
let catalogues = 0;

beforeAll(async () => {
  service = await TestService.start();
  owner = await asOwner(service.databaseUrl);
  shared = await openSmallBook(service, 'ledger');
});

beforeEach(async () => {
  catalogues += 1;
  s = await withFreshCatalogue(shared, String(catalogues));
});

afterEach(() => expectRulesHold(owner, consumablesOf(s)));

afterAll(async () => {
  await expectRulesHold(owner);
  await owner.end();
  await service.stop();
});

const note = { note: 'Entered wrongly.' };

/** What left the stock at what cost, less what came back. */
async function netOf(consumableId: string): Promise<object> {
  const { rows } = await owner.query<object>(
    `SELECT trim_scale(sum(CASE from_account WHEN 'location' THEN cost ELSE -cost END)
              FILTER (WHERE from_account <> 'supplier'))::text AS cost,
            trim_scale(sum(CASE from_account WHEN 'location' THEN quantity ELSE -quantity END)
              FILTER (WHERE from_account <> 'supplier' AND from_account <> to_account))::text
              AS quantity
     FROM movements m JOIN layers l ON l.id = m.layer_id WHERE l.consumable_id = $1`,
    [consumableId],
  );
  return rows[0] ?? {};
}

describe('an awkward price used up in small parts', () => {
  const wasteOf = async (holdingId: string, quantity: string) =>
    s.book.done<{ movementIds: string[] }>('POST', '/stock/write-offs', {
      holdingId,
      quantity,
      reason: 'residue',
    });

  it.each(['17.37', '0.01', '99999.99', '0.000001'])(
    'comes to exactly %s, with parts put back in between',
    async (price) => {
      const { id } = await shelve(owner, s, s.etchant, { price });
      let left = 4_800_000;
      for (let n = 0; left > 0; n += 1) {
        const part = Math.min(left, 190_000 + ((n * 77_777) % 150_001));
        const booked = await wasteOf(id, String(part / 1_000_000));
        left -= part;
        if (n % 3 !== 1) continue;
        await s.book.done('POST', `/movements/${booked.movementIds[0]}/reversal`, note);
        left += part;
      }
      expect(await layersOf(owner, s.etchant)).toEqual([
        { received: '4.8', out: '4.8', landed: price, cost: price },
      ]);
      expect(await netOf(s.etchant.id)).toEqual({ cost: price, quantity: '4.8' });
    },
  );

  it('comes to exactly that through visits, reversed out of order, and counts', async () => {
    await shelve(owner, s, s.bib, { price: '10.01' });
    const { id: holdingId } = await firstHolding(owner, s.bib);
    const visits: Visit[] = [];
    const usage = (dispensed: string) => [{ line: `visit/visit/${s.bib.id}`, dispensed }];
    for (let n = 0; n < 12; n += 1) {
      const body = visitBody(s, { chartReference: `E-${n}`, usage: usage(String(17 + n)) });
      visits.push(await s.book.done<Visit>('POST', '/visits', body));
    }
    for (const n of [3, 11, 0, 7]) {
      await s.book.done('POST', `/visits/${visits[n]?.id}/reversal`, note);
    }
    const on = Number((await firstHolding(owner, s.bib)).on_hand);
    for (const counted of [on - 5, on - 2, 1, 0]) {
      await s.book.done('POST', '/counts', { lines: [{ holdingId, counted: String(counted) }] });
    }
    expect(await layersOf(owner, s.bib)).toEqual([
      { received: '500', out: '500', landed: '10.01', cost: '10.01' },
    ]);
    expect(await netOf(s.bib.id)).toEqual({ cost: '10.01', quantity: '500' });
  });
});

describe('the ledger is append-only', () => {
  const TABLES = ['movements', 'audit_entries', 'lot_status_changes'];

  beforeEach(async () => {
    const { id } = await shelve(owner, s, s.strip, { lotNumber: 'S-1' });
    await s.book.done('POST', '/stock/write-offs', {
      holdingId: id,
      quantity: '1',
      reason: 'damaged',
    });
    const { rows } = await owner.query<{ id: string }>(
      'SELECT id FROM lots WHERE consumable_id = $1',
      [s.strip.id],
    );
    const body = { status: 'quarantined', ...note };
    await s.book.done('PUT', `/lots/${rows[0]?.id}/status`, body);
  });

  it.each(TABLES)('even for the owner of %s', async (table) => {
    const column = table === 'audit_entries' ? 'action' : 'note';
    for (const statement of [`UPDATE ${table} SET ${column} = 'x'`, `DELETE FROM ${table}`]) {
      await expect(owner.query(statement)).rejects.toMatchObject({
        code: '23001',
        message: `${table} is append-only: record a reversing entry instead`,
      });
    }
  });

  it('and cannot be emptied', async () => {
    for (const statement of ['TRUNCATE movements', 'TRUNCATE layers CASCADE']) {
      await expect(owner.query(statement)).rejects.toMatchObject({ code: '23001' });
    }
  });

  it('and an entry names a holding of its own layer, and a usage line of its own visit', async () => {
    await shelve(owner, s, s.bib, { price: '10' });
    const other = await firstHolding(owner, s.strip);
    const layer = `(SELECT layer_id FROM holdings WHERE id = '${other.id}')`;
    const copy = (layerId: string, visitId: string) => `
      INSERT INTO movements (id, practice_id, layer_id, from_account, to_account, from_holding_id,
        from_location_id, quantity, cost, occurred_on, visit_id, usage_line_id, sureness, recorded_by)
      SELECT gen_random_uuid(), m.practice_id, ${layerId}, m.from_account, m.to_account,
        m.from_holding_id, m.from_location_id, 1, 0, m.occurred_on, ${visitId}, m.usage_line_id,
        m.sureness, m.recorded_by
      FROM movements m JOIN layers l ON l.id = m.layer_id
      WHERE m.to_account = 'visit' AND l.consumable_id = '${s.bib.id}' LIMIT 1`;
    const visits: Visit[] = [];
    for (const chartReference of ['L-1', 'L-2']) {
      visits.push(await s.book.done<Visit>('POST', '/visits', visitBody(s, { chartReference })));
    }
    await expect(owner.query(copy(layer, 'm.visit_id'))).rejects.toMatchObject({
      constraint: 'movements_layer_id_from_holding_id_practice_id_fkey',
    });
    const visit = `(SELECT id FROM visits WHERE id IN ('${visits.map(({ id }) => id).join("','")}')
      AND id <> m.visit_id)`;
    await expect(owner.query(copy('m.layer_id', visit))).rejects.toMatchObject({
      constraint: 'movements_visit_id_usage_line_id_practice_id_fkey',
    });
  });

  it('and the service itself has no right to change it, nor to switch the rules off', async () => {
    await owner.query('BEGIN; SET LOCAL ROLE traybook_app');
    const refusedWith = async (statement: string) => {
      await owner.query('SAVEPOINT tried');
      const code = await owner.query(statement).then(
        () => 'done',
        (error: { code: string }) => error.code,
      );
      await owner.query('ROLLBACK TO tried');
      return code;
    };
    for (const statement of [
      "UPDATE movements SET note = 'x'",
      'DELETE FROM movements',
      'TRUNCATE movements',
      'ALTER TABLE movements DISABLE TRIGGER ALL',
      'ALTER TABLE movements DISABLE ROW LEVEL SECURITY',
      'DROP TRIGGER append_only ON movements',
      "SET session_replication_role = 'replica'",
      'DELETE FROM layers',
      'UPDATE layers SET received = 1',
      'UPDATE layers SET landed_cost = 1',
      'DELETE FROM holdings',
      'DELETE FROM usage_lines',
      'UPDATE usage_lines SET dispensed = 0',
      'DELETE FROM visits',
      'DELETE FROM idempotency_keys',
      "UPDATE idempotency_keys SET request_hash = 'x'",
      "UPDATE audit_entries SET action = 'x'",
      'DELETE FROM lot_status_changes',
    ]) {
      expect(`${statement}: ${await refusedWith(statement)}`).toBe(`${statement}: 42501`);
    }
    await owner.query('ROLLBACK');
  });

  it('shows no row at all to a connection that names no practice', async () => {
    await owner.query('BEGIN; SET LOCAL ROLE traybook_app');
    for (const table of ['movements', 'layers', 'holdings', 'layer_balances', 'visits']) {
      const { rows } = await owner.query(`SELECT count(*)::int AS seen FROM ${table}`);
      expect({ table, rows }).toEqual({ table, rows: [{ seen: 0 }] });
    }
    await owner.query('ROLLBACK');
  });
});
