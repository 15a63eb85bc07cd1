import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { createApp } from '../../apps/api/src/index.js';
import { createTestDatabase } from '../harness/database.js';
import { TestService } from './service.js';

let folder: string;
let service: TestService;

beforeAll(async () => {
  folder = `${mkdtempSync(join(tmpdir(), 'traybook-web-'))}/`;
  mkdirSync(join(folder, 'assets'));
  writeFileSync(join(folder, 'index.html'), '<!doctype html><title>Traybook</title>');
  writeFileSync(join(folder, 'assets', 'main-1a2b3c.js'), 'export {};');
  service = await TestService.start({ webFolder: folder });
});

afterAll(async () => {
  await service.stop();
  rmSync(folder, { recursive: true });
});

describe('the browser app', () => {
  const page = { headers: { accept: 'text/html,application/xhtml+xml' } };

  it.each(['/', '/index.html', '/visits', '/lots/some/where?x=1', '/first-start?token=abc'])(
    'is at %s, and is asked for anew',
    async (url) => {
      const answer = await service.send('GET', url, page);
      expect(answer.status).toBe(200);
      expect(answer.text).toContain('<title>Traybook</title>');
      expect(answer.headers['cache-control']).toBe('no-cache');
      expect(answer.headers['content-security-policy']).toContain("script-src 'self'");
    },
  );

  it('has assets that may be kept for ever', async () => {
    const answer = await service.send('GET', '/assets/main-1a2b3c.js');
    expect(answer.status).toBe(200);
    expect(answer.headers['content-type']).toMatch(/javascript/);
    expect(answer.headers['cache-control']).toBe('public, max-age=31536000, immutable');
    expect(answer.headers['x-content-type-options']).toBe('nosniff');
    expect(answer.headers['content-security-policy']).toBeUndefined();
  });

  it.each([
    ['/assets/gone.js', {}],
    ['/visits', { headers: { accept: 'application/json' } }],
    ['/api/nothing', page],
    ['/..%2f..%2fetc/passwd', {}],
  ])('is not what %s answers', async (url, sent) => {
    const answer = await service.send('GET', url, sent);
    expect(answer.status).toBe(404);
    expect(answer.headers['content-type']).toMatch(/^application\/problem\+json/);
  });

  it('leaves the service in its place', async () => {
    expect((await service.send('GET', '/api/health', page)).body).toEqual({ status: 'ok' });
    expect((await service.send('GET', '/api/docs', page)).text).not.toContain('<title>Traybook<');
    expect((await service.send('POST', '/visits', { body: {} })).status).toBe(404);
  });
});

describe('without its database', () => {
  it('says so, and to try again', async () => {
    const database = await createTestDatabase();
    const app = await createApp({ databaseUrl: database.url, logLevel: 'silent' });
    await database.drop();
    for (const url of ['/api/health', '/api/session']) {
      const answer = await app.inject({ url, headers: { cookie: 'traybook_session=x' } });
      expect([url, answer.statusCode]).toEqual([url, 503]);
      expect(answer.headers['content-type']).toMatch(/^application\/problem\+json/);
      expect(answer.headers['retry-after']).toBe('1');
    }
    await app.close();
  });
});
