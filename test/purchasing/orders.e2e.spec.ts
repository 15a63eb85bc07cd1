import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { postVisit } from '../book/book.js';
import { TestService } from '../http/service.js';
import { fieldsOf, type Order, OrderBook } from './orders-book.js';
import { SetClock } from './post-boxes.js';

// Monday, 4 May 2026, noon in Berlin.
const clock = new SetClock(new Date('2026-05-04T10:00:00Z'));

let service: TestService;
let orders: OrderBook;

beforeAll(async () => {
  service = await TestService.start({ clock });
  orders = await OrderBook.open(service, 'mill');
});

afterAll(() => service.stop());

const book = () => orders.small.book;
const kinds = (order: Order) => order.events.map((event) => event.kind);

describe('an order that was sent', () => {
  it('is followed until every pack came, and closes by itself', async () => {
    const { small } = orders;
    const order = await orders.sent([orders.line(small.bib, 3, '10'), orders.line(small.strip, 2)]);
    // Two working days after a Monday.
    expect(order).toMatchObject({ orderedOn: '2026-05-04', expectedOn: '2026-05-06' });
    const [bib, strip] = order.lines;
    if (!bib || !strip) throw new Error('The order lost its lines');
    expect((await orders.deliver('2026-05-04', [[bib, 2]])).status).toBe(201);
    const part = await orders.get(order.id);
    expect([part.state, part.arrival]).toEqual(['sent', 'in part']);
    expect(part.lines[0]).toMatchObject({ received: 2, outstanding: 1 });
    expect(part.lines[0]?.arrivals).toMatchObject([{ packs: 2, packPrice: '10.00' }]);
    const last = await orders.deliver('2026-05-04', [
      [bib, 1],
      [strip, 3],
    ]);
    const done = await orders.get(order.id);
    expect([done.state, done.arrival, kinds(done).at(-1)]).toEqual(['closed', 'in full', 'closed']);
    expect(done.lines[1]).toMatchObject({ received: 3, outstanding: 0, surplus: 1 });
    expect(fieldsOf(await orders.deliver('2026-05-04', [[bib, 1]]))).toEqual([
      'lines[0].orderLineId',
    ]);
    // The last delivery was booked wrongly: what it brought is outstanding again.
    const note = { note: 'Wrong supplier.' };
    await book().done('POST', `/deliveries/${String(last.body.id)}/reversal`, note);
    const again = await orders.get(order.id);
    expect([again.state, kinds(again).at(-1)]).toEqual(['sent', 'reopened']);
    expect(again.lines.map((line) => line.outstanding)).toEqual([1, 2]);
    const closed = await orders.act(order, 'closing', { note: 'No longer made.' });
    expect(closed.state).toBe('closed');
    expect(closed.lines.map((line) => [line.received, line.cancelled])).toEqual([
      [2, 1],
      [0, 2],
    ]);
  });

  it('counts in the position until it comes, and for nothing after', async () => {
    const { small } = orders;
    await book().done('PATCH', `/consumables/${small.capsule.id}`, {
      ...{ reorderAt: '4', reorderUpTo: '10' },
    });
    const isLow = async () => {
      const { alerts } = await book().done<{
        alerts: { kind: string; consumable: { id: string } | null; figures: object[] }[];
      }>('GET', '/reorder/alerts');
      return alerts.find(
        (a) => a.kind === 'below reorder point' && a.consumable?.id === small.capsule.id,
      );
    };
    expect(await isLow()).toBeDefined();
    const order = await orders.sent([orders.line(small.capsule, 1, '110')]);
    // 20 capsules of 0.25 g are 5 g, more than the reorder point of 4 g.
    expect(await isLow()).toBeUndefined();
    await orders.act(order, 'closing');
    expect(await isLow()).toBeDefined();
    await book().done('PATCH', `/consumables/${small.capsule.id}`, {
      ...{ reorderAt: null, reorderUpTo: null },
    });
  });

  it('may have been sent earlier than somebody noted it', async () => {
    const draft = await orders.draft([orders.line(orders.small.bib, 1, '9')]);
    await orders.act(draft, 'approval');
    // A Thursday: two working days later is a Monday.
    const sent = await orders.act(draft, 'sending', { way: 'by hand', orderedOn: '2026-04-30' });
    expect(sent).toMatchObject({ orderedOn: '2026-04-30', expectedOn: '2026-05-04' });
    await orders.act(draft, 'closing');
  });

  it('tells how long a supplier really takes, once enough of them have come', async () => {
    const slow = await OrderBook.open(service, 'slow');
    const { small } = slow;
    for (const day of ['2026-04-27', '2026-04-28', '2026-04-29']) {
      await postVisit(small, { visitedOn: day });
    }
    /** An order of a Monday that took nine days, which are seven working days. */
    const took = async (orderedOn: string, receivedOn: string) => {
      const draft = await slow.draft([slow.line(small.strip, 1, '7')]);
      await slow.act(draft, 'approval');
      const { lines } = await slow.act(draft, 'sending', { way: 'by hand', orderedOn });
      for (const line of lines) await slow.deliver(receivedOn, [[line, 1]]);
    };
    const told = async () => {
      const { alerts } = await small.book.done<{
        alerts: { id: string; sentence: string; figures: { name: string; value: string }[] }[];
      }>('GET', '/reorder/alerts');
      const alert = alerts.find(({ id }) => id === `runs-out-before-delivery:${small.bib.id}`);
      const value = (name: string) => alert?.figures.find((each) => each.name === name)?.value;
      const names = ['days until delivery', 'deliveries by then', 'orders seen'];
      return { figures: names.map(value), sentence: alert?.sentence };
    };
    await small.book.done('PATCH', `/presentations/${small.bib.presentation}`, {
      supplierId: small.supplier,
    });
    await took('2026-03-02', '2026-03-11');
    await took('2026-03-09', '2026-03-18');
    await took('2026-03-16', '2026-03-25');
    // Three are too few: two working days, as the supplier states.
    expect((await told()).figures).toEqual(['2', undefined, undefined]);
    await took('2026-03-23', '2026-04-01');
    const seen = await told();
    expect(seen.figures).toEqual(['9', '80', '4']);
    expect(seen.sentence).toContain(
      'ordered today from Northgate Supply is here by 2026-05-13 in 80 of 100 cases, as in its 4',
    );
  });

  it('takes the word of the supplier', async () => {
    const { small } = orders;
    const order = await orders.sent([orders.line(small.bib, 3, '10'), orders.line(small.strip, 2)]);
    const [bib, strip] = order.lines;
    const missing = (lineId: string | undefined, packs: number) => ({
      willNotCome: [{ lineId, packs }],
    });
    const wrong = await orders.tries(order, 'answer', missing(bib?.id, 4));
    expect(fieldsOf(wrong)).toEqual(['willNotCome[0].packs']);
    expect(fieldsOf(await orders.tries(order, 'answer', { expectedOn: '2026-05-01' }))).toEqual([
      'expectedOn',
    ]);
    const answered = await orders.act(order, 'answer', {
      ...missing(bib?.id, 1),
      ...{ expectedOn: '2026-05-12', reference: 'AB 99' },
    });
    expect(answered).toMatchObject({ state: 'sent', expectedOn: '2026-05-12', reference: 'AB 99' });
    expect(answered.lines[0]).toMatchObject({ cancelled: 1, outstanding: 2 });
    await orders.act(order, 'answer', missing(bib?.id, 2));
    const last = await orders.act(order, 'answer', missing(strip?.id, 2));
    expect([last.state, kinds(last).at(-1)]).toEqual(['closed', 'closed']);
  });

  it('is answered by deliveries of its supplier and its goods only', async () => {
    const { small } = orders;
    const order = await orders.sent([orders.line(small.bib, 3, '10')]);
    const other = await book().supplier('Harbour Goods');
    const [line] = order.lines;
    const deliver = (changes: object) =>
      book().ask('POST', '/deliveries', {
        ...{ supplierId: small.supplier, receivedOn: '2026-05-04' },
        lines: [
          {
            ...{ presentationId: small.bib.presentation, locationId: small.store, packs: 1 },
            ...{ packPrice: '10', orderLineId: line?.id, ...changes },
          },
        ],
        ...('supplierId' in changes ? { supplierId: changes.supplierId } : {}),
      });
    for (const wrong of [
      { orderLineId: randomUUID() },
      { presentationId: small.strip.presentation },
    ]) {
      expect(fieldsOf(await deliver(wrong))).toEqual(['lines[0].orderLineId']);
    }
    const body = {
      ...{ supplierId: other, receivedOn: '2026-05-04' },
      lines: [
        {
          ...{ presentationId: small.bib.presentation, locationId: small.store, packs: 1 },
          ...{ packPrice: '10', orderLineId: line?.id },
        },
      ],
    };
    const foreign = await book().ask('POST', '/deliveries', body);
    expect([foreign.status, fieldsOf(foreign)]).toEqual([422, ['lines[0].orderLineId']]);
    expect((await orders.get(order.id)).lines[0]?.received).toBe(0);
  });

  it('is late after the days of grace, and can be chased', async () => {
    const { small } = orders;
    await book().done('PUT', '/order-rules', { lateAfterDays: 1 });
    const order = await orders.sent([orders.line(small.adhesive, 1, '110')]);
    const late = () => book().done<{ items: Order[] }>('GET', '/orders?overdue=true');
    clock.at = new Date('2026-05-07T10:00:00Z');
    expect((await late()).items.map((each) => each.id)).not.toContain(order.id);
    clock.at = new Date('2026-05-08T10:00:00Z');
    expect((await late()).items.find((each) => each.id === order.id)?.daysLate).toBe(2);
    const { alerts } = await book().done<{ alerts: Record<string, unknown>[] }>(
      ...(['GET', '/reorder/alerts'] as const),
    );
    expect(alerts.find((alert) => alert.id === `overdue-order:${order.id}`)).toMatchObject({
      ...{ kind: 'overdue order', order: { number: order.number, supplier: 'Northgate Supply' } },
      figures: [{ name: 'days late', value: '2' }, { value: '1' }, { value: '1' }],
      sentence:
        `Order ${order.number} of 2026-05-04 to Northgate Supply was expected on 2026-05-06, ` +
        '2 days ago: Adhesive did not come.',
    });
    const chased = await orders.act(order, 'chasing', { way: 'by phone', note: 'Mr Lund looks.' });
    expect([kinds(chased).at(-1), chased.events.at(-1)?.note]).toEqual([
      'chased',
      'Mr Lund looks.',
    ]);
    clock.at = new Date('2026-05-04T10:00:00Z');
  });
});

describe('the list of orders', () => {
  it('filters by state and supplier, and pages without gaps', async () => {
    const all: number[] = [];
    let cursor: string | null = '';
    while (cursor !== null) {
      const path: string = `/orders?limit=3${cursor === '' ? '' : `&cursor=${cursor}`}`;
      const page: { items: Order[]; nextCursor: string | null } = await book().done('GET', path);
      all.push(...page.items.map((order) => order.number));
      cursor = page.nextCursor;
    }
    expect(all).toEqual(Array.from(all, (_, i) => all.length - i));
    const open = await book().done<{ items: Order[] }>('GET', '/orders?state=open&limit=500');
    expect(open.items.every((o) => ['draft', 'approved', 'sent'].includes(o.state))).toBe(true);
    const none = await book().done<{ items: Order[] }>('GET', `/orders?supplierId=${randomUUID()}`);
    expect(none.items).toEqual([]);
    expect((await book().ask('GET', '/orders?state=lost')).status).toBe(400);
    expect((await book().ask('GET', '/orders?cursor=bm8')).status).toBe(400);
  });
});
