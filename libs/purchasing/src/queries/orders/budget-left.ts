import { type Money, moneyFromMicro } from '#lib/measure';
import type { IsoDate, Tx } from '#lib/platform';
import { microOf } from '#lib/stock';

const LEFT = `
SELECT r.monthly_budget AS budget, coalesce((
  SELECT sum(o.approved_total) FROM orders o
  WHERE o.practice_id = $1 AND o.state IN ('approved', 'sent', 'closed')
    AND date_trunc('month', o.approved_at AT TIME ZONE p.time_zone)
      = date_trunc('month', $2::date::timestamp)
), 0) AS taken
FROM order_rules r JOIN practices p ON p.id = r.practice_id WHERE r.practice_id = $1`;

/**
 * What is left of the budget of the month of a day, never below zero: the budget less the totals of
 * the orders that were approved in that month and not cancelled. Null: there is no budget.
 */
export async function budgetLeft(tx: Tx, today: IsoDate): Promise<Money | null> {
  const [row] = await tx.query<{ budget: string | null; taken: string }>(LEFT, [
    tx.practiceId,
    today,
  ]);
  if (!row || row.budget === null) return null;
  const left = microOf(row.budget) - microOf(row.taken);
  return moneyFromMicro(left < 0n ? 0n : left);
}
