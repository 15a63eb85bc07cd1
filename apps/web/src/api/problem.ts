import type { components } from './generated/schema.js';

export type Problem = components['schemas']['Problem'];

/** The service declined: problem details (RFC 9457). */
export class ProblemError extends Error {
  override readonly name = 'ProblemError';

  constructor(readonly problem: Problem) {
    super(problem.detail);
  }
}

/** There was no answer: no network, or the service is away. What was sent may have arrived. */
export class Unreachable extends Error {
  override readonly name = 'Unreachable';

  constructor() {
    super('The service cannot be reached.');
  }
}

function isProblem(body: unknown): body is Problem {
  return typeof body === 'object' && body !== null && 'code' in body && 'detail' in body;
}

/** The problem in a body; a made-up one when something between us and the service answered. */
export function toProblem(body: unknown, response: Response): Problem {
  if (isProblem(body)) return body;
  return {
    type: 'about:blank',
    title: response.statusText,
    status: response.status,
    detail: `HTTP ${response.status}`,
    code: 'unknown',
    instance: new URL(response.url).pathname,
    requestId: '',
  };
}

export function isNotSignedIn(error: unknown): boolean {
  return error instanceof ProblemError && error.problem.code === 'not_signed_in';
}

/** Worth trying again by itself: nothing about the request was wrong. */
export function mayPass(error: unknown): boolean {
  return (
    error instanceof Unreachable || (error instanceof ProblemError && error.problem.status === 503)
  );
}
