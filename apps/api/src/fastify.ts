import compress from '@fastify/compress';
import cookie from '@fastify/cookie';
import helmet from '@fastify/helmet';
import { FastifyAdapter } from '@nestjs/platform-fastify';
import type { FastifyInstance, FastifyReply, FastifyRequest, FastifyServerOptions } from 'fastify';
import { newId } from '#lib/platform';
import { type Admit, takeFiles } from './file-bodies.js';
import { type LogLevel, logOptions } from './log.js';
import { answerBrokenRequest, answerWithProblem } from './problems.js';
import { refuseUnstorableText } from './storable-text.js';

const MEBIBYTE = 1_048_576;

export interface HttpOptions {
  readonly logLevel: LogLevel;
  /** Addresses, ranges or names of ranges whose X-Forwarded-* headers are believed. */
  readonly trustedProxies: string;
}

export function httpAdapter(options: HttpOptions): FastifyAdapter {
  const server: FastifyServerOptions = {
    logger: logOptions(options.logLevel),
    bodyLimit: MEBIBYTE,
    trustProxy: options.trustedProxies,
    genReqId: () => newId(),
    requestIdHeader: false, // ids are ours; a sender must not forge lines of the log
    // A path that cannot be decoded never reaches a route, nor the filter that stands around them.
    frameworkErrors: (error, request, reply) =>
      answerWithProblem(
        error,
        request as unknown as FastifyRequest,
        reply as unknown as FastifyReply,
      ),
    clientErrorHandler: answerBrokenRequest,
  };
  return new FastifyAdapter(server);
}

/** What stands around every request, before any route: headers, cookies, compression, checks. */
export async function prepareFastify(fastify: FastifyInstance, admit: Admit): Promise<void> {
  fastify.removeContentTypeParser('text/plain'); // JSON is what is read, and files where they belong
  takeFiles(fastify, admit);
  await fastify.register(helmet, {
    contentSecurityPolicy: {
      directives: {
        // The camera's reader is WebAssembly of our own; it gives no way to run other scripts.
        scriptSrc: ["'self'", "'wasm-unsafe-eval'"],
        styleSrc: ["'self'", "'unsafe-inline'"],
        imgSrc: ["'self'", 'data:', 'blob:'],
        fontSrc: ["'self'", 'data:'],
        connectSrc: ["'self'"],
        workerSrc: ["'self'", 'blob:'],
        upgradeInsecureRequests: null, // a practice may serve its own network without TLS
      },
    },
  });
  await fastify.register(cookie);
  await fastify.register(compress, { threshold: 1024 });
  fastify.addHook('onRequest', (request, reply, done) => {
    if (request.url.startsWith('/api/')) void reply.header('Cache-Control', 'no-store');
    done();
  });
  refuseUnstorableText(fastify);
}
