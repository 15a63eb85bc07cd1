import { formatMoney, moneyFromMicro, quantity, ZERO_MONEY } from '#lib/measure';
import { type Actor, newId, refuse, type Tx } from '#lib/platform';
import { insertLayers } from '../db/delivery.repository.js';
import { nextLineNumber } from '../db/delivery-lines.js';
import { insertLots } from '../db/lots.js';
import { applyStockChanges } from '../db/stock-changes.js';
import type { PlannedLine } from '../domain/plan-lines.js';
import { refuseStock } from '../stock.refusals.js';
import type { Correction } from './correction.js';
import { counterMovements, type MovementRow, movementColumns } from './counter-movements.js';
import type { DeliveryChecks } from './delivery-checks.js';
import { writeTotals } from './invoice-delivery.js';
import { prepareDelivery, refuseTooMuch } from './prepare-delivery.js';
import { receiptChanges } from './receive-delivery.js';
import type { StockArrivals } from './stock-arrivals.js';

interface Tellers {
  readonly arrivals: StockArrivals;
  readonly checks: DeliveryChecks;
}

/**
 * Undoes a line as if it had never been and books another in its place, with the same part of freight,
 * duty and discount. Only while nothing of the wrong line was used, opened or carried elsewhere. Answers
 * the number of the new line.
 */
export async function replaceLine(
  tx: Tx,
  actor: Actor,
  the: Correction,
  tell: Tellers,
): Promise<number> {
  const { delivery, wrong, right, day } = the;
  if (wrong.kit !== null || wrong.continuesId !== null) {
    const what = wrong.kit === null ? 'continues an earlier line' : 'came in a kit';
    throw refuseStock(
      'cannot_reverse',
      `This line ${what}: only its lot, expiry or price can be corrected on its own.`,
    );
  }
  const planned = await planRight(tx, actor, the);
  const { deliveryId, layerId } = wrong;
  await tell.arrivals.withdraw(tx, actor, { deliveryId, layerId, day, note: right.note });
  await undo(tx, actor, the);
  const [lot] = await insertLots(tx, [{ ...planned, field: '' }]);
  if (!lot) throw new Error('A lot just written is missing');
  const goods = planned.packPrice * BigInt(planned.packs);
  const was = wrong.packPrice * BigInt(wrong.packs);
  const landedCost = moneyFromMicro(wrong.sample ? ZERO_MONEY : goods + wrong.landedCost - was);
  if (landedCost < 0n) {
    const part = formatMoney(moneyFromMicro(was - wrong.landedCost));
    throw discountTooLarge(`Its part of the discount, ${part}, is more than this line costs.`);
  }
  const goodsTotal = moneyFromMicro(delivery.goodsTotal + goods - was);
  const landedTotal = moneyFromMicro(delivery.landedTotal + landedCost - wrong.landedCost);
  if (delivery.discount > goodsTotal) {
    const [all, given] = [goodsTotal, delivery.discount].map((each) => formatMoney(each));
    throw discountTooLarge(
      `The goods of this delivery would cost ${all}, its discount is ${given}.`,
    );
  }
  refuseTooMuch({ goodsTotal, landedTotal });
  // Another product does not answer what was ordered.
  const same = planned.consumableId === wrong.consumableId;
  const line = {
    ...planned,
    ...{ layerId: newId(), holdingId: newId(), lotId: lot.id, lotStatus: lot.status, landedCost },
    ...{ lineNumber: await nextLineNumber(tx, delivery.id), kitLotId: null, kitLine: null },
    orderLineId: same ? wrong.orderLineId : null,
    weight: wrong.weight,
    correction: { continues: null, replaces: wrong.layerId, note: right.note },
  };
  await insertLayers(tx, delivery.id, delivery.receivedOn, [line]);
  await applyStockChanges(tx, actor.personId, receiptChanges([line], delivery.receivedOn));
  const { freight, duty, discount } = delivery;
  await writeTotals(tx, delivery.id, {
    ...{ freight, duty, discount, goodsTotal, landedTotal },
  });
  if (!same) await tell.arrivals.announce(tx, actor, [planned.consumableId]);
  if (wrong.orderLineId !== null) await tell.checks.changed(tx, actor, [wrong.orderLineId]);
  return line.lineNumber;
}

function discountTooLarge(sentence: string) {
  return refuseStock('discount_too_large', sentence, [
    { field: 'packPrice', message: 'is less than the discount that was given' },
  ]);
}

/** The right line, checked as if it were delivered alone. */
async function planRight(tx: Tx, actor: Actor, the: Correction): Promise<PlannedLine> {
  const { wrong, right, delivery } = the;
  const { presentationId, packs, packPrice, locationId } = right;
  const prepared = await prepareDelivery(tx, actor, {
    supplierId: delivery.supplierId,
    receivedOn: delivery.receivedOn,
    lines: [
      {
        ...{ presentationId, packs, packPrice, locationId, sample: wrong.sample },
        ...{ lotNumber: the.lotNumber, expiresOn: the.expiresOn },
      },
    ],
  });
  const [planned, more] = prepared.lines;
  if (!planned || more) {
    throw refuse('invalid_request', 'A kit cannot take the place of a line: book it on its own.', [
      { field: 'presentationId', message: 'is a kit: book it as a delivery of its own' },
    ]);
  }
  return planned;
}

const RECEIPT = `
SELECT ${movementColumns('m.quantity')} FROM movements m
WHERE m.layer_id = $1 AND m.from_account = 'supplier'`;

async function undo(tx: Tx, actor: Actor, { wrong, day, right }: Correction): Promise<void> {
  const places = await tx.query<{ on_hand: string; location_id: string; opened_on: string | null }>(
    'SELECT on_hand, location_id, opened_on FROM holdings WHERE layer_id = $1 AND on_hand > 0',
    [wrong.layerId],
  );
  const [place, another] = places;
  const untouched =
    place && !another && place.opened_on === null && place.location_id === wrong.locationId;
  const rows = await tx.query<MovementRow>(RECEIPT, [wrong.layerId]);
  const [receipt, second] = rows;
  const whole =
    untouched && receipt && !second && quantity(place.on_hand) === quantity(receipt.quantity);
  if (!whole) {
    throw refuseStock(
      'stock_moved_on',
      'Part of these goods was used, opened or moved since. Only a lot, an expiry or a price can still be corrected; reverse the rest first.',
    );
  }
  const changes = await counterMovements(tx, rows, day, right.note);
  await applyStockChanges(tx, actor.personId, changes);
  await tx.query('UPDATE layers SET undone = true, order_line_id = NULL WHERE id = $1', [
    wrong.layerId,
  ]);
}
