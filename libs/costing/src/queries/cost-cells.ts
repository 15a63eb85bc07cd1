import type { IsoDate, Tx } from '#lib/platform';
import { type Days, daysOf, splitPeriod } from '../domain/split-period.js';
import type { Choice } from './chosen.js';

/** Changes that were not folded into the monthly tables yet. */
const CHANGED = 'SELECT DISTINCT month FROM cost_changes WHERE practice_id = $1 ORDER BY month';

export async function changedMonths(tx: Tx): Promise<IsoDate[]> {
  const rows = await tx.named<{ month: IsoDate }>('costing.changed', CHANGED, [tx.practiceId]);
  return rows.map((row) => row.month);
}

/** The parameters $1 to $9 of the statements below. */
export function cellValues(
  practiceId: string,
  choice: Choice,
  changed: readonly IsoDate[],
): unknown[] {
  const { months, edges } = splitPeriod(choice.from ?? null, choice.to ?? null);
  const whole = changed.filter(
    (month) =>
      (months.first === null || month >= months.first) &&
      (months.last === null || month <= months.last),
  );
  const live: Days[] = [...edges, ...whole.map(daysOf)];
  return [
    practiceId,
    months.first,
    months.last,
    whole,
    live.map((days) => days.first),
    live.map((days) => days.last),
    choice.templateId ?? null,
    choice.reason ?? null,
    choice.dentistId ?? null,
  ];
}

/**
 * Whole months from a monthly table, and the other days, worked out by a function that has the same
 * columns. `month` comes as text.
 */
function cells(table: string, live: string, columns: string, filter: string): string {
  const from = (source: string) =>
    `SELECT to_char(c.month, 'YYYY-MM') AS month, template_id, reason, dentist_id, ${columns}
     FROM ${source} WHERE ${filter}`;
  return `
WITH cells AS (
  ${from(`${table} c`)} AND c.practice_id = $1 AND ($2::date IS NULL OR c.month >= $2)
    AND ($3::date IS NULL OR c.month <= $3) AND c.month <> ALL($4::date[])
  UNION ALL
  ${from(`unnest($5::date[], $6::date[]) AS e(first, last)
     CROSS JOIN LATERAL ${live}(e.first, e.last) c`)}
)`;
}

const FILTER = `($7::uuid IS NULL OR template_id = $7) AND ($8::text IS NULL OR reason = $8)
       AND ($9::uuid IS NULL OR dentist_id = $9)`;

export const CELLS = cells(
  'cost_months',
  'costed_cells',
  'restorations, own_cost, shared_cost, retake_cost, costs',
  FILTER,
);

export const CATEGORY_CELLS = cells(
  'cost_month_categories',
  'costed_categories',
  'category, cost',
  FILTER,
);

/** Visits are counted per template and reason, or over all of them: see the migration. */
export const VISIT_CELLS = cells(
  'cost_month_visits',
  'costed_visits',
  'visits, material_cost',
  FILTER,
);
