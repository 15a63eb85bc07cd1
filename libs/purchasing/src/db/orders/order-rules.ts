import type { Tx } from '#lib/platform';
import { amountOrNull } from '../planning-decimals.js';

/** What a practice decided about its orders; decimals as texts. */
export interface OrderRules {
  readonly monthlyBudget: string | null;
  readonly approveUpTo: string | null;
  readonly lateAfterDays: number;
  readonly deliverTo: string | null;
}

/** Until somebody decides otherwise; common practice, no source. */
export const PLAIN_RULES: OrderRules = {
  monthlyBudget: null,
  approveUpTo: null,
  lateAfterDays: 2,
  deliverTo: null,
};

export async function loadOrderRules(tx: Tx): Promise<OrderRules> {
  const [row] = await tx.query<OrderRules>(
    `SELECT monthly_budget AS "monthlyBudget", approve_up_to AS "approveUpTo",
       late_after_days AS "lateAfterDays", deliver_to AS "deliverTo"
     FROM order_rules WHERE practice_id = $1`,
    [tx.practiceId],
  );
  if (!row) return PLAIN_RULES;
  return {
    ...row,
    monthlyBudget: amountOrNull(row.monthlyBudget),
    approveUpTo: amountOrNull(row.approveUpTo),
  };
}

export async function saveOrderRules(tx: Tx, rules: OrderRules): Promise<void> {
  await tx.query(
    `INSERT INTO order_rules (practice_id, monthly_budget, approve_up_to, late_after_days, deliver_to)
     VALUES ($1, $2, $3, $4, $5)
     ON CONFLICT (practice_id) DO UPDATE SET monthly_budget = $2, approve_up_to = $3,
       late_after_days = $4, deliver_to = $5`,
    [
      ...[tx.practiceId, rules.monthlyBudget, rules.approveUpTo, rules.lateAfterDays],
      rules.deliverTo,
    ],
  );
}
