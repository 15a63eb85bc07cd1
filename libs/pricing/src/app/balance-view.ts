import { formatMoney } from '#lib/measure';
import type { IsoDate } from '#lib/platform';
import { instantText, moneyText } from '#lib/stock';
import type { BalanceRow } from '../db/plan-balances.js';
import type { Balance } from '../domain/plan-share.js';

export interface LeftView {
  readonly deductibleLeft: string;
  readonly maximumLeft: string | null;
}

export interface BalanceView {
  readonly id: string;
  readonly plan: { readonly id: string; readonly name: string };
  readonly chartReference: string;
  readonly asOf: IsoDate;
  readonly deductibleLeft: string;
  readonly maximumLeft: string | null;
  /** What charges since then leave of it; null where that was not worked out. */
  readonly now: LeftView | null;
  readonly recordedBy: string;
  readonly recordedAt: string;
}

export function balanceView(row: BalanceRow, now: Balance | null = null): BalanceView {
  return {
    id: row.id,
    plan: { id: row.plan_id, name: row.plan_name },
    chartReference: row.chart_reference,
    asOf: row.as_of,
    deductibleLeft: moneyText(row.deductible_left),
    maximumLeft: row.maximum_left === null ? null : moneyText(row.maximum_left),
    now: now === null ? null : leftView(now),
    recordedBy: row.recorded_by,
    recordedAt: instantText(row.recorded_at),
  };
}

function leftView({ deductibleLeft, maximumLeft }: Balance): LeftView {
  return {
    deductibleLeft: formatMoney(deductibleLeft),
    maximumLeft: maximumLeft === null ? null : formatMoney(maximumLeft),
  };
}
