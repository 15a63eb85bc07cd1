import type { FastifyReply } from 'fastify';
import { type CsvCell, toCsv } from '../domain/csv.js';
import type { CostReportDto } from './cost-report.dto.js';
import type { TemplateUsageDto, WasteReportDto } from './usage-waste.dto.js';

export function wantsCsv(accept: string | undefined): boolean {
  return /(^|,)\s*text\/csv\s*(;|,|$)/i.test(accept ?? '');
}

/** Marks the answer as a CSV file of this name. */
export function asCsv(reply: FastifyReply, name: string, text: string): string {
  void reply
    .header('Content-Type', 'text/csv; charset=utf-8')
    .header('Content-Disposition', `attachment; filename="${name}.csv"`);
  return text;
}

/** One row per group; a column per category. The total is left out: a sum would count it twice. */
export function costReportCsv(report: CostReportDto): string {
  const categories = report.totals.categories.map((c) => c.category);
  const header = [
    ...['template', 'reason', 'dentist', 'month'].filter((g) => report.groupBy.includes(g)),
    ...['restorations', 'visits', 'total', 'mean', 'min', 'p10', 'p50', 'p90', 'max'],
    ...['own', 'shared', 'retake', 'currency'],
    ...categories.map((category) => `category: ${category}`),
  ];
  const rows = report.rows.map((row): CsvCell[] => {
    const byName = new Map(row.categories.map((c) => [c.category, c.cost]));
    const groups: Record<string, CsvCell> = {
      template: row.templateName,
      reason: row.reason,
      dentist: row.dentistName,
      month: row.month,
    };
    return [
      ...Object.keys(groups)
        .filter((g) => report.groupBy.includes(g))
        .map((g) => groups[g] ?? null),
      ...[row.restorations, row.visits, row.total, row.mean, row.min, row.p10, row.p50],
      ...[row.p90, row.max, row.ownCost, row.sharedCost, row.retakeCost, report.currency],
      ...categories.map((category) => byName.get(category) ?? '0.00'),
    ];
  });
  return toCsv(header, rows);
}

export function templateUsageCsv(report: TemplateUsageDto): string {
  const header = [
    ...['template', 'version', 'restorations', 'consumable', 'shade', 'unit', 'planned'],
    ...['placed', 'dispensed', 'charged', 'difference', 'cost'],
  ];
  const rows = report.rows.map((row): CsvCell[] => [
    ...[row.templateName, row.version, row.restorations, row.consumable.name],
    ...[row.consumable.shade, row.consumable.unit, row.planned, row.placed, row.dispensed],
    ...[row.charged, row.difference, row.cost],
  ]);
  return toCsv(header, rows);
}

export function wasteCsv(report: WasteReportDto): string {
  const header = ['kind', 'month', 'reason', 'category', 'unit', 'quantity', 'cost', 'currency'];
  const { currency } = report;
  return toCsv(header, [
    ...report.writeOffs.map((row): CsvCell[] => [
      ...['written off', row.month, row.reason, row.category, row.unit, row.quantity, row.cost],
      currency,
    ]),
    ...report.chairside.map((row): CsvCell[] => [
      ...['charged, not placed', row.month, null, row.category, row.unit, row.wasted, row.cost],
      currency,
    ]),
    [
      'retakes',
      null,
      null,
      null,
      'attempt',
      report.retakes.extraAttempts,
      report.retakes.cost,
      currency,
    ],
  ]);
}
