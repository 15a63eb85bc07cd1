import { applyDecorators, createParamDecorator, type ExecutionContext } from '@nestjs/common';
import { ApiHeader, ApiResponse } from '@nestjs/swagger';
import type { FastifyRequest } from 'fastify';
import { refuse } from '../problems/refused.js';
import { invalidFields } from './validation.js';

/** The sender's Idempotency-Key: 1 to 200 visible ASCII characters. Every booking needs one. */
export const IdempotencyKey = createParamDecorator((_data: unknown, context: ExecutionContext) => {
  const header = context.switchToHttp().getRequest<FastifyRequest>().headers['idempotency-key'];
  if (header === undefined || header === '') {
    throw refuse('idempotency_key_missing', 'Send an Idempotency-Key header, e.g. a new UUID.', [
      { field: 'Idempotency-Key', message: 'is missing' },
    ]);
  }
  if (typeof header !== 'string' || !/^[\x21-\x7e]{1,200}$/.test(header)) {
    throw invalidFields([
      { field: 'Idempotency-Key', message: 'must be 1 to 200 visible ASCII characters' },
    ]);
  }
  return header;
});

/** Documents the header that IdempotencyKey reads. */
export function ApiBooking(): MethodDecorator {
  return applyDecorators(
    ApiHeader({
      name: 'Idempotency-Key',
      required: true,
      description:
        'Any text the sender has not used before, e.g. a UUID. Sent again with the same body, the request is answered alike and not booked twice.',
      schema: { type: 'string', minLength: 1, maxLength: 200 },
    }),
    ApiResponse({ status: 409, description: 'The key was used for another request.' }),
  );
}
