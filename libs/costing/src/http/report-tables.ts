import type { CsvCell } from '../domain/csv.js';
import { column, columns, type Table } from '../domain/table.js';
import type { CostReportDto } from './cost-report.dto.js';
import type { TemplateUsageDto, WasteReportDto } from './usage-waste.dto.js';

const GROUP_COLUMNS = ['template', 'reason', 'dentist', 'month'] as const;

interface Grouped {
  readonly templateName: string | null;
  readonly reason: string | null;
  readonly dentistName: string | null;
  readonly month: string | null;
}

/** The columns that say what a row is of, and their cells. */
export function groupColumns(groupBy: readonly string[]) {
  const shown = GROUP_COLUMNS.filter((group) => groupBy.includes(group));
  const cells = (row: Grouped): CsvCell[] => {
    const of: Record<string, CsvCell> = {
      template: row.templateName,
      reason: row.reason,
      dentist: row.dentistName,
      month: row.month,
    };
    return shown.map((group) => of[group] ?? null);
  };
  return { columns: columns('text', ...shown), cells };
}

/** One row per group; a column per category. The total is left out: a sum would count it twice. */
export function costReportTable(report: CostReportDto): Table {
  const categories = report.totals.categories.map((c) => c.category);
  const groups = groupColumns(report.groupBy);
  const rows = report.rows.map((row): CsvCell[] => {
    const byName = new Map(row.categories.map((c) => [c.category, c.cost]));
    return [
      ...groups.cells(row),
      ...[row.restorations, row.visits, row.total, row.mean, row.min, row.p10, row.p50],
      ...[row.p90, row.max, row.ownCost, row.sharedCost, row.retakeCost, report.currency],
      ...categories.map((category) => byName.get(category) ?? '0.00'),
    ];
  });
  return {
    name: 'restoration-costs',
    title: 'What restorations cost',
    columns: [
      ...groups.columns,
      ...columns('whole', 'restorations', 'visits'),
      ...columns('money', 'total', 'mean', 'min', 'p10', 'p50', 'p90', 'max'),
      ...columns('money', 'own', 'shared', 'retake'),
      column('currency'),
      ...columns('money', ...categories.map((category) => `category: ${category}`)),
    ],
    rows,
  };
}

/** For paper: without the categories, which would not fit across a page. */
export function costReportPaper(report: CostReportDto): Table {
  const table = costReportTable(report);
  const shown = table.columns.flatMap(({ name }, i) => (name.startsWith('category: ') ? [] : [i]));
  const only = <T>(list: readonly T[]) => list.filter((_, i) => shown.includes(i));
  return { ...table, columns: only(table.columns), rows: table.rows.map(only) };
}

export function templateUsageTable(report: TemplateUsageDto): Table {
  return {
    name: 'template-usage',
    title: 'Template against reality',
    columns: [
      column('template'),
      ...columns('whole', 'version', 'restorations'),
      ...columns('text', 'consumable', 'shade', 'unit'),
      ...columns('decimal', 'planned', 'placed', 'dispensed', 'charged', 'difference'),
      column('cost', 'money'),
    ],
    rows: report.rows.map((row): CsvCell[] => [
      ...[row.templateName, row.version, row.restorations, row.consumable.name],
      ...[row.consumable.shade, row.consumable.unit, row.planned, row.placed, row.dispensed],
      ...[row.charged, row.difference, row.cost],
    ]),
  };
}

export function wasteTable(report: WasteReportDto): Table {
  const { currency, retakes } = report;
  const again = ['retakes', null, null, null, 'attempt', retakes.extraAttempts, retakes.cost];
  return {
    name: 'waste',
    title: 'Waste',
    columns: [
      ...columns('text', 'kind', 'month', 'reason', 'category', 'unit'),
      column('quantity', 'decimal'),
      column('cost', 'money'),
      column('currency'),
    ],
    rows: [
      ...report.writeOffs.map((row): CsvCell[] => [
        ...['written off', row.month, row.reason, row.category, row.unit, row.quantity, row.cost],
        currency,
      ]),
      ...report.chairside.map((row): CsvCell[] => [
        ...['charged, not placed', row.month, null, row.category, row.unit, row.wasted, row.cost],
        currency,
      ]),
      [...again, currency],
    ],
  };
}
