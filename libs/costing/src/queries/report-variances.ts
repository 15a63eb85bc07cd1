import { Injectable } from '@nestjs/common';
import { formatMoney, type Money, moneyFromMicro } from '#lib/measure';
import { type Actor, invalidFields, UnitOfWork } from '#lib/platform';
import { microOf } from '#lib/stock';
import { GROUPS, type Group, parseGroupBy } from '../domain/group-by.js';
import { shareOf, varianceOf } from '../domain/variance.js';
import type { VarianceQueryDto } from '../http/costing-queries.dto.js';
import type {
  VarianceFiguresDto,
  VarianceReportDto,
  VarianceRowDto,
} from '../http/variance.dto.js';
import { chosenValues } from './chosen.js';
import { COSTED, SUMS } from './variance-sql.js';

const KEYS: Record<Group, string> = {
  template: 'template_id',
  reason: 'reason',
  dentist: 'dentist_id',
  month: 'month',
};

const NAMES = [
  {
    key: 'template_id',
    column: 't.name AS template_name',
    join: 'LEFT JOIN procedure_templates t ON t.id = f.template_id',
  },
  {
    key: 'dentist_id',
    column: 'p.display_name AS dentist_name',
    join: 'LEFT JOIN people p ON p.id = f.dentist_id',
  },
];

const EACH = ['id', 'visit_id', 'visited_on', ...GROUPS.map((group) => KEYS[group])];

/** The total first; then the dearest differences, or with a limit the greatest either way. */
function rowsSql(keys: readonly string[], limit: number | null): string {
  const columns = keys.join(', ');
  const names = NAMES.filter(({ key }) => keys.includes(key));
  return `${COSTED}, figures AS (
  SELECT ${columns}, grouping(${columns}) <> 0 AS is_total, ${SUMS}
  FROM costed GROUP BY GROUPING SETS ((${columns}), ())
)
SELECT ${['f.*', ...names.map(({ column }) => column)].join(', ')}
FROM figures f ${names.map(({ join }) => join).join(' ')}
ORDER BY is_total DESC, ${limit === null ? '' : 'abs'}(actual - standard) DESC, ${columns}
LIMIT ${limit === null ? 'ALL' : limit + 1}`;
}

interface Row {
  readonly id?: string | null;
  readonly visit_id?: string | null;
  readonly visited_on?: string | null;
  readonly template_id?: string | null;
  readonly template_name?: string | null;
  readonly reason?: string | null;
  readonly dentist_id?: string | null;
  readonly dentist_name?: string | null;
  readonly month?: string | null;
  readonly is_total: boolean;
  readonly restorations: number;
  readonly cost: string;
  readonly actual: string;
  readonly at_price: string;
  readonly standard: string;
  readonly waste: string;
  readonly retake: string;
}

/** Why restorations did not cost what their templates would cost at today's prices. */
@Injectable()
export class ReportVariances {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, query: VarianceQueryDto): Promise<VarianceReportDto> {
    const each = query.groupBy?.trim() === 'restoration';
    const groups = each ? [] : parseGroupBy(query.groupBy);
    if (!groups) {
      const message = `must be restoration, or one or more of ${GROUPS.join(', ')}, with commas`;
      throw invalidFields([{ field: 'groupBy', message }]);
    }
    const keys = each ? EACH : groups.map((group) => KEYS[group]);
    const limit = each ? Number(query.limit ?? 200) : null;
    const rows = await this.uow.read(actor.practiceId, (tx) =>
      tx.query<Row>(rowsSql(keys, limit), chosenValues(actor.practiceId, query)),
    );
    const total = rows.find((row) => row.is_total);
    if (!total) throw new Error('A report has no total');
    return {
      currency: actor.currency,
      groupBy: each ? ['restoration'] : [...groups],
      rows: rows.filter((row) => !row.is_total).map(toRow),
      totals: toFigures(total),
    };
  }
}

function toRow(row: Row): VarianceRowDto {
  return {
    restorationId: row.id ?? null,
    visitId: row.visit_id ?? null,
    visitedOn: row.visited_on ?? null,
    templateId: row.template_id ?? null,
    templateName: row.template_name ?? null,
    reason: row.reason ?? null,
    dentistId: row.dentist_id ?? null,
    dentistName: row.dentist_name ?? null,
    month: row.month ?? null,
    ...toFigures(row),
  };
}

function toFigures(row: Row): VarianceFiguresDto {
  const read = (numeric: string): Money => moneyFromMicro(microOf(numeric));
  const amounts = {
    actual: read(row.actual),
    atStandardPrice: read(row.at_price),
    standard: read(row.standard),
  };
  const { price, usage, total, sense } = varianceOf(amounts);
  const part = (numeric: string) => {
    const share = shareOf(microOf(numeric), amounts.actual);
    return share === null ? null : formatMoney(moneyFromMicro(share), 4);
  };
  return {
    restorations: row.restorations,
    actualCost: formatMoney(amounts.actual),
    standardCost: formatMoney(amounts.standard),
    difference: formatMoney(total),
    sense,
    priceVariance: formatMoney(price),
    usageVariance: formatMoney(usage),
    wasteCost: formatMoney(read(row.waste)),
    wasteShare: part(row.waste),
    retakeCost: formatMoney(read(row.retake)),
    retakeShare: part(row.retake),
    rounding: formatMoney(moneyFromMicro(microOf(row.cost) - amounts.actual)),
  };
}
