import { Injectable } from '@nestjs/common';
import { type Actor, decodeCursor, pageLimit, refuse, toPage, UnitOfWork } from '#lib/platform';
import { kindOfMovement, sideInWords } from '../domain/movement-words.js';
import type { MovementDto, MovementPageDto, MovementSideDto } from '../http/movement.dto.js';
import type { MovementQueryDto } from '../http/stock-queries.dto.js';
import {
  CONSUMABLE_COLUMNS,
  type ConsumableColumns,
  LOT_COLUMNS,
  type LotColumns,
  toConsumable,
  toLot,
} from './consumable-ref.js';
import { instantText, moneyText, quantityText } from './wire.js';

// Names are looked up for the rows of a page, after they were chosen: joins cost more to plan.
const MOVEMENTS = `
SELECT m.id, m.sequence, m.occurred_on, m.layer_id, m.from_account, m.to_account,
       m.from_holding_id, m.from_location_id, m.to_holding_id, m.to_location_id,
       m.quantity, m.cost, m.sureness, m.out_of_order, m.waste_reason, m.note, m.visit_id,
       m.usage_line_id, m.shortfall_id, m.reverses_id, m.recorded_at, m.recorded_by,
       (SELECT r.id FROM movements r WHERE r.reverses_id = m.id ORDER BY r.sequence LIMIT 1)
         AS reversed_by_id,
       (SELECT p.display_name FROM people p WHERE p.id = m.recorded_by) AS recorded_by_name,
       (SELECT s.name FROM deliveries d JOIN suppliers s ON s.id = d.supplier_id
        WHERE d.id = l.delivery_id) AS supplier_name,
       (SELECT v.visited_on FROM visits v WHERE v.id = m.visit_id) AS visited_on,
       (SELECT o.name FROM locations o WHERE o.id = m.from_location_id) AS from_location,
       (SELECT o.name FROM locations o WHERE o.id = m.to_location_id) AS to_location,
       (SELECT h.opened_on FROM holdings h WHERE h.id = m.from_holding_id) IS NOT NULL
         AS from_opened,
       (SELECT h.opened_on FROM holdings h WHERE h.id = m.to_holding_id) IS NOT NULL AS to_opened,
       ${CONSUMABLE_COLUMNS}, ${LOT_COLUMNS}
FROM movements m
JOIN layers l ON l.id = m.layer_id
JOIN lots t ON t.id = l.lot_id
JOIN consumables c ON c.id = l.consumable_id
WHERE m.practice_id = $1`;

interface MovementRow extends ConsumableColumns, LotColumns {
  readonly id: string;
  readonly sequence: string;
  readonly occurred_on: string;
  readonly layer_id: string;
  readonly from_account: string;
  readonly to_account: string;
  readonly from_holding_id: string | null;
  readonly from_location_id: string | null;
  readonly to_holding_id: string | null;
  readonly to_location_id: string | null;
  readonly quantity: string;
  readonly cost: string;
  readonly sureness: string | null;
  readonly out_of_order: boolean;
  readonly waste_reason: string | null;
  readonly note: string | null;
  readonly visit_id: string | null;
  readonly usage_line_id: string | null;
  readonly shortfall_id: string | null;
  readonly reverses_id: string | null;
  readonly reversed_by_id: string | null;
  readonly recorded_at: Date;
  readonly recorded_by: string;
  readonly recorded_by_name: string;
  readonly supplier_name: string;
  readonly visited_on: string | null;
  readonly from_location: string | null;
  readonly to_location: string | null;
  readonly from_opened: boolean;
  readonly to_opened: boolean;
}

/** The conditions of a question; only those asked for, so that each can use its index. */
function conditions(query: MovementQueryDto): { sql: string; values: unknown[] } {
  const values: unknown[] = [];
  const parts: string[] = [];
  const add = (sql: string, value: unknown): void => {
    if (value === undefined) return;
    values.push(value);
    parts.push(sql.replaceAll('?', `$${values.length + 1}`)); // $1 is the practice
  };
  add('m.layer_id = ?', query.layerId);
  add('m.visit_id = ?', query.visitId);
  add('l.consumable_id = ?', query.consumableId);
  add('l.lot_id = ?', query.lotId);
  add('? IN (m.from_account, m.to_account)', query.account);
  add('m.occurred_on >= ?::date', query.from);
  add('m.occurred_on <= ?::date', query.to);
  if (query.cursor !== undefined) {
    const [sequence] = decodeCursor(query.cursor, 1);
    add('m.sequence < ?::bigint', sequence);
  }
  return { sql: parts.map((part) => ` AND ${part}`).join(''), values };
}

/** The ledger, newest entry first. */
@Injectable()
export class MovementReader {
  constructor(private readonly uow: UnitOfWork) {}

  async list(actor: Actor, query: MovementQueryDto): Promise<MovementPageDto> {
    const limit = pageLimit(query);
    const { sql, values } = conditions(query);
    const text = `${MOVEMENTS}${sql} ORDER BY m.sequence DESC LIMIT $${values.length + 2}`;
    const rows = await this.uow.read(actor.practiceId, (tx) =>
      tx.query<MovementRow>(text, [actor.practiceId, ...values, limit + 1]),
    );
    const page = toPage(rows, limit, toMovement, (row) => [row.sequence]);
    return { items: [...page.items], nextCursor: page.nextCursor };
  }

  async get(actor: Actor, id: string): Promise<MovementDto> {
    const [row] = await this.uow.read(actor.practiceId, (tx) =>
      tx.query<MovementRow>(`${MOVEMENTS} AND m.id = $2`, [actor.practiceId, id]),
    );
    if (!row) throw refuse('not_found', 'There is no movement with this id.');
    return toMovement(row);
  }
}

function toMovement(row: MovementRow): MovementDto {
  return {
    id: row.id,
    kind: kindOfMovement({
      from: row.from_account,
      to: row.to_account,
      fromOpened: row.from_opened,
      toOpened: row.to_opened,
      reverses: row.reverses_id !== null,
    }),
    occurredOn: row.occurred_on,
    layerId: row.layer_id,
    consumable: toConsumable(row),
    lot: toLot(row),
    from: toSide(row, 'from'),
    to: toSide(row, 'to'),
    quantity: quantityText(row.quantity),
    cost: moneyText(row.cost),
    sureness: row.sureness,
    outOfOrder: row.out_of_order,
    wasteReason: row.waste_reason,
    note: row.note,
    visitId: row.visit_id,
    usageLineId: row.usage_line_id,
    shortfallId: row.shortfall_id,
    reversesId: row.reverses_id,
    reversedById: row.reversed_by_id,
    recordedBy: { id: row.recorded_by, name: row.recorded_by_name },
    recordedAt: instantText(row.recorded_at),
  };
}

function toSide(row: MovementRow, side: 'from' | 'to'): MovementSideDto {
  const account = row[`${side}_account`];
  return {
    account,
    words: sideInWords({
      account,
      locationName: row[`${side}_location`],
      opened: row[`${side}_opened`],
      supplierName: row.supplier_name,
      visitedOn: row.visited_on,
      wasteReason: row.waste_reason,
    }),
    holdingId: row[`${side}_holding_id`],
    locationId: row[`${side}_location_id`],
  };
}
