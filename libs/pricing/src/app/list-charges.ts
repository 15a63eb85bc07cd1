import { Injectable } from '@nestjs/common';
import { type Actor, decodeCursor, type Page, toPage, UnitOfWork } from '#lib/platform';
import { CHARGES, type ChargeRow } from '../db/charges.js';
import type { ChargeDto } from '../http/charge.dto.js';
import { chargeView } from './charge-view.js';

export interface ChargeQuery {
  readonly visitId?: string | undefined;
  readonly chartReference?: string | undefined;
  readonly show?: 'current' | 'all' | undefined;
  readonly limit: number;
  readonly cursor?: string | undefined;
}

/** What was recorded, the latest record first; what counts now unless all is asked for. */
@Injectable()
export class ListCharges {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, query: ChargeQuery): Promise<Page<ChargeDto>> {
    const [after] = query.cursor === undefined ? [null] : decodeCursor(query.cursor, 1);
    const rows = await this.uow.read(actor.practiceId, (tx) =>
      tx.query<ChargeRow>(
        `${CHARGES}
         WHERE c.practice_id = current_practice()
           AND ($1::uuid IS NULL OR r.visit_id = $1)
           AND ($2::text IS NULL OR lower(v.chart_reference) = lower($2))
           AND ($3 OR n.id IS NULL AND v.reversed_at IS NULL)
           AND ($4::uuid IS NULL OR c.id < $4)
         ORDER BY c.id DESC LIMIT $5`,
        [
          query.visitId ?? null,
          query.chartReference?.trim() ?? null,
          query.show === 'all',
          after,
          query.limit + 1,
        ],
      ),
    );
    return toPage(
      rows,
      query.limit,
      (row) => chargeView(row, actor.toothNotation),
      (row) => [row.id],
    );
  }
}
