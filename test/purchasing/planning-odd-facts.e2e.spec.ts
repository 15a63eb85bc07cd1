import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import {
  deliveryLine,
  type Item,
  openSmallBook,
  postVisit,
  restoration,
  type SmallBook,
} from '../book/book.js';
import { TestService } from '../http/service.js';
import type { Bulk, Curve } from './foresight-answers.js';
import { type Forecast, figure, type Proposal, type Proposals, TODAY } from './planning-book.js';
import { SetClock } from './post-boxes.js';

// Facts that hardly fit: each gets a sensible answer that says what it assumed.

const clock = new SetClock(new Date(`${TODAY}T06:00:00Z`));
let service: TestService;
let s: SmallBook;

beforeAll(async () => {
  service = await TestService.start({ clock });
  s = await openSmallBook(service, 'odd');
  const { book, supplier, store } = s;
  await book.deliver(supplier, '2026-04-01', [
    deliveryLine(s.etchant, store, 1, '20', { expiresOn: '2027-06-30' }),
    deliveryLine(s.adhesive, store, 1, '110', { expiresOn: '2099-12-31' }),
    // Lives for a month, and is hardly used.
    deliveryLine(s.paste, store, 1, '72', { expiresOn: '2026-04-30' }),
    deliveryLine(s.strip, store, 1, '0'),
  ]);
  const line = (of: Item, dispensed: string) => ({
    ...{ consumableId: of.id, driver: 'restoration', dispensed, placed: '0' },
  });
  const once = await book.template('Once', [line(s.etchant, '0.08'), line(s.paste, '0.06')]);
  const usual = await book.template('Usual', [line(s.bib, '1')]);
  const strips = await book.template('Strips', [line(s.strip, '4')]);
  const visit = (templateId: string, visitedOn: string) =>
    postVisit(s, { visitedOn, restorations: [restoration(s, { templateId, shades: [] })] });
  await visit(once, '2026-04-02');
  // Wednesdays and Thursdays of a month: the days on which this practice works.
  for (const day of ['02', '08', '09', '16', '22', '23', '29', '30']) {
    await visit(usual, `2026-04-${day}`);
  }
  for (let n = 0; n < 10; n += 1) await visit(strips, '2026-04-15');
});

afterAll(() => service.stop());

interface Answered {
  readonly item: { readonly next: string; readonly useInWeek: string };
  readonly policy: Proposal;
}

const ask = (of: Item) => s.book.done<Answered>('GET', `/reorder/items/${of.id}`);
const forecast = (of: Item) => s.book.done<Forecast>('GET', `/reorder/forecasts/${of.id}`);
const terms = (changes: object) =>
  s.book.done('PUT', `/reorder/settings/suppliers/${s.supplier}`, {
    ...{ leadDays: 3, freight: '0' },
    workingDays: ['monday', 'tuesday', 'wednesday', 'thursday', 'friday'],
    ...changes,
  });
const settings = (path: string, body: object) =>
  s.book.done('PUT', `/reorder/settings${path}`, body);

describe('an item', () => {
  it('without any history expects nothing, says so, and orders nothing by itself', async () => {
    const { item, policy } = await ask(s.capsule);
    expect([item.next, Number(item.useInWeek)]).toEqual(['nothing expected', 0]);
    expect(policy.flags).toContain('no use expected');
    expect(policy.assumptions.join(' ')).toContain('No use is on record in');
    expect(policy.sentence).toContain('No use is expected, so nothing is ordered.');
    expect((await forecast(s.capsule)).choice).toContain('the plain method is taken');
  });

  it('used once is forecast by the plain method from that one use', async () => {
    const { item, policy } = await ask(s.etchant);
    expect(policy.assumptions).toContain(
      'It was used on 1 day only, so the plain method forecasts it.',
    );
    expect(Number(item.useInWeek)).toBeGreaterThan(0);
    expect(Number(item.useInWeek)).toBeLessThan(0.08);
    const { horizons, methods } = await forecast(s.etchant);
    expect(methods.filter(({ chosen }) => chosen)).toHaveLength(1);
    expect(Number(horizons.at(-1)?.mean)).toBeGreaterThan(0);
  });

  it('used on one day only, however much, is no steady use', async () => {
    const { item, policy } = await ask(s.strip);
    expect(policy.assumptions.join(' ')).toContain('It was used on 1 day only');
    // Forty strips on the first of six working days: at the same pace thirteen in the next two.
    expect(Number(item.useInWeek)).toBeGreaterThan(5);
    expect(Number(item.useInWeek)).toBeLessThan(20);
    const { history } = await forecast(s.strip);
    expect(history.days.map(({ day }) => day)).toContain('2026-04-15');
  });

  it('that is there but never used is not due, and says so', async () => {
    const { policy } = await ask(s.adhesive);
    expect([policy.packs, Number(policy.position)]).toEqual([0, 5]);
    expect(policy.flags).toContain('no use expected');
    expect(policy.sentence).toContain('Nothing is due yet.');
    expect(policy.sentence).not.toContain('within its limits');
  });

  it('all of whose use was a one-off event expects none, and says what was left out', async () => {
    const span = { firstDay: '2026-04-15', lastDay: '2026-04-15', note: 'A course.' };
    const body = { consumableId: s.strip.id, ...span };
    const { id } = await s.book.done('POST', '/reorder/one-offs', body);
    const { item, policy } = await ask(s.strip);
    expect([item.next, Number(item.useInWeek), policy.packs]).toEqual(['order later', 0, 0]);
    expect(policy.assumptions.join(' ')).toContain('40 pieces are left out as one-off events');
    await s.book.done('POST', `/reorder/one-offs/${id}/withdrawal`, {});
    expect(Number((await ask(s.strip)).item.useInWeek)).toBeGreaterThan(5);
  });

  it('whose only use was reversed was never used', async () => {
    const usage = [{ consumableId: s.capsule.id, dispensed: '0.1' }];
    const restorations = [restoration(s, { templateId: s.template, shades: [s.paste.id] })];
    const { id } = await postVisit(s, { visitedOn: '2026-04-30', restorations, usage });
    expect(Number((await ask(s.capsule)).item.useInWeek)).toBeGreaterThan(0);
    await s.book.done('POST', `/visits/${id}/reversal`, { note: 'Another patient.' });
    const { item, policy } = await ask(s.capsule);
    expect([item.next, Number(item.useInWeek)]).toEqual(['nothing expected', 0]);
    expect(policy.assumptions.join(' ')).toContain('No use is on record');
  });

  it('that nobody uses is worth no stock at any level of service, and no bulk offer', async () => {
    const curve = await s.book.done<Curve>(
      ...(['GET', `/reorder/what-if/service?consumableId=${s.capsule.id}`] as const),
    );
    const stock = [curve.now, ...curve.points].map((point) => point?.item?.averageStock);
    expect(stock).toEqual(stock.map(() => '0'));
    const offer = { consumableId: s.adhesive.id, presentationId: s.adhesive.presentation };
    const bulk = await s.book.done<Bulk>('POST', '/reorder/what-if/bulk', {
      ...offer,
      ...{ packs: 10, packPrice: '90' },
    });
    expect(bulk).toMatchObject({ paperSaving: '200.00', worthIt: false, savedOrders: '0.00' });
    expect(Number(bulk.realSaving)).toBeLessThan(-900);
  });

  it('that nobody says the price or supplier of is still told, without a sum', async () => {
    const list = await s.book.done<Proposals>('GET', '/reorder/proposals');
    const all = [...list.orders.flatMap((order) => order.lines), ...list.stuck];
    const bib = all.find((line) => line.consumable.id === s.bib.id);
    expect(bib?.flags).toContain('price not known');
    expect([bib?.total, (bib?.packs ?? 0) > 0]).toEqual([null, true]);
    expect(list.orders.find((order) => order.supplier === null)?.goods).toBe('0.00');
  });
});

describe('a supply', () => {
  it('that is closed for months is waited for, which is told', async () => {
    const closures = [{ firstDay: '2026-05-01', lastDay: '2026-08-28', note: null }];
    await terms({ closures });
    const { policy } = await ask(s.paste);
    expect(figure(policy, 'mean lead time')).toBeGreaterThan(115);
    expect(policy.flags).toContain('usable life shorter than lead time and review');
    await terms({});
  });

  it('with a lead time of zero days still covers the review, and says so', async () => {
    await terms({
      leadDays: 0,
      workingDays: ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'],
    });
    const { policy } = await ask(s.paste);
    expect(policy.lead).toMatchObject({ statedDays: 0, mean: '0' });
    expect(figure(policy, 'mean lead time')).toBe(0);
    expect(policy.flags).toContain('lead time of zero days');
    expect(figure(policy, 'mean use in lead time and review')).toBeGreaterThan(0);
    await terms({});
  });

  it('that lives shorter than it takes to come is flagged, with what will be lost', async () => {
    await terms({ leadDays: 40 });
    const { policy } = await ask(s.paste);
    expect(policy.flags).toContain('usable life shorter than lead time and review');
    expect(figure(policy, 'mean lead time')).toBeGreaterThan(30);
    await terms({});
  });

  it('whose smallest order cannot be used in time is flagged with its expected waste', async () => {
    const path = `/presentations/${s.paste.presentation}`;
    await settings(path, { minimumPacks: 5, discount: 'all units', prices: [] });
    // Due whatever the forecast says of one use: ten steps are to be there.
    await settings(`/consumables/${s.paste.id}`, { reorderAt: '0.6', orderUpTo: '4' });
    const { policy } = await ask(s.paste);
    expect([policy.packs, figure(policy, 'smallest order')]).toEqual([5, 5]);
    expect(policy.flags).toContain('smallest order above what is used before it expires');
    expect(policy.bounds).toEqual(expect.arrayContaining(['minimum order', 'expiry']));
    // Twenty grams for a month, of which hardly any is used.
    expect(figure(policy, 'expected waste of the order')).toBeGreaterThan(19);
    expect(Number(policy.wasteAfter)).toBeGreaterThan(19);
    expect(policy.sentence).toContain('Note: smallest order above what is used before it expires.');
    await settings(path, { minimumPacks: 1, discount: 'all units', prices: [] });
    await settings(`/consumables/${s.paste.id}`, {});
  });
});
