import { newId, type Tx } from '#lib/platform';
import type { Alert } from '../domain/alert.js';
import type { OpenEpisode } from '../domain/alert-changes.js';

export interface EpisodeRow extends OpenEpisode {
  readonly openedAt: Date;
}

/** What was open when somebody last looked. */
export function loadOpenEpisodes(tx: Tx): Promise<EpisodeRow[]> {
  return tx.query<EpisodeRow>(
    `SELECT id, alert_id AS "alertId", opened_at AS "openedAt" FROM alert_episodes
     WHERE practice_id = $1 AND closed_at IS NULL`,
    [tx.practiceId],
  );
}

export async function openEpisodes(
  tx: Tx,
  alerts: readonly Alert[],
  now: Date,
): Promise<OpenEpisode[]> {
  const rows = alerts.map((alert) => ({ id: newId(), alertId: alert.id, alert }));
  await tx.query(
    `INSERT INTO alert_episodes (id, practice_id, alert_id, kind, sentence, opened_at)
     SELECT id, $1, alert_id, kind, sentence, $2
     FROM unnest($3::uuid[], $4::text[], $5::text[], $6::text[])
       AS new (id, alert_id, kind, sentence)`,
    [
      ...[tx.practiceId, now, rows.map((row) => row.id), rows.map((row) => row.alertId)],
      ...[rows.map(({ alert }) => alert.kind), rows.map(({ alert }) => alert.sentence)],
    ],
  );
  return rows.map(({ id, alertId }) => ({ id, alertId }));
}

export async function closeEpisodes(
  tx: Tx,
  episodes: readonly OpenEpisode[],
  now: Date,
): Promise<void> {
  await tx.query('UPDATE alert_episodes SET closed_at = $2 WHERE id = ANY ($1)', [
    episodes.map((episode) => episode.id),
    now,
  ]);
}
