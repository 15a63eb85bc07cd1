import { Injectable } from '@nestjs/common';
import { formatMoney } from '#lib/measure';
import { type Actor, currencyStep, invalidFields, type Tx, UnitOfWork } from '#lib/platform';
import { microOf, moneyText } from '#lib/stock';
import { GROUPS, type Group, parseGroupBy } from '../domain/group-by.js';
import { meanMoney } from '../domain/mean.js';
import type { CostFiguresDto, CostReportDto, CostReportRowDto } from '../http/cost-report.dto.js';
import type { CostReportQueryDto } from '../http/costing-queries.dto.js';
import { CHOSEN, chosenValues } from './chosen.js';

/** The columns of each grouping; the name follows from the id. */
const KEYS: Record<Group, readonly string[]> = {
  template: ['template_id', 'template_name'],
  reason: ['reason'],
  dentist: ['dentist_id', 'dentist_name'],
  month: ['month'],
};

const CHOSEN_ROWS = `
chosen AS (
  SELECT r.id, r.visit_id, r.own_cost, r.shared_cost, r.retake_cost,
         r.own_cost + r.shared_cost AS cost, r.template_id, t.name AS template_name, r.reason,
         v.dentist_id, p.display_name AS dentist_name, to_char(v.visited_on, 'YYYY-MM') AS month
  FROM restorations r
  JOIN visits v ON v.id = r.visit_id
  JOIN procedure_templates t ON t.id = r.template_id
  JOIN people p ON p.id = v.dentist_id
  WHERE ${CHOSEN} AND v.reversed_at IS NULL
)`;

function figuresSql(keys: string): string {
  return `
WITH ${CHOSEN_ROWS}
SELECT ${keys}, grouping(${keys}) <> 0 AS is_total, count(*)::int AS restorations,
       count(DISTINCT visit_id)::int AS visits, coalesce(sum(cost), 0) AS total,
       coalesce(min(cost), 0) AS min, coalesce(max(cost), 0) AS max,
       coalesce(percentile_disc(0.1) WITHIN GROUP (ORDER BY cost), 0) AS p10,
       coalesce(percentile_disc(0.5) WITHIN GROUP (ORDER BY cost), 0) AS p50,
       coalesce(percentile_disc(0.9) WITHIN GROUP (ORDER BY cost), 0) AS p90,
       coalesce(sum(own_cost), 0) AS own_cost, coalesce(sum(shared_cost), 0) AS shared_cost,
       coalesce(sum(retake_cost), 0) AS retake_cost
FROM chosen GROUP BY GROUPING SETS ((${keys}), ())
ORDER BY ${keys}`;
}

function categoriesSql(keys: string): string {
  return `
WITH ${CHOSEN_ROWS}
SELECT ${keys}, grouping(${keys}) <> 0 AS is_total, k.category, sum(k.cost) AS cost
FROM chosen JOIN restoration_costs k ON k.restoration_id = chosen.id
GROUP BY GROUPING SETS ((${keys}, k.category), (k.category))
ORDER BY k.category`;
}

// Reversed visits are left out on both sides of the comparison.
const VISITS = `
SELECT coalesce(sum(material_cost), 0) AS total FROM visits
WHERE practice_id = $1 AND reversed_at IS NULL
  AND ($2::date IS NULL OR visited_on >= $2) AND ($3::date IS NULL OR visited_on <= $3)
  AND ($4::uuid IS NULL OR dentist_id = $4)`;

interface KeyColumns {
  readonly template_id?: string | null;
  readonly template_name?: string | null;
  readonly reason?: string | null;
  readonly dentist_id?: string | null;
  readonly dentist_name?: string | null;
  readonly month?: string | null;
  readonly is_total: boolean;
}

interface FiguresRow extends KeyColumns {
  readonly restorations: number;
  readonly visits: number;
  readonly total: string;
  readonly min: string;
  readonly max: string;
  readonly p10: string;
  readonly p50: string;
  readonly p90: string;
  readonly own_cost: string;
  readonly shared_cost: string;
  readonly retake_cost: string;
}

interface CategoryRow extends KeyColumns {
  readonly category: string;
  readonly cost: string;
}

/** What restorations cost in materials, by template, reason, dentist or month. */
@Injectable()
export class ReportRestorationCosts {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, query: CostReportQueryDto): Promise<CostReportDto> {
    const groups = parseGroupBy(query.groupBy);
    if (!groups) {
      const message = `must be one or more of ${GROUPS.join(', ')}, each once, with commas`;
      throw invalidFields([{ field: 'groupBy', message }]);
    }
    const keys = groups.flatMap((group) => KEYS[group]).join(', ');
    const values = chosenValues(actor.practiceId, query);
    return this.uow.read(actor.practiceId, async (tx) => {
      const figures = await tx.query<FiguresRow>(figuresSql(keys), values);
      const categories = await tx.query<CategoryRow>(categoriesSql(keys), values);
      const visitsMaterialCost = await visitsCost(tx, actor, query);
      return toReport(actor, groups, figures, categories, visitsMaterialCost);
    });
  }
}

async function visitsCost(tx: Tx, actor: Actor, query: CostReportQueryDto): Promise<string | null> {
  if (query.templateId !== undefined || query.reason !== undefined) return null;
  const values = [actor.practiceId, query.from ?? null, query.to ?? null, query.dentistId ?? null];
  const [row] = await tx.query<{ total: string }>(VISITS, values);
  return moneyText(row?.total ?? '0');
}

function keyOf(row: KeyColumns): string {
  if (row.is_total) return 'total';
  const { template_id, reason, dentist_id, month } = row;
  return JSON.stringify([template_id, reason, dentist_id, month]);
}

function toReport(
  actor: Actor,
  groups: readonly Group[],
  figures: readonly FiguresRow[],
  categories: readonly CategoryRow[],
  visitsMaterialCost: string | null,
): CostReportDto {
  const byKey = new Map<string, CostFiguresDto['categories']>();
  for (const row of categories) {
    const list = byKey.get(keyOf(row)) ?? [];
    list.push({ category: row.category, cost: moneyText(row.cost) });
    byKey.set(keyOf(row), list);
  }
  const step = currencyStep(actor.currency);
  const shown = (row: FiguresRow) => toFigures(row, byKey.get(keyOf(row)) ?? [], step);
  const total = figures.find((row) => row.is_total);
  if (!total) throw new Error('A report has no total');
  return {
    currency: actor.currency,
    groupBy: [...groups],
    rows: figures.filter((row) => !row.is_total).map((row) => ({ ...toKeys(row), ...shown(row) })),
    totals: shown(total),
    visitsMaterialCost,
  };
}

function toKeys(row: KeyColumns): Omit<CostReportRowDto, keyof CostFiguresDto> {
  return {
    templateId: row.template_id ?? null,
    templateName: row.template_name ?? null,
    reason: row.reason ?? null,
    dentistId: row.dentist_id ?? null,
    dentistName: row.dentist_name ?? null,
    month: row.month ?? null,
  };
}

function toFigures(
  row: FiguresRow,
  categories: CostFiguresDto['categories'],
  step: bigint,
): CostFiguresDto {
  return {
    restorations: row.restorations,
    visits: row.visits,
    total: moneyText(row.total),
    mean: formatMoney(meanMoney(microOf(row.total), row.restorations, step)),
    min: moneyText(row.min),
    p10: moneyText(row.p10),
    p50: moneyText(row.p50),
    p90: moneyText(row.p90),
    max: moneyText(row.max),
    ownCost: moneyText(row.own_cost),
    sharedCost: moneyText(row.shared_cost),
    retakeCost: moneyText(row.retake_cost),
    categories,
  };
}
