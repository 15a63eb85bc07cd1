import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { Clock } from '#lib/platform';
import { asOwner } from '../harness/database.js';
import { PASSWORD, type TestPractice, TestService } from './service.js';

class SetClock extends Clock {
  millis = Date.parse('2026-05-04T08:00:00Z');

  override now(): Date {
    return new Date(this.millis);
  }
}

const clock = new SetClock();
let service: TestService;
let here: TestPractice;

beforeAll(async () => {
  service = await TestService.start({ clock });
  here = await service.openPractice('here');
});

afterAll(() => service.stop());

describe('signing in', () => {
  it('answers who, where and what is allowed, and sets a cookie scripts cannot read', async () => {
    const answer = await service.send('POST', '/api/session', {
      body: { signInName: ' Here.Assistant ', password: PASSWORD },
    });
    expect(answer.status).toBe(201);
    expect(answer.body).toMatchObject({
      person: { signInName: 'here.assistant', role: 'assistant' },
      practice: { name: 'here practice', timeZone: 'Europe/Berlin', currency: 'EUR' },
      today: '2026-05-04',
    });
    expect(answer.body.permissions).toContain('visits.post');
    expect(answer.body.permissions).not.toContain('costs.read');
    const cookie = String(answer.headers['set-cookie']);
    expect(cookie).toMatch(/HttpOnly/);
    expect(cookie).toMatch(/SameSite=Lax/);
    expect(cookie).toMatch(/Path=\//);
    expect(cookie).not.toMatch(/Secure/);
    expect(answer.headers['cache-control']).toBe('no-store');
    const hours = (Date.parse(String(answer.body.expiresAt)) - Date.now()) / 3_600_000;
    expect(hours).toBeGreaterThan(11.9);
    expect(hours).toBeLessThan(12.1);
  });

  it('marks the cookie Secure when the request came by TLS', async () => {
    const answer = await service.send('POST', '/api/session', {
      headers: { 'x-forwarded-proto': 'https' },
      body: { signInName: 'here.assistant', password: PASSWORD },
    });
    expect(String(answer.headers['set-cookie'])).toMatch(/Secure/);
  });

  it('stores no secret', async () => {
    const cookie = await service.signIn('here.assistant');
    const owner = await asOwner(service.databaseUrl);
    const { rows } = await owner.query<{ found: string }>(
      `SELECT count(*) AS found FROM sessions WHERE encode(token_hash, 'escape') LIKE '%' || $1 || '%'`,
      [cookie],
    );
    const people = await owner.query<{ password_hash: string }>('SELECT password_hash FROM people');
    await owner.end();
    expect(rows[0]?.found).toBe('0');
    expect(people.rows.every((row) => row.password_hash.startsWith('$argon2id$'))).toBe(true);
  });

  it.each([
    ['a wrong password', 'here.assistant', 'not the pass phrase'],
    ['an unknown name', 'nobody.at.all', PASSWORD],
  ])('says the same for %s', async (_what, signInName, password) => {
    const answer = await service.send('POST', '/api/session', { body: { signInName, password } });
    expect(answer.status).toBe(401);
    expect(answer.body).toMatchObject({
      code: 'wrong_credentials',
      detail: 'Check the sign-in name and the password.',
    });
    expect(answer.headers['set-cookie']).toBeUndefined();
  });

  it('ends after signing out, and signing out twice is no error', async () => {
    const cookie = await service.signIn('here.assistant');
    expect((await service.send('GET', '/api/session', { cookie })).status).toBe(200);
    const out = await service.send('DELETE', '/api/session', { cookie });
    expect(out.status).toBe(204);
    expect(String(out.headers['set-cookie'])).toMatch(/traybook_session=;/);
    expect((await service.send('GET', '/api/session', { cookie })).status).toBe(401);
    expect((await service.send('DELETE', '/api/session', { cookie })).status).toBe(204);
  });

  it('ends by itself when its hours are over', async () => {
    const cookie = await service.signIn('here.assistant');
    const owner = await asOwner(service.databaseUrl);
    await owner.query(
      `UPDATE sessions SET expires_at = now() - interval '1 second' WHERE token_hash = sha256($1)`,
      [Buffer.from(cookie)],
    );
    await owner.end();
    expect((await service.send('GET', '/api/session', { cookie })).status).toBe(401);
  });

  it('closes a name for an address after ten failures, even for the right password', async () => {
    const attempt = (password: string, address = '127.0.0.1') =>
      service.send('POST', '/api/session', {
        headers: { 'x-forwarded-for': address },
        body: { signInName: 'here.manager', password },
      });
    const failures = await Promise.all(
      Array.from({ length: 15 }, (_, n) => attempt(`wrong guess ${n}`)),
    );
    expect(failures.filter((answer) => answer.status === 401)).toHaveLength(10);
    const refused = failures.filter((answer) => answer.status === 429);
    expect(refused).toHaveLength(5);
    expect(refused[0]?.body).toMatchObject({ code: 'too_many_attempts' });
    expect(Number(refused[0]?.headers['retry-after'])).toBe(900);
    expect((await attempt(PASSWORD)).status).toBe(429);
    expect((await attempt(PASSWORD, '10.1.2.3')).status).toBe(201);
    clock.millis += 15 * 60_000;
    expect((await attempt(PASSWORD)).status).toBe(201);
  });
});

describe('who may do what', () => {
  it('asks for a sign-in in plain words', async () => {
    const answer = await service.send('GET', '/api/session');
    expect(answer.status).toBe(401);
    expect(answer.headers['www-authenticate']).toMatch(/^Bearer/);
    expect(answer.headers['content-type']).toMatch(/^application\/problem\+json/);
    expect(answer.body).toMatchObject({
      type: 'urn:traybook:problem:not-signed-in',
      status: 401,
      code: 'not_signed_in',
      instance: '/api/session',
      requestId: expect.any(String),
    });
  });

  it('names the permission that is missing', async () => {
    const { cookie } = here.people.assistant;
    const answer = await service.send('GET', '/api/people', { cookie });
    expect(answer.status).toBe(403);
    expect(answer.body).toMatchObject({ code: 'forbidden' });
    expect(answer.body.detail).toBe(
      'This needs somebody who may add people and change what they may do (people.manage); the role assistant may not.',
    );
  });

  it.each(['tb_', 'tb_unknown', 'Bearer', 'x'.repeat(3000)])(
    'does not fall back to the cookie when the token is bad (%#)',
    async (token) => {
      const { cookie } = here.people.owner;
      expect((await service.send('GET', '/api/session', { cookie, token })).status).toBe(401);
    },
  );

  it('tells every role what each role may do', async () => {
    const answer = await service.send('GET', '/api/roles', here.people.auditor);
    const items = answer.body.items as { role: string; may: { words: string }[] }[];
    expect(items.map((item) => item.role)).toEqual([
      'assistant',
      'manager',
      'dentist',
      'auditor',
      'owner',
    ]);
    expect(items[0]?.may.map((may) => may.words)).toContain('record visits');
  });
});

describe('requests from other sites', () => {
  const change = (headers: Record<string, string>) =>
    service.send('PATCH', '/api/practice', {
      cookie: here.people.owner.cookie,
      headers: { host: 'book.example:8080', ...headers },
      body: { expiryWarningDays: 61 },
    });

  it('takes changes from its own pages and from programs', async () => {
    expect((await change({ origin: 'http://book.example:8080' })).status).toBe(200);
    expect((await change({ 'sec-fetch-site': 'same-origin' })).status).toBe(200);
    expect((await change({})).status).toBe(200);
  });

  it.each([
    { origin: 'http://evil.example' },
    { origin: 'http://book.example:9090' },
    { origin: 'null' },
    { 'sec-fetch-site': 'cross-site' },
    { origin: 'http://book.example:8080', 'sec-fetch-site': 'cross-site' },
  ])('refuses %j', async (headers) => {
    const answer = await change(headers as unknown as Record<string, string>);
    expect(answer.status).toBe(403);
    expect(answer.body).toMatchObject({ code: 'foreign_origin' });
  });

  it('does not let another site sign a browser in', async () => {
    const answer = await service.send('POST', '/api/session', {
      headers: { origin: 'http://evil.example' },
      body: { signInName: 'here.owner', password: PASSWORD },
    });
    expect(answer.status).toBe(403);
  });

  it('lets a token through whatever the origin: no browser sends one by itself', async () => {
    const made = await service.send('POST', '/api/session/tokens', {
      cookie: here.people.owner.cookie,
      body: { name: 'Dashboard' },
    });
    const answer = await service.send('PATCH', '/api/practice', {
      token: String(made.body.secret),
      headers: { origin: 'http://other.example' },
      body: { expiryWarningDays: 60 },
    });
    expect(answer.status).toBe(200);
  });
});

describe('personal tokens', () => {
  it('work until they are revoked, and show their secret once', async () => {
    const { cookie } = here.people.dentist;
    const made = await service.send('POST', '/api/session/tokens', {
      cookie,
      body: { name: 'Label printer', expiresOn: '2099-12-31' },
    });
    expect(made.status).toBe(201);
    expect(made.body).toMatchObject({
      name: 'Label printer',
      expiresAt: '2099-12-31T23:00:00.000Z',
    });
    const token = String(made.body.secret);
    expect(token).toMatch(/^tb_[A-Za-z0-9_-]{43}$/);
    const me = await service.send('GET', '/api/session', { token });
    expect(me.body).toMatchObject({ person: { signInName: 'here.dentist' } });
    const list = await service.send('GET', '/api/session/tokens', { token });
    expect(list.body.items).toMatchObject([{ name: 'Label printer', revokedAt: null }]);
    expect(list.text).not.toContain(token);
    const url = `/api/session/tokens/${String(made.body.id)}`;
    const others = await service.send('DELETE', url, { cookie: here.people.owner.cookie });
    expect(others.status).toBe(404);
    expect((await service.send('DELETE', url, { cookie })).status).toBe(204);
    expect((await service.send('DELETE', url, { cookie })).status).toBe(204);
    expect((await service.send('GET', '/api/session', { token })).status).toBe(401);
  });

  it('do not begin in the past, and end on their day', async () => {
    const { cookie } = here.people.dentist;
    const past = await service.send('POST', '/api/session/tokens', {
      cookie,
      body: { name: 'Old', expiresOn: '2026-05-03' },
    });
    expect(past.status).toBe(400);
    expect(past.body.errors).toEqual([{ field: 'expiresOn', message: 'must not be in the past' }]);
    const over = await service.send('POST', '/api/session/tokens', {
      cookie,
      body: { name: 'Over by the real clock', expiresOn: '2026-05-04' },
    });
    const token = String(over.body.secret);
    expect((await service.send('GET', '/api/session', { token })).status).toBe(401);
  });

  it('cannot be used as a session cookie, nor a session as a token', async () => {
    const { cookie } = here.people.dentist;
    expect((await service.send('GET', '/api/session', { token: cookie })).status).toBe(401);
  });
});
