import { Injectable } from '@nestjs/common';
import {
  formatMoney,
  formatQuantity,
  money,
  type Quantity,
  quantity,
  ZERO_MONEY,
} from '#lib/measure';
import {
  type Actor,
  type Claimed,
  Clock,
  currencyStep,
  newId,
  type Tx,
  UnitOfWork,
  unknownReference,
} from '#lib/platform';
import { type DeliveryLineFacts, insertDelivery, insertLots } from '../db/delivery.repository.js';
import { lockConsumables } from '../db/lock-candidates.js';
import { applyStockChanges } from '../db/stock-changes.js';
import { type LandedDelivery, landDelivery } from '../domain/land-delivery.js';
import type { ReceiveDeliveryDto } from '../http/stock.dto.js';
import type { DeliveryDto } from '../http/stock-reads.dto.js';
import { DeliveryReader } from '../queries/delivery-reader.js';
import { refuseStock } from '../stock.refusals.js';
import { dayOf } from './checks.js';
import { StockArrivals } from './stock-arrivals.js';

interface PresentationRow {
  id: string;
  consumable_id: string;
  dispensing: DeliveryLineFacts['dispensing'];
  containers_per_pack: number;
  content_per_container: string;
  active: boolean;
}

const MOST = 999_999_999_999_000_000n;

/** Takes a delivery into stock: each line becomes one layer at its landed cost. */
@Injectable()
export class ReceiveDelivery {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly arrivals: StockArrivals,
    private readonly reader: DeliveryReader,
  ) {}

  async run(actor: Actor, key: string, command: ReceiveDeliveryDto): Promise<Claimed<DeliveryDto>> {
    const operation = 'POST /api/deliveries';
    return this.uow.runOnce({ actor, key, operation, body: command }, (tx) =>
      this.receive(tx, actor, command),
    );
  }

  private async receive(tx: Tx, actor: Actor, command: ReceiveDeliveryDto): Promise<DeliveryDto> {
    const receivedOn = dayOf(command.receivedOn, 'receivedOn', actor, this.clock);
    await checkSupplier(tx, command.supplierId);
    const presentations = await loadPresentations(tx, command);
    await checkLocations(tx, command);
    const landed = land(command, presentations, currencyStep(actor.currency));
    await lockConsumables(
      tx,
      presentations.map((p) => p.consumable_id),
    );
    const lots = await insertLots(
      tx,
      command.lines.map((line, i) => ({
        consumableId: presentations[i]?.consumable_id ?? '',
        lotNumber: line.lotNumber?.trim() ?? null,
        expiresOn: line.expiresOn ?? null,
      })),
    );
    const deliveryId = newId();
    const lines = command.lines.map((line, i): DeliveryLineFacts => {
      const presentation = presentations[i];
      const lot = lots[i];
      const cost = landed.lines[i];
      if (!presentation || !lot || !cost) throw new Error('A delivery line lost its facts');
      return {
        layerId: newId(),
        holdingId: newId(),
        lineNumber: i + 1,
        lotId: lot.id,
        lotStatus: lot.status,
        consumableId: presentation.consumable_id,
        presentationId: presentation.id,
        locationId: line.locationId,
        packs: line.packs,
        packPrice: money(line.packPrice),
        dispensing: presentation.dispensing,
        content: quantity(presentation.content_per_container),
        expiresOn: line.expiresOn ?? null,
        quantity: cost.quantity,
        landedCost: cost.landedCost,
      };
    });
    await insertDelivery(tx, actor.personId, {
      id: deliveryId,
      receivedOn,
      command,
      landed,
      lines,
    });
    await applyStockChanges(tx, actor.personId, receiptChanges(lines, receivedOn));
    await this.arrivals.announce(tx, actor, [...new Set(lines.map((l) => l.consumableId))]);
    return this.reader.get(tx, actor, deliveryId);
  }
}

function receiptChanges(lines: readonly DeliveryLineFacts[], receivedOn: string) {
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

async function checkSupplier(tx: Tx, id: string): Promise<void> {
  const [row] = await tx.query<{ active: boolean }>('SELECT active FROM suppliers WHERE id = $1', [
    id,
  ]);
  if (!row) throw unknownReference('supplierId', 'supplier');
  if (!row.active) throw notInUse('supplierId', 'supplier');
}

function notInUse(field: string, what: string) {
  return refuseStock('not_in_use', `This ${what} is no longer in use.`, [
    { field, message: `names a ${what} that is no longer in use` },
  ]);
}

async function loadPresentations(tx: Tx, command: ReceiveDeliveryDto): Promise<PresentationRow[]> {
  const rows = await tx.query<PresentationRow>(
    `SELECT id, consumable_id, dispensing, containers_per_pack, content_per_container, active
     FROM presentations WHERE id = ANY($1::uuid[])`,
    [command.lines.map((line) => line.presentationId)],
  );
  const byId = new Map(rows.map((row) => [row.id, row]));
  return command.lines.map((line, i) => {
    const row = byId.get(line.presentationId);
    if (!row) throw unknownReference(`lines[${i}].presentationId`, 'presentation');
    if (!row.active) throw notInUse(`lines[${i}].presentationId`, 'presentation');
    return row;
  });
}

async function checkLocations(tx: Tx, command: ReceiveDeliveryDto): Promise<void> {
  const rows = await tx.query<{ id: string; active: boolean }>(
    'SELECT id, active FROM locations WHERE id = ANY($1::uuid[])',
    [command.lines.map((line) => line.locationId)],
  );
  const active = new Map(rows.map((row) => [row.id, row.active]));
  command.lines.forEach((line, i) => {
    const known = active.get(line.locationId);
    if (known === undefined) throw unknownReference(`lines[${i}].locationId`, 'location');
    if (!known) throw notInUse(`lines[${i}].locationId`, 'location');
  });
}

function land(
  command: ReceiveDeliveryDto,
  presentations: readonly PresentationRow[],
  step: bigint,
): LandedDelivery {
  const landed = landDelivery({
    lines: command.lines.map((line, i) => ({
      packs: line.packs,
      packPrice: money(line.packPrice),
      containersPerPack: presentations[i]?.containers_per_pack ?? 0,
      contentPerContainer: quantity(presentations[i]?.content_per_container ?? '0'),
    })),
    freight: command.freight ? money(command.freight) : ZERO_MONEY,
    discount: command.discount ? money(command.discount) : ZERO_MONEY,
    spreadKey: command.spreadKey ?? 'value',
    step,
  });
  if (!landed) {
    throw refuseStock(
      'discount_too_large',
      'The discount is larger than the goods it is given on.',
      [{ field: 'discount', message: 'must not be more than the goods cost' }],
    );
  }
  landed.lines.forEach((line, i) => {
    if (line.quantity <= MOST && line.landedCost <= MOST) return;
    const shown = `${formatQuantity(line.quantity)} for ${formatMoney(line.landedCost)}`;
    throw refuseStock('too_large', `Line ${i + 1} is too large: ${shown}.`, [
      { field: `lines[${i}].packs`, message: 'makes more than the book can hold' },
    ]);
  });
  return landed;
}
