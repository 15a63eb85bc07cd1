import type { IsoDate, Tx } from '#lib/platform';
import { chooseSpans, type KnownMonths } from '../domain/choose-spans.js';
import type { Choice } from './chosen.js';

const CHANGED = 'SELECT DISTINCT month FROM cost_changes WHERE practice_id = $1 ORDER BY month';

/** Months in which something changed that was not folded yet. */
export async function changedMonths(tx: Tx): Promise<IsoDate[]> {
  const rows = await tx.named<{ month: IsoDate }>('costing.changed', CHANGED, [tx.practiceId]);
  return rows.map((row) => row.month);
}

const KNOWN = `
SELECT ARRAY(SELECT DISTINCT month::text FROM cost_span_visits
             WHERE practice_id = $1 AND span = 1 AND template_id IS NULL AND reason IS NULL
             ORDER BY 1) AS folded,
       ARRAY(SELECT DISTINCT month::text FROM cost_changes WHERE practice_id = $1) AS changed`;

export async function knownMonths(tx: Tx): Promise<KnownMonths> {
  const [row] = await tx.named<KnownMonths>('costing.known', KNOWN, [tx.practiceId]);
  return row ?? { folded: [], changed: [] };
}

/** The parameters $1 to $8 of the statements below. */
export function cellValues(
  practiceId: string,
  choice: Choice,
  known: KnownMonths,
  byMonth: boolean,
): unknown[] {
  const period = { from: choice.from ?? null, to: choice.to ?? null };
  const { years, months, live } = chooseSpans(known, { ...period, byMonth });
  return [
    practiceId,
    years,
    months,
    live.map((days) => days.first),
    live.map((days) => days.last),
    choice.templateId ?? null,
    choice.reason ?? null,
    choice.dentistId ?? null,
  ];
}

const FILTER = `($6::uuid IS NULL OR template_id = $6) AND ($7::text IS NULL OR reason = $7)
    AND ($8::uuid IS NULL OR dentist_id = $8)`;

/** Whole years and months from a table; other days from a function that has the same columns. */
function cells(table: string, live: string, columns: string): string {
  const select = `SELECT to_char(c.month, 'YYYY-MM') AS month, template_id, reason, dentist_id,
         ${columns} FROM`;
  return `
WITH cells AS (
  ${select} ${table} c WHERE c.practice_id = $1 AND c.span = 12 AND c.month = ANY($2::date[])
    AND ${FILTER}
  UNION ALL
  ${select} ${table} c WHERE c.practice_id = $1 AND c.span = 1 AND c.month = ANY($3::date[])
    AND ${FILTER}
  UNION ALL
  ${select} unnest($4::date[], $5::date[]) AS e(first, last)
    CROSS JOIN LATERAL ${live}(e.first, e.last) c WHERE ${FILTER}
)`;
}

const FIGURES = 'restorations, own_cost, shared_cost, retake_cost, width, costs';

export const CELLS = cells('cost_spans', 'costed_cells', FIGURES);

export const CATEGORY_CELLS = cells('cost_span_categories', 'costed_categories', 'category, cost');

/** Visits are counted per template and reason, or over all of them: see the migration. */
export const VISIT_CELLS = cells('cost_span_visits', 'costed_visits', 'visits, material_cost');
