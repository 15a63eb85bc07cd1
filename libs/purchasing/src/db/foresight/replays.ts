import type { IsoDate, Tx } from '#lib/platform';

/** stopped: the service ended, or was killed, before the replay did. */
export type ReplayFailure = 'stopped' | 'error';

/** Whoever reckons writes a sign of life far more often than this. */
export const SILENT_SECONDS = 20;

export async function insertReplay(
  tx: Tx,
  replay: {
    readonly id: string;
    readonly firstDay: IsoDate;
    readonly lastDay: IsoDate;
    readonly personId: string;
    readonly startedAt: Date;
  },
): Promise<boolean> {
  const rows = await tx.query(
    `INSERT INTO replays (id, practice_id, first_day, last_day, state, steps_done, steps_total,
       seen_at, started_by, started_at)
     VALUES ($1, $2, $3, $4, 'running', 0, 0, clock_timestamp(), $5, $6)
     ON CONFLICT (practice_id) WHERE state = 'running' DO NOTHING RETURNING id`,
    [
      ...[replay.id, tx.practiceId, replay.firstDay, replay.lastDay],
      ...[replay.personId, replay.startedAt],
    ],
  );
  return rows.length === 1;
}

/** Says how far it is; false when it is not running any more. */
export async function noteProgress(
  tx: Tx,
  id: string,
  steps: { readonly done: number; readonly total: number },
): Promise<boolean> {
  const rows = await tx.query(
    `UPDATE replays SET steps_done = $3, steps_total = $4, seen_at = clock_timestamp()
     WHERE practice_id = $1 AND id = $2 AND state = 'running' RETURNING id`,
    [tx.practiceId, id, steps.done, steps.total],
  );
  return rows.length === 1;
}

/** The whole result at once; false when the replay was given up meanwhile. */
export async function finishReplay(
  tx: Tx,
  id: string,
  result: object,
  finishedAt: Date,
): Promise<boolean> {
  const rows = await tx.query(
    `UPDATE replays SET state = 'done', steps_done = steps_total, result = $3, finished_at = $4
     WHERE practice_id = $1 AND id = $2 AND state = 'running' RETURNING id`,
    [tx.practiceId, id, JSON.stringify(result), finishedAt],
  );
  return rows.length === 1;
}

export async function failReplay(
  tx: Tx,
  id: string,
  failure: ReplayFailure,
  finishedAt: Date,
): Promise<void> {
  await tx.query(
    `UPDATE replays SET state = 'failed', failure = $3, finished_at = $4
     WHERE practice_id = $1 AND id = $2 AND state = 'running'`,
    [tx.practiceId, id, failure, finishedAt],
  );
}

/** Gives up what nobody reckons any more: its process was killed. */
export async function failSilentReplays(tx: Tx, finishedAt: Date): Promise<void> {
  await tx.query(
    `UPDATE replays SET state = 'failed', failure = 'stopped', finished_at = $3
     WHERE practice_id = $1 AND state = 'running'
       AND seen_at < clock_timestamp() - make_interval(secs => $2)`,
    [tx.practiceId, SILENT_SECONDS, finishedAt],
  );
}
