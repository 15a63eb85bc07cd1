import { Injectable } from '@nestjs/common';
import { type Actor, decodeCursor, pageLimit, toPage, UnitOfWork } from '#lib/platform';
import type { RestorationQueryDto } from '../http/costing-queries.dto.js';
import type { RestorationPageDto } from '../http/restoration.dto.js';
import { CHOSEN, chosenValues } from './chosen.js';
import { RESTORATION_FACTS, type RestorationRow, toRestoration } from './restoration-facts.js';

const WHERE = `
WHERE ${CHOSEN} AND ($7::uuid IS NULL OR r.visit_id = $7)
  AND (v.reversed_at IS NULL OR $7::uuid IS NOT NULL)`;

const BY_DATE = `${RESTORATION_FACTS} ${WHERE}
  AND ($8::date IS NULL OR (v.visited_on, r.id) < ($8::date, $9::uuid))
ORDER BY v.visited_on DESC, r.id DESC LIMIT $10`;

const BY_COST = `${RESTORATION_FACTS} ${WHERE}
  AND ($8::numeric IS NULL OR (r.own_cost + r.shared_cost, r.id) < ($8::numeric, $9::uuid))
ORDER BY r.own_cost + r.shared_cost DESC, r.id DESC LIMIT $10`;

/** Restorations with what each cost: the latest, or the dearest, first. */
@Injectable()
export class ListRestorations {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, query: RestorationQueryDto): Promise<RestorationPageDto> {
    const limit = pageLimit(query);
    const byCost = query.sort === 'cost';
    const after = query.cursor === undefined ? [null, null] : decodeCursor(query.cursor, 2);
    const rows = await this.uow.read(actor.practiceId, (tx) =>
      tx.query<RestorationRow>(byCost ? BY_COST : BY_DATE, [
        ...chosenValues(actor.practiceId, query),
        query.visitId ?? null,
        ...after,
        limit + 1,
      ]),
    );
    const page = toPage(
      rows,
      limit,
      (row) => toRestoration(row, actor),
      (row) => [byCost ? row.cost : row.visited_on, row.id],
    );
    return { items: [...page.items], nextCursor: page.nextCursor };
  }
}
