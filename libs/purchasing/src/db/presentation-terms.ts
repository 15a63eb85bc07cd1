import type { Tx } from '#lib/platform';
import { moneyText } from '#lib/stock';
import type { PresentationTerms } from '../domain/planning/planning-settings.js';

const TERMS = `
SELECT t.presentation_id AS "presentationId", t.minimum_packs AS "minimumPacks", t.discount,
       (SELECT coalesce(json_agg(json_build_object('fromPacks', b.from_packs,
                 'packPrice', b.pack_price::text) ORDER BY b.from_packs), '[]')
        FROM price_breaks b
        WHERE b.practice_id = t.practice_id AND b.presentation_id = t.presentation_id) AS prices
FROM presentation_terms t
WHERE t.practice_id = $1 AND ($2::uuid IS NULL OR t.presentation_id = $2)`;

type TermsRow = PresentationTerms & { readonly presentationId: string };

/** How presentations are sold, by id; all that have terms, or one. */
export async function loadPresentationTerms(
  tx: Tx,
  presentationId: string | null = null,
): Promise<ReadonlyMap<string, PresentationTerms>> {
  const rows = await tx.query<TermsRow>(TERMS, [tx.practiceId, presentationId]);
  return new Map(
    rows.map(({ presentationId: id, minimumPacks, discount, prices }) => [
      id,
      {
        ...{ minimumPacks, discount },
        prices: prices.map(({ fromPacks, packPrice }) => ({
          ...{ fromPacks, packPrice: moneyText(packPrice) },
        })),
      },
    ]),
  );
}

export function savePresentationTerms(tx: Tx, id: string, terms: PresentationTerms): Promise<void> {
  return saveManyPresentationTerms(tx, [{ id, said: terms }]);
}

/** Replaces what was said of each presentation before. */
export async function saveManyPresentationTerms(
  tx: Tx,
  all: readonly { readonly id: string; readonly said: PresentationTerms }[],
): Promise<void> {
  if (all.length === 0) return;
  const rows = JSON.stringify(all.map(({ id, said }) => ({ id, ...said })));
  await tx.query(
    `INSERT INTO presentation_terms (practice_id, presentation_id, minimum_packs, discount)
     SELECT $1, r.id, r."minimumPacks", r.discount
     FROM json_to_recordset($2::json) AS r(id uuid, "minimumPacks" integer, discount text)
     ON CONFLICT (practice_id, presentation_id)
     DO UPDATE SET minimum_packs = excluded.minimum_packs, discount = excluded.discount`,
    [tx.practiceId, rows],
  );
  const ids = all.map(({ id }) => id);
  await tx.query(
    'DELETE FROM price_breaks WHERE practice_id = $1 AND presentation_id = ANY ($2::uuid[])',
    [tx.practiceId, ids],
  );
  await tx.query(
    `INSERT INTO price_breaks (practice_id, presentation_id, from_packs, pack_price)
     SELECT $1, r.id, b."fromPacks", b."packPrice"
     FROM json_to_recordset($2::json) AS r(id uuid, prices json),
       json_to_recordset(r.prices) AS b("fromPacks" integer, "packPrice" numeric)`,
    [tx.practiceId, rows],
  );
}
