import { Injectable } from '@nestjs/common';
import {
  formatQuantity,
  isWholeUnit,
  type Quantity,
  quantity,
  quantityFromMicro,
  ZERO_MONEY,
} from '#lib/measure';
import {
  type Actor,
  type Claimed,
  Clock,
  newId,
  type Tx,
  UnitOfWork,
  unknownReference,
} from '#lib/platform';
import { type SealedHolding, sealedHolding } from '../db/sealed-holding.js';
import { applyStockChanges, type StockChanges } from '../db/stock-changes.js';
import type { Candidate } from '../domain/candidate.js';
import { isWholePart } from '../domain/holding-change.js';
import type { BookedDto, MoveStockDto } from '../http/stock.dto.js';
import { refuseStock } from '../stock.refusals.js';
import { dayOf, lockHolding, refuseMoreThanThere, unitOf } from './checks.js';
import { StockArrivals } from './stock-arrivals.js';

/** Carries sealed goods, or a whole opened container, to another location. Its value stays the same. */
@Injectable()
export class MoveStock {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly arrivals: StockArrivals,
  ) {}

  async run(actor: Actor, key: string, command: MoveStockDto): Promise<Claimed<BookedDto>> {
    const operation = 'POST /api/stock/moves';
    return this.uow.runOnce({ actor, key, operation, body: command }, (tx) =>
      this.move(tx, actor, command),
    );
  }

  private async move(tx: Tx, actor: Actor, command: MoveStockDto): Promise<BookedDto> {
    const day = dayOf(command.occurredOn, 'occurredOn', actor, this.clock);
    const holding = await lockHolding(tx, command.holdingId, day);
    await checkTarget(tx, holding, command.toLocationId);
    const amount = quantity(command.quantity);
    refuseMoreThanThere(holding, amount, formatQuantity(holding.onHand));
    if (holding.openedOn !== null && amount !== holding.onHand) {
      throw refuseStock('not_whole', 'An opened container moves with all that is in it.', [
        { field: 'quantity', message: `must be ${formatQuantity(holding.onHand)}` },
      ]);
    }
    const unit = await unitOf(tx, holding.consumableId);
    if (!isWholePart(holding, amount, isWholeUnit(unit.stock_unit))) {
      throw refuseStock('not_whole', 'Only whole doses or pieces can be moved.', [
        { field: 'quantity', message: 'must be whole doses or pieces' },
      ]);
    }
    const target =
      holding.openedOn === null
        ? await sealedHolding(tx, holding.layerId, command.toLocationId)
        : undefined;
    const id = newId();
    await applyStockChanges(tx, actor.personId, {
      ...moved(holding, target, amount, command.toLocationId),
      layers: new Map(),
      movements: [
        {
          id,
          layerId: holding.layerId,
          from: {
            account: 'location',
            holdingId: holding.holdingId,
            locationId: holding.locationId,
          },
          to: {
            account: 'location',
            holdingId: target?.id ?? holding.holdingId,
            locationId: command.toLocationId,
          },
          quantity: amount,
          cost: ZERO_MONEY,
          occurredOn: day,
        },
      ],
    });
    await this.arrivals.announce(tx, actor, [holding.consumableId]);
    return { movementIds: [id], holdingId: target?.id ?? holding.holdingId };
  }
}

type Moved = Pick<StockChanges, 'newHoldings' | 'holdings' | 'places'>;

/** Sealed goods join the sealed goods of that layer there; an opened container stays itself. */
function moved(
  holding: Candidate,
  target: SealedHolding | undefined,
  amount: Quantity,
  to: string,
): Moved {
  if (!target) {
    const places = new Map([[holding.holdingId, to]]);
    return { newHoldings: [], holdings: new Map([[holding.holdingId, holding.onHand]]), places };
  }
  const sealed = { id: target.id, layerId: holding.layerId, locationId: to };
  return {
    newHoldings: target.isNew ? [{ ...sealed, onHand: amount, openedOn: null, useBy: null }] : [],
    holdings: new Map([
      [holding.holdingId, quantityFromMicro(holding.onHand - amount)],
      [target.id, quantityFromMicro(target.onHand + amount)],
    ]),
  };
}

async function checkTarget(tx: Tx, holding: Candidate, locationId: string): Promise<void> {
  const [row] = await tx.query<{ active: boolean }>('SELECT active FROM locations WHERE id = $1', [
    locationId,
  ]);
  if (!row) throw unknownReference('toLocationId', 'location');
  if (!row.active) {
    throw refuseStock('not_in_use', 'This location is no longer in use.', [
      { field: 'toLocationId', message: 'names a location that is no longer in use' },
    ]);
  }
  if (holding.locationId === locationId) {
    throw refuseStock('nothing_to_do', 'The goods are there already.', [
      { field: 'toLocationId', message: 'is where the goods already are' },
    ]);
  }
}
