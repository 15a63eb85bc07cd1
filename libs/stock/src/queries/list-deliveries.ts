import { Injectable } from '@nestjs/common';
import { type Actor, decodeCursor, pageLimit, toPage, UnitOfWork } from '#lib/platform';
import type { DeliveryQueryDto } from '../http/stock-queries.dto.js';
import type { DeliveryDto, DeliveryPageDto } from '../http/stock-reads.dto.js';
import { containing } from './consumable-ref.js';
import {
  DELIVERY_COLUMNS,
  DeliveryReader,
  type DeliveryRow,
  toSummary,
} from './delivery-reader.js';

const LIST = `
SELECT ${DELIVERY_COLUMNS}
FROM deliveries d JOIN suppliers s ON s.id = d.supplier_id
WHERE d.practice_id = $1
  AND ($2::uuid IS NULL OR d.supplier_id = $2)
  AND ($3::date IS NULL OR d.received_on >= $3)
  AND ($4::date IS NULL OR d.received_on <= $4)
  AND ($5::text IS NULL OR lower(d.reference) LIKE $5)
  AND ($6::date IS NULL OR (d.received_on, d.id) < ($6::date, $7::uuid))
ORDER BY d.received_on DESC, d.id DESC
LIMIT $8`;

/** Deliveries, the latest first; and one of them with its lines. */
@Injectable()
export class ListDeliveries {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly reader: DeliveryReader,
  ) {}

  async run(actor: Actor, query: DeliveryQueryDto): Promise<DeliveryPageDto> {
    const limit = pageLimit(query);
    const after = query.cursor === undefined ? [null, null] : decodeCursor(query.cursor, 2);
    const rows = await this.uow.read(actor.practiceId, (tx) =>
      tx.query<DeliveryRow>(LIST, [
        actor.practiceId,
        query.supplierId ?? null,
        query.from ?? null,
        query.to ?? null,
        containing(query.q),
        ...after,
        limit + 1,
      ]),
    );
    const page = toPage(rows, limit, toSummary, (row) => [row.received_on, row.id]);
    return { items: [...page.items], nextCursor: page.nextCursor };
  }

  async get(actor: Actor, id: string): Promise<DeliveryDto> {
    return this.uow.read(actor.practiceId, (tx) => this.reader.get(tx, actor, id));
  }
}
