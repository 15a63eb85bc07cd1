import type { Tx } from '#lib/platform';

/** Somebody's word that one consumable may stand in for another. */
export interface SubstitutePair {
  readonly id: string;
  readonly consumableId: string;
  readonly standInId: string;
  readonly note: string | null;
  readonly person: string;
  readonly madeAt: Date;
  readonly withdrawnAt: Date | null;
}

const PAIRS = `
SELECT s.id, s.consumable_id AS "consumableId", s.stand_in_id AS "standInId", s.note,
       p.display_name AS person, s.made_at AS "madeAt", s.withdrawn_at AS "withdrawnAt"
FROM substitutes s JOIN people p ON p.id = s.person_id
WHERE s.practice_id = $1 AND ($2::uuid IS NULL OR s.id = $2)
ORDER BY s.made_at DESC, s.id DESC`;

/** The pairs of the practice, the latest first, withdrawn ones too; or one of them. */
export function loadSubstitutes(tx: Tx, id: string | null = null): Promise<SubstitutePair[]> {
  return tx.query<SubstitutePair>(PAIRS, [tx.practiceId, id]);
}

export interface NewSubstitute {
  readonly id: string;
  readonly consumableId: string;
  readonly standInId: string;
  readonly note: string | null;
  readonly personId: string;
  readonly madeAt: Date;
}

/** Answers whether it was written; false when the pair stands already. */
export async function insertSubstitute(tx: Tx, pair: NewSubstitute): Promise<boolean> {
  const rows = await tx.query(
    `INSERT INTO substitutes (id, practice_id, consumable_id, stand_in_id, note, person_id, made_at)
     VALUES ($1, $2, $3, $4, $5, $6, $7)
     ON CONFLICT (practice_id, consumable_id, stand_in_id) WHERE withdrawn_at IS NULL
     DO NOTHING RETURNING id`,
    [
      ...[pair.id, tx.practiceId, pair.consumableId, pair.standInId, pair.note],
      ...[pair.personId, pair.madeAt],
    ],
  );
  return rows.length === 1;
}

/** Answers whether it was there and not withdrawn before. */
export async function withdrawSubstitute(
  tx: Tx,
  id: string,
  by: { readonly personId: string; readonly at: Date },
): Promise<boolean> {
  const rows = await tx.query(
    `UPDATE substitutes SET withdrawn_at = $3, withdrawn_by = $4
     WHERE practice_id = $1 AND id = $2 AND withdrawn_at IS NULL RETURNING id`,
    [tx.practiceId, id, by.at, by.personId],
  );
  return rows.length === 1;
}
