import { type ArgumentsHost, Catch, type ExceptionFilter, Logger } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { PROBLEM_MEDIA_TYPE, type Problem, problemType } from './problem.js';
import { toRefused } from './to-refused.js';

/** Every error leaves the service as problem details; an unknown one as a bare 500, and is logged. */
@Catch()
export class ProblemFilter implements ExceptionFilter {
  private readonly log = new Logger('Problem');

  catch(error: unknown, host: ArgumentsHost): void {
    const http = host.switchToHttp();
    sendProblem(
      error,
      http.getRequest<FastifyRequest>(),
      http.getResponse<FastifyReply>(),
      this.log,
    );
  }
}

export function sendProblem(
  error: unknown,
  request: FastifyRequest,
  reply: FastifyReply,
  log: Logger,
): void {
  const refused = toRefused(error);
  if (!refused) log.error(error instanceof Error ? (error.stack ?? error.message) : String(error));
  const code = refused?.code ?? 'internal_error';
  const problem: Problem = {
    type: problemType(code),
    title: refused?.kind.title ?? 'Something went wrong on our side',
    status: refused?.kind.status ?? 500,
    detail:
      refused?.message ?? 'The request was not carried out. Quote the request id when you ask.',
    code,
    instance: request.url.split('?')[0] ?? request.url,
    requestId: String(request.id),
    ...(refused && refused.fields.length > 0 ? { errors: refused.fields } : {}),
  };
  if (problem.status === 503) void reply.header('Retry-After', '1');
  void reply.status(problem.status).header('Content-Type', PROBLEM_MEDIA_TYPE).send(problem);
}
