import type { CsvCell } from '../domain/csv.js';
import { column, columns, type Table } from '../domain/table.js';
import type { ChairTimeDto } from './chair-time.dto.js';
import type { HabitsDto } from './habit.dto.js';
import type { PriceChangesDto } from './price-change.dto.js';
import { groupColumns } from './report-tables.js';
import type { VarianceReportDto } from './variance.dto.js';

export function varianceTable(report: VarianceReportDto): Table {
  const each = report.groupBy.includes('restoration');
  const groups = groupColumns(each ? ['template', 'reason', 'dentist'] : report.groupBy);
  return {
    name: 'variances',
    title: 'Actual and standard cost',
    columns: [
      ...(each ? [column('date', 'date'), column('restoration')] : []),
      ...groups.columns,
      column('restorations', 'whole'),
      ...columns('money', 'actual', 'standard', 'difference', 'price variance', 'usage variance'),
      column('waste', 'money'),
      column('waste share', 'share'),
      column('retakes', 'money'),
      column('retake share', 'share'),
      column('currency'),
    ],
    rows: report.rows.map((row): CsvCell[] => [
      ...(each ? [row.visitedOn, row.restorationId] : []),
      ...groups.cells(row),
      ...[row.restorations, row.actualCost, row.standardCost, row.difference, row.priceVariance],
      ...[row.usageVariance, row.wasteCost, row.wasteShare, row.retakeCost, row.retakeShare],
      report.currency,
    ]),
  };
}

export function priceChangeTable(report: PriceChangesDto): Table {
  return {
    name: 'price-changes',
    title: 'Price changes',
    columns: [
      ...columns('text', 'consumable', 'shade', 'unit'),
      column('date', 'date'),
      column('supplier'),
      ...columns('money', 'price before', 'price'),
      column('change', 'share'),
      column('used since', 'decimal'),
      column('effect', 'money'),
      column('currency'),
    ],
    rows: report.consumables.flatMap(({ consumable, changes }) =>
      changes.map((change): CsvCell[] => [
        ...[consumable.name, consumable.shade, consumable.unit, change.receivedOn],
        ...[change.supplierName, change.priceBefore, change.price, change.change, change.used],
        ...[change.effect, report.currency],
      ]),
    ),
  };
}

export function habitTable(report: HabitsDto): Table {
  return {
    name: 'habits',
    title: 'The costliest habits',
    columns: [
      column('rank', 'whole'),
      ...columns('text', 'habit', 'reason', 'template', 'consumable', 'shade'),
      column('times', 'whole'),
      column('quantity', 'decimal'),
      column('unit'),
      ...columns('money', 'cost', 'saved per year'),
      column('share of material', 'share'),
      column('currency'),
      ...columns('date', 'from', 'to'),
    ],
    rows: report.habits.map((habit): CsvCell[] => [
      ...[habit.rank, habit.kind, habit.wasteReason, habit.templateName, habit.consumableName],
      ...[habit.shade, habit.times, habit.quantity, habit.unit, habit.cost, habit.savedPerYear],
      ...[habit.shareOfMaterial, report.currency, report.from, report.to],
    ]),
  };
}

/** The last row is what nobody used: it belongs to no restoration. */
export function chairTimeTable(report: ChairTimeDto): Table {
  const groups = groupColumns(report.groupBy);
  const { capacity, currency } = report;
  const none: CsvCell[] = groups.columns.map(() => null);
  return {
    name: 'chair-time',
    title: 'Chair time',
    columns: [
      column('kind'),
      ...groups.columns,
      ...columns('whole', 'restorations', 'minutes'),
      column('cost', 'money'),
      column('currency'),
    ],
    rows: [
      ...report.rows.map((row): CsvCell[] => [
        'used',
        ...groups.cells(row),
        ...[row.restorations, row.minutes, row.cost, currency],
      ]),
      ['idle', ...none, null, capacity.idleMinutes, capacity.idleCost, currency],
    ],
  };
}
