import { Injectable } from '@nestjs/common';
import { formatQuantity, isWholeUnit, quantity, quantityFromMicro } from '#lib/measure';
import { type Actor, type Claimed, Clock, newId, type Tx, UnitOfWork } from '#lib/platform';
import { applyStockChanges, type WasteReason } from '../db/stock-changes.js';
import { isWholePart, takeFromLayer } from '../domain/holding-change.js';
import type { BookedDto, ReturnStockDto, WriteOffDto } from '../http/stock.dto.js';
import { refuseStock } from '../stock.refusals.js';
import { dayOf, lockHolding, refuseMoreThanThere, unitOf } from './checks.js';

interface TakeOut {
  readonly holdingId: string;
  readonly quantity: string;
  readonly note?: string | null;
  readonly occurredOn?: string;
}

/** Takes goods out of stock other than by using them. Expired and recalled goods may leave this way. */
async function takeOut(
  tx: Tx,
  actor: Actor,
  day: string,
  command: TakeOut,
  to: { account: 'waste' | 'return'; reason: WasteReason | null },
): Promise<BookedDto> {
  const holding = await lockHolding(tx, command.holdingId, day);
  const amount = quantity(command.quantity);
  refuseMoreThanThere(holding, amount, formatQuantity(holding.onHand));
  const unit = await unitOf(tx, holding.consumableId);
  // Part of a dose may be thrown away; part of a piece may not.
  const whole = isWholeUnit(unit.stock_unit);
  if (!isWholePart({ ...holding, dispensing: 'by-piece' }, amount, whole)) {
    throw refuseStock('not_whole', 'This is counted in whole pieces.', [
      { field: 'quantity', message: 'must be whole pieces' },
    ]);
  }
  const change = takeFromLayer(holding, amount);
  const id = newId();
  await applyStockChanges(tx, actor.personId, {
    newHoldings: [],
    holdings: new Map([[holding.holdingId, quantityFromMicro(holding.onHand - amount)]]),
    layers: new Map([[holding.layerId, change.layer]]),
    movements: [
      {
        id,
        layerId: holding.layerId,
        from: {
          account: 'location',
          holdingId: holding.holdingId,
          locationId: holding.locationId,
        },
        to: { account: to.account },
        quantity: amount,
        cost: change.cost,
        occurredOn: day,
        wasteReason: to.reason,
        note: command.note ?? null,
      },
    ],
  });
  return { movementIds: [id], holdingId: holding.holdingId };
}

/** Throws goods away for a stated reason. */
@Injectable()
export class WriteOffStock {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async run(actor: Actor, key: string, command: WriteOffDto): Promise<Claimed<BookedDto>> {
    const operation = 'POST /api/stock/write-offs';
    return this.uow.runOnce({ actor, key, operation, body: command }, (tx) => {
      const day = dayOf(command.occurredOn, 'occurredOn', actor, this.clock);
      return takeOut(tx, actor, day, command, { account: 'waste', reason: command.reason });
    });
  }
}

/** Sends goods back to the supplier. */
@Injectable()
export class ReturnStock {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async run(actor: Actor, key: string, command: ReturnStockDto): Promise<Claimed<BookedDto>> {
    const operation = 'POST /api/stock/returns';
    return this.uow.runOnce({ actor, key, operation, body: command }, (tx) => {
      const day = dayOf(command.occurredOn, 'occurredOn', actor, this.clock);
      return takeOut(tx, actor, day, command, { account: 'return', reason: null });
    });
  }
}
