import type { FastifyInstance, FastifyRequest } from 'fastify';
import { invalidFields, unstorablePath } from '#lib/platform';

/** Half of a surrogate pair: text that no encoding, and so no database, can hold. */
const HALF_CHARACTER = /\p{Surrogate}/u;

function halfCharacterPath(value: unknown, path: string): string | undefined {
  if (typeof value === 'string') return HALF_CHARACTER.test(value) ? path || 'body' : undefined;
  if (typeof value !== 'object' || value === null) return undefined;
  for (const [key, inner] of Object.entries(value)) {
    if (HALF_CHARACTER.test(key)) return path || 'body';
    const step = Array.isArray(value) ? `${path}[${key}]` : path ? `${path}.${key}` : key;
    const found = halfCharacterPath(inner, step);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** The first field of a request whose text could not be stored as it is; undefined when all can. */
export function unstorableField(request: Pick<FastifyRequest, 'body' | 'query' | 'params'>) {
  for (const part of [request.params, request.query, request.body]) {
    // A file is bytes; what stands in it is checked where it is read.
    if (Buffer.isBuffer(part)) continue;
    const found = unstorablePath(part) ?? halfCharacterPath(part, '');
    if (found !== undefined) return found;
  }
  return undefined;
}

/** Refuses such a request before any handler sees it. */
export function refuseUnstorableText(fastify: FastifyInstance): void {
  fastify.addHook('preValidation', (request, _reply, done) => {
    const field = unstorableField(request);
    if (field === undefined) return done();
    const message = 'holds a character that cannot be stored, or is nested too deeply';
    done(invalidFields([{ field, message }]));
  });
}
