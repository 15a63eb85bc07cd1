import type { Shape } from '../../api/client.js';
import type { Choice } from './choice.js';
import { lastDayOf } from './periods.js';

export type CostRow = Shape<'CostReportRowDto'>;
export type CostReport = Shape<'CostReportDto'>;

/** What tells the rows of a grouped report apart; null where it is not grouped by it. */
export type GroupedRow = Pick<
  CostRow,
  'templateId' | 'templateName' | 'reason' | 'dentistId' | 'dentistName' | 'month'
>;

export const GROUPS = ['template', 'reason', 'dentist', 'month'] as const;
export type Group = (typeof GROUPS)[number];

/** 'template,month' in the address; by template when it says nothing that is known. */
export function groupsOf(by: string | undefined): readonly Group[] {
  const words = (by ?? '').split(',');
  const known = GROUPS.filter((group) => words.includes(group));
  return known.length === 0 ? ['template'] : known;
}

/** What the address says afterwards; the last one left stays. */
export function toggled(groups: readonly Group[], group: Group): string | undefined {
  const next = GROUPS.filter((one) => (one === group) !== groups.includes(one));
  const by = (next.length === 0 ? groups : next).join(',');
  return by === 'template' ? undefined : by;
}

const later = (a: string, b: string | undefined) => (b !== undefined && b > a ? b : a);
const earlier = (a: string, b: string | undefined) => (b !== undefined && b < a ? b : a);

/** The choice of the restorations that are behind one row. */
export function choiceOfRow(row: GroupedRow, choice: Choice): Choice {
  const month =
    row.month === null
      ? { from: choice.from, to: choice.to }
      : {
          from: later(`${row.month}-01`, choice.from),
          to: earlier(lastDayOf(row.month), choice.to),
        };
  return {
    ...month,
    templateId: row.templateId ?? choice.templateId,
    reason: row.reason ?? choice.reason,
    dentistId: row.dentistId ?? choice.dentistId,
  };
}

export function keyOfRow(row: GroupedRow): string {
  return [row.templateId, row.reason, row.dentistId, row.month].join(' ');
}

export interface GroupWords {
  readonly reasons: Readonly<Record<NonNullable<CostRow['reason']>, string>>;
  readonly month: (iso: string) => string;
}

/** What one part of a row is called. */
export function partOf(row: GroupedRow, group: Group, words: GroupWords): string {
  if (group === 'template') return row.templateName ?? '';
  if (group === 'dentist') return row.dentistName ?? '';
  if (group === 'reason') return row.reason === null ? '' : words.reasons[row.reason];
  return row.month === null ? '' : words.month(row.month);
}

export function nameOfRow(row: GroupedRow, groups: readonly Group[], words: GroupWords): string {
  return groups.map((group) => partOf(row, group, words)).join(' · ');
}
