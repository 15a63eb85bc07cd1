import {
  type ArgumentMetadata,
  Injectable,
  type PipeTransform,
  ValidationPipe,
} from '@nestjs/common';
import type { ValidationError } from 'class-validator';
import { type FieldError, type Refused, refuse } from '../problems/refused.js';
import { isId } from '../work/ids.js';

function joinPath(parent: string, property: string): string {
  if (parent === '') return property;
  return /^\d+$/.test(property) ? `${parent}[${property}]` : `${parent}.${property}`;
}

/** The wrong fields of a request with their paths, e.g. `restorations[0].tooth`. */
function fieldErrors(errors: readonly ValidationError[], parent = ''): FieldError[] {
  return errors.flatMap((error) => {
    const field = joinPath(parent, error.property);
    const own = Object.entries(error.constraints ?? {}).map(([name, message]) => ({
      field,
      message: name === 'whitelistValidation' ? 'is not a field of this request' : message,
    }));
    const [first] = own; // one sentence per field: the first rule it breaks
    return [...(first ? [first] : []), ...fieldErrors(error.children ?? [], field)];
  });
}

export function invalidFields(fields: readonly FieldError[]): Refused {
  const named = fields.map((f) => `${f.field} ${f.message}`).slice(0, 3);
  const more = fields.length > 3 ? ` And ${fields.length - 3} more.` : '';
  return refuse('invalid_request', `${named.join('; ')}.${more}`, fields);
}

export function createValidationPipe(): ValidationPipe {
  return new ValidationPipe({
    whitelist: true,
    forbidNonWhitelisted: true,
    forbidUnknownValues: true,
    transform: true,
    stopAtFirstError: true,
    exceptionFactory: (errors) => invalidFields(fieldErrors(errors)),
  });
}

/** A path parameter that must look like an id; one that names nothing is the use case's business. */
@Injectable()
export class IdPipe implements PipeTransform<unknown, string> {
  transform(value: unknown, metadata: ArgumentMetadata): string {
    const lower = typeof value === 'string' ? value.toLowerCase() : value;
    if (isId(lower)) return lower;
    const field = metadata.data ?? 'id';
    throw invalidFields([{ field, message: 'must be a UUID' }]);
  }
}

/**
 * The path of the first text in a body that PostgreSQL cannot store (a NUL character), or of the first
 * object that is nested deeper than any request of ours; undefined when there is none.
 */
export function unstorablePath(value: unknown, path = '', depth = 0): string | undefined {
  if (depth > 20) return path;
  if (typeof value === 'string') return value.includes('\0') ? path || 'body' : undefined;
  if (typeof value !== 'object' || value === null) return undefined;
  for (const [key, inner] of Object.entries(value)) {
    if (key.includes('\0')) return path || 'body';
    const found = unstorablePath(inner, joinPath(path, key), depth + 1);
    if (found !== undefined) return found;
  }
  return undefined;
}
