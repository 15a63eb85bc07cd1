import createClient from 'openapi-fetch';
import type { components, paths } from './generated/schema.js';
import { ProblemError, toProblem, Unreachable } from './problem.js';

/** Names of the shapes that travel: `Shape<'AlertDto'>`. */
export type Shape<Name extends keyof components['schemas']> = components['schemas'][Name];

export type Session = Shape<'SessionDto'>;
export type Permission = Session['permissions'][number];

/** The service, typed by its OpenAPI document. Use it through `answerOf`. */
export const api = createClient<paths>({
  credentials: 'same-origin',
  headers: { Accept: 'application/json' },
});

interface Answer {
  readonly data?: unknown;
  readonly error?: unknown;
  readonly response: Response;
}

async function settled<R extends Answer>(sent: Promise<R>): Promise<R> {
  let answer: R;
  try {
    answer = await sent;
  } catch (error) {
    // fetch knows one error for everything between here and there: a TypeError.
    if (error instanceof TypeError) throw new Unreachable();
    throw error;
  }
  if (answer.response.ok) return answer;
  throw new ProblemError(toProblem(answer.error, answer.response));
}

/** What the service answered; throws ProblemError when it refused, Unreachable without a network. */
export async function answerOf<R extends Answer>(
  sent: Promise<R>,
): Promise<Exclude<R['data'], undefined>> {
  return (await settled(sent)).data as Exclude<R['data'], undefined>;
}

/** For what answers with nothing (204). */
export async function done(sent: Promise<Answer>): Promise<void> {
  await settled(sent);
}
