import { Injectable } from '@nestjs/common';
import { effectiveExpiry } from '#lib/catalogue';
import { quantityFromMicro, ZERO_MONEY } from '#lib/measure';
import {
  type Actor,
  type Claimed,
  Clock,
  type IsoDate,
  newId,
  type Tx,
  UnitOfWork,
} from '#lib/platform';
import { applyStockChanges } from '../db/stock-changes.js';
import { blockedOn, type Candidate } from '../domain/candidate.js';
import type { BookedDto, OpenContainerDto } from '../http/stock.dto.js';
import { refuseStock } from '../stock.refusals.js';
import { dayOf, lockHolding, type UnitRow, unitOf } from './checks.js';

/** When a container opened on a day must no longer be used. */
function effectiveUseBy(holding: Candidate, day: IsoDate, unit: UnitRow): IsoDate | null {
  const { life_after_opening: value, life_after_opening_unit: of } = unit;
  const life = value === null || of === null ? null : { value, unit: of };
  return effectiveExpiry({ labelExpiry: holding.labelExpiry, openedOn: day, life });
}

/** Opens one sealed container where it lies: from then on its life after opening runs. */
@Injectable()
export class OpenContainer {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async run(actor: Actor, key: string, command: OpenContainerDto): Promise<Claimed<BookedDto>> {
    const operation = 'POST /api/stock/openings';
    return this.uow.runOnce({ actor, key, operation, body: command }, (tx) =>
      this.open(tx, actor, command),
    );
  }

  private async open(tx: Tx, actor: Actor, command: OpenContainerDto): Promise<BookedDto> {
    const day = dayOf(command.openedOn, 'openedOn', actor, this.clock);
    const holding = await lockHolding(tx, command.holdingId, day);
    refuseUnopenable(holding, day);
    const unit = await unitOf(tx, holding.consumableId);
    const amount = holding.content < holding.onHand ? holding.content : holding.onHand;
    const opened = newId();
    const id = newId();
    const place = { account: 'location' as const, locationId: holding.locationId };
    await applyStockChanges(tx, actor.personId, {
      newHoldings: [
        {
          id: opened,
          layerId: holding.layerId,
          locationId: holding.locationId,
          onHand: amount,
          openedOn: day,
          useBy: effectiveUseBy(holding, day, unit),
        },
      ],
      holdings: new Map([[holding.holdingId, quantityFromMicro(holding.onHand - amount)]]),
      layers: new Map(),
      movements: [
        {
          id,
          layerId: holding.layerId,
          from: { ...place, holdingId: holding.holdingId },
          to: { ...place, holdingId: opened },
          quantity: amount,
          cost: ZERO_MONEY,
          occurredOn: day,
        },
      ],
    });
    return { movementIds: [id], holdingId: opened };
  }
}

function refuseUnopenable(holding: Candidate, day: IsoDate): void {
  const blocked = blockedOn(holding, day);
  const why =
    holding.openedOn !== null
      ? 'is open already'
      : holding.dispensing !== 'multi-use'
        ? 'is not a container that is used more than once'
        : holding.onHand === 0n
          ? 'is empty'
          : blocked
            ? `is ${blocked}`
            : undefined;
  if (why)
    throw refuseStock('cannot_open', `This holding ${why}.`, [
      { field: 'holdingId', message: why },
    ]);
}
