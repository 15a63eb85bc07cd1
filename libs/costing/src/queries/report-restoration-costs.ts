import { Injectable } from '@nestjs/common';
import { formatMoney, moneyFromMicro } from '#lib/measure';
import { type Actor, currencyStep, invalidFields, UnitOfWork } from '#lib/platform';
import { microOf, moneyText } from '#lib/stock';
import { FoldCosts } from '../app/fold-costs.js';
import { GROUPS, type Group, parseGroupBy } from '../domain/group-by.js';
import { listsBy } from '../domain/lists-by.js';
import { meanMoney } from '../domain/mean.js';
import { type Costs, readCosts, spreadOf, type Width } from '../domain/spread.js';
import type { CostFiguresDto, CostReportDto, CostReportRowDto } from '../http/cost-report.dto.js';
import type { CostReportQueryDto } from '../http/costing-queries.dto.js';
import { CATEGORY_CELLS, CELLS, cellValues, knownMonths, VISIT_CELLS } from './cost-cells.js';

/** The columns of each grouping; names are looked up afterwards. */
const KEYS: Record<Group, string> = {
  template: 'template_id',
  reason: 'reason',
  dentist: 'dentist_id',
  month: 'month',
};

const NAMES: Partial<Record<Group, readonly [column: string, join: string]>> = {
  template: ['t.name AS template_name', 'JOIN procedure_templates t ON t.id = f.template_id'],
  dentist: ['p.display_name AS dentist_name', 'JOIN people p ON p.id = f.dentist_id'],
};

function figuresSql(groups: readonly Group[]): string {
  const keys = keysOf(groups);
  const names = groups.flatMap((group) => (NAMES[group] ? [NAMES[group]] : []));
  return `${CELLS}, figures AS (
  SELECT ${keys}, width, sum(restorations)::int AS restorations, sum(own_cost) AS own_cost,
         sum(shared_cost) AS shared_cost, sum(retake_cost) AS retake_cost,
         string_agg(costs, ''::bytea) AS costs
  FROM cells GROUP BY ${keys}, width
)
SELECT ${['f.*', ...names.map(([column]) => column)].join(', ')}
FROM figures f ${names.map(([, join]) => join).join(' ')}
ORDER BY ${keys}, width`;
}

function categoriesSql(groups: readonly Group[]): string {
  const keys = keysOf(groups);
  return `${CATEGORY_CELLS}
SELECT ${keys}, category, sum(cost) AS cost FROM cells
GROUP BY ${keys}, category ORDER BY category`;
}

/**
 * Visits by group, and of all groups together: the row that is_total. A visit with restorations of
 * two templates is one visit, so that the rows are counted over templates, the total over all.
 */
function visitsSql(groups: readonly Group[]): string {
  const keys = keysOf(groups);
  const only = (column: string, one: boolean, filter: string) =>
    one ? `${column} IS NOT NULL` : `(${column} IS NULL) = (${filter} IS NULL)`;
  const level = (template: boolean, reason: boolean) =>
    `${only('template_id', template, '$6::uuid')} AND ${only('reason', reason, '$7::text')}`;
  return `${VISIT_CELLS}
SELECT ${keys}, false AS is_total, sum(visits)::int AS visits, NULL::numeric AS material_cost
FROM cells WHERE ${level(groups.includes('template'), groups.includes('reason'))}
GROUP BY ${keys}
UNION ALL
SELECT ${groups.map(() => 'NULL').join(', ')}, true, coalesce(sum(visits), 0)::int,
       coalesce(sum(material_cost), 0)
FROM cells WHERE ${level(false, false)}`;
}

function keysOf(groups: readonly Group[]): string {
  return groups.map((group) => KEYS[group]).join(', ');
}

interface KeyColumns {
  readonly template_id?: string;
  readonly reason?: string;
  readonly dentist_id?: string;
  readonly month?: string;
}

interface FiguresRow extends KeyColumns {
  readonly template_name?: string;
  readonly dentist_name?: string;
  readonly restorations: number;
  readonly own_cost: string;
  readonly shared_cost: string;
  readonly retake_cost: string;
  readonly width: Width;
  readonly costs: Buffer;
}

interface FiguresFound extends Omit<FiguresRow, 'width' | 'costs'> {
  readonly costs: Costs;
}

interface CategoryRow extends KeyColumns {
  readonly category: string;
  readonly cost: string;
}

interface VisitsRow extends KeyColumns {
  readonly is_total: boolean;
  readonly visits: number;
  readonly material_cost: string | null;
}

interface Found {
  readonly figures: readonly FiguresFound[];
  readonly categories: readonly CategoryRow[];
  readonly visits: readonly VisitsRow[];
}

/** What restorations cost in materials, by template, reason, dentist or month. */
@Injectable()
export class ReportRestorationCosts {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly foldCosts: FoldCosts,
  ) {}

  async run(actor: Actor, query: CostReportQueryDto): Promise<CostReportDto> {
    const groups = parseGroupBy(query.groupBy);
    if (!groups) {
      const message = `must be one or more of ${GROUPS.join(', ')}, each once, with commas`;
      throw invalidFields([{ field: 'groupBy', message }]);
    }
    await this.foldCosts.run(actor);
    const found = await this.uow.read(actor.practiceId, async (tx): Promise<Found> => {
      // Somebody may have posted since: those months are worked out from the restorations.
      const known = await knownMonths(tx);
      const values = cellValues(actor.practiceId, query, known, groups.includes('month'));
      const packed = await tx.query<FiguresRow>(figuresSql(groups), values);
      const figures = packed.map((row) => ({ ...row, costs: readCosts(row.costs, row.width) }));
      const categories = await tx.query<CategoryRow>(categoriesSql(groups), values);
      const visits = await tx.query<VisitsRow>(visitsSql(groups), values);
      return { figures, categories, visits };
    });
    const partly = query.templateId !== undefined || query.reason !== undefined;
    return toReport(actor, groups, found, partly);
  }
}

function keyOf({ template_id, reason, dentist_id, month }: KeyColumns): string {
  return JSON.stringify([template_id, reason, dentist_id, month]);
}

function toReport(
  actor: Actor,
  groups: readonly Group[],
  found: Found,
  partly: boolean,
): CostReportDto {
  const categories = listsBy(found.categories, keyOf);
  const visits = new Map(found.visits.map((row) => [row.is_total ? 'total' : keyOf(row), row]));
  const step = currencyStep(actor.currency);
  const rows = [...listsBy(found.figures, keyOf)].flatMap(([key, list]) =>
    list.slice(0, 1).map((first) => ({
      ...toKeys(first),
      ...toFigures(list, categories.get(key) ?? [], visits.get(key), step),
    })),
  );
  const total = visits.get('total');
  return {
    currency: actor.currency,
    groupBy: [...groups],
    rows,
    totals: toFigures(found.figures, found.categories, total, step),
    visitsMaterialCost: partly ? null : moneyText(total?.material_cost ?? '0'),
  };
}

function toKeys(row: FiguresFound): Omit<CostReportRowDto, keyof CostFiguresDto> {
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
  rows: readonly FiguresFound[],
  categories: readonly CategoryRow[],
  visits: VisitsRow | undefined,
  step: bigint,
): CostFiguresDto {
  const added = (of: (row: FiguresFound) => string) =>
    rows.reduce((sum, row) => sum + microOf(of(row)), 0n);
  const [own, shared] = [added((row) => row.own_cost), added((row) => row.shared_cost)];
  const restorations = rows.reduce((sum, row) => sum + row.restorations, 0);
  const spread = spreadOf(
    rows.map((row) => row.costs),
    step,
  );
  return {
    restorations,
    visits: visits?.visits ?? 0,
    total: text(own + shared),
    mean: formatMoney(meanMoney(own + shared, restorations, step)),
    min: text(spread.min),
    p10: text(spread.p10),
    p50: text(spread.p50),
    p90: text(spread.p90),
    max: text(spread.max),
    ownCost: text(own),
    sharedCost: text(shared),
    retakeCost: text(added((row) => row.retake_cost)),
    categories: toCategories(categories),
  };
}

function toCategories(rows: readonly CategoryRow[]): CostFiguresDto['categories'] {
  const costs = new Map<string, bigint>();
  for (const { category, cost } of rows) {
    costs.set(category, (costs.get(category) ?? 0n) + microOf(cost));
  }
  return [...costs].map(([category, cost]) => ({ category, cost: text(cost) }));
}

function text(micro: bigint): string {
  return formatMoney(moneyFromMicro(micro));
}
