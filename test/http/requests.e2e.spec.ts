import { connect } from 'node:net';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Role } from '../../libs/platform/src/index.js';
import { type Answer, type TestPractice, TestService } from './service.js';

let service: TestService;
let here: TestPractice;

beforeAll(async () => {
  service = await TestService.start();
  here = await service.openPractice('here');
});

afterAll(() => service.stop());

function expectProblem(answer: Answer, status: number): void {
  expect(answer.headers['content-type']).toMatch(/^application\/problem\+json/);
  expect(answer.status).toBe(status);
  expect(answer.body).toMatchObject({
    type: expect.stringMatching(/^urn:traybook:problem:[a-z-]+$/),
    title: expect.any(String),
    status,
    detail: expect.any(String),
    code: expect.stringMatching(/^[a-z_]+$/),
    requestId: expect.any(String),
  });
}

const post = (body: unknown, headers: Record<string, string> = {}) =>
  service.send('POST', '/api/people', { cookie: here.people.owner.cookie, body, headers });

describe('requests that cannot be read', () => {
  it('no JSON', async () => {
    for (const body of ['{', '[1,', '"', 'no', '{"a":1}}', '\u0000']) {
      expectProblem(await post(body), 400);
    }
  });

  it('an empty body where one is needed', async () => {
    expectProblem(await post(''), 400);
    const none = await service.send('POST', '/api/people', here.people.owner);
    expectProblem(none, 400);
  });

  it('a body that is no object', async () => {
    for (const body of ['null', '1', '"text"', '[]', 'true']) expectProblem(await post(body), 400);
  });

  it.each(['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data', 'text/json'])(
    'a body of type %s',
    async (type) => expectProblem(await post('a=b', { 'content-type': type }), 415),
  );

  it('a body that is too large', async () => {
    expectProblem(await post({ displayName: 'x'.repeat(1_048_576) }), 413);
  });

  it('a NUL character, naming the field', async () => {
    const answer = await post({ displayName: 'a\u0000b', list: [{ x: 'fine' }] });
    expectProblem(answer, 400);
    expect(answer.body.errors).toMatchObject([{ field: 'displayName' }]);
    const inList = await post('{"lines":[{"note":"a\\u0000b"}]}');
    expect(inList.body.errors).toMatchObject([{ field: 'lines[0].note' }]);
    const query = await service.send(
      'GET',
      '/api/audit-entries?subjectId=a%00b',
      here.people.owner,
    );
    expectProblem(query, 400);
    expect(query.body.errors).toMatchObject([{ field: 'subjectId' }]);
    expectProblem(await service.send('GET', '/api/people/a%00b', here.people.owner), 400);
  });

  it('half a character', async () => {
    const answer = await post('{"lines":[{"note":"a\\ud800b"}]}');
    expectProblem(answer, 400);
    expect(answer.body.errors).toMatchObject([{ field: 'lines[0].note' }]);
  });

  it('nesting without end', async () => {
    const depth = 20_000;
    expectProblem(await post(`${'{"a":'.repeat(depth)}1${'}'.repeat(depth)}`), 400);
    expectProblem(await post(`${'['.repeat(depth)}${']'.repeat(depth)}`), 400);
  });

  it('a body that reaches for the prototype', async () => {
    expectProblem(await post('{"__proto__":{"role":"owner"}}'), 400);
    expectProblem(await post('{"constructor":{"prototype":{"role":"owner"}}}'), 400);
    expectProblem(await post('{"toString":1,"hasOwnProperty":2}'), 400);
    expect(({} as { role?: string }).role).toBeUndefined();
  });

  it('addresses that lead nowhere or cannot be decoded', async () => {
    expectProblem(await service.send('GET', '/api/nothing'), 404);
    expectProblem(await service.send('DELETE', '/api/practice'), 404);
    expectProblem(await service.send('GET', '/api/%'), 400);
    expectProblem(await service.send('GET', '/api/people/%E0%A4%A'), 400);
    expectProblem(await service.send('GET', '/api/people/not-an-id', here.people.owner), 400);
    const long = await service.send('GET', `/api/people/${'x'.repeat(9000)}`, here.people.owner);
    expect(long.status).toBeGreaterThanOrEqual(400);
    expect(long.status).toBeLessThan(500);
    expectProblem(long, long.status);
  });

  it('cursors that were made up', async () => {
    const forged = (parts: unknown) => Buffer.from(JSON.stringify(parts)).toString('base64url');
    for (const cursor of ['x', '%%', forged([1]), forged(['no time', 'no id']), forged([{}, []])]) {
      const url = `/api/audit-entries?cursor=${encodeURIComponent(cursor)}`;
      expectProblem(await service.send('GET', url, here.people.owner), 400);
    }
  });
});

describe('bytes on the wire', () => {
  let port: number;

  beforeAll(async () => {
    await service.app.listen(0, '127.0.0.1');
    port = (service.app.getHttpServer().address() as { port: number }).port;
  });

  const exchange = (bytes: string) =>
    new Promise<string>((resolve, reject) => {
      let received = '';
      const socket = connect(port, '127.0.0.1', () => socket.write(bytes));
      socket.setEncoding('utf8');
      socket.on('data', (data: string) => {
        received += data;
      });
      socket.on('error', reject);
      socket.on('close', () => resolve(received));
      socket.setTimeout(5000, () => socket.destroy());
    });

  const host = 'Host: localhost\r\nConnection: close\r\n';
  it.each([
    ['no HTTP at all', 'hello\r\n\r\n', 400],
    ['an unknown method', `BREW /api/health HTTP/1.1\r\n${host}\r\n`, 400],
    ['a method that is not served', `PROPFIND /api/health HTTP/1.1\r\n${host}\r\n`, 404],
    [
      'a bad content length',
      `POST /api/session HTTP/1.1\r\n${host}Content-Length: -5\r\n\r\n`,
      400,
    ],
    [
      'two lengths',
      `POST /api/session HTTP/1.1\r\n${host}Content-Length: 2\r\nTransfer-Encoding: chunked\r\n\r\n{}`,
      400,
    ],
    [
      'headers without end',
      `GET /api/health HTTP/1.1\r\n${host}X: ${'y'.repeat(70_000)}\r\n\r\n`,
      431,
    ],
    ['an address without end', `GET /${'y'.repeat(70_000)} HTTP/1.1\r\n${host}\r\n`, 431],
  ])('%s', async (_what, bytes, status) => {
    const answer = await exchange(bytes);
    expect(answer).toMatch(new RegExp(`^HTTP/1.1 ${status} `));
    expect(answer.toLowerCase()).toContain('content-type: application/problem+json');
    expect(answer).toContain(`"status":${status}`);
  });

  const upload = (length: string, more = '') =>
    `POST /api/imports/check?kind=suppliers HTTP/1.1\r\n${host}${more}` +
    `Content-Type: application/octet-stream\r\n${length}\r\n\r\n`;
  const session = (role: Role) => `Cookie: traybook_session=${here.people[role].cookie}\r\n`;

  it('of a file are not waited for where nobody may send them', async () => {
    // Only the head of each request is sent: an answer can come from nothing but that.
    const file = `Content-Length: ${10 * 1_048_576}`;
    const tooMuch = 'Content-Length: 9000000000';
    const endless = 'Transfer-Encoding: chunked';
    for (const length of [file, tooMuch, endless]) {
      const stranger = await exchange(upload(length));
      expect(stranger).toMatch(/^HTTP\/1.1 401 /);
      expect(stranger.toLowerCase()).toContain('www-authenticate: bearer');
      expect(stranger).toContain('"code":"not_signed_in"');
      const assistant = await exchange(upload(length, session('assistant')));
      expect(assistant).toMatch(/^HTTP\/1.1 403 /);
      expect(assistant).toContain('"code":"forbidden"');
      const elsewhere = `${session('manager')}Origin: http://elsewhere.example\r\n`;
      expect(await exchange(upload(length, elsewhere))).toMatch(/^HTTP\/1.1 403 /);
    }
    expect(await exchange(upload(tooMuch, session('manager')))).toMatch(/^HTTP\/1.1 413 /);
    const sent = upload('Content-Length: 11', session('manager'));
    expect(await exchange(`${sent}Supplier\nA\n`)).toMatch(/^HTTP\/1.1 200 /);
  });
});

describe('every answer', () => {
  it('forbids scripts from elsewhere', async () => {
    const answer = await service.send('GET', '/api/health');
    expect(answer.status).toBe(200);
    const policy = String(answer.headers['content-security-policy']);
    expect(policy).toContain("script-src 'self' 'wasm-unsafe-eval';");
    expect(policy).toContain("connect-src 'self'");
    expect(policy).not.toContain('upgrade-insecure-requests');
    expect(answer.headers['x-content-type-options']).toBe('nosniff');
    expect(answer.headers['access-control-allow-origin']).toBeUndefined();
  });

  it('is compressed when the sender can read that', async () => {
    const answer = await service.send('GET', '/api/openapi.json', {
      headers: { 'accept-encoding': 'gzip' },
    });
    expect(answer.headers['content-encoding']).toBe('gzip');
  });
});
