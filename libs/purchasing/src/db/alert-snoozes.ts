import type { IsoDate, Tx } from '#lib/platform';

export interface SnoozeRow {
  readonly id: string;
  readonly alertId: string;
  /** It is quiet before this day. */
  readonly until: IsoDate;
  readonly reason: string;
  readonly personId: string;
  readonly person: string;
  readonly madeAt: Date;
}

const COLUMNS = `s.id, s.alert_id AS "alertId", s.until::text AS until, s.reason,
  s.person_id AS "personId", p.display_name AS person, s.made_at AS "madeAt"`;

const CURRENT = `
SELECT * FROM (
  SELECT DISTINCT ON (s.alert_id) ${COLUMNS}
  FROM alert_snoozes s JOIN people p ON p.id = s.person_id
  WHERE s.practice_id = $1 ORDER BY s.alert_id, s.place DESC
) last WHERE until > $2`;

/** Which alerts are put off on a day: of several words about one, the last counts. */
export async function loadSnoozes(
  tx: Tx,
  practiceId: string,
  today: IsoDate,
): Promise<Map<string, SnoozeRow>> {
  const rows = await tx.query<SnoozeRow>(CURRENT, [practiceId, today]);
  return new Map(rows.map((row) => [row.alertId, row]));
}

export async function insertSnooze(tx: Tx, row: Omit<SnoozeRow, 'person'>): Promise<void> {
  await tx.query(
    `INSERT INTO alert_snoozes (id, practice_id, alert_id, until, reason, person_id, made_at)
     VALUES ($1, $2, $3, $4, $5, $6, $7)`,
    [row.id, tx.practiceId, row.alertId, row.until, row.reason, row.personId, row.madeAt],
  );
}
