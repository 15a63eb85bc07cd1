import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import { invalidFields } from '#lib/platform';
import { columnsOf, type ImportKind } from '../domain/kinds.js';
import type { ByHand } from '../domain/match-columns.js';
import { columnIndex } from '../domain/sheet.js';
import { refuseExchange } from '../exchange.refusals.js';

/** The body of a request that is a file: its bytes as they were sent. */
export const FileBody = createParamDecorator(
  (_data: unknown, context: ExecutionContext): Buffer => {
    const { body } = context.switchToHttp().getRequest<FastifyRequest>();
    if (Buffer.isBuffer(body)) return body;
    throw refuseExchange(
      'not_a_file',
      'Send the file itself as the body, with the Content-Type application/octet-stream.',
      [{ field: 'Content-Type', message: 'must be application/octet-stream' }],
    );
  },
);

/** What a request says of columns: "A:name,D:-" names column A and leaves D out. */
export function readByHand(said: string | null | undefined, kind: ImportKind): ByHand {
  const byHand = new Map<string, string | null>();
  if (!said) return byHand;
  const wrong = (message: string) => invalidFields([{ field: 'columns', message }]);
  if (kind === 'book') throw wrong('can be given for a single list only');
  const known = new Set(columnsOf(kind).map((column) => column.key));
  for (const part of said.split(',')) {
    const [, letters = '', key = ''] = /^([A-Z]{1,3}):([A-Za-z-]+)$/.exec(part.trim()) ?? [];
    if (columnIndex(letters) === undefined)
      throw wrong(`must be like A:name,D:-, not ${part.slice(0, 40)}`);
    if (key !== '-' && !known.has(key)) throw wrong(`names no column of this list: ${key}`);
    byHand.set(letters, key === '-' ? null : key);
  }
  return byHand;
}
