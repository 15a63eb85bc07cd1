import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { ComputeLevels } from '../../libs/purchasing/src/index.js';
import { deliveryLine, openSmallBook } from '../book/book.js';
import { TestService } from '../http/service.js';
import { alertLevelCases } from './alert-level-cases.js';
import { lowAlerts } from './computed-levels.js';
import {
  type Forecast,
  figure,
  openPlanningBook,
  type PlanningBook,
  type Proposal,
  type Proposals,
  TODAY,
  visitsExpected,
} from './planning-book.js';
import { SetClock } from './post-boxes.js';

const clock = new SetClock(new Date(`${TODAY}T06:00:00Z`));
let service: TestService;
let owner: pg.Pool;
let s: PlanningBook;

beforeAll(async () => {
  service = await TestService.start({ clock });
  owner = new pg.Pool({ connectionString: service.databaseUrl, max: 2 });
  s = await openPlanningBook(service, 'order');
});

afterAll(async () => {
  await owner.end();
  await service.stop();
});

const ask = () => s.book.done<Proposals>('GET', '/reorder/proposals');
const linesOf = (list: Proposals) => list.orders.flatMap((order) => order.lines);

function proposalOf(list: Proposals, id: string): Proposal {
  const found = linesOf(list).find((line) => line.consumable.id === id);
  if (!found) throw new Error('Nothing of it is proposed');
  return found;
}

async function number(sql: string, id: string): Promise<number> {
  const { rows } = await owner.query<{ n: string }>(sql, [id]);
  return Number(rows[0]?.n);
}

const ON_HAND = `SELECT coalesce(sum(h.on_hand), 0) AS n FROM holdings h
  JOIN layers l ON l.id = h.layer_id WHERE l.consumable_id = $1`;
const OWED = `SELECT coalesce(sum(quantity - settled), 0) AS n FROM shortfalls
  WHERE consumable_id = $1 AND cancelled_at IS NULL`;

/** Expectations are told with three digits. */
const rounded = (value: number) =>
  String(Math.abs(value) >= 100 ? Math.round(value) : Number(value.toPrecision(3)));

const cents = (text: string) => BigInt(Math.round(Number(text) * 100));

describe('a proposal', () => {
  it('rests on numbers that the movements say', async () => {
    const bib = proposalOf(await ask(), s.bib.id);
    const [onHand, owed] = [await number(ON_HAND, s.bib.id), await number(OWED, s.bib.id)];
    expect([onHand, owed > 0]).toEqual([0, true]);
    expect(figure(bib, 'usable on hand')).toBe(onHand);
    expect(figure(bib, 'open shortfall')).toBe(owed);
    expect(figure(bib, 'position')).toBe(onHand - owed);
    expect(Number(bib.position)).toBe(onHand - owed);
    // One bib per visit: what will be used is how many visits there will be on the days to come.
    const protection = figure(bib, 'mean lead time') + figure(bib, 'review period');
    const mean = figure(bib, 'mean use in lead time and review');
    const expected = visitsExpected(s.visits.length, Math.round(protection));
    expect(mean / expected).toBeGreaterThan(0.8);
    expect(mean / expected).toBeLessThan(1.25);
  });

  it('adds up: reorder point, order size, packs and money', async () => {
    for (const line of linesOf(await ask())) {
      const value = (name: string) => figure(line, name);
      expect(value('safety stock')).toBeCloseTo(
        value('reorder point') - value('mean use in lead time and review'),
        5,
      );
      expect(Number(line.reorderPoint)).toBe(value('reorder point'));
      expect(line.packs * value('content of a pack')).toBeCloseTo(Number(line.quantity), 6);
      if (line.packs === line.added) continue;
      expect(line.reason).toBe('at or below the reorder point');
      expect(value('position after expiry')).toBeLessThanOrEqual(value('reorder point'));
      // The fewest packs that lie above the point, or the cheapest order where that is more.
      const missing = value('reorder point') - value('position after expiry');
      const least = Math.floor(missing / value('content of a pack') + 1e-9) + 1;
      expect(value('packs wanted')).toBe(Math.max(least, value('usual order')));
      const each = cents(String(value('price of a pack')));
      expect(cents(line.total ?? '')).toBe(each * BigInt(line.packs));
    }
  });

  it('keeps its promise by the forecast that is shown beside it', async () => {
    const bib = proposalOf(await ask(), s.bib.id);
    const forecast = await s.book.done<Forecast>('GET', `/reorder/forecasts/${s.bib.id}`);
    const enough = (days: number) => {
      const horizon = forecast.horizons.find((h) => h.days === days);
      return Number(horizon?.quantiles.find((q) => q.level === '0.95')?.quantity);
    };
    // Lead time and review are about eleven days: more than a week asks for, less than a month.
    expect(figure(bib, 'reorder point')).toBeGreaterThan(enough(7));
    expect(figure(bib, 'reorder point')).toBeLessThan(enough(30));
  });

  it('says every number of its sentence among its figures', async () => {
    for (const line of linesOf(await ask())) {
      const known = new Set([
        ...line.figures.flatMap(({ value }) => [value, rounded(Number(value))]),
        ...[String(line.packs), String(line.added), line.total],
      ]);
      const text = line.sentence.replace(/Box of 50|Syringe 4 g|Dentine 3|Body 2/g, '');
      for (const found of text.match(/\d+(\.\d+)?/g) ?? []) {
        expect([line.sentence, found, known.has(found)]).toEqual([line.sentence, found, true]);
      }
    }
    const { sentence } = proposalOf(await ask(), s.bib.id);
    expect(sentence).toMatch(
      /^0 pieces of Patient bib usable, \d+ pieces owed to visits: position -/,
    );
    expect(sentence).toMatch(
      /Order \d+ packs? of Box of 50 from Northgate Supply for \d+\.\d\d EUR/,
    );
  });

  it('is not made for what died out, and foresees what expires', async () => {
    const list = await ask();
    const ids = linesOf(list).map((line) => line.consumable.id);
    expect(ids).not.toContain(s.paste.id);
    expect(list.looked).toBe(8);
    // The shade that lasts a week more is hardly used: nearly all of it will be gone.
    const path = `/reorder/settings/consumables/${s.expiring.id}`;
    await s.book.done('PUT', path, { reorderAt: '3.5', orderUpTo: '4' });
    const expiring = proposalOf(await ask(), s.expiring.id);
    const onHand = await number(ON_HAND, s.expiring.id);
    const gone = figure(expiring, 'expected to expire first');
    expect(figure(expiring, 'usable on hand')).toBeCloseTo(onHand, 6);
    expect(gone).toBeGreaterThan(0.8 * onHand);
    expect(gone).toBeLessThanOrEqual(onHand);
    expect(expiring.flags).toContain('levels set by hand');
    expect(expiring.sentence).toContain('should expire before new goods can come');
    await s.book.done('PUT', path, {});
  });

  it('follows the levels set by hand, and shows the typed-in ones beside', async () => {
    await s.book.done('PATCH', `/consumables/${s.bib.id}`, { reorderAt: '5', reorderUpTo: '60' });
    const path = `/reorder/settings/consumables/${s.bib.id}`;
    await s.book.done('PUT', path, { reorderAt: '20', orderUpTo: '120' });
    const bib = proposalOf(await ask(), s.bib.id);
    expect([bib.reorderPoint, bib.orderUpTo]).toEqual(['20', '120']);
    const owed = await number(OWED, s.bib.id);
    expect(bib.packs).toBe(Math.floor((120 + owed) / 50));
    expect(bib.typedIn).toEqual({
      ...{ reorderAt: '5', reorderUpTo: '60', asksForOrder: true },
      packs: Math.ceil((60 + owed) / 50),
    });
    await s.book.done('PUT', path, {});
  });

  it('is for more when the service is to be better', async () => {
    const path = `/reorder/settings/consumables/${s.bib.id}`;
    const points: number[] = [];
    for (const serviceLevel of ['0.8', '0.95', '0.99']) {
      await s.book.done('PUT', path, { serviceMeasure: 'cycle service', serviceLevel });
      points.push(figure(proposalOf(await ask(), s.bib.id), 'reorder point'));
    }
    expect(points).toEqual([...new Set(points)].sort((a, b) => a - b));
    await s.book.done('PUT', path, {});
  });
});

describe('the alert about a reorder point', () => {
  alertLevelCases(() => ({ s, owner, clock }));
});

describe('the order to a supplier', () => {
  const terms = (changes: object) =>
    s.book.done('PUT', `/reorder/settings/suppliers/${s.supplier}`, {
      ...{ freight: '7.90', workingDays: ['monday', 'tuesday', 'wednesday', 'thursday', 'friday'] },
      ...changes,
    });

  it('adds up to the cent, goods and freight', async () => {
    await terms({});
    const { orders } = await ask();
    const order = orders.find((each) => each.supplier?.id === s.supplier);
    expect([order?.status, order?.freight]).toEqual(['ready', '7.90']);
    const goods = order?.lines.reduce((sum, line) => sum + cents(line.total ?? '0'), 0n);
    expect(cents(order?.goods ?? '')).toBe(goods);
    expect(cents(order?.total ?? '')).toBe((goods ?? 0n) + 790n);
  });

  it('is filled up to the smallest order, or says what is missing', async () => {
    const ofSupplier = async () =>
      (await ask()).orders.find((each) => each.supplier?.id === s.supplier);
    const goods = Number((await ofSupplier())?.goods);
    await terms({ minimumOrder: (goods + 10).toFixed(2) });
    const order = await ofSupplier();
    expect(order?.status).toBe('ready');
    expect(Number(order?.goods)).toBeGreaterThanOrEqual(goods + 10);
    expect(order?.lines.some((line) => line.added > 0)).toBe(true);
    expect(order?.choices.join(' ')).toContain('10.00 EUR were missing to the minimum order');
    const early = order?.lines.find((line) => line.packs === line.added);
    if (early) expect(early.sentence).toContain('not due yet, taken early to fill the order');
    await terms({ minimumOrder: '900000' });
    const out = await ofSupplier();
    expect(out?.status).toBe('below the minimum order');
    expect(out?.choices.join(' ')).toMatch(
      /are missing to the minimum order, and nothing is due soon/,
    );
    await terms({});
  });

  it('waits longer for a supplier who is slow, so the point is higher', async () => {
    const before = figure(proposalOf(await ask(), s.bib.id), 'reorder point');
    await terms({ leadDays: 15 });
    const slow = proposalOf(await ask(), s.bib.id);
    expect(figure(slow, 'reorder point')).toBeGreaterThan(before);
    expect(figure(slow, 'mean lead time')).toBeGreaterThan(19);
    await terms({});
  });

  it('is gone once the goods are there', async () => {
    await s.book.deliver(s.supplier, TODAY, [deliveryLine(s.bibBox, s.store, 12, '4')]);
    expect(linesOf(await ask()).map((line) => line.consumable.id)).not.toContain(s.bib.id);
  });
});

describe('a practice that has just begun', () => {
  it('is told nothing to order, and nothing breaks', async () => {
    const fresh = await service.openPractice('fresh');
    const answer = await service.send('GET', '/api/reorder/proposals', {
      cookie: fresh.people.assistant.cookie,
    });
    expect([answer.status, answer.body]).toEqual([
      200,
      { asOf: TODAY, currency: 'EUR', looked: 0, budgetLeft: null, orders: [], stuck: [] },
    ]);
    // A shelf that nobody has used of yet has no computed level, and so no alert.
    const small = await openSmallBook(service, 'begun');
    await service.app.get(ComputeLevels).run();
    expect([...(await lowAlerts(small.book)).keys()]).toEqual([]);
    const { practiceId } = small.book.practice.owner;
    const KEPT = 'SELECT count(*) AS n FROM computed_levels WHERE practice_id = $1';
    expect(await number(KEPT, practiceId)).toBe(0);
  });
});
