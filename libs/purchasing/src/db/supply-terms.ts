import type { Tx } from '#lib/platform';
import { PLAIN_TERMS, type SupplyTerms } from '../domain/planning/planning-settings.js';
import { amountOrNull } from './planning-decimals.js';

const TERMS = `SELECT supplier_id AS "supplierId", lead_days AS "leadDays",
  order_cost AS "orderCost", minimum_order AS "minimumOrder", freight,
  free_freight_from AS "freeFreightFrom", working_days AS "workingDays",
  (SELECT coalesce(json_agg(json_build_object('firstDay', c.first_day::text,
            'lastDay', c.last_day::text, 'note', c.note) ORDER BY c.first_day), '[]')
   FROM supplier_closures c
   WHERE c.practice_id = t.practice_id AND c.supplier_id = t.supplier_id) AS closures
  FROM supplier_terms t WHERE practice_id = $1 AND ($2::uuid IS NULL OR supplier_id = $2)`;

type TermsRow = SupplyTerms & { readonly supplierId: string };

/** What suppliers ask for, by id; all of them, or one. */
export async function loadSupplyTerms(
  tx: Tx,
  supplierId: string | null = null,
): Promise<ReadonlyMap<string, SupplyTerms>> {
  const rows = await tx.query<TermsRow>(TERMS, [tx.practiceId, supplierId]);
  return new Map(
    rows.map(({ supplierId: id, ...row }) => [
      id,
      {
        ...row,
        orderCost: amountOrNull(row.orderCost),
        minimumOrder: amountOrNull(row.minimumOrder),
        freight: amountOrNull(row.freight) ?? PLAIN_TERMS.freight,
        freeFreightFrom: amountOrNull(row.freeFreightFrom),
      },
    ]),
  );
}

export async function saveSupplyTerms(
  tx: Tx,
  supplierId: string,
  terms: SupplyTerms,
): Promise<void> {
  await tx.query(
    `INSERT INTO supplier_terms (practice_id, supplier_id, lead_days, order_cost, minimum_order,
       freight, free_freight_from, working_days)
     VALUES ($1, $2, $3, $4, $5, $6, $7, $8)
     ON CONFLICT (practice_id, supplier_id) DO UPDATE SET lead_days = $3, order_cost = $4,
       minimum_order = $5, freight = $6, free_freight_from = $7, working_days = $8`,
    [
      ...[tx.practiceId, supplierId, terms.leadDays, terms.orderCost, terms.minimumOrder],
      ...[terms.freight, terms.freeFreightFrom, [...terms.workingDays]],
    ],
  );
  await tx.query('DELETE FROM supplier_closures WHERE practice_id = $1 AND supplier_id = $2', [
    ...[tx.practiceId, supplierId],
  ]);
  const { closures } = terms;
  await tx.query(
    `INSERT INTO supplier_closures (practice_id, supplier_id, first_day, last_day, note)
     SELECT $1, $2, * FROM unnest($3::date[], $4::date[], $5::text[])`,
    [
      ...[tx.practiceId, supplierId, closures.map((closure) => closure.firstDay)],
      ...[closures.map((closure) => closure.lastDay), closures.map((closure) => closure.note)],
    ],
  );
}
