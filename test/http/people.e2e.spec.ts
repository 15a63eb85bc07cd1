import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { asOwner } from '../harness/database.js';
import { PASSWORD, type TestPractice, TestService } from './service.js';

let service: TestService;
let here: TestPractice;
let elsewhere: TestPractice;

beforeAll(async () => {
  service = await TestService.start();
  here = await service.openPractice('here');
  elsewhere = await service.openPractice('elsewhere');
});

afterAll(() => service.stop());

describe('people', () => {
  const asOwnerOf = () => ({ cookie: here.people.owner.cookie });

  it('are added, with an id of the sender if it has one, and can sign in', async () => {
    const id = '01900000-0000-7000-8000-00000000c0de';
    const made = await service.send('POST', '/api/people', {
      ...asOwnerOf(),
      body: {
        id,
        displayName: ' Jona Vey ',
        signInName: 'Jona.Vey',
        password: PASSWORD,
        role: 'assistant',
      },
    });
    expect(made.status).toBe(201);
    expect(made.body).toEqual({
      id,
      displayName: 'Jona Vey',
      signInName: 'jona.vey',
      role: 'assistant',
      active: true,
    });
    expect((await service.send('GET', `/api/people/${id}`, asOwnerOf())).body).toEqual(made.body);
    expect(await service.signIn('jona.vey')).not.toBe('');
  });

  it.each([
    ['a name that is taken', { signInName: 'elsewhere.owner' }, 409, 'signInName'],
    ['an id that is taken', { id: '01900000-0000-7000-8000-00000000c0de' }, 409, 'id'],
    ['a short password', { password: 'short' }, 400, 'password'],
    [
      'the name as password',
      { signInName: 'long.sign.in.name', password: 'long.sign.in.name' },
      400,
      'password',
    ],
    ['a blank in the name', { signInName: 'two words' }, 400, 'signInName'],
    ['an unknown role', { role: 'wizard' }, 400, 'role'],
    ['an unknown field', { admin: true }, 400, 'admin'],
  ])('are refused with %s', async (_what, change, status, field) => {
    const answer = await service.send('POST', '/api/people', {
      ...asOwnerOf(),
      body: {
        displayName: 'Nia Holm',
        signInName: 'nia.holm',
        password: PASSWORD,
        role: 'manager',
        ...change,
      },
    });
    expect(answer.status).toBe(status);
    expect(answer.body.errors).toMatchObject([{ field }]);
  });

  it('come in pages, in the order of their names', async () => {
    const names: string[] = [];
    let cursor = '';
    for (;;) {
      const page = await service.send('GET', `/api/people?limit=2${cursor}`, asOwnerOf());
      names.push(...(page.body.items as { displayName: string }[]).map((p) => p.displayName));
      if (page.body.nextCursor === null) break;
      cursor = `&cursor=${String(page.body.nextCursor)}`;
    }
    expect(names).toEqual(
      [...names].sort((a, b) => a.toLowerCase().localeCompare(b.toLowerCase())),
    );
    expect(new Set(names).size).toBe(names.length);
    expect(names.length).toBeGreaterThanOrEqual(6);
  });

  it('lose their sessions and tokens when they leave', async () => {
    const made = await service.send('POST', '/api/people', {
      ...asOwnerOf(),
      body: {
        displayName: 'Ola Rust',
        signInName: 'ola.rust',
        password: PASSWORD,
        role: 'manager',
      },
    });
    const cookie = await service.signIn('ola.rust');
    const token = String(
      (await service.send('POST', '/api/session/tokens', { cookie, body: { name: 'Mine' } })).body
        .secret,
    );
    const url = `/api/people/${String(made.body.id)}`;
    const leave = await service.send('PATCH', url, { ...asOwnerOf(), body: { active: false } });
    expect(leave.body).toMatchObject({ active: false });
    expect((await service.send('GET', '/api/session', { cookie })).status).toBe(401);
    expect((await service.send('GET', '/api/session', { token })).status).toBe(401);
    const again = await service.send('POST', '/api/session', {
      body: { signInName: 'ola.rust', password: PASSWORD },
    });
    expect(again.status).toBe(401);
    await service.send('PATCH', url, { ...asOwnerOf(), body: { active: true } });
    expect((await service.send('GET', '/api/session', { token })).status).toBe(401);
    const fresh = await service.signIn('ola.rust');
    const renamed = await service.send('PATCH', url, {
      ...asOwnerOf(),
      body: { password: 'quite another phrase', role: 'auditor', displayName: 'Ola Rust-Bern' },
    });
    expect(renamed.body).toMatchObject({ role: 'auditor', displayName: 'Ola Rust-Bern' });
    expect((await service.send('GET', '/api/session', { cookie: fresh })).status).toBe(401);
    expect(await service.signIn('ola.rust', 'quite another phrase')).not.toBe('');
  });

  it.each([{ active: false }, { role: 'dentist' }])('keep a last owner (%j)', async (body) => {
    const answer = await service.send('PATCH', `/api/people/${here.people.owner.id}`, {
      ...asOwnerOf(),
      body,
    });
    expect(answer.status).toBe(409);
    expect(answer.body).toMatchObject({ code: 'last_owner' });
  });

  it('keep a last owner also when two owners demote each other at once', async () => {
    const practice = await service.openPractice('pair');
    const { owner, dentist } = practice.people;
    await service.send('PATCH', `/api/people/${dentist.id}`, {
      cookie: owner.cookie,
      body: { role: 'owner' },
    });
    const answers = await Promise.all([
      service.send('PATCH', `/api/people/${dentist.id}`, { ...owner, body: { role: 'dentist' } }),
      service.send('PATCH', `/api/people/${owner.id}`, { ...dentist, body: { role: 'dentist' } }),
    ]);
    expect(answers.map((answer) => answer.status).sort()).not.toEqual([200, 200]);
    const client = await asOwner(service.databaseUrl);
    const { rows } = await client.query(
      `SELECT FROM people WHERE practice_id = $1 AND role = 'owner' AND active`,
      [practice.owner.practiceId],
    );
    await client.end();
    expect(rows).toHaveLength(1);
  });

  it('who are dentists or owners are listed for visits', async () => {
    const answer = await service.send('GET', '/api/dentists', here.people.assistant);
    expect(answer.body.items).toEqual([
      { id: here.people.owner.id, displayName: 'here owner', active: true },
      { id: here.people.dentist.id, displayName: 'here.dentist', active: true },
    ]);
  });
});

describe('the practice', () => {
  it('is changed by its owner, but for its currency', async () => {
    const owner = { cookie: here.people.owner.cookie };
    const answer = await service.send('PATCH', '/api/practice', {
      ...owner,
      body: { name: 'Mill practice', timeZone: 'America/Lima', costShareKey: 'minutes' },
    });
    expect(answer.body).toMatchObject({
      name: 'Mill practice',
      timeZone: 'America/Lima',
      costShareKey: 'minutes',
      currency: 'EUR',
    });
    expect((await service.send('GET', '/api/practice', owner)).body).toEqual(answer.body);
    const money = await service.send('PATCH', '/api/practice', {
      ...owner,
      body: { currency: 'USD' },
    });
    expect(money.status).toBe(400);
  });

  it.each(['Mars/Olympus', '+02:00', 'x'])('has no time zone %s', async (timeZone) => {
    const answer = await service.send('PATCH', '/api/practice', {
      cookie: here.people.owner.cookie,
      body: { timeZone },
    });
    expect(answer.status).toBe(400);
    expect(answer.body.errors).toMatchObject([{ field: 'timeZone' }]);
  });
});

describe('the audit trail', () => {
  it('tells who did what, latest first, in pages and by subject', async () => {
    const auditor = { cookie: here.people.auditor.cookie };
    const all = await service.send('GET', '/api/audit-entries?limit=500', auditor);
    const items = all.body.items as { id: string; action: string; recordedAt: string }[];
    const actions = new Set(items.map((item) => item.action));
    for (const action of [
      'practice.created',
      'practice.changed',
      'person.created',
      'person.changed',
      'session.opened',
      'token.created',
    ]) {
      expect(actions).toContain(action);
    }
    const times = items.map((item) => item.recordedAt);
    expect(times).toEqual([...times].sort().reverse());
    expect(all.text).not.toContain(PASSWORD);
    expect(all.text).not.toContain('argon2');
    const paged: string[] = [];
    let cursor = '';
    do {
      const page = await service.send('GET', `/api/audit-entries?limit=7${cursor}`, auditor);
      paged.push(...(page.body.items as { id: string }[]).map((item) => item.id));
      cursor = page.body.nextCursor === null ? '' : `&cursor=${String(page.body.nextCursor)}`;
    } while (cursor);
    expect(paged).toEqual(items.map((item) => item.id));
    const own = await service.send(
      'GET',
      `/api/audit-entries?subjectKind=practice&subjectId=${here.owner.practiceId}`,
      auditor,
    );
    const kinds = (own.body.items as { subjectKind: string }[]).map((item) => item.subjectKind);
    expect(new Set(kinds)).toEqual(new Set(['practice']));
  });
});

describe('another practice', () => {
  it('is not there: its ids answer 404 like ids that never were', async () => {
    const owner = { cookie: here.people.owner.cookie };
    const theirs = await service.send('GET', `/api/people/${elsewhere.people.owner.id}`, owner);
    const nobody = await service.send(
      'GET',
      '/api/people/01900000-0000-7000-8000-000000000000',
      owner,
    );
    expect(theirs.status).toBe(404);
    expect({ ...theirs.body, instance: '', requestId: '' }).toEqual({
      ...nobody.body,
      instance: '',
      requestId: '',
    });
    const change = await service.send('PATCH', `/api/people/${elsewhere.people.owner.id}`, {
      ...owner,
      body: { active: false },
    });
    expect(change.status).toBe(404);
    const list = await service.send('GET', '/api/people?limit=500', owner);
    expect(list.text).not.toContain('elsewhere');
    const audit = await service.send('GET', '/api/audit-entries?limit=500', owner);
    expect(audit.text).not.toContain(elsewhere.owner.practiceId);
  });
});
