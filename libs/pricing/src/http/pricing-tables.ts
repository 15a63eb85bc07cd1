import {
  column,
  columns,
  factsOf,
  groupColumns,
  inLanguage,
  offPaper,
  type PeriodQueryDto,
  type Table,
  totalCells,
} from '#lib/costing';
import type { CsvCell } from '#lib/platform';
import type {
  ContributionFiguresDto,
  ContributionQueryDto,
  ContributionReportDto,
} from './contribution.dto.js';
import type { SupplyFiguresDto, SupplyShareDto } from './supply-share.dto.js';

/** One row per group; how the figures are known is for programs, there is no room on paper. */
export function contributionTable(
  report: ContributionReportDto,
  asked: ContributionQueryDto,
): Table {
  const groups = groupColumns(report.groupBy);
  const figures = (of: ContributionFiguresDto): CsvCell[] => [
    ...[of.restorations, of.charged, of.fromFeeList],
    ...[of.fee, of.planPays, of.patientPays, of.writeOff, of.income, of.material],
    ...[of.contribution, of.minutes, of.contributionPerHour, of.mean, of.p10, of.p50, of.p90],
    ...[of.feeListIncome, of.feeListMaterial, of.feeListContribution],
    ...[of.withoutFee, of.withoutFeeMaterial, report.currency],
  ];
  const table: Table = {
    name: 'contributions',
    title: 'What restorations contribute',
    facts: [...factsOf(asked, report.rows), known(report.totals, asked.lang)],
    columns: [
      ...groups.columns,
      column('restorations', 'whole'),
      ...offPaper(columns('whole', 'charged', 'from the fee list')),
      ...columns('money', 'fee', 'plan pays', 'patient pays', 'write-off', 'income', 'material'),
      column('contribution', 'money'),
      column('minutes', 'whole'),
      ...columns('money', 'per chair hour', 'mean', 'p10', 'p50', 'p90'),
      ...offPaper(columns('money', 'income from the fee list', 'material of the fee list')),
      ...offPaper(columns('money', 'contribution from the fee list')),
      ...offPaper([column('without a fee', 'whole'), column('material without a fee', 'money')]),
      column('currency'),
    ],
    rows: report.rows.map((row): CsvCell[] => [...groups.cells(row), ...figures(row)]),
    totals: [...totalCells(groups.columns.length), ...figures(report.totals)],
  };
  return inLanguage(table, asked.lang, {
    title: 'Was Restaurationen übrig lassen',
    columns: { charged: 'mit eingetragener Berechnung' },
  });
}

/** On paper there is no room for the columns, so that the sums say so once. */
function known(of: ContributionFiguresDto, lang: ContributionQueryDto['lang']): string {
  const { fromFeeList, feeListIncome, withoutFee } = of;
  if (lang === 'de') {
    return (
      `Ohne eingetragene Berechnung: ${fromFeeList} Restaurationen; ` +
      `${feeListIncome.replace('.', ',')} der Einnahmen sind aus der Honorarliste. ` +
      `${withoutFee} weitere haben kein Honorar und zählen nicht mit.`
    );
  }
  return (
    `Nobody recorded a charge for ${fromFeeList} restorations: ${feeListIncome} of the income is ` +
    `from the fee list. ${withoutFee} more have no fee and are left out.`
  );
}

const SHARE_TITLES = {
  fees: 'Materialanteil der Honorare',
  income: 'Materialanteil der Einnahmen',
} as const;

export function supplyShareTable(report: SupplyShareDto, asked: PeriodQueryDto): Table {
  const share = (what: 'material' | 'bought' | 'waste') =>
    column(`${what} / ${report.shareOf}`, 'share');
  const figures = (of: SupplyFiguresDto): CsvCell[] => [
    ...[of.restorations, of.charged, of.fromFeeList, of.withoutFee],
    ...[of.fees, of.writeOff, of.income, of.feeListFees, of.material, of.materialShare],
    ...[of.withoutFeeMaterial, of.bought, of.boughtShare, of.waste, of.wasteShare],
    report.currency,
  ];
  const table: Table = {
    name: 'supply-share',
    title: `Supply cost as a share of ${report.shareOf}`,
    facts: factsOf(asked),
    columns: [
      column('month'),
      column('restorations', 'whole'),
      ...offPaper(columns('whole', 'charged', 'from the fee list', 'without a fee')),
      ...columns('money', 'fees', 'write-off', 'income'),
      ...offPaper([column('fees from the fee list', 'money')]),
      column('material', 'money'),
      share('material'),
      ...offPaper([column('material without a fee', 'money')]),
      column('bought', 'money'),
      share('bought'),
      column('waste', 'money'),
      share('waste'),
      column('currency'),
    ],
    rows: report.rows.map((row): CsvCell[] => [row.month, ...figures(row)]),
    totals: [...totalCells(1), ...figures(report.totals)],
  };
  return inLanguage(table, asked.lang, {
    title: SHARE_TITLES[report.shareOf],
    columns: { charged: 'mit eingetragener Berechnung' },
  });
}
