import type pg from 'pg';

interface Figures {
  readonly restorations: number;
  readonly visits: number;
  readonly total: string;
  readonly min: string;
  readonly p10: string;
  readonly p50: string;
  readonly p90: string;
  readonly max: string;
}

interface Row extends Figures {
  readonly templateId: string | null;
  readonly reason: string | null;
  readonly dentistId: string | null;
  readonly month: string | null;
}

export interface Report {
  readonly rows: readonly Row[];
  readonly totals: Figures;
  readonly visitsMaterialCost: string | null;
}

/** What every restoration cost, from nothing but the movements of the usage lines it bears. */
const FROM_MOVEMENTS = `
WITH lines AS (
  SELECT usage_line_id, sum(CASE to_account WHEN 'visit' THEN cost ELSE -cost END) AS cost
  FROM movements WHERE usage_line_id IS NOT NULL GROUP BY 1
), own AS (
  SELECT u.restoration_id, sum(m.cost) AS cost
  FROM lines m JOIN usage_lines u ON u.id = m.usage_line_id
  WHERE u.restoration_id IS NOT NULL GROUP BY 1
), shared AS (
  SELECT u.visit_id, sum(m.cost) AS cost
  FROM lines m JOIN usage_lines u ON u.id = m.usage_line_id
  WHERE u.restoration_id IS NULL GROUP BY 1
), bearing AS (SELECT visit_id, count(*) AS restorations FROM restorations GROUP BY 1)
SELECT v.id AS visit_id, r.template_id AS "templateId", r.reason, v.dentist_id AS "dentistId",
       to_char(v.visited_on, 'YYYY-MM') AS month,
       round(coalesce(own.cost, 0) + coalesce(shared.cost, 0) / b.restorations, 6) AS cost
FROM restorations r
JOIN visits v ON v.id = r.visit_id
JOIN bearing b ON b.visit_id = v.id
LEFT JOIN own ON own.restoration_id = r.id
LEFT JOIN shared ON shared.visit_id = v.id
WHERE v.reversed_at IS NULL`;

const shown = (sql: string, name: string) => `coalesce(${sql}, 0)::numeric(30,2)::text AS ${name}`;
const ranked = (share: number) => `percentile_disc(${share}) WITHIN GROUP (ORDER BY cost)`;

const FIGURES = `count(*)::int AS restorations, count(DISTINCT visit_id)::int AS visits,
  ${shown('sum(cost)', 'total')}, ${shown('min(cost)', 'min')}, ${shown(ranked(0.1), 'p10')},
  ${shown(ranked(0.5), 'p50')}, ${shown(ranked(0.9), 'p90')}, ${shown('max(cost)', 'max')}`;

const KEYS = ['templateId', 'reason', 'dentistId', 'month'] as const;

/** The costs that visits were given when they were posted, in whole cents. */
const FROM_RESTORATIONS = `
SELECT v.id AS visit_id, r.template_id AS "templateId", r.reason, v.dentist_id AS "dentistId",
       to_char(v.visited_on, 'YYYY-MM') AS month, r.own_cost + r.shared_cost AS cost
FROM restorations r JOIN visits v ON v.id = r.visit_id
WHERE v.reversed_at IS NULL`;

/** Costs every restoration anew; by movements, shares of visit lines must be whole cents. */
export async function recompute(
  client: pg.Client,
  from: 'movements' | 'restorations',
): Promise<void> {
  const select = from === 'movements' ? FROM_MOVEMENTS : FROM_RESTORATIONS;
  await client.query('DROP TABLE IF EXISTS recomputed');
  await client.query(`CREATE TEMP TABLE recomputed AS ${select}`);
}

/** Compares every row and the total of a report with the recomputation; throws if they differ. */
export async function compare(
  client: pg.Client,
  report: Report,
  keys: readonly (typeof KEYS)[number][],
): Promise<number> {
  const columns = keys.map((key) => `"${key}"`).join(', ');
  const { rows } = await client.query<Row>(
    `SELECT ${columns}, ${FIGURES} FROM recomputed GROUP BY ${columns}`,
  );
  const { rows: totals } = await client.query<Figures>(`SELECT ${FIGURES} FROM recomputed`);
  const wanted = new Map(rows.map((row) => [keyOf(row), figuresOf(row)]));
  if (wanted.size !== report.rows.length) {
    throw new Error(`${report.rows.length} rows instead of ${wanted.size}`);
  }
  for (const row of report.rows) {
    if (wanted.get(keyOf(row)) !== figuresOf(row)) {
      throw new Error(`${keyOf(row)}: ${figuresOf(row)} instead of ${wanted.get(keyOf(row))}`);
    }
  }
  const [total] = totals;
  if (!total || figuresOf(total) !== figuresOf(report.totals)) {
    throw new Error(`The total is ${figuresOf(report.totals)}`);
  }
  if (total.total !== report.visitsMaterialCost) throw new Error('The visits cost something else');
  return report.rows.length;
}

function keyOf(row: Row): string {
  return JSON.stringify(KEYS.map((key) => row[key] ?? null));
}

function figuresOf(f: Figures): string {
  const spread = [f.min, f.p10, f.p50, f.p90, f.max];
  return JSON.stringify([f.restorations, f.visits, f.total, ...spread]);
}
