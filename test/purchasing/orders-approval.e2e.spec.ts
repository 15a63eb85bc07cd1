import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { TestService } from '../http/service.js';
import { fieldsOf, type Order, OrderBook } from './orders-book.js';
import type { Proposals } from './planning-book.js';
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

function figureOf(order: Order, kind: string, name: string): string | undefined {
  const event = order.events.findLast((each) => each.kind === kind);
  return event?.figures.find((each) => each.name === name)?.value;
}

describe('a draft', () => {
  it('takes prices from the last delivery or the list, and freight from the terms', async () => {
    const { small } = orders;
    const order = await orders.draft([orders.line(small.paste, 2), orders.line(small.bib, 1, '9')]);
    expect(order).toMatchObject({
      ...{ state: 'draft', arrival: 'nothing yet', goods: '153.00', freight: '0.00' },
      ...{ total: '153.00', orderedOn: null, expectedOn: null, version: 1, unpriced: 0 },
      createdBy: { name: 'mill owner' },
      supplier: { customerNumber: 'K-77', email: 'orders@northgate.example' },
    });
    const less = await orders.draft([orders.line(small.paste, 1), orders.line(small.strip, 1)]);
    // The strip has no list price and was never bought.
    expect(less).toMatchObject({ goods: '72.00', freight: '7.90', total: '79.90', unpriced: 1 });
  });

  it('remembers what was proposed, and why', async () => {
    const { small } = orders;
    await book().done('PUT', `/reorder/settings/consumables/${small.paste.id}`, {
      ...{ reorderAt: '5', orderUpTo: '10', note: 'By hand.' },
    });
    const { orders: baskets } = await book().done<Proposals>('GET', '/reorder/proposals');
    const [line] = baskets.flatMap((basket) => basket.lines);
    const more = { fromProposal: true };
    const order = await orders.draft(
      [orders.line(small.paste, 4), orders.line(small.bib, 1)],
      more,
    );
    const [paste, bib] = order.lines;
    expect(paste?.proposed).toEqual({
      ...{ packs: line?.packs, sentence: line?.sentence, figures: line?.figures },
    });
    expect(paste?.proposed?.sentence).toContain('The reorder point is 5 g, set by hand');
    expect(bib?.proposed).toBeNull();
    // A line that stays keeps its why; one of another pack in its place has none.
    const change = (presentationId: string) =>
      book().done<Order>('PUT', `/orders/${order.id}`, {
        ...{ version: order.version, supplierId: small.supplier },
        lines: [{ id: paste?.id, presentationId, packs: 2 }],
      });
    const changed = await change(small.paste.presentation);
    expect(changed.lines[0]).toMatchObject({ packs: 2, proposed: paste?.proposed });
  });

  it('is numbered without gaps or doubles, however many are begun at once', async () => {
    const before = (await orders.draft([orders.line(orders.small.bib, 1, '1')])).number;
    const wrong = { supplierId: orders.small.supplier, lines: [] };
    const all = await Promise.all(
      Array.from({ length: 12 }, (_, i) =>
        i % 4 === 3
          ? book().ask('POST', '/orders', wrong)
          : book().ask('POST', '/orders', {
              ...{ supplierId: orders.small.supplier },
              lines: [orders.line(orders.small.bib, i + 1, '1')],
            }),
      ),
    );
    const made = all.filter((answer) => answer.status === 201);
    const numbers = made.map((answer) => Number(answer.body.number)).sort((a, b) => a - b);
    expect(numbers).toEqual(numbers.map((_, i) => before + 1 + i));
    expect(numbers).toHaveLength(9);
  });

  it.each([
    [{ supplierId: randomUUID() }, 422, 'supplierId'],
    [{ lines: [] }, 400, 'lines'],
    [{ lines: [{ presentationId: randomUUID(), packs: 1 }] }, 422, 'lines[0].presentationId'],
    [{ lines: [{ presentationId: 'x', packs: 0 }] }, 400, 'lines[0].packs'],
    [{ freight: '-1' }, 400, 'freight'],
    [{ note: ' ' }, 400, 'note'],
  ])('refuses %j and numbers nothing', async (wrong, status, field) => {
    const before = await book().done<{ items: object[] }>('GET', '/orders');
    const good = { supplierId: orders.small.supplier, lines: [orders.line(orders.small.bib, 1)] };
    const answer = await book().ask('POST', '/orders', { ...good, ...wrong });
    expect([answer.status, fieldsOf(answer).includes(field)]).toEqual([status, true]);
    expect(await book().done('GET', '/orders')).toEqual(before);
  });

  it('names a pack once, and only one that is in use', async () => {
    const { small } = orders;
    const lines = [orders.line(small.bib, 1), orders.line(small.bib, 2)];
    const twice = await book().ask('POST', '/orders', { supplierId: small.supplier, lines });
    expect(fieldsOf(twice)).toEqual(['lines[1].presentationId']);
  });

  it('is written anew by whoever saw it last; the other one hears of it', async () => {
    const { small } = orders;
    const order = await orders.draft([orders.line(small.paste, 1), orders.line(small.bib, 1)]);
    const [paste, bib] = order.lines;
    const change = (lines: object[], version = order.version) =>
      book().ask('PUT', `/orders/${order.id}`, { version, supplierId: small.supplier, lines });
    const [first, second] = await Promise.all([
      change([
        { ...orders.line(small.bib, 4, '10'), id: bib?.id },
        { ...orders.line(small.paste, 3, '70'), id: paste?.id },
      ]),
      change([{ ...orders.line(small.paste, 9), id: paste?.id }]),
    ]);
    const statuses = [first.status, second.status].sort();
    expect(statuses).toEqual([200, 409]);
    const lost = first.status === 409 ? first : second;
    expect([lost.body.code, fieldsOf(lost)]).toEqual(['order_changed_meanwhile', ['version']]);
    const after = await orders.get(order.id);
    expect(after.version).toBe(2);
    const foreign = await change([{ ...orders.line(small.bib, 1), id: randomUUID() }], 2);
    expect(fieldsOf(foreign)).toEqual(['lines[0].id']);
    const swapped = await change(
      [
        { ...orders.line(small.bib, 4, '10'), id: after.lines.find((l) => l.id === bib?.id)?.id },
        { ...orders.line(small.etchant, 2, '20') },
      ],
      2,
    );
    expect(swapped.body).toMatchObject({ version: 3, goods: '80.00' });
  });
});

describe('approving', () => {
  const rules = (more: object) => book().done('PUT', '/order-rules', { lateAfterDays: 1, ...more });

  it('is for whoever may, within the limit and the budget of the month', async () => {
    const { small } = orders;
    await rules({ approveUpTo: '100', monthlyBudget: '150', deliverTo: 'Mill Lane 3, Millbrook' });
    const big = await orders.draft([orders.line(small.bib, 10, '12')], { freight: '0' });
    for (const role of ['assistant', 'dentist', 'auditor'] as const) {
      expect((await orders.tries(big, 'approval', {}, role)).status).toBe(403);
    }
    const refused = await orders.tries(big, 'approval', {}, 'manager');
    expect([refused.status, refused.body.code]).toEqual([422, 'above_limits']);
    expect(refused.body.detail).toBe(
      'The owner has to approve it: it is 20.00 EUR above the 100.00 EUR that may be approved.',
    );
    expect((await orders.get(big.id)).limits?.inTheWay).toBe(refused.body.detail);
    const small1 = await orders.draft([orders.line(small.bib, 8, '12')], { freight: '0' });
    expect((await orders.tries(small1, 'approval', {}, 'manager')).status).toBe(201);
    const small2 = await orders.draft([orders.line(small.bib, 5, '12')], { freight: '0' });
    const over = await orders.tries(small2, 'approval', {}, 'manager');
    expect(over.body.detail).toContain("6.00 EUR above the 54.00 EUR left of this month's budget");
    const byOwner = await orders.act(big, 'approval', { note: 'Course in June.' });
    expect(figureOf(byOwner, 'approved', 'above the limit')).toBe('20.00');
    expect(figureOf(byOwner, 'approved', 'above the budget')).toBe('66.00');
    expect(byOwner.events.at(-1)?.note).toBe('Course in June.');
    expect(await book().done('GET', '/order-rules')).toMatchObject({ budgetLeft: '0.00' });
    // What is cancelled gives its part of the budget back, and another month has its own.
    await orders.act(big, 'cancellation');
    expect(await book().done('GET', '/order-rules')).toMatchObject({ budgetLeft: '54.00' });
    clock.at = new Date('2026-06-01T10:00:00Z');
    expect(await book().done('GET', '/order-rules')).toMatchObject({ budgetLeft: '150.00' });
    clock.at = new Date('2026-05-04T10:00:00Z');
  });

  it('lets two approvals at once not spend the same budget twice', async () => {
    await rules({ monthlyBudget: '150' });
    const lines = [orders.line(orders.small.bib, 4, '10')];
    const both = [
      await orders.draft(lines, { freight: '0' }),
      await orders.draft(lines, { freight: '0' }),
    ];
    const answers = await Promise.all(
      both.map((order) => orders.tries(order, 'approval', {}, 'manager')),
    );
    expect(answers.map((answer) => answer.status).sort()).toEqual([201, 422]);
    await rules({});
  });

  it('ends when the order is changed, or taken back', async () => {
    const order = await orders.draft([orders.line(orders.small.bib, 1, '5')]);
    const approved = await orders.act(order, 'approval');
    const body = { version: approved.version, supplierId: orders.small.supplier };
    const lines = [{ ...orders.line(orders.small.bib, 2, '5'), id: order.lines[0]?.id }];
    const changed = await book().done<Order>('PUT', `/orders/${order.id}`, { ...body, lines });
    expect([changed.state, kinds(changed)]).toEqual([
      'draft',
      ['created', 'approved', 'changed', 'approval withdrawn'],
    ]);
    await orders.act(order, 'approval');
    const back = await orders.act(order, 'approval-withdrawal', { note: 'Too early.' });
    expect([back.state, back.events.at(-1)?.note]).toEqual(['draft', 'Too early.']);
  });

  it('does not touch the rules for others than the owner', async () => {
    const wrong = await book().ask('PUT', '/order-rules', { lateAfterDays: 99 });
    expect(fieldsOf(wrong)).toEqual(['lateAfterDays']);
    for (const role of ['manager', 'dentist', 'assistant', 'auditor'] as const) {
      expect((await book().ask('GET', '/order-rules', undefined, role)).status).toBe(403);
    }
  });
});
