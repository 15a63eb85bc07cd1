import { Injectable } from '@nestjs/common';
import { formatMoney, moneyFromMicro } from '#lib/measure';
import { type Actor, currencyStep, invalidFields, UnitOfWork } from '#lib/platform';
import type { CostRow, Sums } from '../domain/cost-groups.js';
import { GROUPS, type Group, parseGroupBy } from '../domain/group-by.js';
import { meanMoney } from '../domain/mean.js';
import { spreadOf } from '../domain/spread.js';
import type { CostFiguresDto, CostReportDto, CostReportRowDto } from '../http/cost-report.dto.js';
import type { CostReportQueryDto } from '../http/costing-queries.dto.js';
import { addUpCosts } from './cost-cells.js';

const OF_VISIT = ''; // what the visits themselves say they cost

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
    const sums = await this.uow.read(actor.practiceId, (tx) => addUpCosts(tx, query, groups));
    const step = currencyStep(actor.currency);
    const partly = query.templateId !== undefined || query.reason !== undefined;
    return {
      currency: actor.currency,
      groupBy: [...groups],
      rows: sums.sorted().map((row) => ({
        ...toKeys(row, groups),
        ...toFigures(row.sums, step),
      })),
      totals: toFigures(sums.totals, step),
      visitsMaterialCost: partly ? null : text(sums.totals.categories.get(OF_VISIT) ?? 0n),
    };
  }
}

function toKeys(
  { kind, month }: CostRow,
  groups: readonly Group[],
): Omit<CostReportRowDto, keyof CostFiguresDto> {
  const only = (group: Group, value: string) => (groups.includes(group) ? value : null);
  return {
    templateId: only('template', kind.templateId),
    templateName: only('template', kind.templateName),
    reason: only('reason', kind.reason),
    dentistId: only('dentist', kind.dentistId),
    dentistName: only('dentist', kind.dentistName),
    month: only('month', month),
  };
}

function toFigures(sums: Sums, step: bigint): CostFiguresDto {
  const { restorations, own, shared } = sums;
  const spread = spreadOf(sums.costs, step, sums.removed);
  return {
    restorations,
    visits: sums.visits,
    total: text(own + shared),
    mean: formatMoney(meanMoney(own + shared, restorations, step)),
    min: text(spread.min),
    p10: text(spread.p10),
    p50: text(spread.p50),
    p90: text(spread.p90),
    max: text(spread.max),
    ownCost: text(own),
    sharedCost: text(shared),
    retakeCost: text(sums.retake),
    categories: toCategories(sums),
  };
}

function toCategories({ categories }: Sums): CostFiguresDto['categories'] {
  return [...categories]
    .filter(([category, cost]) => category !== OF_VISIT && cost !== 0n)
    .map(([category, cost]) => ({ category, cost: text(cost) }))
    .sort((a, b) => (a.category < b.category ? -1 : 1));
}

function text(micro: bigint): string {
  return formatMoney(moneyFromMicro(micro));
}
