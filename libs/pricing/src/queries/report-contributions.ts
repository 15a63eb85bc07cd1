import { Injectable } from '@nestjs/common';
import { GROUPS, type Group, listsBy, meanMoney, parseGroupBy } from '#lib/costing';
import { formatMoney, moneyFromMicro, multiplyRatio } from '#lib/measure';
import { type Actor, currencyStep, invalidFields, UnitOfWork } from '#lib/platform';
import { microOf } from '#lib/stock';
import { percentilesOf } from '../domain/packed-amounts.js';
import type {
  ContributionFiguresDto,
  ContributionQueryDto,
  ContributionReportDto,
  ContributionRowDto,
} from '../http/contribution.dto.js';
import { cellValues } from './contribution-cells.js';
import {
  type ContributionCell,
  type ContributionKeys,
  contributionSql,
} from './contribution-sql.js';

/** What plan and patient pay for restorations, less material, by template, reason, dentist, month. */
@Injectable()
export class ReportContributions {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, query: ContributionQueryDto): Promise<ContributionReportDto> {
    const groups = parseGroupBy(query.groupBy);
    if (!groups) {
      const message = `must be one or more of ${GROUPS.join(', ')}, each once, with commas`;
      throw invalidFields([{ field: 'groupBy', message }]);
    }
    const cells = await this.uow.read(actor.practiceId, async (tx) =>
      tx.query<ContributionCell>(contributionSql(groups), await cellValues(tx, query)),
    );
    return toReport(actor, groups, cells);
  }
}

function toReport(
  actor: Actor,
  groups: readonly Group[],
  cells: readonly ContributionCell[],
): ContributionReportDto {
  const step = currencyStep(actor.currency);
  const rows = [...listsBy(cells, keyOf).values()].flatMap((list) =>
    list.slice(0, 1).map((first) => ({ ...toKeys(first), ...toFigures(list, step) })),
  );
  return {
    currency: actor.currency,
    groupBy: [...groups],
    rows,
    totals: toFigures(cells, step),
  };
}

function keyOf({ template_id, reason, dentist_id, month }: ContributionKeys): string {
  return JSON.stringify([template_id, reason, dentist_id, month]);
}

function toKeys(row: ContributionKeys): Omit<ContributionRowDto, keyof ContributionFiguresDto> {
  return {
    templateId: row.template_id ?? null,
    templateName: row.template_name ?? null,
    reason: row.reason ?? null,
    dentistId: row.dentist_id ?? null,
    dentistName: row.dentist_name ?? null,
    month: row.month ?? null,
  };
}

type Amount = 'fee' | 'plan_pays' | 'write_off' | 'material' | 'minutes';

function toFigures(cells: readonly ContributionCell[], step: bigint): ContributionFiguresDto {
  const listed = cells.filter((cell) => cell.source === 'listed');
  const none = cells.filter((cell) => cell.source === 'none');
  const counted = cells.filter((cell) => cell.source !== 'none');
  const restorations = countOf(counted);
  const [fee, planPays, writeOff, material] = [
    added(counted, 'fee'),
    added(counted, 'plan_pays'),
    added(counted, 'write_off'),
    added(counted, 'material'),
  ];
  const income = fee - writeOff;
  const contribution = income - material;
  const minutes = counted.reduce((sum, cell) => sum + Number(cell.minutes), 0);
  const [listIncome, listMaterial] = [added(listed, 'fee'), added(listed, 'material')];
  return {
    restorations,
    charged: restorations - countOf(listed),
    fromFeeList: countOf(listed),
    fee: text(fee),
    planPays: text(planPays),
    patientPays: text(income - planPays),
    writeOff: text(writeOff),
    income: text(income),
    material: text(material),
    contribution: text(contribution),
    minutes,
    contributionPerHour: perHour(contribution, minutes, step),
    ...spread(counted, { contribution, restorations, step }),
    feeListIncome: text(listIncome),
    feeListMaterial: text(listMaterial),
    feeListContribution: text(listIncome - listMaterial),
    withoutFee: countOf(none),
    withoutFeeMaterial: text(added(none, 'material')),
  };
}

/** Of nothing there is no mean. */
function spread(
  cells: readonly ContributionCell[],
  of: { readonly contribution: bigint; readonly restorations: number; readonly step: bigint },
): Pick<ContributionFiguresDto, 'mean' | 'p10' | 'p50' | 'p90'> {
  const found = percentilesOf(cells.map(({ width, contributions: bytes }) => ({ width, bytes })));
  if (!found) return { mean: null, p10: null, p50: null, p90: null };
  const mean = formatMoney(meanMoney(of.contribution, of.restorations, of.step));
  return { mean, p10: text(found.p10), p50: text(found.p50), p90: text(found.p90) };
}

function countOf(cells: readonly ContributionCell[]): number {
  return cells.reduce((sum, cell) => sum + cell.restorations, 0);
}

function added(cells: readonly ContributionCell[], amount: Amount): bigint {
  return cells.reduce((sum, cell) => sum + microOf(cell[amount]), 0n);
}

function perHour(amount: bigint, minutes: number, step: bigint): string | null {
  if (minutes === 0) return null;
  return text(multiplyRatio(amount, 60n, BigInt(minutes) * step, 'half-up') * step);
}

function text(micro: bigint): string {
  return formatMoney(moneyFromMicro(micro));
}
