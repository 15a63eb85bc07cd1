import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import type pg from 'pg';
import { asOwner } from '../harness/database.js';
import {
  deliveryLine,
  openSmallBook,
  restoration,
  type SmallBook,
  TestService,
  type UsageLine,
  type Visit,
  visitBody,
  withFreshCatalogue,
} from './book.js';
import { expectRulesHold } from './invariants.js';
import { refusalOf } from './stock-steps.js';

let service: TestService;
let owner: pg.Client;
let shared: SmallBook;
let s: SmallBook;
let catalogues = 0;

beforeAll(async () => {
  service = await TestService.start();
  owner = await asOwner(service.databaseUrl);
  shared = await openSmallBook(service, 'hold');
});

beforeEach(async () => {
  catalogues += 1;
  s = await withFreshCatalogue(shared, String(catalogues));
});

afterAll(async () => {
  await expectRulesHold(owner);
  await owner.end();
  await service.stop();
});

const deliverBibs = async (lotNumber: string, receivedOn = '2026-01-05') => {
  const line = (place: string) => deliveryLine(s.bib, place, 1, '5', { lotNumber });
  const lines = [line(s.store), line(s.room), line(s.otherRoom)];
  return (await s.book.deliver(s.supplier, receivedOn, lines)).lines[0]?.lot.id ?? '';
};

const hold = (lotId: string, status: string) =>
  s.book.ask('PUT', `/lots/${lotId}/status`, { status, note: 'Notice of the maker.' });

const bibsOf = async (changes: object = {}): Promise<UsageLine | undefined> => {
  const visit = await s.book.done<Visit>('POST', '/visits', visitBody(s, changes));
  return visit.usage.find((line) => line.consumable.id === s.bib.id);
};

describe('a lot held back', () => {
  it.each(['quarantined', 'recalled'])(
    '%s, is used nowhere from that moment, and again once released',
    async (status) => {
      const lotId = await deliverBibs('B-1');
      expect(await bibsOf()).toMatchObject({ shortfall: '0' });
      expect((await hold(lotId, status)).body).toEqual({ lotId, status });
      for (const locationId of [s.store, s.room, s.otherRoom]) {
        expect(await bibsOf({ locationId })).toMatchObject({ shortfall: '1', taken: [] });
      }
      const scanned = [{ lotId }];
      const answer = await s.book.ask('POST', '/visits', visitBody(s, { scanned }));
      expect(refusalOf(answer)).toBe('422 lot_not_usable scanned[0].lotId');
      expect(answer.body.detail).toContain(status);
      await hold(lotId, 'released');
      expect(await bibsOf()).toMatchObject({ shortfall: '0' });
      const { rows } = await owner.query(
        'SELECT count(*)::int AS open FROM shortfalls WHERE consumable_id = $1 AND settled < quantity',
        [s.bib.id],
      );
      expect(rows).toEqual([{ open: 0 }]);
    },
  );

  it('stays held when more of it is delivered, and settles nothing', async () => {
    const lotId = await deliverBibs('B-2');
    await hold(lotId, 'recalled');
    await bibsOf();
    const more = await s.book.deliver(s.supplier, '2026-03-01', [
      deliveryLine(s.bib, s.room, 1, '5', { lotNumber: 'B-2' }),
    ]);
    expect(more.lines[0]?.lot).toMatchObject({ id: lotId, status: 'recalled' });
    expect(await bibsOf()).toMatchObject({ shortfall: '1' });
  });

  it('is either used before the hold or not at all, when both happen at once', async () => {
    const lotId = await deliverBibs('B-3');
    const visits = Array.from({ length: 8 }, (_, n) => bibsOf({ chartReference: `R-${n}` }));
    const [held, ...lines] = await Promise.all([hold(lotId, 'recalled'), ...visits]);
    expect(held.status).toBe(200);
    for (const line of lines) expect(['0', '1']).toContain(line?.shortfall);
    const { rows } = await owner.query(
      `SELECT (SELECT sum(quantity) FROM movements m JOIN layers l ON l.id = m.layer_id
               WHERE l.consumable_id = $1 AND to_account = 'visit')::int AS used,
              (SELECT count(*)::int FROM shortfalls WHERE consumable_id = $1) AS missing`,
      [s.bib.id],
    );
    const { used, missing } = rows[0] as { used: number | null; missing: number };
    expect((used ?? 0) + missing).toBe(8);
  });

  it('keeps a log of every change', async () => {
    const lotId = await deliverBibs('B-4');
    for (const status of ['quarantined', 'recalled', 'released']) await hold(lotId, status);
    const { rows } = await owner.query(
      'SELECT status, note FROM lot_status_changes WHERE lot_id = $1 ORDER BY recorded_at, id',
      [lotId],
    );
    expect(rows.map((row: { status: string }) => row.status)).toEqual([
      'quarantined',
      'recalled',
      'released',
    ]);
  });
});

describe('a lot that was scanned', () => {
  const adhesive = (lotNumber: string) =>
    s.book.deliver(s.supplier, '2026-01-05', [
      deliveryLine(s.adhesive, s.room, 1, '110', { lotNumber, expiresOn: '2028-01-31' }),
    ]);
  const open = async (layerId: string | undefined, openedOn: string) => {
    const { rows } = await owner.query<{ id: string }>(
      'SELECT id FROM holdings WHERE layer_id = $1 AND opened_on IS NULL',
      [layerId],
    );
    await s.book.done('POST', '/stock/openings', { holdingId: rows[0]?.id, openedOn });
  };
  const adhesiveOf = (visit: Visit) =>
    visit.usage.find((line) => line.consumable.id === s.adhesive.id);

  it('is refused, not replaced, when all that is left of it was opened too long ago', async () => {
    const [line] = (await adhesive('A-1')).lines;
    await open(line?.layerId, '2026-01-06');
    await adhesive('A-2');
    const scanned = [{ lotId: line?.lot.id }];
    const body = visitBody(s, { visitedOn: '2026-08-01', scanned });
    const answer = await s.book.ask('POST', '/visits', body);
    expect(refusalOf(answer)).toBe('422 lot_not_usable scanned[0].lotId');
    const intime = visitBody(s, { visitedOn: '2026-07-06', scanned });
    const visit = await s.book.done<Visit>('POST', '/visits', intime);
    expect(adhesiveOf(visit)?.taken).toMatchObject([{ lotNumber: 'A-1', sureness: 'scanned' }]);
  });

  it('is not replaced by another when it was opened after the day of the visit', async () => {
    const [line] = (await adhesive('A-1')).lines;
    await open(line?.layerId, '2026-05-10');
    await adhesive('A-2');
    const lotId = line?.lot.id ?? '';
    const body = visitBody(s, { scanned: [{ lotId }] });
    const visit = await s.book.done<Visit>('POST', '/visits', body);
    expect(adhesiveOf(visit)).toMatchObject({ shortfall: '0', taken: [{ lotId }] });
  });

  it('is not given away to an earlier visit that named none', async () => {
    const bibs = (lotNumber: string, packs = 1) =>
      deliveryLine(s.bib, s.room, packs, '5', { lotNumber });
    const lotId = await deliverBibs('B-9');
    const usage = (dispensed: string) => [{ line: `visit/visit/${s.bib.id}`, dispensed }];
    await bibsOf({ visitedOn: '2026-02-01', usage: usage('1000') });
    const { rows } = await owner.query<{ id: string }>(
      `SELECT h.id FROM holdings h JOIN layers l ON l.id = h.layer_id
       WHERE l.consumable_id = $1 AND h.on_hand > 0`,
      [s.bib.id],
    );
    for (const { id } of rows) {
      const body = { holdingId: id, quantity: '500', reason: 'damaged' };
      await s.book.done('POST', '/stock/write-offs', body);
    }
    await bibsOf({ visitedOn: '2026-02-02', usage: usage('500') });
    const later = visitBody(s, { usage: usage('500'), scanned: [{ lotId }] });
    const visit = await s.book.done<Visit>('POST', '/visits', later);
    await s.book.deliver(s.supplier, '2026-06-01', [bibs('B-9'), bibs('B-10')]);
    const settled = await s.book.done<Visit>('GET', `/visits/${visit.id}`);
    const line = settled.usage.find((l) => l.consumable.id === s.bib.id);
    expect(line).toMatchObject({ shortfall: '0', taken: [{ lotId, sureness: 'scanned' }] });
    const { rows: open } = await owner.query(
      'SELECT id FROM shortfalls WHERE consumable_id = $1 AND settled < quantity',
      [s.bib.id],
    );
    expect(open).toEqual([]);
  });

  it('names its container: an empty or foreign one is no container of it', async () => {
    const [line] = (await adhesive('A-1')).lines;
    const [other] = (await adhesive('A-2')).lines;
    const { rows } = await owner.query<{ id: string }>(
      'SELECT id FROM holdings WHERE layer_id = $1',
      [other?.layerId],
    );
    const scanned = [{ lotId: line?.lot.id, holdingId: rows[0]?.id }];
    const restorations = [restoration(s)];
    const answer = await s.book.ask('POST', '/visits', visitBody(s, { restorations, scanned }));
    expect(refusalOf(answer)).toBe('422 unknown_reference scanned[0].holdingId');
  });
});
