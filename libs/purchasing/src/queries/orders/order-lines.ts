import { formatMoney, money, moneyFromMicro } from '#lib/measure';
import type { Tx } from '#lib/platform';
import {
  CONSUMABLE_COLUMNS,
  type ConsumableColumns,
  microOf,
  moneyText,
  quantityText,
  toConsumable,
} from '#lib/stock';
import { ARRIVED } from '../../db/orders/arrived.js';
import { outstandingOf, surplusOf } from '../../domain/orders/order-life.js';
import type {
  OrderArrivalDto,
  OrderFigureDto,
  OrderLineDto,
  ProposedDto,
} from '../../http/orders/order-answers.dto.js';

const LINES = `
SELECT ol.id, ol.line_number, ol.packs, ol.pack_price, ol.proposed_packs, ol.why, ol.figures,
       ol.cancelled_packs, a.packs AS received, p.id AS presentation_id,
       p.name AS presentation_name, p.containers_per_pack * p.content_per_container AS content,
       p.article_code, p.device_identifier, ${CONSUMABLE_COLUMNS}
FROM order_lines ol
JOIN presentations p ON p.id = ol.presentation_id
JOIN consumables c ON c.id = ol.consumable_id
CROSS JOIN LATERAL (${ARRIVED}) a
WHERE ol.practice_id = $1 AND ol.order_id = $2 ORDER BY ol.line_number`;

const ARRIVALS = `
SELECT l.order_line_id AS line_id, d.id AS delivery_id, l.received_on, l.packs,
       coalesce(l.kit_pack_price, l.pack_price) AS pack_price
FROM layers l
JOIN deliveries d ON d.id = l.delivery_id
JOIN order_lines ol ON ol.id = l.order_line_id AND ol.consumable_id = l.consumable_id
WHERE l.practice_id = $1 AND ol.order_id = $2 AND d.reversed_at IS NULL
ORDER BY l.received_on, d.id, l.line_number`;

interface LineRow extends ConsumableColumns {
  readonly id: string;
  readonly line_number: number;
  readonly packs: number;
  readonly pack_price: string | null;
  readonly proposed_packs: number | null;
  readonly why: string | null;
  readonly figures: OrderFigureDto[] | null;
  readonly cancelled_packs: number;
  readonly received: number;
  readonly presentation_id: string;
  readonly presentation_name: string;
  readonly content: string;
  readonly article_code: string | null;
  readonly device_identifier: string | null;
}

interface ArrivalRow {
  readonly line_id: string;
  readonly delivery_id: string;
  readonly received_on: string;
  readonly packs: number;
  readonly pack_price: string;
}

/** The lines of an order with what came of them. */
export async function loadOrderLines(tx: Tx, orderId: string): Promise<OrderLineDto[]> {
  const rows = await tx.query<LineRow>(LINES, [tx.practiceId, orderId]);
  const arrivals = await tx.query<ArrivalRow>(ARRIVALS, [tx.practiceId, orderId]);
  return rows.map((row) =>
    toLine(
      row,
      arrivals.filter((each) => each.line_id === row.id),
    ),
  );
}

function toLine(row: LineRow, arrivals: readonly ArrivalRow[]): OrderLineDto {
  const now = {
    ...{ id: row.id, packs: row.packs },
    ...{ cancelled: row.cancelled_packs, received: row.received },
  };
  const price = row.pack_price === null ? null : moneyText(row.pack_price);
  return {
    id: row.id,
    lineNumber: row.line_number,
    consumable: toConsumable(row),
    presentation: {
      id: row.presentation_id,
      name: row.presentation_name,
      content: quantityText(row.content),
      articleCode: row.article_code,
      deviceIdentifier: row.device_identifier,
    },
    packs: row.packs,
    packPrice: price,
    total: price === null ? null : lineTotal(price, row.packs),
    proposed: proposedOf(row),
    received: row.received,
    cancelled: row.cancelled_packs,
    outstanding: outstandingOf(now),
    surplus: surplusOf(now),
    arrivals: arrivals.map(toArrival),
  };
}

function lineTotal(price: string, packs: number): string {
  return formatMoney(moneyFromMicro(money(price) * BigInt(packs)));
}

function proposedOf({ proposed_packs, why, figures }: LineRow): ProposedDto | null {
  if (proposed_packs === null) return null;
  return { packs: proposed_packs, sentence: why ?? '', figures: figures ?? [] };
}

function toArrival(row: ArrivalRow): OrderArrivalDto {
  return {
    deliveryId: row.delivery_id,
    receivedOn: row.received_on,
    packs: row.packs,
    packPrice: formatMoney(moneyFromMicro(microOf(row.pack_price))),
  };
}
