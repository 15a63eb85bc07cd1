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
  return (await insertManySubstitutes(tx, [pair])).has(pair.id);
}

/** Answers the ids of those that were written: pairs that stand already are not. */
export async function insertManySubstitutes(
  tx: Tx,
  pairs: readonly NewSubstitute[],
): Promise<ReadonlySet<string>> {
  const rows = await tx.query<{ id: string }>(
    `INSERT INTO substitutes (id, practice_id, consumable_id, stand_in_id, note, person_id, made_at)
     SELECT r.id, $1, r."consumableId", r."standInId", r.note, r."personId", r."madeAt"
     FROM json_to_recordset($2::json) AS r(id uuid, "consumableId" uuid, "standInId" uuid,
       note text, "personId" uuid, "madeAt" timestamptz)
     ON CONFLICT (practice_id, consumable_id, stand_in_id) WHERE withdrawn_at IS NULL
     DO NOTHING RETURNING id`,
    [tx.practiceId, JSON.stringify(pairs)],
  );
  return new Set(rows.map((row) => row.id));
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
