import type { CsvCell } from '#lib/platform';
import { column, columns, inLanguage, offPaper, type Table } from '../domain/table.js';
import type { CostReportDto } from './cost-report.dto.js';
import type { CostReportQueryDto, FileQueryDto, PeriodQueryDto } from './costing-queries.dto.js';
import { factsOf } from './report-facts.js';
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

/** The cells of the last row before its figures: 'Together', and nothing else. */
export function totalCells(count: number): CsvCell[] {
  return Array.from({ length: count }, (_, i) => (i === 0 ? 'Together' : null));
}

/** One row per group; a column per category, for which there is no room on paper. */
export function costReportTable(report: CostReportDto, asked: CostReportQueryDto): Table {
  const { totals } = report;
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
  const table: Table = {
    name: 'restoration-costs',
    title: 'What restorations cost',
    facts: factsOf(asked, report.rows),
    columns: [
      ...groups.columns,
      ...columns('whole', 'restorations', 'visits'),
      ...columns('money', 'total', 'mean', 'min', 'p10', 'p50', 'p90', 'max'),
      ...columns('money', 'own', 'shared', 'retake'),
      column('currency'),
      ...offPaper(
        columns('money', ...categories.map((category) => `category: ${category}` as const)),
      ),
    ],
    rows,
    totals: [
      ...totalCells(groups.columns.length),
      ...[totals.restorations, totals.visits, totals.total, totals.mean, totals.min, totals.p10],
      ...[totals.p50, totals.p90, totals.max, totals.ownCost, totals.sharedCost],
      ...[totals.retakeCost, report.currency, ...totals.categories.map((c) => c.cost)],
    ],
  };
  return inLanguage(table, asked.lang, { title: 'Was Restaurationen kosten' });
}

const EACH = 'Each figure is for one restoration.';

export function templateUsageTable(report: TemplateUsageDto, asked: FileQueryDto): Table {
  const table: Table = {
    name: 'template-usage',
    title: 'Template against reality',
    facts: [asked.lang === 'de' ? 'Jede Zahl gilt für eine Restauration.' : EACH],
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
  return inLanguage(table, asked.lang, { title: 'Vorlage gegen Wirklichkeit' });
}

export function wasteTable(report: WasteReportDto, asked: PeriodQueryDto): Table {
  const { currency, retakes } = report;
  const again = ['retakes', null, null, null, 'attempt', retakes.extraAttempts, retakes.cost];
  const table: Table = {
    name: 'waste',
    title: 'Waste',
    facts: factsOf(asked),
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
  return inLanguage(table, asked.lang, { title: 'Verlust' });
}
