import type { LoggerService } from '@nestjs/common';
import type { FastifyBaseLogger, FastifyRequest } from 'fastify';

export const LOG_LEVELS = ['silent', 'fatal', 'error', 'warn', 'info', 'debug', 'trace'] as const;
export type LogLevel = (typeof LOG_LEVELS)[number];

/** Fastify's own log: one line of JSON per event, without secrets. */
export function logOptions(level: LogLevel) {
  return {
    level,
    redact: ['req.headers.authorization', 'req.headers.cookie', 'res.headers["set-cookie"]'],
    serializers: {
      // Without the query, in which a first-start link carries its secret.
      req: (request: FastifyRequest) => ({
        method: request.method,
        url: request.url.split('?')[0] ?? '',
        remoteAddress: request.ip,
      }),
    },
  };
}

/** Lets Nest and the libs write to the same log. */
export class ServiceLog implements LoggerService {
  constructor(private readonly to: FastifyBaseLogger) {}

  log(message: unknown, ...more: unknown[]): void {
    this.to.info(this.line(message, more));
  }

  warn(message: unknown, ...more: unknown[]): void {
    this.to.warn(this.line(message, more));
  }

  error(message: unknown, ...more: unknown[]): void {
    this.to.error(this.line(message, more));
  }

  fatal(message: unknown, ...more: unknown[]): void {
    this.to.fatal(this.line(message, more));
  }

  debug(message: unknown, ...more: unknown[]): void {
    this.to.debug(this.line(message, more));
  }

  verbose(message: unknown, ...more: unknown[]): void {
    this.to.trace(this.line(message, more));
  }

  private line(message: unknown, more: readonly unknown[]): string {
    const text = message instanceof Error ? (message.stack ?? message.message) : String(message);
    return [...more.filter((part) => typeof part === 'string').reverse(), text].join(' ');
  }
}
