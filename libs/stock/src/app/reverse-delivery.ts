import { Injectable } from '@nestjs/common';
import {
  type Actor,
  type Claimed,
  Clock,
  refuse,
  StartAgain,
  type Tx,
  UnitOfWork,
} from '#lib/platform';
import { lockConsumables } from '../db/lock-candidates.js';
import { isPartGone } from '../db/reversed-deliveries.js';
import { applyStockChanges, type StockChanges } from '../db/stock-changes.js';
import type { ReversalDto } from '../http/stock.dto.js';
import type { DeliveryDto } from '../http/stock-reads.dto.js';
import { DeliveryReader } from '../queries/delivery-reader.js';
import { refuseStock } from '../stock.refusals.js';
import {
  counterMovements,
  type MovementRow,
  movementColumns,
  NOT_REVERSED,
} from './counter-movements.js';
import { DeliveryChecks } from './delivery-checks.js';
import { StockArrivals } from './stock-arrivals.js';

/** Undoes a delivery that was booked wrongly, as long as all of it is still where it was put. */
@Injectable()
export class ReverseDelivery {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly reader: DeliveryReader,
    private readonly arrivals: StockArrivals,
    private readonly checks: DeliveryChecks,
  ) {}

  async run(
    actor: Actor,
    key: string,
    deliveryId: string,
    command: ReversalDto,
  ): Promise<Claimed<DeliveryDto>> {
    const operation = `POST /api/deliveries/${deliveryId}/reversal`;
    return this.uow.runOnce({ actor, key, operation, body: command }, (tx) =>
      this.reverse(tx, actor, deliveryId, command),
    );
  }

  private async reverse(
    tx: Tx,
    actor: Actor,
    id: string,
    command: ReversalDto,
  ): Promise<DeliveryDto> {
    const brought = await broughtBy(tx, id);
    await lockConsumables(tx, brought);
    const [delivery] = await tx.query<{ reversed_at: Date | null }>(
      'SELECT reversed_at FROM deliveries WHERE id = $1 FOR NO KEY UPDATE',
      [id],
    );
    if (!delivery) throw refuse('not_found', 'There is no delivery with this id.');
    if (delivery.reversed_at) {
      throw refuseStock('already_reversed', 'This delivery was reversed before.');
    }
    // A correction may have brought another consumable while this waited: its stock is not locked.
    if ((await broughtBy(tx, id)).some((other) => !brought.includes(other))) {
      throw new StartAgain('The delivery was corrected at the same moment');
    }
    const day = this.clock.today(actor.timeZone);
    await this.arrivals.withdraw(tx, actor, { deliveryId: id, day, note: command.note });
    const rows = await tx.query<MovementRow>(BROUGHT_AND_OPENED, [id]);
    const changes = await counterMovements(tx, rows, day, command.note);
    await refuseWhenPartStays(tx, id, changes);
    await applyStockChanges(tx, actor.personId, changes);
    await tx.query(
      `UPDATE deliveries SET reversed_at = $2, reversed_by = $3, reversal_note = $4 WHERE id = $1`,
      [id, this.clock.now(), actor.personId, command.note],
    );
    await this.arrivals.announce(tx, actor, brought);
    await this.checks.changed(tx, actor, await answeredOrderLines(tx, id));
    return this.reader.get(tx, actor, id);
  }
}

async function answeredOrderLines(tx: Tx, deliveryId: string): Promise<string[]> {
  const rows = await tx.query<{ order_line_id: string }>(
    `SELECT DISTINCT order_line_id FROM layers
     WHERE delivery_id = $1 AND order_line_id IS NOT NULL`,
    [deliveryId],
  );
  return rows.map((row) => row.order_line_id);
}

/** All of it must go: nothing used, and nothing left of lines that were corrected. */
async function refuseWhenPartStays(tx: Tx, id: string, changes: StockChanges): Promise<void> {
  const left = await tx.query<{ id: string }>(
    'SELECT id FROM layers WHERE delivery_id = $1 AND out_quantity < received',
    [id],
  );
  const stays = left.some((layer) => {
    const after = changes.layers.get(layer.id);
    return after === undefined || after.outQuantity < after.received;
  });
  if (!stays && !(await isPartGone(tx, id))) return;
  throw refuseStock(
    'stock_moved_on',
    'Part of these goods was used, thrown away, returned or counted since. Reverse that first.',
  );
}

async function broughtBy(tx: Tx, deliveryId: string): Promise<string[]> {
  const rows = await tx.query<{ consumable_id: string }>(
    'SELECT DISTINCT consumable_id FROM layers WHERE delivery_id = $1',
    [deliveryId],
  );
  return rows.map((row) => row.consumable_id);
}

// What the delivery brought, less what corrections of its lines took back; and containers that were
// opened since and are still full.
const BROUGHT_AND_OPENED = `
SELECT ${movementColumns('m.quantity - b.quantity')}
FROM movements m
JOIN layers l ON l.id = m.layer_id
LEFT JOIN holdings h ON h.id = m.to_holding_id
CROSS JOIN LATERAL (
  SELECT coalesce(sum(r.quantity), 0) AS quantity FROM movements r
  WHERE m.from_account = 'supplier' AND r.reverses_id = m.id) b
WHERE l.delivery_id = $1 AND m.reverses_id IS NULL AND b.quantity < m.quantity
  AND (m.from_account = 'supplier'
    OR (${NOT_REVERSED} AND m.from_account = 'location' AND m.to_account = 'location'
      AND m.from_holding_id <> m.to_holding_id AND h.opened_on IS NOT NULL
      AND h.on_hand = m.quantity))
ORDER BY m.sequence`;
