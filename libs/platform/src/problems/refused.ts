/** One wrong field of a request: its path as the sender wrote it and a sentence about it. */
export interface FieldError {
  readonly field: string;
  readonly message: string;
}

export interface RefusalKind {
  readonly status: 400 | 401 | 403 | 404 | 409 | 413 | 415 | 422 | 429 | 503;
  readonly title: string;
}

/** A request the service declines. Thrown by a use case, so that its transaction rolls back. */
export class Refused extends Error {
  override readonly name = 'Refused';

  constructor(
    readonly code: string,
    readonly kind: RefusalKind,
    detail: string,
    readonly fields: readonly FieldError[] = [],
  ) {
    super(detail);
  }
}

/**
 * The closed table of what one context declines, and the maker of its refusals. A code that is not in
 * the table does not compile.
 */
export function defineRefusals<const T extends Record<string, RefusalKind>>(table: T) {
  return (code: keyof T & string, detail: string, fields: readonly FieldError[] = []): Refused => {
    const kind = table[code];
    if (!kind) throw new Error(`No refusal is called ${code}`);
    return new Refused(code, kind, detail, fields);
  };
}

/** What any context may decline: the request itself is not well formed, or names nothing we have. */
export const refuse = defineRefusals({
  invalid_request: { status: 400, title: 'The request is not valid' },
  not_found: { status: 404, title: 'Nothing here by that name' },
  unknown_reference: { status: 422, title: 'The request names something that does not exist' },
  already_exists: { status: 409, title: 'There is one already' },
  idempotency_key_missing: { status: 400, title: 'An Idempotency-Key header is needed' },
  idempotency_key_reused: { status: 409, title: 'This key was used for another request' },
  busy: { status: 503, title: 'The book is busy' },
});

/** An id in a request body that names nothing of this practice. */
export function unknownReference(field: string, what: string): Refused {
  return refuse('unknown_reference', `There is no ${what} with this id.`, [
    { field, message: `names no ${what} of this practice` },
  ]);
}
