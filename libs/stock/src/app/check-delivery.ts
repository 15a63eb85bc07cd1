import { Injectable } from '@nestjs/common';
import {
  formatMoney,
  formatQuantity,
  moneyFromMicro,
  multiplyRatio,
  quantityFromMicro,
  ZERO_MONEY,
} from '#lib/measure';
import { type Actor, Clock, daysBetween, type IsoDate, type Tx, UnitOfWork } from '#lib/platform';
import { refuseWrongExpiries } from '../db/lots.js';
import { type ArrivalFlag, arrivalFlags } from '../domain/arrival-flags.js';
import { comparePrice } from '../domain/compare-price.js';
import type { PlannedLine } from '../domain/plan-lines.js';
import type { ReceiveDeliveryDto } from '../http/delivery.dto.js';
import type {
  DeliveryCheckDto,
  DeliveryLineCheckDto,
  PriceAgainstLastDto,
} from '../http/delivery-check.dto.js';
import { type ArrivalFacts, arrivalFacts, USED_DAYS } from '../queries/arrival-facts.js';
import { dayOf } from './checks.js';
import { DeliveryChecks, type DeliveryNote, orderedLines } from './delivery-checks.js';
import { type Prepared, prepareDelivery } from './prepare-delivery.js';

/** Says what a delivery would come to, and what to know about it, without booking anything. */
@Injectable()
export class CheckDelivery {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly checks: DeliveryChecks,
  ) {}

  async run(actor: Actor, command: ReceiveDeliveryDto): Promise<DeliveryCheckDto> {
    // Writes nothing; but who keeps orders holds them while a delivery is checked against them.
    return this.uow.run(actor.practiceId, async (tx) => {
      const receivedOn = dayOf(command.receivedOn, 'receivedOn', actor, this.clock);
      const prepared = await prepareDelivery(tx, actor, command);
      await refuseWrongExpiries(tx, prepared.lines);
      const { supplierId } = command;
      const lines = orderedLines(prepared.lines);
      const notes = await this.checks.check(tx, actor, { supplierId, receivedOn, lines });
      return checkArrival(tx, { prepared, receivedOn, notes });
    });
  }
}

interface Arriving {
  readonly prepared: Prepared;
  readonly receivedOn: IsoDate;
  readonly notes: readonly DeliveryNote[];
}

/** What should be known about goods that arrive, before they are written. */
export async function checkArrival(tx: Tx, arriving: Arriving): Promise<DeliveryCheckDto> {
  const { prepared, receivedOn, notes } = arriving;
  const { lines, landed } = prepared;
  const facts = await arrivalFacts(
    tx,
    lines.map((line) => line.consumableId),
    receivedOn,
  );
  const [practice] = await tx.query<{ expiry_warning_days: number }>(
    'SELECT expiry_warning_days FROM practices WHERE id = $1',
    [tx.practiceId],
  );
  if (!practice) throw new Error('The practice of the transaction is missing');
  const warningDays = practice.expiry_warning_days;
  return {
    goodsTotal: formatMoney(landed.goodsTotal),
    landedTotal: formatMoney(landed.landedTotal),
    lines: lines.map((line, i): DeliveryLineCheckDto => {
      const known = facts.get(line.consumableId);
      if (!known) throw new Error('A consumable of a delivery is missing');
      const cost = landed.landed[i] ?? ZERO_MONEY;
      const { index, lotNumber, expiresOn, packs } = line;
      return {
        ...{ index, consumable: known.consumable, lotNumber, expiresOn, packs },
        quantity: formatQuantity(line.quantity),
        landedCost: formatMoney(cost),
        landedUnitCost: formatMoney(
          moneyFromMicro(multiplyRatio(cost, 1_000_000n, line.quantity, 'half-up')),
        ),
        flags: flagsOf(line, known, { lines, receivedOn, warningDays }),
        price: priceOf(line, known),
      };
    }),
    notes: notes.map(({ index, kind, sentence }) => ({ index, kind, sentence })),
  };
}

interface Around {
  readonly lines: readonly PlannedLine[];
  readonly receivedOn: IsoDate;
  readonly warningDays: number;
}

function flagsOf(line: PlannedLine, known: ArrivalFacts, around: Around): ArrivalFlag[] {
  const { expiresOn, quantity } = line;
  if (expiresOn === null) return [];
  const others = around.lines.filter(
    (one) => one !== line && one.consumableId === line.consumableId,
  );
  return arrivalFlags({
    ...{ quantity, expiresOn, warningDays: around.warningDays },
    daysLeft: daysBetween(around.receivedOn, expiresOn),
    // What comes expired is never used, so nothing waits behind it.
    waiting: [...known.waiting, ...others.filter((one) => !isOver(one, around.receivedOn))],
    ...{ used: known.used, usedDays: USED_DAYS },
  });
}

function isOver({ expiresOn }: PlannedLine, day: IsoDate): boolean {
  return expiresOn !== null && expiresOn < day;
}

function priceOf(line: PlannedLine, { last }: ArrivalFacts): PriceAgainstLastDto | null {
  if (last === null || line.sample || line.kit !== null) return null;
  const content = quantityFromMicro(line.quantity / BigInt(line.packs));
  const compared = comparePrice({ packPrice: line.packPrice, content }, last);
  const share = (change: bigint | null) =>
    change === null ? null : formatQuantity(quantityFromMicro(change));
  return {
    lastReceivedOn: last.receivedOn,
    lastSupplierName: last.supplierName,
    lastPresentationName: last.presentationName,
    lastPackPrice: formatMoney(last.packPrice),
    lastPackContent: formatQuantity(last.content),
    packContent: formatQuantity(content),
    contentChanged: compared.contentChanged,
    unitPrice: formatMoney(compared.unitPrice),
    lastUnitPrice: formatMoney(compared.lastUnitPrice),
    packChange: share(compared.packChange),
    unitChange: share(compared.unitChange),
  };
}
