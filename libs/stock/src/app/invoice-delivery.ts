import { Injectable } from '@nestjs/common';
import { formatMoney, type Money, money, moneyFromMicro } from '#lib/measure';
import {
  type Actor,
  type Claimed,
  Clock,
  currencyStep,
  newId,
  refuse,
  type Tx,
  UnitOfWork,
} from '#lib/platform';
import { type LockedDelivery, lockDelivery } from '../db/delivery-lines.js';
import { writeRevaluations } from '../db/price-variances.js';
import { type Extras, type Repriced, repriceLines } from '../domain/reprice-lines.js';
import type { InvoiceDto, InvoicedDeliveryDto } from '../http/delivery-changes.dto.js';
import { DeliveryReader } from '../queries/delivery-reader.js';
import { refuseStock } from '../stock.refusals.js';
import { notLanded, refuseTooMuch } from './prepare-delivery.js';

/**
 * An invoice that comes after the goods and says other prices: what is left is worth the new price, what
 * had left keeps its cost, and its part of the difference is booked as price variance.
 */
@Injectable()
export class InvoiceDelivery {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly reader: DeliveryReader,
  ) {}

  async run(
    actor: Actor,
    key: string,
    id: string,
    command: InvoiceDto,
  ): Promise<Claimed<InvoicedDeliveryDto>> {
    const operation = `POST /api/deliveries/${id}/invoice`;
    return this.uow.runOnce({ actor, key, operation, body: command }, (tx) =>
      this.invoice(tx, actor, id, command),
    );
  }

  private async invoice(
    tx: Tx,
    actor: Actor,
    id: string,
    command: InvoiceDto,
  ): Promise<InvoicedDeliveryDto> {
    const delivery = await lockDelivery(tx, id);
    const packPrices = pricesOf(command, delivery);
    const amounts = {
      freight: command.freight ? money(command.freight) : delivery.freight,
      duty: command.duty ? money(command.duty) : delivery.duty,
      discount: command.discount ? money(command.discount) : delivery.discount,
    };
    const repriced = reprice(delivery, { packPrices, ...amounts }, actor);
    const changed = changedLayers(delivery, repriced);
    if (changed.length === 0) {
      throw refuseStock('nothing_to_do', 'This invoice says what is booked already.', [
        { field: 'lines', message: 'change nothing' },
      ]);
    }
    const invoiceId = newId();
    const totals = totalsAfter(delivery, repriced);
    await tx.query(INSERT, [
      ...[invoiceId, id, command.reference?.trim() ?? null],
      ...[amounts.freight, amounts.duty, amounts.discount].map((each) => formatMoney(each)),
      ...[totals.goodsTotal, totals.landedTotal].map((each) => formatMoney(each)),
      ...[formatMoney(delivery.landedTotal), actor.personId],
    ]);
    const day = this.clock.today(actor.timeZone);
    await writeRevaluations(tx, { personId: actor.personId, day, invoiceId }, changed);
    await writeTotals(tx, id, { ...amounts, ...totals });
    const variance = changed.reduce((sum, one) => sum + one.variance, 0n);
    return {
      ...(await this.reader.get(tx, actor, id)),
      toStock: formatMoney(moneyFromMicro(repriced.difference - variance)),
      priceVariance: formatMoney(moneyFromMicro(variance)),
    };
  }
}

const INSERT = `
INSERT INTO delivery_invoices (id, practice_id, delivery_id, reference, freight, duty, discount,
  goods_total, landed_total, landed_before, recorded_by)
VALUES ($1, current_practice(), $2, $3, $4, $5, $6, $7, $8, $9, $10)`;

/** The delivery at other prices; what was replaced never was. */
export function reprice(
  delivery: LockedDelivery,
  prices: Extras & { readonly packPrices: ReadonlyMap<number, Money> },
  actor: Actor,
): Repriced {
  const repriced = repriceLines(
    delivery.lines.filter((line) => !line.undone),
    {
      ...prices,
      before: delivery,
      spreadKey: delivery.spreadKey,
      step: currencyStep(actor.currency),
    },
  );
  if (!repriced.ok) throw notLanded(repriced);
  return repriced;
}

/** The layers that cost or are priced otherwise than before. */
export function changedLayers(delivery: LockedDelivery, repriced: Repriced) {
  const before = new Map(delivery.lines.map((line) => [line.layerId, line.packPrice]));
  return repriced.layers.filter(
    (one) => one.difference !== 0n || before.get(one.layerId) !== one.packPrice,
  );
}

export function totalsAfter(delivery: LockedDelivery, repriced: Repriced) {
  const totals = {
    goodsTotal: moneyFromMicro(delivery.goodsTotal + repriced.goodsDifference),
    landedTotal: moneyFromMicro(delivery.landedTotal + repriced.difference),
  };
  refuseTooMuch(totals);
  return totals;
}

export async function writeTotals(
  tx: Tx,
  id: string,
  totals: Extras & { readonly goodsTotal: Money; readonly landedTotal: Money },
): Promise<void> {
  const { freight, duty, discount, goodsTotal, landedTotal } = totals;
  await tx.query(
    `UPDATE deliveries SET freight = $2, duty = $3, discount = $4, goods_total = $5,
       landed_total = $6 WHERE id = $1`,
    [id, ...[freight, duty, discount, goodsTotal, landedTotal].map((each) => formatMoney(each))],
  );
}

function pricesOf(command: InvoiceDto, delivery: LockedDelivery): ReadonlyMap<number, Money> {
  const prices = new Map<number, Money>();
  command.lines.forEach(({ lineNumber, packPrice }, i) => {
    const line = delivery.lines.find((one) => one.lineNumber === lineNumber);
    const before = delivery.lines.find((one) => one.layerId === line?.continuesId);
    const message = !line
      ? 'is no line of this delivery'
      : line.undone
        ? 'was replaced: name the line that replaced it'
        : before
          ? `continues line ${before.lineNumber}: name that one`
          : line.kit !== null && line.kit.line !== lineNumber
            ? `came in the kit of line ${line.kit.line}: give the price of the kit there`
            : prices.has(lineNumber)
              ? 'is named twice'
              : undefined;
    if (message !== undefined) throw badLine(`lines[${i}].lineNumber`, message);
    const price = money(packPrice);
    if (line?.sample && price !== 0n) throw badLine(`lines[${i}].packPrice`, 'must be 0: a sample');
    prices.set(lineNumber, price);
  });
  return prices;
}

function badLine(field: string, message: string) {
  return refuse('invalid_request', `A line of this invoice does not fit: it ${message}.`, [
    { field, message },
  ]);
}
