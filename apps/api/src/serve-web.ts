import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { refuse } from '#lib/platform';

/** Where the build puts the browser app, seen from the compiled and from the source file. */
const PLACES = ['../../../web/', '../../../dist/web/'];

export function builtWebFolder(): string | undefined {
  return PLACES.map((place) => fileURLToPath(new URL(place, import.meta.url))).find((folder) =>
    existsSync(`${folder}index.html`),
  );
}

function cacheFor(file: string): string {
  // The names of built assets change with their content.
  return file.includes('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache';
}

/** What only a page obeys; on sixty files of script it would be a tenth of all that is sent. */
const FOR_PAGES = [
  'content-security-policy',
  'cross-origin-opener-policy',
  'origin-agent-cluster',
  'referrer-policy',
  'strict-transport-security',
  'x-dns-prefetch-control',
  'x-download-options',
  'x-frame-options',
  'x-permitted-cross-domain-policies',
  'x-xss-protection',
];

function setHeaders(reply: FastifyReply, file: string): void {
  void reply.header('Cache-Control', cacheFor(file));
  if (!file.includes('/assets/')) return;
  for (const name of FOR_PAGES) void reply.removeHeader(name);
}

/** Serves the browser app; any address that a person may reload leads to its one page. */
export async function serveWeb(fastify: FastifyInstance, folder: string): Promise<void> {
  await fastify.register(fastifyStatic, {
    root: folder,
    prefix: '/',
    wildcard: false,
    preCompressed: true,
    cacheControl: false,
    setHeaders,
  });
  fastify.get('/*', (request: FastifyRequest, reply: FastifyReply) => {
    const wantsPage = request.headers.accept?.includes('text/html') ?? false;
    if (!wantsPage || request.url.startsWith('/api/')) {
      throw refuse('not_found', `There is nothing at ${request.url.split('?')[0]}.`);
    }
    return reply.sendFile('index.html');
  });
}
