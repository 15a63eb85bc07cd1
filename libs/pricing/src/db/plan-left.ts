import { money } from '#lib/measure';
import type { IsoDate, Tx } from '#lib/platform';
import { usedUp } from '../domain/charge-shares.js';
import type { Balance } from '../domain/plan-share.js';
import { balanceOn } from './plan-balances.js';

export interface PlanLeft extends Balance {
  /** The day of the figure that somebody was told. */
  readonly asOf: IsoDate;
}

const USED = `
SELECT coalesce(sum(c.deductible_used), 0) AS deductible, coalesce(sum(c.plan_pays), 0) AS paid
FROM plan_balances b
JOIN visits v ON v.practice_id = b.practice_id AND lower(v.chart_reference) = lower($2)
JOIN restorations r ON r.visit_id = v.id
JOIN current_charges c ON c.restoration_id = r.id AND c.plan_id = b.plan_id
JOIN charges f ON f.restoration_id = c.restoration_id AND f.replaces_id IS NULL
LEFT JOIN LATERAL (
  SELECT later.as_of, later.recorded_at FROM plan_balances later
  WHERE later.practice_id = b.practice_id AND lower(later.chart_reference) = lower($2)
    AND later.plan_id = b.plan_id AND (later.as_of, later.id) > (b.as_of, b.id)
  ORDER BY later.as_of, later.id LIMIT 1
) next ON true
WHERE b.id = $1 AND v.reversed_at IS NULL AND r.id <> ALL($3::uuid[])
  AND (v.visited_on, f.recorded_at) > (b.as_of, b.recorded_at)
  AND (next.as_of IS NULL OR (v.visited_on, f.recorded_at) <= (next.as_of, next.recorded_at))`;

interface Asked {
  readonly planId: string;
  readonly chartReference: string;
  readonly day: IsoDate;
  /** Restorations whose charges are about to be replaced: they give back what they used. */
  readonly except: readonly string[];
}

/**
 * What is left of a plan on a day: the figure that somebody was last told, less what charges used
 * of it: those of visits since its day and before the day of the next figure, in whatever order
 * they were recorded, so that nothing is used twice. A charge of the very day of a figure counts
 * when it was first recorded after it. A corrected charge and a reversed visit give back what they
 * used. Undefined: nobody was ever told.
 */
export async function leftOn(tx: Tx, asked: Asked): Promise<PlanLeft | undefined> {
  const told = await balanceOn(tx, asked.planId, asked.chartReference, asked.day);
  if (!told) return undefined;
  const values = [told.id, asked.chartReference.trim(), asked.except];
  const [used] = await tx.named<{ deductible: string; paid: string }>('pricing.used', USED, values);
  const before = {
    deductibleLeft: money(told.deductible_left),
    maximumLeft: told.maximum_left === null ? null : money(told.maximum_left),
  };
  const share = {
    deductibleUsed: money(used?.deductible ?? '0'),
    planPays: money(used?.paid ?? '0'),
  };
  return { ...usedUp(before, share), asOf: told.as_of };
}

/** Nobody else charges this chart under a plan until the transaction ends. */
export async function lockChart(tx: Tx, chartReference: string): Promise<void> {
  const name = `charges of ${tx.practiceId} ${chartReference.trim().toLowerCase()}`;
  await tx.query('SELECT pg_advisory_xact_lock(hashtextextended($1, 0))', [name]);
}
