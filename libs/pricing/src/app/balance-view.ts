import type { IsoDate } from '#lib/platform';
import { instantText, moneyText } from '#lib/stock';
import type { BalanceRow } from '../db/plan-balances.js';

export interface BalanceView {
  readonly id: string;
  readonly plan: { readonly id: string; readonly name: string };
  readonly chartReference: string;
  readonly asOf: IsoDate;
  readonly deductibleLeft: string;
  readonly maximumLeft: string | null;
  readonly recordedBy: string;
  readonly recordedAt: string;
}

export function balanceView(row: BalanceRow): BalanceView {
  return {
    id: row.id,
    plan: { id: row.plan_id, name: row.plan_name },
    chartReference: row.chart_reference,
    asOf: row.as_of,
    deductibleLeft: moneyText(row.deductible_left),
    maximumLeft: row.maximum_left === null ? null : moneyText(row.maximum_left),
    recordedBy: row.recorded_by,
    recordedAt: instantText(row.recorded_at),
  };
}
