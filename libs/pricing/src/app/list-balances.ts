import { Injectable } from '@nestjs/common';
import { type Actor, decodeCursor, type Page, toPage, UnitOfWork } from '#lib/platform';
import { BALANCES, type BalanceRow } from '../db/plan-balances.js';
import { type BalanceView, balanceView } from './balance-view.js';

export interface BalanceQuery {
  readonly chartReference?: string | undefined;
  readonly planId?: string | undefined;
  readonly limit: number;
  readonly cursor?: string | undefined;
}

/** What was entered, the latest day first; the first of a chart and plan is what counts today. */
@Injectable()
export class ListBalances {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, query: BalanceQuery): Promise<Page<BalanceView>> {
    const after = query.cursor === undefined ? [null, null] : decodeCursor(query.cursor, 2);
    const rows = await this.uow.read(actor.practiceId, (tx) =>
      tx.query<BalanceRow>(
        `${BALANCES}
         WHERE b.practice_id = current_practice()
           AND ($1::text IS NULL OR lower(b.chart_reference) = lower($1))
           AND ($2::uuid IS NULL OR b.plan_id = $2)
           AND ($3::date IS NULL OR (b.as_of, b.id) < ($3::date, $4::uuid))
         ORDER BY b.as_of DESC, b.id DESC LIMIT $5`,
        [query.chartReference?.trim() ?? null, query.planId ?? null, ...after, query.limit + 1],
      ),
    );
    return toPage(rows, query.limit, balanceView, (row) => [row.as_of, row.id]);
  }
}
