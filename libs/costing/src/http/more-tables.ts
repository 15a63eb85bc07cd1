import type { CsvCell } from '#lib/platform';
import { column, columns, inLanguage, offPaper, type Table } from '../domain/table.js';
import type { ChairTimeDto } from './chair-time.dto.js';
import type { FileQueryDto, VarianceQueryDto } from './costing-queries.dto.js';
import type { HabitsDto } from './habit.dto.js';
import type { PriceChangesDto } from './price-change.dto.js';
import { factsOf } from './report-facts.js';
import { groupColumns, totalCells } from './report-tables.js';
import type { VarianceReportDto } from './variance.dto.js';

export function varianceTable(report: VarianceReportDto, asked: VarianceQueryDto): Table {
  const { totals } = report;
  const each = report.groupBy.includes('restoration');
  const groups = groupColumns(each ? ['template', 'reason', 'dentist'] : report.groupBy);
  const table: Table = {
    name: 'variances',
    title: 'Actual and standard cost',
    facts: factsOf(asked, report.rows),
    columns: [
      ...(each ? [column('date', 'date'), ...offPaper([column('restoration')])] : []),
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
    totals: [
      ...totalCells((each ? 2 : 0) + groups.columns.length),
      ...[totals.restorations, totals.actualCost, totals.standardCost, totals.difference],
      ...[totals.priceVariance, totals.usageVariance, totals.wasteCost, totals.wasteShare],
      ...[totals.retakeCost, totals.retakeShare, report.currency],
    ],
  };
  return inLanguage(table, asked.lang, { title: 'Ist und Standardkosten' });
}

const PER_UNIT = 'Prices are for one unit of stock.';

export function priceChangeTable(report: PriceChangesDto, asked: FileQueryDto): Table {
  const table: Table = {
    name: 'price-changes',
    title: 'Price changes',
    facts: [
      ...factsOf({ ...report, lang: asked.lang }),
      asked.lang === 'de' ? 'Preise gelten für eine Einheit des Bestands.' : PER_UNIT,
    ],
    columns: [
      ...columns('text', 'consumable', 'shade', 'unit'),
      column('date', 'date'),
      column('supplier'),
      ...columns('price', 'price before', 'price'),
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
  return inLanguage(table, asked.lang, { title: 'Preisänderungen' });
}

export function habitTable(report: HabitsDto, asked: FileQueryDto): Table {
  const table: Table = {
    name: 'habits',
    title: 'The costliest habits',
    facts: factsOf({ ...report, lang: asked.lang }),
    columns: [
      column('rank', 'whole'),
      ...columns('text', 'habit', 'reason', 'template', 'consumable', 'shade'),
      column('times', 'whole'),
      column('quantity', 'decimal'),
      column('unit'),
      ...columns('money', 'cost', 'saved per year'),
      column('share of material', 'share'),
      column('currency'),
      ...offPaper(columns('date', 'from', 'to')),
    ],
    rows: report.habits.map((habit): CsvCell[] => [
      ...[habit.rank, habit.kind, habit.wasteReason, habit.templateName, habit.consumableName],
      ...[habit.shade, habit.times, habit.quantity, habit.unit, habit.cost, habit.savedPerYear],
      ...[habit.shareOfMaterial, report.currency, report.from, report.to],
    ]),
  };
  return inLanguage(table, asked.lang, { title: 'Die teuersten Gewohnheiten' });
}

/** The last row is what nobody used: it belongs to no restoration. */
export function chairTimeTable(report: ChairTimeDto, asked: FileQueryDto): Table {
  const groups = groupColumns(report.groupBy);
  const { capacity, assistantCapacity: assistants, currency } = report;
  const none: CsvCell[] = groups.columns.map(() => null);
  const { idleMinutes = null, idleCost = null, minutes = null, cost = null } = assistants ?? {};
  const table: Table = {
    name: 'chair-time',
    title: 'Chair time',
    facts: factsOf({ ...report, lang: asked.lang }),
    columns: [
      column('kind'),
      ...groups.columns,
      ...columns('whole', 'restorations', 'minutes'),
      column('cost', 'money'),
      column('assistant minutes', 'whole'),
      column('assistant cost', 'money'),
      column('currency'),
    ],
    rows: [
      ...report.rows.map((row): CsvCell[] => [
        'used',
        ...groups.cells(row),
        ...[row.restorations, row.minutes, row.cost],
        ...[row.assistantMinutes, row.assistantCost, currency],
      ]),
      [
        ...['idle', ...none, null, capacity.idleMinutes, capacity.idleCost],
        ...[idleMinutes, idleCost, currency],
      ],
    ],
    totals: [
      ...['supplied', ...none, null, capacity.minutes, capacity.cost],
      ...[minutes, cost, currency],
    ],
  };
  return inLanguage(table, asked.lang, { title: 'Zeit am Stuhl' });
}
