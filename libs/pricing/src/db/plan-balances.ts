import type { IsoDate, Tx } from '#lib/platform';

export interface BalanceRow {
  readonly id: string;
  readonly plan_id: string;
  readonly plan_name: string;
  readonly chart_reference: string;
  readonly as_of: IsoDate;
  readonly deductible_left: string;
  readonly maximum_left: string | null;
  readonly recorded_by: string;
  readonly recorded_at: Date;
}

/** Columns and tables of a balance with the names that people read. */
export const BALANCES = `
SELECT b.id, b.plan_id, p.name AS plan_name, b.chart_reference, b.as_of, b.deductible_left,
       b.maximum_left, w.display_name AS recorded_by, b.recorded_at
FROM plan_balances b JOIN fee_plans p ON p.id = b.plan_id JOIN people w ON w.id = b.recorded_by`;

/** Finds what takes the place of balance b of the same chart and plan; $3 is the day, or null. */
export const LATER_BALANCE = `
SELECT FROM plan_balances later
WHERE later.practice_id = b.practice_id AND later.plan_id = b.plan_id
  AND lower(later.chart_reference) = lower(b.chart_reference)
  AND (later.as_of, later.id) > (b.as_of, b.id) AND ($3::date IS NULL OR later.as_of <= $3)`;

/** What was last known to be left on a day; undefined when nobody ever entered it. */
export async function balanceOn(
  tx: Tx,
  planId: string,
  chartReference: string,
  day: IsoDate,
): Promise<BalanceRow | undefined> {
  const [row] = await tx.query<BalanceRow>(
    `${BALANCES}
     WHERE b.practice_id = current_practice() AND lower(b.chart_reference) = lower($1)
       AND b.plan_id = $2 AND b.as_of <= $3
     ORDER BY b.as_of DESC, b.id DESC LIMIT 1`,
    [chartReference.trim(), planId, day],
  );
  return row;
}
