import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { type INestApplicationContext, RequestMethod } from '@nestjs/common';
import { METHOD_METADATA, PATH_METADATA } from '@nestjs/common/constants.js';
import { ModulesContainer } from '@nestjs/core';
import { ACCESS, PERMISSIONS } from '#lib/access';
import { TestService } from './service.js';

interface Operation {
  operationId: string;
  summary?: string;
  tags?: string[];
  security?: object[];
  responses: Record<string, { content?: Record<string, { schema?: object }> }>;
  requestBody?: object;
  'x-permission'?: string;
}

interface OpenApi {
  openapi: string;
  info: { title: string; version: string; description: string };
  paths: Record<string, Record<string, Operation>>;
  tags: { name: string; description: string }[];
  components: { schemas: Record<string, object>; securitySchemes: object };
}

let service: TestService;
let document: OpenApi;
let operations: (Operation & { route: string })[];

beforeAll(async () => {
  service = await TestService.start();
  document = (await service.send('GET', '/api/openapi.json')).body as unknown as OpenApi;
  operations = Object.entries(document.paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, operation]) => ({
      ...operation,
      route: `${method.toUpperCase()} ${path}`,
    })),
  );
});

afterAll(() => service.stop());

/** Every handler of every controller with what its decorators say about access. */
function handlers(app: INestApplicationContext): Map<string, unknown> {
  const found = new Map<string, unknown>();
  for (const module of app.get(ModulesContainer).values()) {
    for (const { metatype } of module.controllers.values()) {
      if (typeof metatype !== 'function') continue;
      const prototype = metatype.prototype as Record<string, unknown>;
      for (const name of Object.getOwnPropertyNames(prototype)) {
        const handler = Object.getOwnPropertyDescriptor(prototype, name)?.value as unknown;
        if (name === 'constructor' || typeof handler !== 'function') continue;
        if (!Reflect.hasMetadata(PATH_METADATA, handler)) continue;
        const parts = [
          Reflect.getMetadata(PATH_METADATA, metatype) as string,
          Reflect.getMetadata(PATH_METADATA, handler) as string,
        ].map((part) => part.replace(/^\/|\/$/g, ''));
        const path = ['/api', ...parts.filter((part) => part !== '')].join('/');
        const method = RequestMethod[Reflect.getMetadata(METHOD_METADATA, handler) as number];
        const access: unknown =
          Reflect.getMetadata(ACCESS, handler) ?? Reflect.getMetadata(ACCESS, metatype);
        found.set(`${method} ${path.replace(/:(\w+)/g, '{$1}')}`, access);
      }
    }
  }
  return found;
}

describe('access', () => {
  it('is stated by every handler of the service', () => {
    const all = handlers(service.app);
    expect(all.size).toBeGreaterThan(15);
    const allowed = new Set<unknown>(['public', 'signed in', ...PERMISSIONS]);
    expect([...all].filter(([, access]) => !allowed.has(access))).toEqual([]);
    expect(new Set(operations.map((operation) => operation.route))).toEqual(new Set(all.keys()));
  });

  it('is what was decided, route by route', () => {
    const file = new URL('permissions.snapshot.json', import.meta.url);
    const decided = JSON.parse(readFileSync(file, 'utf8')) as Record<string, string>;
    const now = Object.fromEntries([...handlers(service.app)].sort(([a], [b]) => (a < b ? -1 : 1)));
    expect(now).toEqual(decided);
  });

  it('is refused without a sign-in on every route that is not public', async () => {
    for (const operation of operations) {
      if (operation['x-permission'] === 'public') continue;
      const [method = '', path = ''] = operation.route.split(' ');
      const url = path.replace(/\{\w+\}/g, '01900000-0000-7000-8000-000000000000');
      const answer = await service.send(method, url, {
        headers: { 'idempotency-key': 'k' },
        ...(operation.requestBody ? { body: {} } : {}),
      });
      expect([operation.route, answer.status]).toEqual([operation.route, 401]);
    }
  });
});

describe('an id that names nothing', () => {
  it('is answered with 404 by every route that reads or ends one thing', async () => {
    const { people } = await service.openPractice('here');
    const one = operations.filter(({ route }) => /^(GET|DELETE) .*\{id\}/.test(route));
    expect(one.length).toBeGreaterThan(5);
    for (const { route } of one) {
      const [method = '', path = ''] = route.split(' ');
      const url = path.replace('{id}', '01900000-0000-7000-8000-000000000000');
      const answer = await service.send(method, url, people.owner);
      expect([route, answer.status, answer.body.code]).toEqual([route, 404, 'not_found']);
    }
  });
});

describe('the OpenAPI document', () => {
  it('is version 3.1 and opens with the caution', () => {
    expect(document.openapi).toMatch(/^3\.1\./);
    expect(document.info.description.split('\n')[0]).toBe(
      'Figures are planning aids. Instructions for use, local rules and licensed practice come first.',
    );
    expect(document.components.securitySchemes).toMatchObject({
      session: { type: 'apiKey', in: 'cookie', name: 'traybook_session' },
      token: { type: 'http', scheme: 'bearer' },
    });
  });

  it('is valid, and a typed client can be made from it', async () => {
    const { default: openapiTS, astToString } = await import('openapi-typescript');
    const client = astToString(
      await openapiTS(structuredClone(document) as never, { silent: true }),
    );
    expect(client).toContain('signIn');
    const broken = {
      ...structuredClone(document),
      paths: { '/x': { get: { responses: 'none' } } },
    };
    await expect(openapiTS(broken as never, { silent: true })).rejects.toThrow();
  });

  it('names and sums up every operation', () => {
    const ids = operations.map((operation) => operation.operationId);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { route, operationId, summary, tags } of operations) {
      expect([route, operationId]).toEqual([route, expect.stringMatching(/^[a-z][a-zA-Z]+$/)]);
      expect([route, summary]).toEqual([route, expect.stringMatching(/^\S.{8,}/)]);
      expect([route, tags?.length]).toEqual([route, 1]);
    }
  });

  it('explains every tag', () => {
    expect(document.tags.filter((tag) => tag.description === '')).toEqual([]);
  });

  it('describes what every operation answers when it works', () => {
    for (const { route, responses } of operations) {
      const good = Object.entries(responses).filter(([status]) => /^2\d\d$/.test(status));
      expect([route, good.length]).toEqual([route, 1]);
      for (const [status, response] of good) {
        if (status === '204') continue;
        const schema = Object.values(response.content ?? {})[0]?.schema;
        expect([route, schema]).toEqual([route, expect.anything()]);
      }
    }
  });

  it('describes every error as a problem', () => {
    for (const { route, responses, ...operation } of operations) {
      const errors = Object.entries(responses).filter(([status]) => !/^2\d\d$/.test(status));
      const codes = errors.map(([status]) => status);
      expect([route, codes]).toEqual([route, expect.arrayContaining(['400', 'default'])]);
      if (operation['x-permission'] !== 'public') expect(codes).toContain('401');
      for (const [, response] of errors) {
        expect([route, response.content]).toEqual([
          route,
          { 'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } } },
        ]);
      }
    }
  });

  it('refers to nothing that is not in it, and uses no word of older versions', () => {
    const text = JSON.stringify(document);
    for (const [, name] of text.matchAll(/"\$ref":"#\/components\/schemas\/([^"]+)"/g)) {
      expect(Object.keys(document.components.schemas)).toContain(name);
    }
    expect(text).not.toContain('"nullable"');
    expect(text).not.toMatch(/"exclusiveM(in|ax)imum":(true|false)/);
  });

  it('can be read in a browser without scripts in the page', async () => {
    const page = await service.send('GET', '/api/docs', { headers: { accept: 'text/html' } });
    expect(page.status).toBe(200);
    expect(page.headers['content-type']).toMatch(/text\/html/);
    for (const [, attributes] of page.text.matchAll(/<script([^>]*)>/g)) {
      expect(attributes).toContain('src=');
    }
    expect(page.text).not.toMatch(/https?:\/\/(?!www\.w3\.org)/);
    const sources = [...page.text.matchAll(/(?:src|href)="(\.[^"]+)"/g)].map(
      ([, source]) => source,
    );
    expect(sources.length).toBeGreaterThan(2);
    for (const source of sources) {
      const url = new URL(source ?? '', 'http://x/api/docs').pathname;
      expect([url, (await service.send('GET', url)).status]).toEqual([url, 200]);
    }
  });
});
