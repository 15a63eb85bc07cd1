import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { FILE_ROUTES } from '#lib/exchange';
import { answerWithProblem } from './problems.js';

const FILE = 'application/octet-stream';

/** Throws a refusal where the sender may not do what the route needs. */
export type Admit = (
  request: FastifyRequest,
  reply: FastifyReply,
  needs: typeof FILE_ROUTES.needs,
) => Promise<void>;

/**
 * Lets files come in as the body of a request, as bytes and up to ten megabytes, only where lists are
 * brought in, and only from those who may: everybody else is refused before any of it is read.
 */
export function takeFiles(fastify: FastifyInstance, admit: Admit): void {
  const paths: readonly string[] = FILE_ROUTES.paths;
  const takesFiles = (request: FastifyRequest) => paths.includes(request.url.split('?')[0] ?? '');
  fastify.addHook('onRequest', (request, _reply, done) => {
    const type = request.headers['content-type'] ?? '';
    if (takesFiles(request) || !type.toLowerCase().startsWith(FILE)) return done();
    done(Object.assign(new Error('The request must be JSON.'), { statusCode: 415 }));
  });
  // After the cookies were read, and before the body is.
  fastify.addHook('preParsing', async (request, reply, body) => {
    if (request.method !== 'POST' || !takesFiles(request)) return body;
    try {
      await admit(request, reply, FILE_ROUTES.needs);
      return body;
    } catch (error) {
      // What is on its way is thrown away unread; of more than a file may be, not even that is waited for.
      if (!(bytesSaid(request) <= FILE_ROUTES.mostBytes)) void reply.header('Connection', 'close');
      answerWithProblem(error, request, reply);
      return body;
    }
  });
  fastify.addContentTypeParser(
    FILE,
    { parseAs: 'buffer', bodyLimit: FILE_ROUTES.mostBytes },
    (_request, body, done) => done(null, body),
  );
}

/** How long the body will be, as its sender says; NaN where nothing is said. */
function bytesSaid(request: FastifyRequest): number {
  return Number.parseInt(request.headers['content-length'] ?? '', 10);
}
