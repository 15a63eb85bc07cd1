import { refuse } from '../problems/refused.js';

/** One page of a long list and the cursor that asks for the next; null on the last page. */
export interface Page<T> {
  readonly items: readonly T[];
  readonly nextCursor: string | null;
}

/** A cursor is the sort key of the last row shown, so that rows added meanwhile shift nothing. */
export function encodeCursor(parts: readonly (string | number | null)[]): string {
  return Buffer.from(JSON.stringify(parts)).toString('base64url');
}

/** The parts of a cursor made by encodeCursor; refuses anything else. */
export function decodeCursor(cursor: string, length: number): (string | number | null)[] {
  const refusal = refuse('invalid_request', 'The cursor is not one that this service gave out.', [
    { field: 'cursor', message: 'is not a cursor of this list' },
  ]);
  let parts: unknown;
  try {
    parts = JSON.parse(Buffer.from(cursor, 'base64url').toString('utf8'));
  } catch (error) {
    if (error instanceof SyntaxError) throw refusal;
    throw error;
  }
  const wellFormed =
    Array.isArray(parts) &&
    parts.length === length &&
    parts.every(
      (p) => p === null || typeof p === 'number' || (typeof p === 'string' && !p.includes('\0')),
    );
  if (!wellFormed) throw refusal;
  return parts as (string | number | null)[];
}

/** Cuts a list that was asked for one row more than wanted into a page. */
export function toPage<Row, T>(
  rows: readonly Row[],
  limit: number,
  toItem: (row: Row) => T,
  cursorOf: (row: Row) => readonly (string | number | null)[],
): Page<T> {
  const shown = rows.slice(0, limit);
  const last = shown[shown.length - 1];
  const more = rows.length > limit && last !== undefined;
  return { items: shown.map(toItem), nextCursor: more ? encodeCursor(cursorOf(last)) : null };
}
