import { formatMoney, moneyFromMicro } from '#lib/measure';
import type { IsoDate } from '#lib/platform';
import { instantText, microOf } from '#lib/stock';
import { ARRIVED } from '../../db/orders/arrived.js';
import { daysLate } from '../../domain/orders/order-days.js';
import type { OrderState } from '../../domain/orders/order-life.js';
import type { OrderSummaryDto } from '../../http/orders/order-answers.dto.js';

/** Columns of orders in a list, from `orders o` joined as in ORDER_SOURCES. */
export const ORDER_COLUMNS = `o.id, o.number, o.state, o.freight, o.created_at, o.ordered_on,
  o.expected_on, s.id AS supplier_id, s.name AS supplier_name, n.line_count, n.goods, n.unpriced,
  n.outstanding_lines, n.begun_lines`;

export const ORDER_SOURCES = `orders o
JOIN suppliers s ON s.id = o.supplier_id
CROSS JOIN LATERAL (
  SELECT count(*)::int AS line_count,
         coalesce(sum(ol.packs * ol.pack_price), 0) AS goods,
         count(*) FILTER (WHERE ol.pack_price IS NULL)::int AS unpriced,
         count(*) FILTER (WHERE ol.packs - ol.cancelled_packs - a.packs > 0)::int
           AS outstanding_lines,
         count(*) FILTER (WHERE a.packs > 0)::int AS begun_lines
  FROM order_lines ol
  JOIN presentations p ON p.id = ol.presentation_id
  CROSS JOIN LATERAL (${ARRIVED}) a
  WHERE ol.order_id = o.id
) n`;

export interface OrderSummaryRow {
  readonly id: string;
  readonly number: number;
  readonly state: OrderState;
  readonly freight: string;
  readonly created_at: Date;
  readonly ordered_on: string | null;
  readonly expected_on: string | null;
  readonly supplier_id: string;
  readonly supplier_name: string;
  readonly line_count: number;
  readonly goods: string;
  readonly unpriced: number;
  readonly outstanding_lines: number;
  readonly begun_lines: number;
}

export interface SummaryTerms {
  readonly currency: string;
  readonly today: IsoDate;
  readonly lateAfterDays: number;
}

export function toSummary(row: OrderSummaryRow, terms: SummaryTerms): OrderSummaryDto {
  const sent = row.state === 'sent' && row.expected_on !== null;
  return {
    id: row.id,
    number: row.number,
    state: row.state,
    arrival: arrivalOf(row),
    supplier: { id: row.supplier_id, name: row.supplier_name },
    total: formatMoney(moneyFromMicro(microOf(row.goods) + microOf(row.freight))),
    currency: terms.currency,
    lineCount: row.line_count,
    outstandingLines: row.state === 'sent' ? row.outstanding_lines : 0,
    createdAt: instantText(row.created_at),
    orderedOn: row.ordered_on,
    expectedOn: row.expected_on,
    daysLate: sent ? daysLate(row.expected_on, terms.today, terms.lateAfterDays) : null,
  };
}

function arrivalOf({ begun_lines, outstanding_lines }: OrderSummaryRow) {
  if (begun_lines === 0) return 'nothing yet';
  return outstanding_lines === 0 ? 'in full' : 'in part';
}
