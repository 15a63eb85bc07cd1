import { newId, type Tx } from '#lib/platform';
import type { OpenEpisode } from '../domain/alert-changes.js';

export const CHANNELS = ['digest', 'webhook'] as const;
export type Channel = (typeof CHANNELS)[number];

export const NOTICE_STATES = ['waiting', 'sent', 'given up'] as const;

export interface NewNotice {
  readonly channel: Channel;
  readonly recipients: readonly string[];
  readonly content: object;
  readonly episodes: readonly OpenEpisode[];
}

/** Those of the episodes that nobody was told of on this way. */
export async function notToldYet(
  tx: Tx,
  channel: Channel,
  episodes: readonly OpenEpisode[],
): Promise<OpenEpisode[]> {
  const told = await tx.query<{ id: string }>(
    `SELECT episode_id AS id FROM noticed_episodes
     WHERE practice_id = $1 AND channel = $2 AND episode_id = ANY ($3)`,
    [tx.practiceId, channel, episodes.map((episode) => episode.id)],
  );
  const ids = new Set(told.map((row) => row.id));
  return episodes.filter((episode) => !ids.has(episode.id));
}

/** Writes a message to be sent, and that it tells of these openings; returns its id. */
export async function writeNotice(tx: Tx, notice: NewNotice, now: Date): Promise<string> {
  const id = newId();
  await tx.query(
    `INSERT INTO notices (id, practice_id, channel, made_at, recipients, content, next_try_at)
     VALUES ($1, $2, $3, $4, $5, $6, $4)`,
    [
      id,
      tx.practiceId,
      notice.channel,
      now,
      [...notice.recipients],
      JSON.stringify(notice.content),
    ],
  );
  await tx.query(
    `INSERT INTO noticed_episodes (practice_id, channel, episode_id, notice_id)
     SELECT $1, $2, unnest($3::uuid[]), $4`,
    [tx.practiceId, notice.channel, notice.episodes.map((episode) => episode.id), id],
  );
  return id;
}

export interface WaitingNotice {
  readonly id: string;
  readonly channel: Channel;
  readonly recipients: readonly string[];
  readonly content: unknown;
  readonly attempts: number;
}

const CLAIM = `
UPDATE notices SET attempts = attempts + 1, next_try_at = $3
WHERE id IN (
  SELECT id FROM notices WHERE practice_id = $1 AND state = 'waiting' AND next_try_at <= $2
  ORDER BY next_try_at, id LIMIT 20 FOR UPDATE SKIP LOCKED
) RETURNING id, channel, recipients, content, attempts`;

/**
 * Takes what is due to be sent. Should this process die before it says how it went, the message is due
 * again at `againAt`: a message may arrive twice, with the same id, but never not at all.
 */
export function claimNotices(tx: Tx, now: Date, againAt: Date): Promise<WaitingNotice[]> {
  return tx.query<WaitingNotice>(CLAIM, [tx.practiceId, now, againAt]);
}

export async function noteSent(tx: Tx, id: string, now: Date): Promise<void> {
  await tx.query(
    `UPDATE notices SET state = 'sent', sent_at = $2, last_error = NULL WHERE id = $1`,
    [id, now],
  );
}

/** Without a next try it is given up. */
export async function noteFailed(
  tx: Tx,
  id: string,
  failed: { readonly error: string; readonly next: Date | undefined },
): Promise<void> {
  await tx.query(
    `UPDATE notices SET last_error = $2, state = CASE WHEN $3::timestamptz IS NULL
       THEN 'given up' ELSE 'waiting' END, next_try_at = coalesce($3, next_try_at) WHERE id = $1`,
    [id, failed.error.slice(0, 500), failed.next ?? null],
  );
}
