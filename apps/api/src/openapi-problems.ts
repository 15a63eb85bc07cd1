import type { OpenAPIObject } from '@nestjs/swagger';
import { PROBLEM_MEDIA_TYPE } from '#lib/platform';

type Responses = Record<string, { description?: string; content?: object }>;

interface Operation {
  responses: Responses;
  parameters?: { in: string; name: string; schema?: object }[];
  requestBody?: unknown;
  security?: unknown[];
}

const PROBLEM_SCHEMA = {
  type: 'object',
  description: 'Problem details (RFC 9457).',
  required: ['type', 'title', 'status', 'detail', 'code', 'instance', 'requestId'],
  properties: {
    type: { type: 'string', format: 'uri', example: 'urn:traybook:problem:not-found' },
    title: { type: 'string', example: 'Nothing here by that name' },
    status: { type: 'integer', minimum: 400, maximum: 599, example: 404 },
    detail: { type: 'string', description: 'A sentence that a person can act on.' },
    code: { type: 'string', description: 'Stable; for programs.', example: 'not_found' },
    instance: { type: 'string', example: '/api/people' },
    requestId: { type: 'string', description: 'Quote it when you ask about the error.' },
    errors: {
      type: 'array',
      items: {
        type: 'object',
        required: ['field', 'message'],
        properties: {
          field: { type: 'string', example: 'lines[0].quantity' },
          message: { type: 'string', example: 'must be more than 0' },
        },
      },
    },
  },
};

const WORDS: Readonly<Record<string, string>> = {
  '400': 'The request is not well formed.',
  '401': 'Nobody is signed in.',
  '403': 'The role does not allow this, or the request came from another site.',
  '404': 'There is no such thing in this practice.',
  '409': 'It contradicts what is already in the book.',
  '413': 'The body is larger than 1 MiB.',
  '415': 'The body is not JSON.',
  '422': 'The request names something that does not exist, or breaks a rule of the book.',
  '429': 'Too many tries; Retry-After says how long to wait.',
  '503': 'The book is busy or the database is away; try again.',
  default: 'Any other error.',
};

function expected(operation: Operation): string[] {
  const changes = operation.requestBody !== undefined;
  const signedIn = (operation.security ?? []).length > 0;
  const inPath = (operation.parameters ?? []).some((parameter) => parameter.in === 'path');
  return [
    '400',
    ...(signedIn ? ['401', '403'] : []),
    ...(inPath ? ['404'] : []),
    ...(changes ? ['409', '413', '415', '422'] : []),
    '503',
    'default',
  ];
}

const PROBLEM_CONTENT = {
  [PROBLEM_MEDIA_TYPE]: { schema: { $ref: '#/components/schemas/Problem' } },
};

function describe(operation: Operation): void {
  const { responses } = operation;
  for (const status of expected(operation)) responses[status] ??= {};
  for (const [status, response] of Object.entries(responses)) {
    if (status !== 'default' && Number(status) < 400) continue;
    response.description ||= WORDS[status] ?? 'An error.';
    response.content = PROBLEM_CONTENT;
  }
}

/** IdPipe checks these; the scanner of decorators cannot see it. */
function describeIds(operation: Operation): void {
  for (const parameter of operation.parameters ?? []) {
    if (parameter.in !== 'path' || !/^id$|Id$/.test(parameter.name)) continue;
    parameter.schema = { type: 'string', format: 'uuid' };
  }
}

const METHODS = ['get', 'post', 'put', 'patch', 'delete'] as const;

/** Says of every operation which errors it may answer with, and that all of them are problems. */
export function describeProblems(document: OpenAPIObject): OpenAPIObject {
  for (const path of Object.values(document.paths)) {
    for (const method of METHODS) {
      const operation = path[method] as Operation | undefined;
      if (!operation) continue;
      describeIds(operation);
      describe(operation);
    }
  }
  const schemas = { ...document.components?.schemas, Problem: PROBLEM_SCHEMA };
  return { ...document, components: { ...document.components, schemas } } as OpenAPIObject;
}
