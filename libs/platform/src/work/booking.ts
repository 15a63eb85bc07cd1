import { createHash } from 'node:crypto';
import { escapeLiteral } from 'pg';
import { refuse } from '../problems/refused.js';
import type { Actor } from './actor.js';
import type { Tx } from './tx.js';

/** A request that books something, with the key its sender gave it. */
export interface Booking {
  readonly actor: Actor;
  readonly key: string;
  /** What is booked, e.g. 'POST /api/visits': the same key for another thing is another request. */
  readonly operation: string;
  readonly body: unknown;
}

export interface Claimed<T> {
  readonly body: T;
  /** True when this key had been used before and the first answer is given again. */
  readonly repeated: boolean;
}

/** JSON with sorted keys, so that the order in which a client writes fields does not matter. */
export function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null';
  const entries = Object.entries(value).filter(([, v]) => v !== undefined);
  entries.sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${entries.map(([k, v]) => `${JSON.stringify(k)}:${canonicalJson(v)}`).join(',')}}`;
}

function requestHash(booking: Booking): string {
  const text = `${booking.operation}\n${canonicalJson(booking.body)}`;
  return createHash('sha256').update(text).digest('hex');
}

/** Claims the key; answers one row when it was free. Waits for a twin that is still running. */
export function claimSql(booking: Booking): string {
  const { actor, key } = booking;
  const values = [actor.practiceId, key, actor.personId, requestHash(booking)].map(escapeLiteral);
  return `INSERT INTO idempotency_keys (practice_id, key, person_id, request_hash)
    VALUES (${values.join(', ')}) ON CONFLICT DO NOTHING RETURNING 1`;
}

export function storeSql(booking: Booking, body: object): string {
  const { actor, key } = booking;
  return `UPDATE idempotency_keys SET response = ${escapeLiteral(JSON.stringify(body))}::json
    WHERE practice_id = ${escapeLiteral(actor.practiceId)} AND key = ${escapeLiteral(key)}`;
}

export async function readClaim<T extends object>(tx: Tx, booking: Booking): Promise<Claimed<T>> {
  const [row] = await tx.query<{ request_hash: string; response: T | null }>(
    'SELECT request_hash, response FROM idempotency_keys WHERE practice_id = $1 AND key = $2',
    [booking.actor.practiceId, booking.key],
  );
  if (!row || row.request_hash !== requestHash(booking)) {
    throw refuse(
      'idempotency_key_reused',
      'This Idempotency-Key was already used for a request with other content.',
      [{ field: 'Idempotency-Key', message: 'was used for another request' }],
    );
  }
  // A claim and its answer commit together, so a visible claim without an answer is a bug.
  if (!row.response) throw new Error(`The claim ${booking.key} has no answer`);
  return { body: row.response, repeated: true };
}
