import { STATUS_CODES } from 'node:http';
import type { Socket } from 'node:net';
import { type ArgumentsHost, Catch, type ExceptionFilter, Logger } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import {
  newId,
  PROBLEM_MEDIA_TYPE,
  type Problem,
  problemType,
  refuse,
  sendProblem,
} from '#lib/platform';

/** Writes to the log of one request, so that the line carries the request's id. */
class RequestLog extends Logger {
  constructor(private readonly request: FastifyRequest) {
    super();
  }

  override error(message: unknown): void {
    this.request.log.error(String(message));
  }
}

const AWAY = /^(08...|57P0[123]|3D000|ECONNREFUSED|ECONNRESET|EPIPE|ETIMEDOUT|ENOTFOUND)$/;

/** Whether an error says that the database cannot be reached: nobody's mistake, and it may pass. */
function databaseIsAway(error: unknown): boolean {
  if (!(error instanceof Error)) return false;
  if ('driverError' in error && error.driverError !== error)
    return databaseIsAway(error.driverError);
  if ('code' in error && typeof error.code === 'string') return AWAY.test(error.code);
  return error.message.startsWith('Connection terminated');
}

export function answerWithProblem(
  error: unknown,
  request: FastifyRequest,
  reply: FastifyReply,
): void {
  const away = databaseIsAway(error);
  if (away) request.log.error(`The database does not answer: ${String(error)}`);
  const answered = away ? refuse('busy', 'The database does not answer. Try again.') : error;
  sendProblem(answered, request, reply, new RequestLog(request));
}

/** Every error of every handler, pipe and guard leaves the service as problem details. */
@Catch()
export class ApiProblemFilter implements ExceptionFilter {
  catch(error: unknown, host: ArgumentsHost): void {
    const http = host.switchToHttp();
    answerWithProblem(error, http.getRequest<FastifyRequest>(), http.getResponse<FastifyReply>());
  }
}

const BROKEN: Readonly<Record<string, { status: number; detail: string }>> = {
  HPE_HEADER_OVERFLOW: { status: 431, detail: 'The address or the headers are too long.' },
  ERR_HTTP_REQUEST_TIMEOUT: { status: 408, detail: 'The request took too long to arrive.' },
};

/** Bytes that are no HTTP request never reach a handler; they are answered on the socket itself. */
export function answerBrokenRequest(error: Error & { code?: string }, socket: Socket): void {
  if (error.code === 'ECONNRESET' || socket.destroyed) return;
  const { status, detail } = BROKEN[error.code ?? ''] ?? {
    status: 400,
    detail: 'This is not an HTTP request that can be read.',
  };
  const problem: Problem = {
    type: problemType('invalid_request'),
    title: 'The request is not valid',
    status,
    detail,
    code: 'invalid_request',
    instance: '/',
    requestId: newId(),
  };
  const body = JSON.stringify(problem);
  const head = [
    `HTTP/1.1 ${status} ${STATUS_CODES[status] ?? 'Error'}`,
    `Content-Type: ${PROBLEM_MEDIA_TYPE}`,
    `Content-Length: ${Buffer.byteLength(body)}`,
    'Connection: close',
  ].join('\r\n');
  if (socket.writable) socket.end(`${head}\r\n\r\n${body}`);
  else socket.destroy();
}
