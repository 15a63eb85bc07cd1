import { Injectable } from '@nestjs/common';
import { formatMoney, moneyFromMicro } from '#lib/measure';
import { type Actor, Clock, UnitOfWork } from '#lib/platform';
import {
  CONSUMABLE_COLUMNS,
  type ConsumableColumns,
  microOf,
  moneyText,
  toConsumable,
} from '#lib/stock';
import { periodOf } from '../domain/period.js';
import type { PriceChangeQueryDto } from '../http/costing-queries.dto.js';
import type { PriceVariancesDto } from '../http/price-variance.dto.js';

// What came back of it is in the same row, so that a reversed visit leaves no variance behind.
const ROWS = `
SELECT to_char(v.booked_on, 'YYYY-MM') AS month, v.delivery_id, d.reference, s.name AS supplier_name,
       d.received_on, sum(v.amount) AS amount, sum(v.to_stock) AS to_stock, ${CONSUMABLE_COLUMNS}
FROM price_variances v
JOIN deliveries d ON d.id = v.delivery_id
JOIN suppliers s ON s.id = d.supplier_id
JOIN consumables c ON c.id = v.consumable_id
WHERE v.practice_id = $1 AND v.booked_on BETWEEN $2 AND $3 AND ($4::uuid IS NULL OR c.id = $4)
GROUP BY 1, 2, 3, 4, 5, c.id
ORDER BY 1 DESC, c.name, d.received_on, v.delivery_id`;

interface Row extends ConsumableColumns {
  readonly month: string;
  readonly delivery_id: string;
  readonly reference: string | null;
  readonly supplier_name: string;
  readonly received_on: string;
  readonly amount: string;
  readonly to_stock: string;
}

/** Price variance: the part of later invoices that fell on what had left, by month and consumable. */
@Injectable()
export class ReportPriceVariances {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async run(actor: Actor, query: PriceChangeQueryDto): Promise<PriceVariancesDto> {
    const period = periodOf(query, this.clock.today(actor.timeZone));
    const rows = await this.uow.read(actor.practiceId, (tx) =>
      tx.query<Row>(ROWS, [actor.practiceId, period.from, period.to, query.consumableId ?? null]),
    );
    const total = (of: (row: Row) => string) =>
      formatMoney(moneyFromMicro(rows.reduce((sum, row) => sum + microOf(of(row)), 0n)));
    return {
      currency: actor.currency,
      ...period,
      amount: total((row) => row.amount),
      toStock: total((row) => row.to_stock),
      rows: rows.map((row) => ({
        month: row.month,
        consumable: toConsumable(row),
        deliveryId: row.delivery_id,
        deliveryReference: row.reference,
        supplierName: row.supplier_name,
        receivedOn: row.received_on,
        amount: moneyText(row.amount),
        toStock: moneyText(row.to_stock),
      })),
    };
  }
}
