import type { Group } from '#lib/costing';
import { CELLS, type PriceSource } from './contribution-cells.js';

const KEYS: Record<Group, string> = {
  template: 'template_id',
  reason: 'reason',
  dentist: 'dentist_id',
  month: 'month',
};

/** The columns of each group that are shown; names are looked up afterwards. */
const SHOWN: Record<Group, string> = {
  template: 'f.template_id, t.name AS template_name',
  reason: 'f.reason',
  dentist: 'f.dentist_id, p.display_name AS dentist_name',
  month: "to_char(f.month, 'YYYY-MM') AS month",
};

const JOINS: Partial<Record<Group, string>> = {
  template: 'JOIN procedure_templates t ON t.id = f.template_id',
  dentist: 'JOIN people p ON p.id = f.dentist_id',
};

export interface ContributionKeys {
  readonly template_id?: string;
  readonly template_name?: string;
  readonly reason?: string;
  readonly dentist_id?: string;
  readonly dentist_name?: string;
  readonly month?: string;
}

/** Of one group, one way of knowing the fee and one width of `contributions`. */
export interface ContributionCell extends ContributionKeys {
  readonly source: PriceSource;
  readonly restorations: number;
  readonly fee: string;
  readonly plan_pays: string;
  readonly write_off: string;
  readonly material: string;
  readonly minutes: string;
  readonly width: 2 | 4 | 8;
  /** Each contribution packed into so many bytes: 2 or 4 of hundredths, 8 of millionths. */
  readonly contributions: Buffer;
}

/** One row per group, source and width, with every contribution: percentiles stay exact. */
export function contributionSql(groups: readonly Group[]): string {
  const keys = groups.map((group) => KEYS[group]).join(', ');
  return `${CELLS}, figures AS (
  SELECT ${keys}, source, width, sum(restorations)::int AS restorations, sum(fee) AS fee,
         sum(plan_pays) AS plan_pays, sum(write_off) AS write_off, sum(material) AS material,
         sum(minutes) AS minutes, string_agg(contributions, ''::bytea) AS contributions
  FROM cells GROUP BY ${keys}, source, width
)
SELECT ${groups.map((group) => SHOWN[group]).join(', ')}, f.source, f.width, f.restorations,
       f.fee, f.plan_pays, f.write_off, f.material, f.minutes, f.contributions
FROM figures f ${groups.flatMap((group) => JOINS[group] ?? []).join(' ')}
ORDER BY ${groups.map((group) => `f.${KEYS[group]}`).join(', ')}, f.source, f.width`;
}
