import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { DataSource } from 'typeorm';
import { money, sum } from '#lib/measure';
import { Clock, newId, UnitOfWork } from '#lib/platform';
import {
  asOwner,
  createTestDatabase,
  type TestDatabase,
  testDataSource,
} from '../../../../test/harness/database.js';
import { DeliveryReader } from './delivery-reader.js';
import { LayerReader } from './layer-reader.js';
import { ListDeliveries } from './list-deliveries.js';
import { ListShortfalls } from './list-shortfalls.js';
import { ListStock } from './list-stock.js';
import { MovementReader } from './movement-reader.js';
import { fillBook } from './stock-reads.fixture.js';
import { actor, ids, stranger } from './stock-reads-ids.fixture.js';
import { SummariseStock } from './summarise-stock.js';

class FixedClock extends Clock {
  override now(): Date {
    return new Date('2026-05-04T10:00:00Z');
  }
}

let database: TestDatabase;
let dataSource: DataSource;
let uow: UnitOfWork;
const clock = new FixedClock();

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

describe('what is on the shelves', () => {
  const list = (query: Parameters<ListStock['run']>[1], who = actor) =>
    new ListStock(uow, clock).run(who, query);

  it('says for each holding whether it may be used today', async () => {
    const { items } = await list({});
    const status = Object.fromEntries(items.map((item) => [item.id, item.status]));
    expect(status).toEqual({
      [ids.holdings[0]]: 'usable',
      [ids.holdings[1]]: 'usable',
      [ids.holdings[2]]: 'usable',
      [ids.holdings[3]]: 'expired',
      [ids.holdings[4]]: 'recalled',
    });
  });

  it('splits the value of a layer over its holdings without losing a millionth', async () => {
    const { items } = await list({ lotId: ids.good });
    expect(items.map((item) => item.value).sort()).toEqual(['3.333333', '3.333333', '3.333334']);
    expect(sum(items.map((item) => money(item.value)))).toBe(money('10'));
  });

  it('gives a part of a layer the same value when only that part is asked for', async () => {
    const [one] = (await list({ locationId: ids.store, lotId: ids.good })).items;
    const all = (await list({ lotId: ids.good })).items;
    expect(one?.value).toBe(all.find((item) => item.id === one?.id)?.value);
  });

  it('takes the earlier of label and life after opening; counts sealed containers', async () => {
    const { items } = await list({ lotId: ids.good, sort: 'expiry' });
    expect(items.map((i) => [i.effectiveExpiry, i.openedOn, i.containers])).toEqual([
      ['2026-06-01', '2026-05-01', null],
      ['2027-01-31', null, 1],
      ['2027-01-31', null, 1],
    ]);
  });

  it.each([
    ['the status', { status: 'expired' as const }, 1],
    ['opened', { opened: 'true' as const }, 1],
    ['sealed', { opened: 'false' as const }, 4],
    ['the shade', { shade: 'body 2' }, 4],
    ['the category', { category: 'WEDGE' }, 1],
    ['the place', { locationId: ids.room }, 2],
    ['part of a name', { q: 'aST' }, 4],
    ['part of a lot number', { q: 'lx-' }, 3],
    ['a per cent sign, as it is', { q: '100%' }, 1],
    ['an underscore, as it is', { q: 'x_1' }, 0],
  ])('is narrowed by %s', async (_, query, count) => {
    expect((await list(query)).items).toHaveLength(count);
  });

  it.each(['consumable', 'expiry', 'value'] as const)(
    'pages by %s, each row once',
    async (sort) => {
      const seen: string[] = [];
      let cursor: string | null = null;
      do {
        const page = await list({ sort, limit: '2', ...(cursor === null ? {} : { cursor }) });
        seen.push(...page.items.map((item) => item.id));
        cursor = page.nextCursor;
      } while (cursor !== null);
      expect(seen).toEqual((await list({ sort })).items.map((item) => item.id));
      expect(new Set(seen).size).toBe(5);
    },
  );

  it('finds one holding', async () => {
    const [first] = (await list({ sort: 'value' })).items;
    expect((await list({ holdingId: first?.id ?? '' })).items).toEqual([first]);
  });

  it('refuses a cursor of another list', async () => {
    const { nextCursor } = await list({ limit: '1', sort: 'value' });
    await expect(list({ sort: 'expiry', cursor: nextCursor ?? '' })).rejects.toThrow();
  });

  it('shows nothing of it to another practice', async () => {
    expect((await list({}, stranger)).items).toEqual([]);
  });
});

describe('the stock by consumable', () => {
  it('tells usable from blocked and keeps what has run out in sight', async () => {
    const { items } = await new SummariseStock(uow, clock).run(actor, {});
    expect(items.map((item) => ({ ...item, consumable: item.consumable.name }))).toEqual([
      {
        consumable: 'Adhesive',
        usable: '0',
        blocked: '0',
        openedContainers: 0,
        value: '0.00',
        earliestExpiry: null,
        reorderAt: '2',
        openShortfall: '0.15',
      },
      {
        consumable: 'Paste',
        usable: '3',
        blocked: '2',
        openedContainers: 1,
        value: '22.00',
        earliestExpiry: '2026-06-01',
        reorderAt: '5',
        openShortfall: '0',
      },
      {
        consumable: 'Wedge 100%',
        usable: '0',
        blocked: '100',
        openedContainers: 0,
        value: '8.00',
        earliestExpiry: null,
        reorderAt: null,
        openShortfall: '0',
      },
    ]);
  });

  it.each([
    ['consumable', ['Adhesive', 'Paste', 'Wedge 100%']],
    ['expiry', ['Paste', 'Adhesive', 'Wedge 100%']],
    ['value', ['Paste', 'Wedge 100%', 'Adhesive']],
  ] as const)('pages by %s, each line once', async (sort, names) => {
    const seen: string[] = [];
    let cursor: string | null = null;
    do {
      const query = { sort, limit: '1', ...(cursor === null ? {} : { cursor }) };
      const page = await new SummariseStock(uow, clock).run(actor, query);
      seen.push(...page.items.map((item) => item.consumable.name));
      cursor = page.nextCursor;
    } while (cursor !== null);
    expect(seen).toEqual(names);
  });

  it('is narrowed by the shade', async () => {
    const { items } = await new SummariseStock(uow, clock).run(actor, { shade: 'BODY 2' });
    expect(items.map((item) => item.consumable.name)).toEqual(['Paste']);
  });

  it('is asked for one consumable', async () => {
    const summary = new SummariseStock(uow, clock);
    const [first] = (await summary.run(actor, {})).items;
    const query = { consumableId: first?.consumable.id ?? '' };
    expect((await summary.run(actor, query)).items).toEqual([first]);
  });

  it('shows of a place only what is there', async () => {
    const { items } = await new SummariseStock(uow, clock).run(actor, { locationId: ids.room });
    expect(items.map((item) => [item.consumable.name, item.usable])).toEqual([['Paste', '2']]);
  });
});

describe('the ledger', () => {
  const reader = () => new MovementReader(uow);

  it('is read newest first, with where from and where to in words', async () => {
    const { items } = await reader().list(actor, { layerId: ids.layers[0] });
    expect(items.map((m) => [m.kind, m.from.words, m.to.words])).toEqual([
      ['reversal', 'waste', 'Store'],
      ['write-off', 'Store', 'waste: damaged'],
      ['receipt', 'Northgate Supplies', 'Store'],
    ]);
  });

  it('names the entry that undoes one, from both sides', async () => {
    const wrong = await reader().get(actor, ids.writeOff);
    const undo = await reader().get(actor, ids.undo);
    expect([wrong.reversedById, undo.reversesId]).toEqual([ids.undo, ids.writeOff]);
    expect(wrong.recordedBy.name).toBe('Mira Holt');
  });

  it.each([
    ['an account', { account: 'waste' as const }, 2],
    ['a lot', { lotId: ids.old }, 1],
    ['a consumable', { consumableId: ids.paste }, 4],
    ['its days', { from: '2026-01-11', to: '2026-01-11' }, 1],
    ['a visit', { visitId: ids.visit }, 0],
  ])('is narrowed by %s', async (_, query, count) => {
    expect((await reader().list(actor, query)).items).toHaveLength(count);
  });

  it('pages', async () => {
    const first = await reader().list(actor, { limit: '3' });
    const second = await reader().list(actor, { limit: '3', cursor: first.nextCursor ?? '' });
    expect([first.items.length, second.items.length, second.nextCursor]).toEqual([3, 2, null]);
  });

  it('is closed to another practice', async () => {
    await expect(reader().get(stranger, ids.writeOff)).rejects.toThrow('no movement');
  });
});

describe('a layer', () => {
  it('balances by quantity and by cost', async () => {
    const found = await new LayerReader(uow, clock).get(actor, ids.layers[0]);
    expect(found.mass).toEqual({
      received: '3',
      onHand: '3',
      used: '0',
      wasted: '0',
      returned: '0',
      countDifference: '0',
      balanced: true,
    });
    expect(found.cost).toMatchObject({ costIn: '13.333333', costOut: '3.333333', balanced: true });
    expect(found.holdings).toHaveLength(3);
    expect(found.supplier.name).toBe('Northgate Supplies');
  });

  it('of another practice is not found', async () => {
    await expect(new LayerReader(uow, clock).get(stranger, ids.layers[0])).rejects.toThrow(
      'no layer',
    );
  });
});

describe('deliveries', () => {
  const list = () => new ListDeliveries(uow, new DeliveryReader());

  it('are found by part of their reference, whole by id', async () => {
    const { items } = await list().run(actor, { q: 'dn-20' });
    expect(items).toMatchObject([{ id: ids.delivery, lineCount: 3, landedTotal: '30.00' }]);
    const whole = await list().get(actor, ids.delivery);
    expect(
      whole.lines.map((line) => [line.lot.lotNumber, line.remaining, line.remainingValue]),
    ).toEqual([
      ['LX-1', '3', '10.00'],
      [null, '2', '12.00'],
      ['W_9', '100', '8.00'],
    ]);
  });

  it.each([{ from: '2026-01-11' }, { to: '2026-01-09' }, { q: 'other' }, { supplierId: newId() }])(
    'are not found by %j',
    async (query) => {
      expect((await list().run(actor, query)).items).toEqual([]);
    },
  );
});

describe('shortfalls', () => {
  it('show what is still open and what it is taken to cost', async () => {
    const list = new ListShortfalls(uow);
    const { items } = await list.run(actor, { open: 'true' });
    expect(items).toMatchObject([
      { open: '0.15', settled: '0.05', estimatedCost: '0.75', lot: null },
    ]);
    expect((await list.run(actor, { open: 'false' })).items).toEqual([]);
  });
});
