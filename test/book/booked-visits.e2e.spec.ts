import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { SetClock } from '../purchasing/post-boxes.js';
import { consumablesOf, openStockedBook, type SmallBook, TestService, visitBody } from './book.js';
import { expectRulesHold } from './invariants.js';

const TODAY = '2026-05-04';
const TOMORROW = '2026-05-05';

const clock = new SetClock(new Date(`${TODAY}T06:00:00Z`));
let service: TestService;
let owner: pg.Pool;
let s: SmallBook;

beforeAll(async () => {
  service = await TestService.start({ clock });
  owner = new pg.Pool({ connectionString: service.databaseUrl, max: 1 });
  s = await openStockedBook(service, 'booked');
});

afterAll(async () => {
  await owner.end();
  await service.stop();
});

interface Booking {
  readonly id: string;
  readonly day: string;
  readonly state: string;
  readonly alike: number;
  readonly kept: number;
  readonly version: number;
  readonly notRecordedYet: boolean;
  readonly visits: readonly { readonly id: string }[];
  readonly restorations: readonly { readonly tooth: string | null }[];
}

interface Need {
  readonly consumable: { readonly id: string };
  readonly quantity: string;
}

const one = (changes: object = {}) => ({
  day: TOMORROW,
  restorations: [{ templateId: s.template }],
  ...changes,
});
const filled = (changes: object = {}) => ({
  ...{ templateId: s.template, tooth: '21', surfaces: 'MD', cavityClass: 'III', reason: 'decay' },
  ...{ shades: [s.paste.id], ...changes },
});
const book = (changes: object = {}) => s.book.done<Booking>('POST', '/booked-visits', one(changes));
const get = (id: string) => s.book.done<Booking>('GET', `/booked-visits/${id}`);
const keep = (bookedVisitId: string, changes: object = {}) =>
  s.book.ask('POST', '/visits', visitBody(s, { bookedVisitId, visitedOn: TODAY, ...changes }));
const ids = async (query: string) =>
  (await s.book.done<{ items: Booking[] }>('GET', `/booked-visits?${query}`)).items.map(
    (b) => b.id,
  );
function fieldsOf(answer: { readonly body: Record<string, unknown> }): string[] {
  const { errors } = answer.body as { errors?: { field: string }[] };
  return (errors ?? []).map((each) => each.field);
}

describe('a booked visit', () => {
  it('is booked, changed and dropped, and found by day and state', async () => {
    const made = await book({ restorations: [filled({ tooth: '11' })], chartReference: 'C-7' });
    expect(made).toMatchObject({ state: 'booked', alike: 1, kept: 0, notRecordedYet: false });
    const moved = one({ day: '2026-05-06', alike: 3, version: 1 });
    const changed = await s.book.done<Booking>('PUT', `/booked-visits/${made.id}`, moved);
    expect(changed).toMatchObject({ day: '2026-05-06', alike: 3, chartReference: null });
    expect(changed.restorations).toMatchObject([{ tooth: null, surfaces: null, shades: [] }]);
    expect(await ids('from=2026-05-06&to=2026-05-06&state=booked')).toEqual([made.id]);
    const path = `/booked-visits/${made.id}/dropping`;
    const dropped = await s.book.done('POST', path, { version: 2, note: 'moved away' });
    expect(dropped).toMatchObject({ state: 'dropped', dropped: { note: 'moved away' } });
    expect(await ids('from=2026-05-06&to=2026-05-06&state=booked')).toEqual([]);
    expect((await s.book.ask('POST', path, { version: 3, note: 'again' })).status).toBe(409);
    expect((await s.book.ask('PUT', `/booked-visits/${made.id}`, moved)).status).toBe(409);
    expect((await keep(made.id)).body).toMatchObject({ errors: [{ field: 'bookedVisitId' }] });
  });

  it('is changed only by who saw the last change; the first of two at once wins', async () => {
    const { id, version } = await book({ day: '2026-07-03' });
    expect(version).toBe(1);
    const path = `/booked-visits/${id}`;
    const change = (alike: number, seen?: number) =>
      s.book.ask('PUT', path, one({ day: '2026-07-03', alike, version: seen }));
    const both = await Promise.all([change(2, version), change(3, version)]);
    expect(both.map((answer) => answer.status).sort()).toEqual([200, 409]);
    const lost = both.find(({ status }) => status === 409);
    expect(lost?.body).toMatchObject({
      ...{ code: 'booking_changed_meanwhile', errors: [{ field: 'version' }] },
      detail: expect.stringContaining('Look at it again, then decide.'),
    });
    const won = both.find(({ status }) => status === 200);
    expect(await get(id)).toEqual(won?.body);
    const drop = { version: 1, note: 'not seen' };
    expect((await s.book.ask('POST', `${path}/dropping`, drop)).status).toBe(409);
    expect(await get(id)).toMatchObject({ state: 'booked', version: 2 });
    // Saying the same again is no change; leaving the version out is refused by its name.
    expect((await change(Number(won?.body.alike), 2)).body).toMatchObject({ version: 2 });
    expect(fieldsOf(await change(2))).toEqual(['version']);
  });

  it('is booked once when the request is sent twice', async () => {
    const sent = { headers: { 'idempotency-key': 'once' } };
    const send = () =>
      s.book.ask('POST', '/booked-visits', one({ day: '2026-07-01' }), 'owner', sent);
    const [first, second] = [await send(), await send()];
    expect(second.body).toEqual(first.body);
    expect(await ids('from=2026-07-01&to=2026-07-01')).toHaveLength(1);
  });

  it('is listed page by page, each once', async () => {
    for (let i = 0; i < 5; i += 1) await book({ day: '2026-07-02' });
    const found: string[] = [];
    let cursor: string | null = '';
    while (cursor !== null) {
      const query: string = `from=2026-07-02&to=2026-07-02&limit=2${cursor && `&cursor=${cursor}`}`;
      const page: { items: Booking[]; nextCursor: string | null } = await s.book.done(
        ...(['GET', `/booked-visits?${query}`] as const),
      );
      found.push(...page.items.map((each) => each.id));
      cursor = page.nextCursor;
    }
    expect(new Set(found).size).toBe(5);
    expect(found).toHaveLength(5);
  });

  it('is of one practice only', async () => {
    const other = await openStockedBook(service, 'elsewhere');
    const { id } = await book();
    expect((await other.book.ask('GET', `/booked-visits/${id}`)).status).toBe(404);
    expect((await other.book.ask('PUT', `/booked-visits/${id}`, one({ version: 1 }))).status).toBe(
      404,
    );
    const body = visitBody(other, { bookedVisitId: id, visitedOn: TODAY });
    const answer = await other.book.ask('POST', '/visits', body);
    expect([answer.status, fieldsOf(answer)]).toEqual([422, ['bookedVisitId']]);
  });
});

describe('what a booked visit will use', () => {
  const needs = async (id: string) => {
    const usage = await s.book.done<{ lines: Need[]; assumptions: string[] }>(
      ...(['GET', `/booked-visits/${id}/usage`] as const),
    );
    return {
      ...usage,
      of: Object.fromEntries(usage.lines.map((l) => [l.consumable.id, l.quantity])),
    };
  };

  it('is what the template says, whole single doses', async () => {
    const everything = await book({
      day: '2026-08-03',
      restorations: [filled(), { ...filled({ tooth: '11' }), templateId: s.capsuleTemplate }],
    });
    const { of, ...usage } = await needs(everything.id);
    expect(usage).toMatchObject({ ways: 1, shadeUnknown: false, toCome: 1, assumptions: [] });
    // Two teeth: etchant for each, adhesive for each restoration, a strip for each side.
    expect(of).toEqual({
      [s.bib.id]: '1',
      [s.etchant.id]: '0.16',
      [s.adhesive.id]: '0.06',
      [s.strip.id]: '4',
      [s.paste.id]: '0.06',
      [s.capsule.id]: '0.25',
    });
  });

  it('leaves the paste out while nobody can tell the shade, then follows what is recorded', async () => {
    const open = await book({ day: '2026-08-04', alike: 6 });
    const before = await needs(open.id);
    expect(before).toMatchObject({ ways: 1, shadeUnknown: true, toCome: 6 });
    expect(before.assumptions).toHaveLength(2);
    expect(before.of).toMatchObject({ [s.bib.id]: '1', [s.strip.id]: '1' });
    expect(before.of[s.paste.id]).toBeUndefined();
    expect(await needs(open.id)).toEqual(before);
    // Two restorations are recorded: one with two sides, one with one.
    for (const surfaces of ['MD', 'M']) {
      const restorations = [{ ...filled({ surfaces }) }];
      await s.book.done('POST', '/visits', visitBody(s, { visitedOn: TODAY, restorations }));
    }
    const after = await needs(open.id);
    expect(after).toMatchObject({ ways: 2, shadeUnknown: false });
    expect(after.of).toMatchObject({ [s.strip.id]: '1.5', [s.paste.id]: '0.06' });
    const days = await s.book.done<{ days: { day: string; visits: number; lines: Need[] }[] }>(
      ...(['GET', '/booked-visits/usage?from=2026-08-04&to=2026-08-10'] as const),
    );
    expect(days.days).toMatchObject([{ day: '2026-08-04', visits: 6 }]);
    const strips = days.days[0]?.lines.find((l) => l.consumable.id === s.strip.id);
    expect(strips?.quantity).toBe('9');
  });
});

describe('a visit that keeps a booking', () => {
  it('marks it in the same transaction, and its reversal books it again', async () => {
    const { id } = await book({ day: TODAY });
    const kept = await keep(id);
    expect(kept.status).toBe(201);
    expect(await get(id)).toMatchObject({ state: 'kept', kept: 1, visits: [{ id: kept.body.id }] });
    expect((await keep(id)).status).toBe(409);
    await s.book.done('POST', `/visits/${String(kept.body.id)}/reversal`, { note: 'wrong chart' });
    expect(await get(id)).toMatchObject({ state: 'booked', kept: 0, visits: [] });
    await expectRulesHold(owner, consumablesOf(s));
  });

  it('counts alike visits one by one, also when many are recorded at once', async () => {
    const { id } = await book({ day: TODAY, alike: 3 });
    const answers = await Promise.all([1, 2, 3, 4, 5].map(() => keep(id)));
    expect(answers.map((each) => each.status).sort()).toEqual([201, 201, 201, 409, 409]);
    expect(await get(id)).toMatchObject({ state: 'kept', kept: 3 });
  });

  it('leaves the rest to come, which may be dropped', async () => {
    const { id } = await book({ day: TODAY, alike: 2 });
    const first = await keep(id);
    expect(await get(id)).toMatchObject({ state: 'booked', kept: 1 });
    const fewer = await s.book.ask('PUT', `/booked-visits/${id}`, one({ alike: 1, version: 1 }));
    expect([fewer.status, fieldsOf(fewer)]).toEqual([400, ['alike']]);
    await s.book.done('POST', `/booked-visits/${id}/dropping`, { version: 1, note: 'ill' });
    await s.book.done('POST', `/visits/${String(first.body.id)}/reversal`, { note: 'wrong' });
    expect(await get(id)).toMatchObject({ state: 'dropped', kept: 0 });
  });

  it('is refused with nothing written when the booking is unknown', async () => {
    const chartReference = 'C-nowhere';
    const unknown = '0199c0de-0000-7000-8000-00000000dead';
    const answer = await keep(unknown, { chartReference });
    expect([answer.status, fieldsOf(answer)]).toEqual([422, ['bookedVisitId']]);
    const found = await s.book.done<{ items: object[] }>(
      ...(['GET', `/visits?chartReference=${chartReference}`] as const),
    );
    expect(found.items).toEqual([]);
  });

  it('is missed on a day that has passed, until somebody says so', async () => {
    const { id } = await book({ day: TODAY });
    clock.at = new Date(`${TOMORROW}T06:00:00Z`);
    try {
      expect(await get(id)).toMatchObject({ state: 'booked', notRecordedYet: true });
      const query = (state: string) => `from=${TODAY}&to=${TODAY}&state=${state}`;
      expect(await ids(query('not recorded yet'))).toContain(id);
      expect(await ids(query('booked'))).toEqual([]);
      const usage = await s.book.done<{ days: { day: string }[] }>(
        ...(['GET', `/booked-visits/usage?from=${TODAY}&to=${TODAY}`] as const),
      );
      expect(usage.days).toEqual([]);
    } finally {
      clock.at = new Date(`${TODAY}T06:00:00Z`);
    }
  });
});

describe('a wrong request', () => {
  it.each<[string, object | (() => object), number, string]>([
    ['a day that has passed', { day: '2026-05-03' }, 422, 'day'],
    ['a day too far ahead', { day: '2028-09-01' }, 400, 'day'],
    ['no restoration', { restorations: [] }, 400, 'restorations'],
    ['a chart for several', { chartReference: 'C-1', alike: 2 }, 400, 'alike'],
    ['too many', { alike: 201 }, 400, 'alike'],
    ['an unknown room', { locationId: '0199c0de-0000-7000-8000-00000000dead' }, 422, 'locationId'],
    [
      'surfaces without a tooth',
      () => ({ restorations: [{ templateId: s.template, surfaces: 'M' }] }),
      ...([400, 'restorations[0].surfaces'] as const),
    ],
    [
      'a class that does not fit',
      () => ({ restorations: [filled({ cavityClass: 'II' })] }),
      ...([400, 'restorations[0].cavityClass'] as const),
    ],
    [
      'a surface that the tooth has not',
      () => ({ restorations: [filled({ surfaces: 'O' })] }),
      ...([400, 'restorations[0].surfaces'] as const),
    ],
  ])('%s names the field and books nothing', async (_name, changes, status, field) => {
    const body = one({
      day: '2026-10-01',
      ...(typeof changes === 'function' ? changes() : changes),
    });
    const answer = await s.book.ask('POST', '/booked-visits', body);
    expect([answer.status, fieldsOf(answer)]).toEqual([status, [field]]);
    expect(await ids('from=2026-10-01&to=2026-10-01')).toEqual([]);
  });

  it('is refused to who may only look', async () => {
    expect((await s.book.ask('POST', '/booked-visits', one(), 'auditor')).status).toBe(403);
    expect((await s.book.ask('GET', '/booked-visits', undefined, 'auditor')).status).toBe(200);
  });
});
