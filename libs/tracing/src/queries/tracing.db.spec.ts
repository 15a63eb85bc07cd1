import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { DataSource } from 'typeorm';
import { UnitOfWork } from '#lib/platform';
import { actor, fillBook, idOf, stranger } from '../../../../test/harness/book-rows.js';
import {
  asOwner,
  createTestDatabase,
  type TestDatabase,
  testDataSource,
} from '../../../../test/harness/database.js';
import { LotReader } from './lot-reader.js';
import { TraceLot } from './trace-lot.js';
import { TraceVisits } from './trace-visits.js';

let database: TestDatabase;
let dataSource: DataSource;
let uow: UnitOfWork;

beforeAll(async () => {
  database = await createTestDatabase();
  const owner = await asOwner(database.url);
  await fillBook(owner);
  await owner.end();
  dataSource = await testDataSource(database.url);
  uow = new UnitOfWork(dataSource);
});

afterAll(async () => {
  await dataSource.destroy();
  await database.drop();
});

describe('lots', () => {
  const list = (query: Parameters<LotReader['list']>[1], who = actor) =>
    new LotReader(uow).list(who, query);

  it('are found by number in any case, in every product that has it', async () => {
    const { items } = await list({ number: ' lx-1' });
    expect(items.map((lot) => [lot.consumable.name, lot.received, lot.onHand])).toEqual([
      ['Paste', '10', '7.3'],
      ['Adhesive', '5', '4.9'],
    ]);
    expect((await list({ number: 'LX-' })).items).toEqual([]);
  });

  it('are found by the beginning of a number, by product, and page by page', async () => {
    expect((await list({ q: 'lx' })).items).toHaveLength(2);
    expect((await list({ q: 'X' })).items).toEqual([]);
    expect((await list({ consumableId: idOf.consumable(2) })).items).toHaveLength(2);
    const first = await list({ limit: '2' });
    const rest = await list({ limit: '2', cursor: first.nextCursor ?? '' });
    expect([...first.items, ...rest.items].map((lot) => lot.lotNumber)).toEqual([
      null,
      'LX-1',
      'LX-1',
    ]);
  });

  it('are told with their deliveries and holds, and not to another practice', async () => {
    const lot = await new LotReader(uow).get(actor, idOf.lot(2));
    expect(lot.layers).toMatchObject([{ reference: 'DN-2041', mass: { balanced: true } }]);
    expect(lot.statusChanges).toMatchObject([
      { status: 'recalled', recordedBy: { name: 'Mira Holt' } },
    ]);
    expect((await list({}, stranger)).items).toEqual([]);
    await expect(new LotReader(uow).get(stranger, idOf.lot(2))).rejects.toThrow('no lot');
  });
});

describe('from a lot to whoever may have got it', () => {
  const trace = (n: number, query = {}, who = actor) =>
    new TraceLot(uow).run(who, idOf.lot(n), query);

  it('balances to the last digit', async () => {
    expect((await trace(1)).mass).toEqual({
      received: '10',
      onHand: '7.3',
      used: '1.2',
      wasted: '0.4',
      returned: '1',
      countDifference: '0.1',
      balanced: true,
    });
  });

  it('names the teeth: one for its own line, all of tooth or visit for a shared one', async () => {
    const { visits } = await trace(1);
    expect(visits.items[0]?.uses.map((u) => [u.usedFor, u.sureness, u.quantity, teeth(u)])).toEqual(
      [
        ['restoration', 'scanned', '0.3', '19 MO'],
        ['tooth', 'assumed', '0.2', '8 MI, 8 D'],
      ],
    );
    const [adhesive] = (await trace(2)).visits.items;
    expect(adhesive?.uses.map(teeth)).toEqual(['8 MI, 8 D, 19 MO']);
  });

  it('keeps a reversed visit in sight with nothing used, and out of the numbers', async () => {
    const { visits, affected } = await trace(1);
    expect(visits.items.map((v) => [v.reversed, v.uses.map((u) => u.quantity)])).toEqual([
      [false, ['0.3', '0.2']],
      [false, ['0.5', '0.2']],
      [true, ['0']],
    ]);
    expect(visits.items[2]?.uses[0]?.movementIds).toEqual([idOf.movement(8), idOf.movement(9)]);
    expect(affected).toEqual({
      visits: 2,
      charts: 1,
      restorations: 4,
      bySureness: [
        { sureness: 'assumed', quantity: '0.7' },
        { sureness: 'scanned', quantity: '0.5' },
      ],
    });
  });

  it('lists places, waste, returns, counts and moves, without what was undone', async () => {
    const found = await trace(1);
    expect(found.onHand.map((h) => [h.location.name, h.onHand])).toEqual([
      ['Room 2', '2'],
      ['Store', '5.3'],
    ]);
    const quantities = (list: typeof found.waste) => list.map((m) => m.quantity);
    expect(quantities(found.waste)).toEqual(['0.4']);
    expect(quantities(found.returns)).toEqual(['1']);
    expect(quantities(found.countDifferences)).toEqual(['0.1']);
    expect(found.moves).toMatchObject([{ from: 'Store', to: 'Room 2', quantity: '2' }]);
  });

  it('does not forget a patient for whom the lot was scanned when none was left', async () => {
    const found = await trace(2);
    expect(found.shortfalls).toMatchObject([{ visitId: idOf.visit(2), open: '0.1' }]);
    expect(found.visits.items.map((v) => [v.visitId, v.uses.length, v.shortfalls.length])).toEqual([
      [idOf.visit(1), 1, 0],
      [idOf.visit(2), 0, 1],
    ]);
    expect(found.affected).toMatchObject({ visits: 2, restorations: 4 });
  });

  it('pages the visits', async () => {
    const first = await trace(1, { limit: '2' });
    const rest = await trace(1, { limit: '2', cursor: first.visits.nextCursor ?? '' });
    expect(rest.visits.items.map((v) => v.visitId)).toEqual([idOf.visit(3)]);
    expect(rest.visits.nextCursor).toBeNull();
  });

  it('tells it when nobody was affected, and nothing to another practice', async () => {
    const found = await trace(3);
    expect(found.affected).toEqual({ visits: 0, charts: 0, restorations: 0, bySureness: [] });
    expect(found.mass.balanced).toBe(true);
    await expect(trace(1, {}, stranger)).rejects.toThrow('no lot');
  });
});

describe('from a visit or a chart to every lot', () => {
  const traces = () => new TraceVisits(uow);

  it('names lot, delivery, sureness and the entries of the ledger', async () => {
    const visit = await traces().visit(actor, idOf.visit(1));
    expect(
      visit.uses.map((u) => [u.consumable.name, u.lot.lotNumber, u.delivery.reference]),
    ).toEqual([
      ['Paste', 'LX-1', 'DN-2041'],
      ['Paste', 'LX-1', 'DN-2041'],
      ['Adhesive', 'LX-1', 'DN-2041'],
    ]);
    expect(visit.uses.flatMap((u) => u.movementIds)).toEqual([3, 4, 5].map(idOf.movement));
  });

  it('follows a chart reference in any case, whatever characters it has', async () => {
    const chart = await traces().chart(actor, 'C/1', { limit: '1' });
    expect(chart.items.map((v) => v.visitId)).toEqual([idOf.visit(1)]);
    const next = await traces().chart(actor, 'c/1', { limit: '1', cursor: chart.nextCursor ?? '' });
    expect(next.items.map((v) => [v.visitId, v.shortfalls.length])).toEqual([[idOf.visit(2), 1]]);
    expect(next.nextCursor).toBeNull();
  });

  it('says so when there is no such visit or chart here', async () => {
    await expect(traces().visit(stranger, idOf.visit(1))).rejects.toThrow('no visit');
    await expect(traces().chart(stranger, 'C/1', {})).rejects.toThrow('no visit');
    await expect(traces().chart(actor, ' ', {})).rejects.toMatchObject({
      fields: [{ field: 'reference' }],
    });
  });
});

function teeth(use: { restorations: readonly { tooth: string; surfaces: string }[] }): string {
  return use.restorations.map((r) => `${r.tooth} ${r.surfaces}`).join(', ');
}
