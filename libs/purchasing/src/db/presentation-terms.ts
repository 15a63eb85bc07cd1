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

/** Replaces what was said before. */
export async function savePresentationTerms(
  tx: Tx,
  presentationId: string,
  { minimumPacks, discount, prices }: PresentationTerms,
): Promise<void> {
  await tx.query(
    `INSERT INTO presentation_terms (practice_id, presentation_id, minimum_packs, discount)
     VALUES ($1, $2, $3, $4)
     ON CONFLICT (practice_id, presentation_id) DO UPDATE SET minimum_packs = $3, discount = $4`,
    [tx.practiceId, presentationId, minimumPacks, discount],
  );
  await tx.query('DELETE FROM price_breaks WHERE practice_id = $1 AND presentation_id = $2', [
    ...[tx.practiceId, presentationId],
  ]);
  await tx.query(
    `INSERT INTO price_breaks (practice_id, presentation_id, from_packs, pack_price)
     SELECT $1, $2, * FROM unnest($3::integer[], $4::numeric[])`,
    [
      ...[tx.practiceId, presentationId, prices.map((price) => price.fromPacks)],
      prices.map((price) => price.packPrice),
    ],
  );
}
