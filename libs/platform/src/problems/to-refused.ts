import { HttpException } from '@nestjs/common';
import { type RefusalKind, Refused, refuse } from './refused.js';
import { StartAgain } from './start-again.js';

interface DriverError {
  readonly code: string;
  readonly detail?: string;
  readonly constraint?: string;
}

/** The PostgreSQL error behind an error of pg or of TypeORM, if there is one. */
function driverError(error: unknown): DriverError | undefined {
  if (typeof error !== 'object' || error === null) return undefined;
  if ('driverError' in error) return driverError(error.driverError);
  if ('code' in error && typeof error.code === 'string' && /^[0-9A-Z]{5}$/.test(error.code)) {
    return error as DriverError;
  }
  return undefined;
}

const RETRYABLE = new Set(['40001', '40P01']);

export function isRetryable(error: unknown): boolean {
  return error instanceof StartAgain || RETRYABLE.has(driverError(error)?.code ?? '');
}

/**
 * Use cases check what they can name. What slips past them is still held by the database's own
 * constraints; the sender then gets a refusal, not a 500.
 */
function fromDriver(error: DriverError): Refused | undefined {
  if (error.code === '23505') {
    return refuse('already_exists', `This would be a second one: ${error.constraint ?? ''}.`);
  }
  if (error.code === '23503') {
    return refuse('unknown_reference', 'The request names something that does not exist.');
  }
  if (error.code === '23514' || error.code.startsWith('22')) {
    return refuse('invalid_request', 'A value is outside what the book can hold.');
  }
  if (RETRYABLE.has(error.code) || error.code === '53300') {
    return refuse('busy', 'Several people changed the same stock at once. Send it again.');
  }
  return undefined;
}

const HTTP_TITLES: Record<number, string> = {
  400: 'The request is not valid',
  404: 'Nothing here by that name',
  405: 'This is not done here',
  406: 'That form is not available',
  413: 'The request is too large',
  415: 'The request must be JSON',
  429: 'Too many requests',
};

const HTTP_CODES: Record<number, string> = {
  400: 'invalid_request',
  404: 'not_found',
  413: 'body_too_large',
  415: 'not_json',
  429: 'too_many_requests',
};

function fromHttp(status: number, detail: string): Refused | undefined {
  if (status < 400 || status > 499) return undefined;
  const title = HTTP_TITLES[status] ?? 'The request is not valid';
  const code = HTTP_CODES[status] ?? 'invalid_request';
  return new Refused(code, { status: status as RefusalKind['status'], title }, detail);
}

/** The refusal an error means to the sender; undefined for a bug of ours. */
export function toRefused(error: unknown): Refused | undefined {
  if (error instanceof Refused) return error;
  const driver = driverError(error);
  if (driver) return fromDriver(driver);
  if (error instanceof HttpException) return fromHttp(error.getStatus(), error.message);
  if (error instanceof Error && 'statusCode' in error && typeof error.statusCode === 'number') {
    return fromHttp(error.statusCode, error.message);
  }
  return undefined;
}
