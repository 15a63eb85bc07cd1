import { Injectable } from '@nestjs/common';
import { type Actor, decodeCursor, pageLimit, toPage, UnitOfWork } from '#lib/platform';
import type { ShortfallDto, ShortfallPageDto } from '../http/stock-answers.dto.js';
import type { ShortfallQueryDto } from '../http/stock-queries.dto.js';
import {
  CONSUMABLE_COLUMNS,
  type ConsumableColumns,
  toConsumable,
  toPlace,
} from './consumable-ref.js';
import { moneyText, quantityText } from './wire.js';

const LIST = `
SELECT f.id, f.visit_id, f.usage_line_id, f.used_on, f.location_id, o.name AS location_name,
       f.quantity, f.settled, f.cost_known, f.cancelled_at IS NOT NULL AS cancelled,
       x.open, round(x.open * f.unit_cost, 6) AS estimated_cost,
       t.id AS lot_id, t.lot_number, t.expires_on AS lot_expires_on, t.status AS lot_status,
       ${CONSUMABLE_COLUMNS}
FROM shortfalls f
CROSS JOIN LATERAL (
  SELECT CASE WHEN f.cancelled_at IS NULL THEN f.quantity - f.settled ELSE 0 END AS open
) x
JOIN consumables c ON c.id = f.consumable_id
JOIN locations o ON o.id = f.location_id
LEFT JOIN lots t ON t.id = f.lot_id
WHERE f.practice_id = $1
  AND ($2::boolean IS NULL OR (x.open > 0) = $2)
  AND ($3::uuid IS NULL OR f.consumable_id = $3)
  AND ($4::uuid IS NULL OR f.visit_id = $4)
  AND ($5::date IS NULL OR (f.used_on, f.id) > ($5::date, $6::uuid))
ORDER BY f.used_on, f.id
LIMIT $7`;

interface ShortfallRow extends ConsumableColumns {
  readonly id: string;
  readonly visit_id: string;
  readonly usage_line_id: string;
  readonly used_on: string;
  readonly location_id: string;
  readonly location_name: string;
  readonly quantity: string;
  readonly settled: string;
  readonly cost_known: boolean;
  readonly cancelled: boolean;
  readonly open: string;
  readonly estimated_cost: string;
  readonly lot_id: string | null;
  readonly lot_number: string | null;
  readonly lot_expires_on: string | null;
  readonly lot_status: string | null;
}

/** What visits used that the book had no stock for, the oldest first. */
@Injectable()
export class ListShortfalls {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, query: ShortfallQueryDto): Promise<ShortfallPageDto> {
    const limit = pageLimit(query);
    const after = query.cursor === undefined ? [null, null] : decodeCursor(query.cursor, 2);
    const rows = await this.uow.read(actor.practiceId, (tx) =>
      tx.query<ShortfallRow>(LIST, [
        actor.practiceId,
        query.open === undefined ? null : query.open === 'true',
        query.consumableId ?? null,
        query.visitId ?? null,
        ...after,
        limit + 1,
      ]),
    );
    const page = toPage(rows, limit, toShortfall, (row) => [row.used_on, row.id]);
    return { items: [...page.items], nextCursor: page.nextCursor };
  }
}

function toShortfall(row: ShortfallRow): ShortfallDto {
  const lot =
    row.lot_id === null
      ? null
      : {
          id: row.lot_id,
          lotNumber: row.lot_number,
          labelExpiry: row.lot_expires_on,
          status: row.lot_status ?? 'released',
        };
  return {
    id: row.id,
    visitId: row.visit_id,
    usageLineId: row.usage_line_id,
    usedOn: row.used_on,
    consumable: toConsumable(row),
    location: toPlace(row.location_id, row.location_name),
    lot,
    quantity: quantityText(row.quantity),
    settled: quantityText(row.settled),
    open: quantityText(row.open),
    estimatedCost: moneyText(row.estimated_cost),
    costKnown: row.cost_known,
    cancelled: row.cancelled,
  };
}
