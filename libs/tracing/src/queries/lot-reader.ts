import { Injectable } from '@nestjs/common';
import {
  type Actor,
  decodeCursor,
  pageLimit,
  refuse,
  type Tx,
  toPage,
  UnitOfWork,
} from '#lib/platform';
import {
  BALANCE_COLUMNS,
  type BalanceColumns,
  CONSUMABLE_COLUMNS,
  type ConsumableColumns,
  instantText,
  LOT_COLUMNS,
  type LotColumns,
  quantityText,
  toConsumable,
  toMassBalance,
} from '#lib/stock';
import type {
  LotDto,
  LotPageDto,
  LotStatusChangeDto,
  LotSummaryDto,
  TracedLayerDto,
} from '../http/lot.dto.js';
import type { LotQueryDto } from '../http/trace-queries.dto.js';

import { correctionsOfLot, damagedPacks, kitsOfLot } from './lot-relations.js';

const LOTS = `
SELECT ${LOT_COLUMNS}, ${CONSUMABLE_COLUMNS}, coalesce(lower(t.lot_number), '') AS number_key,
       coalesce(y.received, 0) AS received, coalesce(y.on_hand, 0) AS on_hand, y.first_received_on
FROM lots t
JOIN consumables c ON c.id = t.consumable_id
CROSS JOIN LATERAL (
  -- What never was, or goes on under another lot, was not received as this one.
  SELECT sum(CASE WHEN l.undone THEN 0
           WHEN EXISTS (SELECT FROM layers n WHERE n.continues_layer_id = l.id)
           THEN (SELECT b.received FROM layer_balances b WHERE b.layer_id = l.id)
           ELSE l.received END) AS received, sum(l.received - l.out_quantity) AS on_hand,
         min(l.received_on) AS first_received_on
  FROM layers l JOIN deliveries d ON d.id = l.delivery_id
  WHERE l.lot_id = t.id AND d.reversed_at IS NULL
) y
WHERE t.practice_id = $1`;

const LIST = `${LOTS}
  AND ($2::text IS NULL OR lower(t.lot_number) = lower($2) OR t.id IN (
    SELECT l.lot_id FROM kit_lots k JOIN layers l ON l.kit_lot_id = k.id
    WHERE k.practice_id = $1 AND lower(k.lot_number) = lower($2)))
  AND ($3::text IS NULL OR starts_with(lower(t.lot_number), lower($3)) OR t.id IN (
    SELECT l.lot_id FROM kit_lots k JOIN layers l ON l.kit_lot_id = k.id
    WHERE k.practice_id = $1 AND starts_with(lower(k.lot_number), lower($3))))
  AND ($4::uuid IS NULL OR t.consumable_id = $4)
  AND ($5::text IS NULL OR (coalesce(lower(t.lot_number), ''), t.id) > ($5::text, $6::uuid))
ORDER BY number_key, t.id LIMIT $7`;

interface LotRow extends LotColumns, ConsumableColumns {
  readonly number_key: string;
  readonly received: string;
  readonly on_hand: string;
  readonly first_received_on: string | null;
}

const LAYERS = `
SELECT l.id AS layer_id, l.delivery_id, d.reference, d.received_on, l.line_number, d.supplier_id,
       s.name AS supplier_name, q.name AS presentation_name, d.reversed_at IS NOT NULL AS reversed,
       ${BALANCE_COLUMNS}
FROM layers l
JOIN layer_balances b ON b.layer_id = l.id
JOIN deliveries d ON d.id = l.delivery_id
JOIN suppliers s ON s.id = d.supplier_id
JOIN presentations q ON q.id = l.presentation_id
WHERE l.practice_id = $1 AND l.lot_id = $2
ORDER BY d.received_on, l.id`;

interface LayerRow extends BalanceColumns {
  readonly layer_id: string;
  readonly delivery_id: string;
  readonly reference: string | null;
  readonly received_on: string;
  readonly line_number: number;
  readonly supplier_id: string;
  readonly supplier_name: string;
  readonly presentation_name: string;
  readonly reversed: boolean;
}

const CHANGES = `
SELECT s.status, s.note, s.recorded_by, p.display_name AS recorded_by_name, s.recorded_at
FROM lot_status_changes s JOIN people p ON p.id = s.recorded_by
WHERE s.practice_id = $1 AND s.lot_id = $2 ORDER BY s.recorded_at, s.id`;

interface ChangeRow {
  readonly status: string;
  readonly note: string;
  readonly recorded_by: string;
  readonly recorded_by_name: string;
  readonly recorded_at: Date;
}

/** Lots by number (their own, or that of a kit they came in), and one lot with its deliveries and its holds. */
@Injectable()
export class LotReader {
  constructor(private readonly uow: UnitOfWork) {}

  async list(actor: Actor, query: LotQueryDto): Promise<LotPageDto> {
    const limit = pageLimit(query);
    const after = query.cursor === undefined ? [null, null] : decodeCursor(query.cursor, 2);
    const number = query.number?.trim();
    return this.uow.read(actor.practiceId, async (tx) => {
      const rows = await tx.query<LotRow>(LIST, [
        actor.practiceId,
        number ?? null,
        query.q?.trim() ?? null,
        query.consumableId ?? null,
        ...after,
        limit + 1,
      ]);
      const page = toPage(rows, limit, toSummary, (row) => [row.number_key, row.lot_id]);
      const damaged = number === undefined ? [] : await damagedPacks(tx, number);
      return { items: [...page.items], damaged, nextCursor: page.nextCursor };
    });
  }

  async get(actor: Actor, id: string): Promise<LotDto> {
    return this.uow.read(actor.practiceId, (tx) => readLot(tx, actor.practiceId, id));
  }
}

export async function readLot(tx: Tx, practiceId: string, id: string): Promise<LotDto> {
  const [lot] = await tx.query<LotRow>(`${LOTS} AND t.id = $2`, [practiceId, id]);
  if (!lot) throw refuse('not_found', 'There is no lot with this id.');
  const layers = await tx.query<LayerRow>(LAYERS, [practiceId, id]);
  const changes = await tx.query<ChangeRow>(CHANGES, [practiceId, id]);
  return {
    ...toSummary(lot),
    layers: layers.map(toLayer),
    statusChanges: changes.map(toChange),
    kits: await kitsOfLot(tx, id),
    corrections: await correctionsOfLot(tx, id),
  };
}

function toSummary(row: LotRow): LotSummaryDto {
  return {
    id: row.lot_id,
    lotNumber: row.lot_number,
    labelExpiry: row.lot_expires_on,
    status: row.lot_status,
    consumable: toConsumable(row),
    received: quantityText(row.received),
    onHand: quantityText(row.on_hand),
    firstReceivedOn: row.first_received_on,
  };
}

function toLayer(row: LayerRow): TracedLayerDto {
  return {
    id: row.delivery_id,
    reference: row.reference,
    receivedOn: row.received_on,
    lineNumber: row.line_number,
    layerId: row.layer_id,
    supplier: { id: row.supplier_id, name: row.supplier_name },
    presentationName: row.presentation_name,
    reversed: row.reversed,
    mass: toMassBalance(row),
  };
}

function toChange(row: ChangeRow): LotStatusChangeDto {
  return {
    status: row.status,
    note: row.note,
    recordedBy: { id: row.recorded_by, name: row.recorded_by_name },
    recordedAt: instantText(row.recorded_at),
  };
}
