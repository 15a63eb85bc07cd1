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

export function saveSupplyTerms(tx: Tx, id: string, terms: SupplyTerms): Promise<void> {
  return saveManySupplyTerms(tx, [{ id, said: terms }]);
}

/** Replaces what was said of each supplier before, its closures included. */
export async function saveManySupplyTerms(
  tx: Tx,
  all: readonly { readonly id: string; readonly said: SupplyTerms }[],
): Promise<void> {
  if (all.length === 0) return;
  const rows = JSON.stringify(all.map(({ id, said }) => ({ id, ...said })));
  await tx.query(
    `INSERT INTO supplier_terms (practice_id, supplier_id, lead_days, order_cost, minimum_order,
       freight, free_freight_from, working_days)
     SELECT $1, r.id, r."leadDays", r."orderCost", r."minimumOrder", r.freight,
       r."freeFreightFrom", r."workingDays"
     FROM json_to_recordset($2::json) AS r(id uuid, "leadDays" smallint, "orderCost" numeric,
       "minimumOrder" numeric, freight numeric, "freeFreightFrom" numeric, "workingDays" text[])
     ON CONFLICT (practice_id, supplier_id) DO UPDATE SET lead_days = excluded.lead_days,
       order_cost = excluded.order_cost, minimum_order = excluded.minimum_order,
       freight = excluded.freight, free_freight_from = excluded.free_freight_from,
       working_days = excluded.working_days`,
    [tx.practiceId, rows],
  );
  const ids = all.map(({ id }) => id);
  await tx.query(
    'DELETE FROM supplier_closures WHERE practice_id = $1 AND supplier_id = ANY ($2::uuid[])',
    [tx.practiceId, ids],
  );
  await tx.query(
    `INSERT INTO supplier_closures (practice_id, supplier_id, first_day, last_day, note)
     SELECT $1, r.id, c."firstDay", c."lastDay", c.note
     FROM json_to_recordset($2::json) AS r(id uuid, closures json),
       json_to_recordset(r.closures) AS c("firstDay" date, "lastDay" date, note text)`,
    [tx.practiceId, rows],
  );
}
