import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { deliveryLine } from '../book/book.js';
import { TestService } from '../http/service.js';
import { fieldsOf, type Order, type OrderLine } from './orders-book.js';
import {
  figure,
  type Lead,
  openPlanningBook,
  type PlanningBook,
  type Proposal,
  type Proposals,
  TODAY,
} from './planning-book.js';
import { SetClock } from './post-boxes.js';

const clock = new SetClock(new Date(`${TODAY}T06:00:00Z`));
let service: TestService;
let s: PlanningBook;

beforeAll(async () => {
  service = await TestService.start({ clock });
  s = await openPlanningBook(service, 'supply');
});

afterAll(() => service.stop());

const PLAIN_TERMS = {
  ...{ freight: '0', leadDays: 3 },
  workingDays: ['monday', 'tuesday', 'wednesday', 'thursday', 'friday'],
};
const WEEK_LONG = 7 * 86_400_000;

interface Answered {
  readonly item: { next: string; onOrder: string; useInWeek: string; byHand: boolean };
  readonly policy: Proposal;
}

const settings = (path: string, body: object) =>
  s.book.ask('PUT', `/reorder/settings${path}`, body);
const ask = () => s.book.done<Proposals>('GET', '/reorder/proposals');
const item = (id: string) => s.book.done<Answered>('GET', `/reorder/items/${id}`);
const policy = async (id: string) => (await item(id)).policy;
const leadOf = async () => {
  const path = `/reorder/settings/suppliers/${s.supplier}`;
  return (await s.book.done<{ lead: Lead }>('GET', path)).lead;
};
const onDay = (day: string) => {
  clock.at = new Date(`${day}T06:00:00Z`);
};
const daysAfter = (day: string, days: number) =>
  new Date(Date.parse(day) + days * 86_400_000).toISOString().slice(0, 10);

async function act(order: Order, name: string, body: object = {}): Promise<Order> {
  const { version } = await s.book.done<Order>('GET', `/orders/${order.id}`);
  return s.book.done<Order>('POST', `/orders/${order.id}/${name}`, { version, ...body });
}

async function sent(presentationId: string, packs: number): Promise<Order> {
  const lines = [{ presentationId, packs, packPrice: '4.00' }];
  const draft = await s.book.done<Order>('POST', '/orders', { supplierId: s.supplier, lines });
  await act(draft, 'approval');
  return act(draft, 'sending', { way: 'by hand' });
}

function deliver(line: OrderLine | undefined, day: string, packs: number) {
  return s.book.deliver(s.supplier, day, [
    deliveryLine(s.bibBox, s.store, packs, '4', { orderLineId: line?.id }),
  ]);
}

describe('how a presentation is sold', () => {
  const path = () => `/presentations/${s.bibBox.presentation}`;
  const prices = [
    { fromPacks: 1, packPrice: '4.00' },
    { fromPacks: 3, packPrice: '1.50' },
  ];

  it('is kept exactly, audited, and refused by field where it cannot be', async () => {
    const terms = { minimumPacks: 2, discount: 'all units', prices };
    const answer = await settings(path(), terms);
    expect([answer.status, answer.body]).toEqual([
      ...[200, { presentationId: s.bibBox.presentation, terms }],
    ]);
    const bad: readonly [object, string][] = [
      [{ minimumPacks: 0 }, 'minimumPacks'],
      [{ discount: 'sometimes' }, 'discount'],
      [{ prices: [{ fromPacks: 2, packPrice: '4' }] }, 'prices[0].fromPacks'],
      [{ prices: [prices[0], { fromPacks: 1, packPrice: '3' }] }, 'prices[1].fromPacks'],
      [{ prices: [prices[0], { fromPacks: 9, packPrice: '4' }] }, 'prices[1].packPrice'],
      [{ prices: [{ fromPacks: 1, packPrice: '-4' }] }, 'prices[0].packPrice'],
    ];
    for (const [change, field] of bad) {
      const refused = await settings(path(), { ...terms, ...change });
      expect([refused.status, fieldsOf(refused)]).toEqual([400, [field]]);
    }
    expect((await s.book.ask('GET', `/reorder/settings${path()}`)).body).toEqual(answer.body);
    expect((await settings(`/presentations/${s.bib.id}`, terms)).status).toBe(404);
    expect((await s.book.ask('PUT', `/reorder/settings${path()}`, terms, 'dentist')).status).toBe(
      403,
    );
  });

  it('decides the size of an order: the price reached, and the smallest order', async () => {
    await settings(path(), { minimumPacks: 1, discount: 'all units', prices });
    const cheap = await policy(s.bib.id);
    expect(cheap.packs).toBeGreaterThanOrEqual(3);
    expect(figure(cheap, 'price of a pack')).toBe(1.5);
    expect(cheap.total).toBe((cheap.packs * 1.5).toFixed(2));
    await settings(path(), { minimumPacks: 1, discount: 'incremental', prices });
    const steps = await policy(s.bib.id);
    // The first two packs at 4.00, the rest at 1.50.
    expect(steps.total).toBe((8 + (steps.packs - 2) * 1.5).toFixed(2));
    await settings(path(), { minimumPacks: 9, discount: 'all units', prices: [] });
    const least = await policy(s.bib.id);
    expect([least.packs, figure(least, 'smallest order')]).toEqual([9, 9]);
    expect(least.presentation).toMatchObject({ minimumPacks: 9 });
    expect(least.total).toBe('36.00');
    await settings(path(), { minimumPacks: 1, discount: 'all units', prices: [] });
  });
});

describe('the shelf', () => {
  it('holds no more than fits, or nothing is ordered and that is said', async () => {
    const path = `/consumables/${s.bib.id}`;
    const before = await policy(s.bib.id);
    expect((await settings(path, { shelfRoom: '60' })).status).toBe(200);
    const bound = await policy(s.bib.id);
    expect([before.packs > 1, bound.packs, bound.bounds]).toEqual([true, 1, ['shelf room']]);
    await settings(path, { shelfRoom: '40' });
    const stuck = (await ask()).stuck.find((each) => each.consumable.id === s.bib.id);
    expect([stuck?.reason, stuck?.bounds]).toEqual(['stopped by a limit', ['shelf room']]);
    expect((await item(s.bib.id)).item.next).toBe('held back');
    const refused = await settings(path, { shelfRoom: '0' });
    expect([refused.status, fieldsOf(refused)]).toEqual([400, ['shelfRoom']]);
    await settings(path, {});
  });

  it('that is empty runs out for certain', async () => {
    const { before } = await policy(s.bib.id);
    expect(Number(before.stockOutChance)).toBeGreaterThan(0.99);
  });
});

describe('the budget of the month', () => {
  const rules = (monthlyBudget: string | null) =>
    s.book.done('PUT', '/order-rules', { monthlyBudget, approveUpTo: null, lateAfterDays: 2 });

  it('is kept by the orders together; what it stops is told apart', async () => {
    const free = await ask();
    expect(free.budgetLeft).toBeNull();
    const total = free.orders.reduce((sum, order) => sum + Number(order.total), 0);
    await rules((total / 2).toFixed(2));
    const held = await ask();
    expect(Number(held.budgetLeft)).toBeCloseTo(total / 2, 2);
    const spent = held.orders.reduce((sum, order) => sum + Number(order.total), 0);
    expect(spent).toBeLessThanOrEqual(total / 2);
    await rules('0.01');
    const none = await ask();
    expect(none.orders.flatMap((order) => order.lines.filter((l) => l.total !== null))).toEqual([]);
    const bib = none.stuck.find((each) => each.consumable.id === s.bib.id);
    expect([bib?.packs, bib?.bounds.includes('budget')]).toEqual([0, true]);
    await rules(null);
  });
});

describe('a substitute', () => {
  it('of another pack or shade is offered by itself, of another consumable by word', async () => {
    const own = `/consumables/${s.newShade.id}`;
    await settings(own, { reorderAt: '60', orderUpTo: '64' });
    const before = await policy(s.newShade.id);
    const shades = before.substitutes.filter(({ kind }) => kind === 'another shade');
    expect(shades.map((each) => each.consumable.id).sort()).toEqual(
      [s.paste.id, s.expiring.id].sort(),
    );
    // The shade that died out is all to spare.
    const spare = shades.find((each) => each.consumable.id === s.paste.id);
    expect(Number(spare?.spare)).toBeGreaterThan(0);
    expect([spare?.packPrice, spare?.unitPrice]).toEqual(['72.00', '18.00']);
    const pair = { consumableId: s.newShade.id, standInId: s.capsule.id, note: 'Small ones only.' };
    const added = await s.book.ask('POST', '/reorder/substitutes', pair);
    expect([added.status, added.body]).toMatchObject([201, { ...pair, withdrawn: false }]);
    const offered = async () =>
      (await policy(s.newShade.id)).substitutes.find((each) => each.kind === 'another consumable');
    expect(await offered()).toMatchObject({
      ...{ consumable: { id: s.capsule.id }, note: 'Small ones only.', spare: '0' },
    });
    const twice = await s.book.ask('POST', '/reorder/substitutes', pair);
    expect(twice.status).toBe(409);
    const back = `/reorder/substitutes/${String(added.body.id)}/withdrawal`;
    expect((await s.book.ask('POST', back, {})).status).toBe(201);
    expect((await s.book.ask('POST', back, {})).status).toBe(409);
    expect(await offered()).toBeUndefined();
    await settings(own, {});
  });

  it('is refused by field where it makes no sense, and never ordered by itself', async () => {
    const bad: readonly [string, string, number, string][] = [
      [s.bib.id, s.bib.id, 400, 'standInId'],
      [s.bib.id, s.paste.id, 400, 'standInId'],
      [s.supplier, s.bib.id, 422, 'consumableId'],
      [s.bib.id, s.supplier, 422, 'standInId'],
    ];
    for (const [consumableId, standInId, status, field] of bad) {
      const refused = await s.book.ask('POST', '/reorder/substitutes', { consumableId, standInId });
      expect([refused.status, fieldsOf(refused)]).toEqual([status, [field]]);
    }
    const bib = await policy(s.bib.id);
    const other = bib.substitutes.find(({ kind }) => kind === 'another pack');
    expect(other?.consumable.id).toBe(s.bib.id);
    expect(other?.presentation?.id).not.toBe(bib.presentation?.id);
  });
});

describe('a supplier', () => {
  it('that is closed delivers later, and cannot be closed for ever', async () => {
    const path = `/suppliers/${s.supplier}`;
    await settings(path, PLAIN_TERMS);
    const open = figure(await policy(s.bib.id), 'mean lead time');
    const closures = [{ firstDay: '2026-05-04', lastDay: '2026-05-10', note: 'Moving house' }];
    expect((await settings(path, { ...PLAIN_TERMS, closures })).status).toBe(200);
    // Everything waits for the Monday after: exactly a week.
    expect(figure(await policy(s.bib.id), 'mean lead time')).toBeCloseTo(open + 7, 5);
    const bad: readonly [object[], string][] = [
      [[{ firstDay: '2026-05-04', lastDay: '2026-05-03' }], 'closures[0].lastDay'],
      [[...closures, { firstDay: '2026-05-10', lastDay: '2026-05-12' }], 'closures[1].firstDay'],
      [[{ firstDay: '2026-05-04', lastDay: '2026-12-03' }], 'closures[0].lastDay'],
      [[{ firstDay: 'May', lastDay: '2026-12-03' }], 'closures[0].firstDay'],
    ];
    for (const [list, field] of bad) {
      const refused = await settings(path, { ...PLAIN_TERMS, closures: list });
      expect([refused.status, fieldsOf(refused)]).toEqual([400, [field]]);
    }
    await settings(path, PLAIN_TERMS);
  });

  it('is judged by its own orders, part by part, and says from how many', async () => {
    const stated = await leadOf();
    expect(stated).toMatchObject({ orders: 0, open: 0, assumed: '1', statedBy: 'supplier' });
    for (let week = 6; week >= 2; week -= 1) {
      const ordered = new Date(Date.parse(TODAY) - week * WEEK_LONG).toISOString().slice(0, 10);
      onDay(ordered);
      const order = await sent(s.bibBox.presentation, 2);
      onDay(TODAY);
      // Half after a week (five working days), half after eleven days (nine).
      await deliver(order.lines[0], daysAfter(ordered, 7), 1);
      await deliver(order.lines[0], daysAfter(ordered, 11), 1);
    }
    const seen = await leadOf();
    expect(seen).toMatchObject({ orders: 5, open: 0, assumed: String(Number((4 / 9).toFixed(6))) });
    expect(Number(seen.mean)).toBeGreaterThan(Number(stated.mean) + 2);
    const at = (days: number) =>
      Number(seen.workingDays.find((each) => each.days === days)?.chance);
    // Five ninths of it was seen, half of that on each of the two days; the rest is around three.
    expect(at(5)).toBeGreaterThan(0.27);
    expect(at(9)).toBeGreaterThan(0.27);
    expect(at(7)).toBeLessThan(0.1);
    const bib = await policy(s.bib.id);
    expect([figure(bib, 'orders seen'), bib.lead?.orders]).toEqual([5, 5]);
    expect(bib.sentence).toContain('(seen from 5 orders)');
  });

  it('with goods on their way leaves less to order, until they are here', async () => {
    const before = await item(s.bib.id);
    const order = await sent(s.bibBox.presentation, 3);
    const after = await item(s.bib.id);
    expect([before.item.onOrder, after.item.onOrder]).toEqual(['0', '150']);
    expect(figure(after.policy, 'on order')).toBe(150);
    expect(Number(after.policy.position) - Number(before.policy.position)).toBeCloseTo(150, 6);
    expect((await leadOf()).open).toBe(1);
    await deliver(order.lines[0], TODAY, 1);
    expect((await item(s.bib.id)).item.onOrder).toBe('100');
    await act(order, 'closing', { note: 'The rest will not come.' });
    expect((await item(s.bib.id)).item.onOrder).toBe('0');
  });
});

it('tells where every consumable stands', async () => {
  const { items } = await s.book.done<{ items: Record<string, unknown>[] }>(
    'GET',
    '/reorder/items',
  );
  expect(items).toHaveLength(8);
  const bib = await item(s.bib.id);
  const listed = items.find((each) => (each.consumable as { id: string }).id === s.bib.id);
  expect(listed).toEqual(bib.item);
  // About 5.4 visits a week, one bib each.
  expect(Number(bib.item.useInWeek)).toBeGreaterThan(3);
  expect(Number(bib.item.useInWeek)).toBeLessThan(9);
  const [low, , middle, , high] = bib.policy.use.map(({ quantity }) => Number(quantity));
  expect([(low ?? 0) <= (middle ?? 0), (middle ?? 0) < (high ?? 0)]).toEqual([true, true]);
  expect((await s.book.ask('GET', `/reorder/items/${s.supplier}`)).status).toBe(404);
});
