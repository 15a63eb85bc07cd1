import { Injectable } from '@nestjs/common';
import {
  type Actor,
  decodeCursor,
  type IsoDate,
  type Page,
  type Tx,
  toPage,
  UnitOfWork,
} from '#lib/platform';
import { BALANCES, type BalanceRow, LATER_BALANCE } from '../db/plan-balances.js';
import { leftOn, type PlanLeft } from '../db/plan-left.js';
import { type BalanceView, balanceView } from './balance-view.js';

export interface BalanceQuery {
  readonly chartReference?: string | undefined;
  readonly planId?: string | undefined;
  /** Only what was entered for this day or one before. */
  readonly on?: IsoDate | undefined;
  /** 'counting': of each chart and plan only what counts (on that day). */
  readonly show?: 'all' | 'counting' | undefined;
  readonly limit: number;
  readonly cursor?: string | undefined;
}

/** What was entered, the latest day first; the first of a chart and plan is what counts. */
@Injectable()
export class ListBalances {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, query: BalanceQuery): Promise<Page<BalanceView>> {
    return this.uow.read(actor.practiceId, async (tx) => {
      const page = toPage(
        await load(tx, query),
        query.limit,
        (row) => row,
        (row) => [row.as_of, row.id],
      );
      const items: BalanceView[] = [];
      for (const row of page.items) items.push(balanceView(row, await leftNow(tx, row, query)));
      return { items, nextCursor: page.nextCursor };
    });
  }
}

function load(tx: Tx, query: BalanceQuery): Promise<BalanceRow[]> {
  const after = query.cursor === undefined ? [null, null] : decodeCursor(query.cursor, 2);
  return tx.query<BalanceRow>(
    `${BALANCES}
     WHERE b.practice_id = current_practice()
       AND ($1::text IS NULL OR lower(b.chart_reference) = lower($1))
       AND ($2::uuid IS NULL OR b.plan_id = $2)
       AND ($3::date IS NULL OR b.as_of <= $3)
       AND ($4 = 'all' OR NOT EXISTS (${LATER_BALANCE}))
       AND ($5::date IS NULL OR (b.as_of, b.id) < ($5::date, $6::uuid))
     ORDER BY b.as_of DESC, b.id DESC LIMIT $7`,
    [
      query.chartReference?.trim() ?? null,
      query.planId ?? null,
      query.on ?? null,
      query.show ?? 'all',
      ...after,
      query.limit + 1,
    ],
  );
}

/** Of one chart only: a patient has one plan or two, a practice thousands of patients. */
async function leftNow(tx: Tx, row: BalanceRow, query: BalanceQuery): Promise<PlanLeft | null> {
  const { chartReference, show, on } = query;
  if (show !== 'counting' || chartReference === undefined || on !== undefined) return null;
  const asked = { planId: row.plan_id, chartReference: row.chart_reference, day: row.as_of };
  return (await leftOn(tx, { ...asked, except: [] })) ?? null;
}
