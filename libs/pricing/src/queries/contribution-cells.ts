import type { IsoDate, Tx } from '#lib/platform';
import { liveDays } from '../domain/live-days.js';

/** How the fee of a restoration is known: recorded, from the fee list, or not at all. */
export type PriceSource = 'charged' | 'listed' | 'none';

export interface ChosenRestorations {
  readonly from?: string;
  readonly to?: string;
  readonly templateId?: string;
  readonly reason?: string;
  readonly dentistId?: string;
}

const CHANGED = 'SELECT DISTINCT month FROM contribution_changes WHERE practice_id = $1';

/** Months in which something changed that was not folded yet. */
async function changedMonths(tx: Tx): Promise<IsoDate[]> {
  const rows = await tx.named<{ month: IsoDate }>('pricing.changed', CHANGED, [tx.practiceId]);
  return rows.map((row) => row.month);
}

/** The parameters $1 to $9 of CELLS. */
export async function cellValues(tx: Tx, chosen: ChosenRestorations): Promise<unknown[]> {
  const { from = null, to = null, templateId = null, reason = null, dentistId = null } = chosen;
  const changed = await changedMonths(tx);
  const live = liveDays({ from, to }, changed);
  return [
    ...[tx.practiceId, from, to, templateId, reason, dentistId, changed],
    live.map(({ first }) => first),
    live.map(({ last }) => last),
  ];
}

const FILTER = `($4::uuid IS NULL OR template_id = $4) AND ($5::text IS NULL OR reason = $5)
    AND ($6::uuid IS NULL OR dentist_id = $6)`;

const COLUMNS = `month, template_id, reason, dentist_id, source, width, restorations, fee,
         plan_pays, write_off, material, minutes, contributions`;

/** Whole months as they were folded; other days from a function that has the same columns. */
export const CELLS = `
WITH cells AS (
  SELECT ${COLUMNS} FROM contribution_months
  WHERE practice_id = $1 AND ($2::date IS NULL OR month >= $2)
    AND ($3::date IS NULL OR month + interval '1 month - 1 day' <= $3)
    AND month <> ALL($7::date[]) AND ${FILTER}
  UNION ALL
  SELECT ${COLUMNS} FROM unnest($8::date[], $9::date[]) AS e(first, last)
    CROSS JOIN LATERAL contribution_cells(e.first, e.last) c WHERE ${FILTER}
)`;
