import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type pg from 'pg';
import { RunReplay } from '../../libs/purchasing/src/index.js';
import { deliveryLine, openSmallBook } from '../book/book.js';
import { asOwner } from '../harness/database.js';
import { TestService } from '../http/service.js';
import {
  type Bulk,
  type Curve,
  endedReplay,
  expectSidesAddUp,
  freightOfSupplier,
  newShadeUnderAnotherLot,
  type Replay,
  type Suppliers,
  sentOrder,
} from './foresight-answers.js';
import { openPlanningBook, type PlanningBook, TODAY } from './planning-book.js';
import { SetClock } from './post-boxes.js';
import { expectReplayCommand } from './replay-command.js';

const clock = new SetClock(new Date(`${TODAY}T06:00:00Z`));
let service: TestService;
let owner: pg.Client;
let s: PlanningBook;

beforeAll(async () => {
  service = await TestService.start({ clock });
  owner = await asOwner(service.databaseUrl);
  s = await openPlanningBook(service, 'foresee');
}, 120_000);

afterAll(async () => {
  await owner.end();
  await service.stop();
});

const cents = (text: string | null | undefined) => Math.round(Number(text ?? Number.NaN) * 100);

describe('what another level of service would cost', () => {
  const ask = (query = '') => s.book.done<Curve>('GET', `/reorder/what-if/service${query}`);

  it('is a curve for an item, with what is in force marked', async () => {
    const curve = await ask(`?consumableId=${s.bib.id}`);
    expect([curve.measure, curve.horizonDays, curve.items]).toEqual(['cycle service', 365, 1]);
    const point = curve.points.map((p) => Number(p.item?.reorderPoint));
    expect(point).toEqual([...point].sort((a, b) => a - b));
    expect(curve.now).toEqual(curve.points.find((p) => p.level === '0.95'));
    const [first, last] = [curve.points[0], curve.points.at(-1)];
    expect(point.at(-1) ?? 0).toBeGreaterThan(point[0] ?? 0);
    expect(cents(last?.stockValue)).toBeGreaterThanOrEqual(cents(first?.stockValue));
    expect(Number(last?.stockOuts)).toBeLessThanOrEqual(Number(first?.stockOuts));
  });

  it('marks levels set by hand, and levels of its own', async () => {
    const path = `/reorder/settings/consumables/${s.bib.id}`;
    await s.book.done('PUT', path, { reorderAt: '90', orderUpTo: '300' });
    const byHand = await ask(`?consumableId=${s.bib.id}`);
    expect(byHand.now?.item).toMatchObject({ reorderPoint: '90', orderUpTo: '300' });
    await s.book.done('PUT', path, { serviceMeasure: 'fill rate', serviceLevel: '0.93' });
    const own = await ask(`?consumableId=${s.bib.id}`);
    expect([own.measure, own.now?.level]).toEqual(['fill rate', '0.93']);
    expect(own.points.map((p) => p.level)).toContain('0.93');
    await s.book.done('PUT', path, {});
  });

  it('adds up for the whole shelf, is remembered, and follows the settings', async () => {
    const curve = await ask();
    expect(curve.items).toBe(8);
    expect(curve.points.map((p) => p.level)).toContain('0.95');
    expect(await ask()).toEqual(curve);
    const settings = await s.book.done<Record<string, unknown>>('GET', '/reorder/settings');
    await s.book.done('PUT', '/reorder/settings', { ...settings, serviceLevel: '0.99' });
    const higher = await ask();
    expect(cents(higher.now?.stockValue)).toBeGreaterThan(cents(curve.now?.stockValue));
    expect(cents(higher.now?.stockValue)).toBe(
      cents(higher.points.find((p) => p.level === '0.99')?.stockValue),
    );
    await s.book.done('PUT', '/reorder/settings', settings);
  });

  it('is refused for what is not there', async () => {
    const nobody = await s.book.ask('GET', `/reorder/what-if/service?consumableId=${s.store}`);
    expect(nobody.status).toBe(404);
    const text = await s.book.ask('GET', '/reorder/what-if/service?consumableId=bib');
    expect([text.status, text.text]).toEqual([400, expect.stringContaining('consumableId')]);
  });
});

describe('a bulk offer', () => {
  const ask = (changes: object) =>
    s.book.ask('POST', '/reorder/what-if/bulk', {
      ...{ consumableId: s.bib.id, presentationId: s.bibBox.presentation },
      ...{ packs: 10, packPrice: '3.20' },
      ...changes,
    });

  it('saves what the price list says, less keeping, where nothing expires', async () => {
    const answer = (await ask({})).body as Bulk;
    // 500 bibs: ten boxes at 3.20 instead of 4.00.
    expect(answer).toMatchObject({
      ...{ quantity: '500', total: '32.00', usualTotal: '40.00', paperSaving: '8.00' },
      ...{ expectedWaste: '0', wasteCost: '0.00', chanceUsedUp: '1.000000', usableDays: null },
    });
    const kept = cents(answer.paperSaving) - cents(answer.extraKeeping) + cents(answer.savedOrders);
    expect(Math.abs(cents(answer.realSaving) - kept)).toBeLessThanOrEqual(1);
    expect(answer.savingRange).toEqual({
      ...{ p10: answer.realSaving, p50: answer.realSaving, p90: answer.realSaving },
    });
    expect(Number(answer.coverDays)).toBeGreaterThan(365);
  });

  it('is a loss where it would expire', async () => {
    const answer = (
      await ask({
        ...{ consumableId: s.expiring.id, presentationId: s.expiring.presentation },
        ...{ packs: 6, packPrice: '60' },
      })
    ).body as Bulk;
    expect(cents(answer.paperSaving)).toBe(6 * 2100);
    expect(answer.worthIt).toBe(false);
    expect(cents(answer.realSaving)).toBeLessThan(0);
    expect(cents(answer.wasteCost)).toBeGreaterThan(0.9 * cents(answer.total));
    expect(Number(answer.usableDays)).toBeGreaterThan(150);
    expect(Number(answer.coverDays)).toBeGreaterThan(Number(answer.usableDays));
  });

  it('is refused where it makes no sense, naming the field', async () => {
    const refused = async (changes: object) => {
      const answer = await ask(changes);
      const [error] = (answer.body.errors as { field: string }[] | undefined) ?? [];
      return [answer.status, error?.field ?? answer.body.code];
    };
    expect(await refused({ packs: 0 })).toEqual([400, 'packs']);
    expect(await refused({ packPrice: '-1' })).toEqual([400, 'packPrice']);
    expect(await refused({ consumableId: s.store })).toEqual([422, 'consumableId']);
    const other = { presentationId: s.paste.presentation };
    expect(await refused(other)).toEqual([422, 'presentationId']);
    const unknown = { consumableId: s.capsule.id, presentationId: s.capsule.presentation };
    expect(await refused(unknown)).toEqual([422, 'no_usual_price']);
  });
});

describe('suppliers side by side', () => {
  const ask = () => s.book.done<Suppliers>('GET', '/reorder/suppliers');

  it('are told by price, lead time, reliability and spend', async () => {
    const other = await s.book.supplier('Harbour Supplies');
    const lines = (packs: number, price: string, orderLineId: string) => [
      deliveryLine(s.bibBox, s.store, packs, price, { orderLineId }),
    ];
    // From a Monday to the Thursday after, as expected; then in two parts, the last one late.
    const first = await sentOrder(
      { owner, s },
      { supplier: other, day: '2026-04-06', expected: '2026-04-09' },
      2,
    );
    await s.book.deliver(other, '2026-04-09', lines(2, '3.50', first));
    const second = await sentOrder(
      { owner, s },
      { supplier: other, day: '2026-04-13', expected: '2026-04-16' },
      3,
    );
    await s.book.deliver(other, '2026-04-15', lines(1, '3.60', second));
    const faults = [{ presentationId: s.bibBox.presentation, kind: 'damaged', packs: 1 }];
    const last = lines(2, '3.60', second);
    await s.book.deliver(other, '2026-04-20', last, { freight: '6.40', faults });
    await sentOrder(
      { owner, s },
      { supplier: other, day: '2026-04-20', expected: '2026-04-23' },
      1,
    );
    const { suppliers, consumables, since } = await ask();
    expect(since).toBe('2025-05-05');
    const found = suppliers.find((each) => each.supplier.id === other);
    expect(found).toMatchObject({
      ...{ consumables: 1, shared: 1, cheapest: 1, deliveries: 3, spend: '24.20' },
      lead: { stated: 3, median: 3, p90: 5, fastest: 3, slowest: 5, complete: 2, open: 1 },
      reliability: { due: 3, inTime: 1, atOnce: 1, packs: 5, damaged: 1, missing: 0 },
    });
    const bib = consumables.find((each) => each.consumable.id === s.bib.id);
    expect(bib?.offers.map((o) => [o.supplier, o.unitPrice, o.paidOn, o.cheapest])).toEqual([
      [{ id: other, name: 'Harbour Supplies' }, '0.072', '2026-04-20', true],
      [{ id: s.supplier, name: 'Northgate Supply' }, '0.08', '2026-03-02', false],
    ]);
    expect(bib?.offers[1]).toMatchObject({ aboveCheapest: '0.1111', change: null });
    // What only one sells comes after.
    expect(consumables[0]?.consumable.id).toBe(s.bib.id);
  });

  it('add up to what was spent, to the cent', async () => {
    const { suppliers } = await ask();
    const { rows } = await owner.query<{ total: string }>(
      `SELECT sum(landed_total) AS total FROM deliveries
       WHERE practice_id = $1 AND reversed_at IS NULL AND received_on >= '2025-05-05'`,
      [s.book.practice.owner.practiceId],
    );
    expect(suppliers.reduce((sum, each) => sum + cents(each.spend), 0)).toBe(cents(rows[0]?.total));
  });

  it('of a practice that has just begun are none', async () => {
    const fresh = await service.openPractice('fresh');
    const answer = await service.send('GET', '/api/reorder/suppliers', {
      cookie: fresh.people.manager.cookie,
    });
    expect(answer.body).toMatchObject({ suppliers: [], consumables: [] });
    // Costs are not for everybody.
    const assistant = await s.book.ask('GET', '/reorder/suppliers', undefined, 'assistant');
    expect(assistant.status).toBe(403);
  });
});

describe('a replay of the history', () => {
  const get = (id: string) => s.book.done<Replay>('GET', `/reorder/replays/${id}`);

  const ended = (id: string) => endedReplay(() => get(id));

  it('runs beside other requests, one at a time, and stores the whole result', async () => {
    await s.book.done('PATCH', `/consumables/${s.bib.id}`, { reorderAt: '10', reorderUpTo: '60' });
    await freightOfSupplier(s, '6.50');
    const key = { headers: { 'idempotency-key': randomUUID() } };
    const start = () => s.book.ask('POST', '/reorder/replays', {}, 'owner', key);
    const started = await start();
    expect([started.status, started.body.state]).toEqual([202, 'running']);
    // The same request again starts nothing, and another one has to wait.
    expect((await start()).body.id).toBe(started.body.id);
    const second = await s.book.ask('POST', '/reorder/replays', {});
    expect([second.status, second.body.code]).toEqual([409, 'replay_running']);
    const replay = await ended(String(started.body.id));
    // Eight weeks after the first visit until yesterday.
    expect(replay).toMatchObject({
      ...{ state: 'done', progress: '1.000', failure: null },
      ...{ firstDay: '2025-12-29', lastDay: '2026-05-03' },
    });
    const { result } = replay;
    const bib = result?.items.find((each) => each.consumable.id === s.bib.id);
    expect(bib?.oldRule).toBe('typed-in levels');
    expect(result?.items.find((each) => each.consumable.id === s.newShade.id)?.oldRule).toBe(
      'when empty',
    );
    expectSidesAddUp(result);
    expect(result?.computed.sent ?? 0).toBeGreaterThan(0);
    expect(result?.weeks).toHaveLength(18);
    const list = await s.book.done<{ replays: Replay[] }>('GET', '/reorder/replays');
    expect(list.replays.map((each) => each.id)).toEqual([replay.id]);
  });

  it('gives the same result again, also when goods turn out to be of another lot', async () => {
    await newShadeUnderAnotherLot({ owner, s });
    const [before] = (await s.book.done<{ replays: Replay[] }>('GET', '/reorder/replays')).replays;
    const { id } = await s.book.done<Replay>('POST', '/reorder/replays', {});
    const [again, first] = [await ended(id), await get(before?.id ?? '')];
    expect(again.result).toEqual(first.result);
  });

  it('that a killed service left behind is given up, and makes room', async () => {
    const { practiceId, personId } = s.book.practice.owner;
    const id = randomUUID();
    await owner.query(
      `INSERT INTO replays (id, practice_id, first_day, last_day, state, steps_done, steps_total,
         seen_at, started_by, started_at)
       VALUES ($1, $2, '2026-01-01', '2026-05-03', 'running', 3, 10,
         now() - interval '1 minute', $3, now())`,
      [id, practiceId, personId],
    );
    expect(await get(id)).toMatchObject({ state: 'failed', failure: 'stopped', result: null });
    await service.app.get(RunReplay).giveUpSilent();
    const { rows } = await owner.query('SELECT state, failure FROM replays WHERE id = $1', [id]);
    expect(rows).toEqual([{ state: 'failed', failure: 'stopped' }]);
  });

  it('is a command as well, for every practice of the book', async () => {
    await expectReplayCommand(service.databaseUrl);
  });

  it('is refused without history, or from a day outside of it', async () => {
    const asked = async (from: string) => {
      const answer = await s.book.ask('POST', '/reorder/replays', { from });
      const [error] = (answer.body.errors as { field: string; message: string }[]) ?? [];
      return [answer.status, error?.field, error?.message];
    };
    const message = 'must be from 2025-12-29 to 2026-04-06';
    expect(await asked('2025-12-28')).toEqual([400, 'from', message]);
    expect(await asked('2026-04-07')).toEqual([400, 'from', message]);
    const empty = await openSmallBook(service, 'empty');
    const answer = await empty.book.ask('POST', '/reorder/replays', {});
    expect([answer.status, answer.body.code]).toEqual([422, 'history_too_short']);
    const assistant = await s.book.ask('POST', '/reorder/replays', {}, 'assistant');
    expect(assistant.status).toBe(403);
  });

  it('is given up by a service that stops, and leaves no half result', async () => {
    const { id } = await s.book.done<Replay>('POST', '/reorder/replays', {});
    await service.app.get(RunReplay).beforeApplicationShutdown();
    expect(await get(id)).toMatchObject({ state: 'failed', failure: 'stopped', result: null });
  });
});
