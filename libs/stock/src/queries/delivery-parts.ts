import type { Tx } from '#lib/platform';
import type { DeliveryFaultDto, DeliveryInvoiceDto } from '../http/stock-reads.dto.js';
import { CONSUMABLE_COLUMNS, type ConsumableColumns, toConsumable } from './consumable-ref.js';
import { instantText, moneyText } from './wire.js';

const FAULTS = `
SELECT f.id, f.kind, f.presentation_id, q.name AS presentation_name, f.packs, f.lot_number,
       f.order_line_id, f.note, ${CONSUMABLE_COLUMNS}
FROM delivery_faults f
JOIN presentations q ON q.id = f.presentation_id
JOIN consumables c ON c.id = q.consumable_id
WHERE f.practice_id = $1 AND f.delivery_id = $2
ORDER BY f.position`;

interface FaultRow extends ConsumableColumns {
  readonly id: string;
  readonly kind: string;
  readonly presentation_id: string;
  readonly presentation_name: string;
  readonly packs: number;
  readonly lot_number: string | null;
  readonly order_line_id: string | null;
  readonly note: string | null;
}

/** What came damaged or not at all. */
export async function readFaults(tx: Tx, deliveryId: string): Promise<DeliveryFaultDto[]> {
  const rows = await tx.query<FaultRow>(FAULTS, [tx.practiceId, deliveryId]);
  return rows.map((row) => ({
    id: row.id,
    kind: row.kind,
    presentationId: row.presentation_id,
    presentationName: row.presentation_name,
    consumable: toConsumable(row),
    packs: row.packs,
    lotNumber: row.lot_number,
    orderLineId: row.order_line_id,
    note: row.note,
  }));
}

const INVOICES = `
SELECT i.id, i.reference, i.landed_before, i.landed_total, i.recorded_at, i.recorded_by,
       p.display_name,
       (SELECT coalesce(sum(v.amount), 0) FROM price_variances v WHERE v.invoice_id = i.id) AS variance
FROM delivery_invoices i JOIN people p ON p.id = i.recorded_by
WHERE i.practice_id = $1 AND i.delivery_id = $2
ORDER BY i.recorded_at, i.id`;

interface InvoiceRow {
  readonly id: string;
  readonly reference: string | null;
  readonly landed_before: string;
  readonly landed_total: string;
  readonly recorded_at: Date;
  readonly recorded_by: string;
  readonly display_name: string;
  readonly variance: string;
}

/** Invoices that came after the goods. */
export async function readInvoices(tx: Tx, deliveryId: string): Promise<DeliveryInvoiceDto[]> {
  const rows = await tx.query<InvoiceRow>(INVOICES, [tx.practiceId, deliveryId]);
  return rows.map((row) => ({
    id: row.id,
    reference: row.reference,
    landedBefore: moneyText(row.landed_before),
    landedTotal: moneyText(row.landed_total),
    priceVariance: moneyText(row.variance),
    recordedAt: instantText(row.recorded_at),
    recordedBy: { id: row.recorded_by, name: row.display_name },
  }));
}
