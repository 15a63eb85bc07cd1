import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { UnitOfWork } from '../../libs/platform/src/index.js';
import { onOrder } from '../../libs/purchasing/src/queries/orders/on-order.js';
import { TestService } from '../http/service.js';
import { textOfPdf } from '../pricing/pricing-book.js';
import { fieldsOf, type Order, OrderBook } from './orders-book.js';
import { type MailBox, openMailBox, SetClock } from './post-boxes.js';

// Monday, 4 May 2026, noon in Berlin.
const clock = new SetClock(new Date('2026-05-04T10:00:00Z'));

let mail: MailBox;
let service: TestService;
let orders: OrderBook;

beforeAll(async () => {
  mail = await openMailBox();
  const from = 'Mill practice <mill@mill.example>';
  service = await TestService.start({ clock, mail: { smtpUrl: mail.url, from } });
  orders = await OrderBook.open(service, 'post');
  const { book, paste, bib } = orders.small;
  await book.done('PUT', '/order-rules', {
    ...{ lateAfterDays: 1, deliverTo: 'Mühlgasse 3, 12345 Mühlstadt' },
  });
  await book.done('PATCH', `/presentations/${paste.presentation}`, {
    ...{ articleCode: '=HB-12', deviceIdentifier: '04012345678901' },
  });
  await book.done('PATCH', `/presentations/${bib.presentation}`, { name: 'Box, "large"' });
});

afterAll(async () => {
  await service.stop();
  await mail.close();
});

const german = (language: 'de' | 'en') =>
  orders.small.book.done('PATCH', `/suppliers/${orders.small.supplier}`, { language });

async function approved(): Promise<Order> {
  const { paste, bib } = orders.small;
  const note = 'Bitte nicht vor 8 Uhr.';
  const draft = await orders.draft([orders.line(paste, 2), orders.line(bib, 3, '9.5')], { note });
  return orders.act(draft, 'approval');
}

async function file(order: Order, form: 'pdf' | 'csv') {
  const answer = await service.app.inject({
    method: 'GET',
    url: `/api/orders/${order.id}.${form}`,
    headers: { cookie: `traybook_session=${orders.small.book.practice.people.auditor.cookie}` },
  });
  return {
    status: answer.statusCode,
    type: answer.headers['content-type'],
    bytes: answer.rawPayload,
  };
}

const flat = (text: string) => text.replace(/\s+/g, ' ');

describe('an order on paper', () => {
  it('says who wants what from whom, in the language of the supplier', async () => {
    await german('de');
    const order = await approved();
    const { status, type, bytes } = await file(order, 'pdf');
    expect([status, type]).toEqual([200, 'application/pdf']);
    const text = flat(textOfPdf(bytes));
    for (const part of [
      `Bestellung ${order.number}`,
      'Entwurf, keine Bestellung',
      'Lieferant Northgate Supply',
      'Kundennummer K-77',
      'Lieferanschrift post practice, Mühlgasse 3, 12345 Mühlstadt',
      '=HB-12 Paste, Body 2 2 72,00 144,00',
      'Etikett 04012345678901',
      'Ware 172,50',
      'Gesamt 172,50',
      'Bitte nicht vor 8 Uhr.',
      'Seite 1 von 1',
    ]) {
      expect(text).toContain(part);
    }
    await german('en');
    expect(flat(textOfPdf((await file(order, 'pdf')).bytes))).toContain('Deliver to post practice');
  });

  // RFC 4180, section 2: header, CRLF, quotes doubled inside quotes.
  it('is a table that no spreadsheet runs', async () => {
    const order = await approved();
    const { status, type, bytes } = await file(order, 'csv');
    expect([status, type]).toEqual([200, 'text/csv; charset=utf-8']);
    expect(bytes.toString('utf8').split('\r\n')).toEqual([
      'order,ordered_on,customer_number,line,article_code,device_identifier,goods,pack,packs,' +
        'pack_price,amount,currency',
      `${order.number},,K-77,1,'=HB-12,04012345678901,"Paste, Body 2",Pack,2,72.00,144.00,EUR`,
      `${order.number},,K-77,2,,,Patient bib,"Box, ""large""",3,9.50,28.50,EUR`,
      '',
    ]);
    expect((await file({ ...order, id: randomUUID() }, 'csv')).status).toBe(404);
    expect((await file({ ...order, id: 'nothing' }, 'pdf')).status).toBe(400);
  });
});

describe('sending by e-mail', () => {
  it('is done when the server took it, with both papers, once whatever is clicked', async () => {
    const order = await approved();
    const before = mail.mails.length;
    const key = randomUUID();
    const clicks = await Promise.all([
      orders.tries(order, 'sending', { way: 'e-mail' }, 'manager', key),
      orders.tries(order, 'sending', { way: 'e-mail' }, 'manager', key),
      orders.tries(order, 'sending', { way: 'e-mail' }, 'manager'),
    ]);
    expect(clicks.filter((answer) => answer.status === 201).length).toBeGreaterThanOrEqual(1);
    expect(clicks.every(({ status }) => status === 201 || status === 409)).toBe(true);
    expect(mail.mails).toHaveLength(before + 1);
    const got = mail.mails[before];
    const to = got?.to as { text: string } | undefined;
    expect(to?.text).toBe('orders@northgate.example');
    expect(got?.subject).toBe(`Order ${order.number} of post practice (customer K-77)`);
    expect(got?.text).toContain('We expect the goods by 6 May 2026.');
    expect(got?.text).toContain('Bitte nicht vor 8 Uhr.');
    const [pdf, csv] = got?.attachments ?? [];
    expect([pdf?.filename, pdf?.contentType]).toEqual([
      ...[`order-${order.number}.pdf`, 'application/pdf'],
    ]);
    expect(flat(textOfPdf(pdf?.content ?? Buffer.of()))).toContain('Ordered on 4 May 2026');
    expect([csv?.filename, csv?.contentType]).toEqual([`order-${order.number}.csv`, 'text/csv']);
    expect(csv?.content.toString('utf8')).toContain(`${order.number},2026-05-04,K-77,1,`);
    const after = await orders.get(order.id);
    expect([after.state, after.orderedOn]).toEqual(['sent', '2026-05-04']);
    expect(after.events.filter((event) => event.kind === 'sent')).toMatchObject([
      { figures: [{ value: 'e-mail' }, { value: 'orders@northgate.example' }, {}, {}] },
    ]);
  });

  it('leaves the order approved when the server does not take it', async () => {
    const order = await approved();
    const before = mail.mails.length;
    mail.refuseNext();
    const failed = await orders.tries(order, 'sending', { way: 'e-mail' });
    expect([failed.status, failed.body.code]).toEqual([422, 'mail_not_taken']);
    expect(failed.body.detail).toContain('Mailbox full');
    expect(failed.body.detail).toContain('the order is still approved');
    expect(mail.mails).toHaveLength(before);
    const still = await orders.get(order.id);
    expect([still.state, still.version]).toEqual(['approved', order.version]);
    const { state } = await orders.act(order, 'sending', { way: 'e-mail', to: 'lund@n.example' });
    expect([state, mail.mails.length]).toEqual(['sent', before + 1]);
  });

  it('needs an address, and a day that is not over', async () => {
    const order = await approved();
    const wrong = async (body: object) => fieldsOf(await orders.tries(order, 'sending', body));
    expect(await wrong({ way: 'e-mail', to: 'a@b, c@d' })).toEqual(['to']);
    expect(await wrong({ way: 'print', expectedOn: '2026-05-03' })).toEqual(['expectedOn']);
    expect(await wrong({ way: 'e-mail', orderedOn: '2026-05-01' })).toEqual(['orderedOn']);
    expect(await wrong({ way: 'print', orderedOn: '2026-05-05' })).toEqual(['orderedOn']);
    expect(await wrong({ way: 'pigeon' })).toEqual(['way']);
    expect((await orders.tries(order, 'sending', { way: 'print' }, 'dentist')).status).toBe(403);
    const draft = await orders.draft([orders.line(orders.small.bib, 1)]);
    const early = await orders.tries(draft, 'sending', { way: 'e-mail' });
    expect([early.status, early.body.code]).toEqual([409, 'order_not_so_far']);
  });

  it('asks for what is outstanding, and for nothing else', async () => {
    const order = await orders.act(await approved(), 'sending', { way: 'print' });
    const [paste] = order.lines;
    if (!paste) throw new Error('The order lost its lines');
    await orders.deliver('2026-05-04', [[paste, 2]]);
    await german('de');
    await orders.act(order, 'chasing', { way: 'e-mail', note: 'Es eilt.' });
    await german('en');
    const got = mail.mails.at(-1);
    expect(got?.subject).toContain(`Wo bleibt unsere Bestellung ${order.number}?`);
    expect(got?.text).toContain('- 3 × Box, "large", Patient bib');
    expect(got?.text).not.toContain('Paste');
    expect(got?.text).toContain('Es eilt.');
  });
});

/** Whatever is done with orders, in whatever order: the sums hold, and what is wrong changes nothing. */
describe('orders under random hands', () => {
  const act = fc.record({
    order: fc.nat(4),
    what: fc.constantFrom(
      ...['approval', 'approval', 'sending', 'sending', 'delivery', 'delivery', 'delivery'],
      ...['answer', 'chasing', 'change', 'approval-withdrawal', 'reversal', 'closing'],
    ),
    line: fc.nat(1),
    packs: fc.integer({ min: 1, max: 4 }),
  });

  it('keep ordered = received + cancelled + outstanding, and the position', async () => {
    const { book, bib, strip, supplier } = orders.small;
    const begun: Order[] = [];
    for (const packs of [2, 3, 1, 4, 5]) {
      begun.push(await orders.draft([orders.line(bib, packs, '5'), orders.line(strip, 2, '7')]));
    }
    const earlier = await onOrderNow();
    const deliveries: string[] = [];
    const done = new Map<string, number>();
    const steps = fc.sample(act, { seed: 5, numRuns: 110 });
    for (const { order: which, what, line, packs } of steps) {
      const order = await orders.get(begun[which]?.id ?? '');
      const at = order.lines[line];
      if (!at) throw new Error('An order lost a line');
      const answer = await hand(order, what, { lineId: at.id, packs });
      const ok = answer === undefined || answer.status < 300;
      if (answer && !ok) expect([409, 422]).toContain(answer.status);
      if (answer && ok) done.set(what, (done.get(what) ?? 0) + 1);
      await check(order, ok);
    }
    // The walk did say something about them.
    expect([...done.keys()]).toEqual(
      expect.arrayContaining(['approval', 'sending', 'delivery', 'reversal', 'answer']),
    );

    /** What the position of the planning counts as on order, in packs of 500 bibs and of 100 strips. */
    async function onOrderNow(): Promise<Map<string, number>> {
      const { practiceId } = book.practice.owner;
      const found = await service.app.get(UnitOfWork).read(practiceId, onOrder);
      const packsOf = (id: string, content: bigint) =>
        found
          .filter(({ consumableId }) => consumableId === id)
          .reduce((sum, { quantity }) => sum + Number(quantity / content), 0);
      return new Map([
        [bib.id, packsOf(bib.id, 500_000_000n)],
        [strip.id, packsOf(strip.id, 100_000_000n)],
      ]);
    }

    async function hand(order: Order, what: string, about: { lineId: string; packs: number }) {
      const at = order.lines.find(({ id }) => id === about.lineId);
      if (!at) throw new Error('An order lost a line');
      if (what === 'delivery') {
        const answer = await orders.deliver('2026-05-04', [[at, about.packs]]);
        if (answer.status === 201) deliveries.push(String(answer.body.id));
        return answer;
      }
      if (what === 'reversal') {
        const id = deliveries.pop();
        if (id === undefined) return undefined;
        return book.ask('POST', `/deliveries/${id}/reversal`, { note: 'Wrong.' });
      }
      // Rarely, because nothing more happens to an order then.
      if (
        what === 'approval-withdrawal' &&
        about.packs === 4 &&
        about.lineId === order.lines[1]?.id
      ) {
        return orders.tries(order, 'cancellation');
      }
      if (what === 'change') {
        const lines = order.lines.map((each) => ({
          ...{ id: each.id, presentationId: each.presentation.id, packPrice: each.packPrice },
          packs: each.id === at.id ? about.packs : each.packs,
        }));
        const { version } = order;
        return book.ask('PUT', `/orders/${order.id}`, { version, supplierId: supplier, lines });
      }
      const bodies: Record<string, object> = {
        sending: { way: 'by hand' },
        chasing: { way: 'by phone' },
        answer: { willNotCome: [about] },
      };
      return orders.tries(order, what, bodies[what] ?? {});
    }

    async function check(before: Order, ok: boolean): Promise<void> {
      const all = await Promise.all(begun.map(({ id }) => orders.get(id)));
      const now = all.find(({ id }) => id === before.id);
      if (!ok) expect(now).toEqual(before);
      const waiting = new Map<string, number>();
      for (const order of all) {
        for (const l of order.lines) {
          expect(l.packs + l.surplus).toBe(l.received + l.cancelled + l.outstanding);
          const came = l.arrivals.reduce((sum, each) => sum + each.packs, 0);
          expect(l.received).toBe(came);
          if (order.state !== 'sent') continue;
          const { id } = l.presentation.id === bib.presentation ? bib : strip;
          waiting.set(id, (waiting.get(id) ?? 0) + l.outstanding);
        }
        const open = order.lines.some((l) => l.outstanding > 0);
        if (order.state === 'sent' || order.state === 'closed') {
          expect(open).toBe(order.state === 'sent');
        }
      }
      expect(await onOrderNow()).toEqual(
        new Map(
          [bib, strip].map((i) => [i.id, (earlier.get(i.id) ?? 0) + (waiting.get(i.id) ?? 0)]),
        ),
      );
    }
  }, 120_000);
});
