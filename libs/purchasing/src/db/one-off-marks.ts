import type { IsoDate, Tx } from '#lib/platform';

export interface OneOffMark {
  readonly id: string;
  readonly consumableId: string;
  readonly firstDay: IsoDate;
  readonly lastDay: IsoDate;
  readonly note: string;
  readonly person: string;
  readonly madeAt: Date;
  readonly withdrawnAt: Date | null;
}

const MARKS = `
SELECT m.id, m.consumable_id AS "consumableId", m.first_day::text AS "firstDay",
       m.last_day::text AS "lastDay", m.note, p.display_name AS person, m.made_at AS "madeAt",
       m.withdrawn_at AS "withdrawnAt"
FROM one_off_marks m JOIN people p ON p.id = m.person_id
WHERE m.practice_id = $1 AND ($2::uuid IS NULL OR m.id = $2)
ORDER BY m.first_day DESC, m.id DESC`;

/** The marks of the practice, the latest days first, withdrawn ones too; or one of them. */
export function loadOneOffs(tx: Tx, id: string | null = null): Promise<OneOffMark[]> {
  return tx.query<OneOffMark>(MARKS, [tx.practiceId, id]);
}

export interface NewOneOff {
  readonly id: string;
  readonly consumableId: string;
  readonly firstDay: IsoDate;
  readonly lastDay: IsoDate;
  readonly note: string;
  readonly personId: string;
  readonly madeAt: Date;
}

export async function insertOneOff(tx: Tx, mark: NewOneOff): Promise<void> {
  await tx.query(
    `INSERT INTO one_off_marks (id, practice_id, consumable_id, first_day, last_day, note,
       person_id, made_at) VALUES ($1, $2, $3, $4, $5, $6, $7, $8)`,
    [
      ...[mark.id, tx.practiceId, mark.consumableId, mark.firstDay, mark.lastDay, mark.note],
      ...[mark.personId, mark.madeAt],
    ],
  );
}

/** Answers whether it was there and not withdrawn before. */
export async function withdrawOneOff(
  tx: Tx,
  id: string,
  by: { readonly personId: string; readonly at: Date },
): Promise<boolean> {
  const rows = await tx.query(
    `UPDATE one_off_marks SET withdrawn_at = $3, withdrawn_by = $4
     WHERE practice_id = $1 AND id = $2 AND withdrawn_at IS NULL RETURNING id`,
    [tx.practiceId, id, by.at, by.personId],
  );
  return rows.length === 1;
}
