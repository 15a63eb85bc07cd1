import type { Reason } from '#lib/dentition';
import { type Money, money } from '#lib/measure';
import type { Tx } from '#lib/platform';

export interface RecordedKind {
  readonly templateId: string;
  readonly reason: Reason;
}

const MOST_RECORDED = 500;

const keyOf = ({ templateId, reason }: RecordedKind) => `${templateId} ${reason}`;

/**
 * What restorations of the same template and reason used themselves when they were last made, at
 * most the 500 recorded last. Reversed visits do not count.
 */
export async function recordedOwnCosts(
  tx: Tx,
  kinds: readonly RecordedKind[],
): Promise<(kind: RecordedKind) => readonly Money[]> {
  const distinct = [...new Map(kinds.map((kind) => [keyOf(kind), kind])).values()];
  const rows = await tx.query<{ template_id: string; reason: Reason; costs: string[] }>(
    `SELECT k.template_id, k.reason, array_agg(r.own_cost::text ORDER BY r.id) AS costs
     FROM unnest($1::uuid[], $2::text[]) AS k (template_id, reason)
     CROSS JOIN LATERAL (
       SELECT r.id, r.own_cost FROM restorations r JOIN visits v ON v.id = r.visit_id
       WHERE r.practice_id = current_practice() AND r.template_id = k.template_id
         AND r.reason = k.reason AND v.reversed_at IS NULL
       ORDER BY r.id DESC LIMIT ${MOST_RECORDED}) r
     GROUP BY k.template_id, k.reason`,
    [distinct.map((kind) => kind.templateId), distinct.map((kind) => kind.reason)],
  );
  const found = new Map(
    rows.map((row) => [
      keyOf({ templateId: row.template_id, reason: row.reason }),
      row.costs.map((cost) => money(cost)),
    ]),
  );
  return (kind) => found.get(keyOf(kind)) ?? [];
}
