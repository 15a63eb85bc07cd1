import type { FastifyInstance } from 'fastify';

const FILE = 'application/octet-stream';
const MOST_BYTES = 10 * 1_048_576;

/**
 * Lets files come in as the body of a request, as bytes and up to ten megabytes, only where lists are
 * brought in: everywhere else such a body is refused before any of it is read.
 */
export function takeFiles(fastify: FastifyInstance): void {
  fastify.addHook('onRequest', (request, _reply, done) => {
    const type = request.headers['content-type'] ?? '';
    const path = request.url.split('?')[0] ?? '';
    const here = path === '/api/imports' || path === '/api/imports/check';
    if (here || !type.toLowerCase().startsWith(FILE)) return done();
    done(Object.assign(new Error('The request must be JSON.'), { statusCode: 415 }));
  });
  fastify.addContentTypeParser(
    FILE,
    { parseAs: 'buffer', bodyLimit: MOST_BYTES },
    (_request, body, done) => done(null, body),
  );
}
