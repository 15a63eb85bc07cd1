import { Injectable } from '@nestjs/common';
import { type Quantity, ZERO_MONEY } from '#lib/measure';
import { type Actor, type Claimed, Clock, newId, type Tx, UnitOfWork } from '#lib/platform';
import { type DeliveryLineFacts, insertDelivery } from '../db/delivery.repository.js';
import { type HeldLot, holdWithKit, insertKitLots } from '../db/kit-lots.js';
import { lockConsumables } from '../db/lock-candidates.js';
import { insertLots, refuseUnknownOrderLines } from '../db/lots.js';
import { applyStockChanges } from '../db/stock-changes.js';
import type { ReceiveDeliveryDto } from '../http/delivery.dto.js';
import type { ReceivedDeliveryDto } from '../http/stock-reads.dto.js';
import { DeliveryReader } from '../queries/delivery-reader.js';
import { checkArrival } from './check-delivery.js';
import { dayOf } from './checks.js';
import { DeliveryChecks, orderedLines } from './delivery-checks.js';
import { type Prepared, prepareDelivery } from './prepare-delivery.js';
import { StockArrivals } from './stock-arrivals.js';

/** Takes a delivery into stock: each line becomes one layer (or several) at its landed cost. */
@Injectable()
export class ReceiveDelivery {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly arrivals: StockArrivals,
    private readonly checks: DeliveryChecks,
    private readonly reader: DeliveryReader,
  ) {}

  async run(
    actor: Actor,
    key: string,
    command: ReceiveDeliveryDto,
  ): Promise<Claimed<ReceivedDeliveryDto>> {
    const operation = 'POST /api/deliveries';
    return this.uow.runOnce({ actor, key, operation, body: command }, (tx) =>
      this.receive(tx, actor, command),
    );
  }

  private async receive(
    tx: Tx,
    actor: Actor,
    command: ReceiveDeliveryDto,
  ): Promise<ReceivedDeliveryDto> {
    const receivedOn = dayOf(command.receivedOn, 'receivedOn', actor, this.clock);
    const prepared = await prepareDelivery(tx, actor, command);
    await refuseUnknownOrderLines(tx, command.faults ?? []);
    const consumables = [...new Set(prepared.lines.map((line) => line.consumableId))];
    await lockConsumables(tx, consumables);
    const { supplierId } = command;
    const ordered = orderedLines(prepared.lines);
    const notes = await this.checks.check(tx, actor, { supplierId, receivedOn, lines: ordered });
    const check = await checkArrival(tx, { prepared, receivedOn, notes });
    const lines = await this.lines(tx, actor, prepared);
    const id = newId();
    const { landed } = prepared;
    await insertDelivery(tx, actor.personId, { id, receivedOn, command, landed, lines });
    await applyStockChanges(tx, actor.personId, receiptChanges(lines, receivedOn));
    await this.arrivals.announce(tx, actor, consumables);
    await this.checks.changed(tx, actor, [...new Set(ordered.map((l) => l.orderLineId))]);
    return { ...(await this.reader.get(tx, actor, id)), check };
  }

  /** The layers, with their lots: those of a kit that is held back are held back with it. */
  private async lines(tx: Tx, actor: Actor, prepared: Prepared): Promise<DeliveryLineFacts[]> {
    const kits = await insertKitLots(tx, prepared.lines);
    const lots = await insertLots(tx, prepared.lines);
    const held: HeldLot[] = [];
    const lines = prepared.lines.map((line, i): DeliveryLineFacts => {
      const lot = lots[i];
      if (!lot) throw new Error('A delivery line lost its lot');
      const kit = kits.get(line.index);
      const withKit = lot.status === 'released' && kit !== undefined && kit.status !== 'released';
      if (withKit) {
        const note = `Came in kit lot ${line.kit?.lotNumber}, which is ${kit.status}.`;
        held.push({ lotId: lot.id, status: kit.status, note });
      }
      const first = prepared.lines.findIndex((one) => one.index === line.index);
      return {
        ...line,
        layerId: newId(),
        holdingId: newId(),
        lineNumber: i + 1,
        lotId: lot.id,
        lotStatus: withKit ? kit.status : lot.status,
        landedCost: prepared.landed.landed[i] ?? ZERO_MONEY,
        kitLotId: kit?.id ?? null,
        kitLine: kit ? first + 1 : null,
      };
    });
    await holdWithKit(tx, actor.personId, held);
    return lines;
  }
}

/** The holdings and the first movements of new layers. */
export function receiptChanges(lines: readonly DeliveryLineFacts[], receivedOn: string) {
  return {
    newHoldings: lines.map((line) => ({
      id: line.holdingId,
      layerId: line.layerId,
      locationId: line.locationId,
      onHand: line.quantity,
      openedOn: null,
      useBy: null,
    })),
    holdings: new Map<string, Quantity>(),
    layers: new Map(),
    movements: lines.map((line) => ({
      id: newId(),
      layerId: line.layerId,
      from: { account: 'supplier' as const },
      to: {
        account: 'location' as const,
        holdingId: line.holdingId,
        locationId: line.locationId,
      },
      quantity: line.quantity,
      cost: line.landedCost,
      occurredOn: receivedOn,
    })),
  };
}
