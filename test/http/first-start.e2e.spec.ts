import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { DataSource } from 'typeorm';
import { issueFirstStartLink } from '#lib/access';
import { startService } from '../../apps/api/src/index.js';
import { asOwner, createTestDatabase } from '../harness/database.js';
import { PASSWORD, TestService } from './service.js';

let service: TestService;

beforeEach(async () => {
  service = await TestService.start();
});

afterEach(() => service.stop());

const link = async () => (await issueFirstStartLink(service.app.get(DataSource))) ?? 'none';
const isGood = async (token: string) =>
  (await service.send('GET', `/api/first-start?token=${token}`)).body.good;

function start(token: string, change: { practice?: object; owner?: object } = {}) {
  return service.send('POST', '/api/first-start', {
    body: {
      token,
      practice: {
        name: 'Practice at the Old Mill',
        timeZone: 'Europe/Berlin',
        currency: 'EUR',
        toothNotation: 'universal',
        ...change.practice,
      },
      owner: {
        displayName: 'Dr. Ilse Brandt',
        signInName: 'Ilse.Brandt',
        password: PASSWORD,
        ...change.owner,
      },
    },
  });
}

describe('the first start', () => {
  it('opens the book once, and its owner can sign in', async () => {
    const token = await link();
    expect(await isGood(token)).toBe(true);
    const answer = await start(token);
    expect(answer.status).toBe(201);
    expect(answer.body).toEqual({ practiceId: expect.any(String), personId: expect.any(String) });
    expect(await isGood(token)).toBe(false);
    const again = await start(token);
    expect(again.status).toBe(403);
    expect(again.body).toMatchObject({ code: 'first_start_closed', errors: [{ field: 'token' }] });
    const cookie = await service.signIn('ilse.brandt');
    const session = await service.send('GET', '/api/session', { cookie });
    expect(session.body).toMatchObject({
      person: { id: answer.body.personId, role: 'owner' },
      practice: { id: answer.body.practiceId, toothNotation: 'universal', currency: 'EUR' },
    });
    expect(await issueFirstStartLink(service.app.get(DataSource))).toBeUndefined();
  });

  it('is closed to made-up, old and other unused links', async () => {
    expect(await isGood('made-up')).toBe(false);
    expect((await start('made-up')).status).toBe(403);
    const old = await link();
    const client = await asOwner(service.databaseUrl);
    await client.query(`UPDATE first_start_links SET created_at = now() - interval '8 days'`);
    await client.end();
    expect((await start(old)).status).toBe(403);
    const [one, other] = [await link(), await link()];
    expect((await start(one)).status).toBe(201);
    expect(await isGood(other)).toBe(false);
    expect((await start(other, { owner: { signInName: 'second.owner' } })).status).toBe(403);
  });

  it('happens once also when several links are used at once', async () => {
    const tokens = [await link(), await link(), await link()];
    const answers = await Promise.all(
      [...tokens, ...tokens].map((token, n) =>
        start(token, { owner: { signInName: `owner${n}` } }),
      ),
    );
    expect(answers.map((answer) => answer.status).sort()).toEqual([201, 403, 403, 403, 403, 403]);
  });

  it('refuses what is wrong, naming the field, and leaves the link good', async () => {
    const token = await link();
    for (const [field, change] of Object.entries({
      'practice.timeZone': { practice: { timeZone: 'Nowhere/City' } },
      'practice.currency': { practice: { currency: 'XYZ' } },
      'practice.name': { practice: { name: ' ' } },
      'owner.password': { owner: { password: 'short' } },
      'owner.signInName': { owner: { signInName: 'two words' } },
    })) {
      const answer = await start(token, change);
      expect([field, answer.status]).toEqual([field, 400]);
      expect(answer.body.errors).toMatchObject([{ field }]);
    }
    expect((await start(token, { practice: { currency: 'eur' } })).status).toBe(400);
    expect(await isGood(token)).toBe(true);
  });
});

describe('starting the service', () => {
  it('listens, names the link of an empty book, and closes', async () => {
    const database = await createTestDatabase();
    const running = await startService({
      databaseUrl: database.url,
      host: '127.0.0.1',
      port: 0,
      logLevel: 'error',
    });
    const health = await fetch(`${running.url}/api/health`);
    expect(await health.json()).toEqual({ status: 'ok' });
    const token = new URL(running.firstStartLink ?? '').searchParams.get('token') ?? '';
    const state = await fetch(`${running.url}/api/first-start?token=${token}`);
    expect(await state.json()).toEqual({ good: true });
    await running.close();
    await expect(fetch(`${running.url}/api/health`)).rejects.toThrow();
    await database.drop();
  });

  it('fails at once, with the reason, without a database', async () => {
    const options = { host: '127.0.0.1', port: 0, logLevel: 'silent' } as const;
    const nowhere = 'postgres://nobody@127.0.0.1:1/none';
    await expect(startService({ databaseUrl: nowhere, ...options })).rejects.toThrow(
      'ECONNREFUSED',
    );
  });
});
