import { Injectable } from '@nestjs/common';
import { formatQuantity, type Money, money, quantityFromMicro } from '#lib/measure';
import { type Actor, type Claimed, Clock, refuse, type Tx, UnitOfWork } from '#lib/platform';
import { type LineState, lockDelivery } from '../db/delivery-lines.js';
import { writeRevaluations } from '../db/price-variances.js';
import type { CorrectedDeliveryDto, CorrectLineDto } from '../http/delivery-changes.dto.js';
import { DeliveryReader } from '../queries/delivery-reader.js';
import { refuseStock } from '../stock.refusals.js';
import type { Correction } from './correction.js';
import { DeliveryChecks } from './delivery-checks.js';
import { changedLayers, reprice, totalsAfter, writeTotals } from './invoice-delivery.js';
import { relabelLine } from './relabel-line.js';
import { replaceLine } from './replace-line.js';
import { StockArrivals } from './stock-arrivals.js';

/**
 * Puts one line of a delivery right by counter-entries. A wrong lot or expiry: what is left goes on under
 * the right one, what was used stays explainable under the wrong one. A wrong price: as by an invoice.
 * Anything else is another line, possible while nothing of the wrong one was touched.
 */
@Injectable()
export class CorrectLine {
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
    path: { readonly deliveryId: string; readonly lineNumber: number },
    command: CorrectLineDto,
  ): Promise<Claimed<CorrectedDeliveryDto>> {
    const operation = `POST /api/deliveries/${path.deliveryId}/lines/${path.lineNumber}/correction`;
    return this.uow.runOnce({ actor, key, operation, body: command }, async (tx) => {
      const day = this.clock.today(actor.timeZone);
      const other = await consumableOf(tx, command.presentationId);
      const delivery = await lockDelivery(tx, path.deliveryId, other);
      const wrong = delivery.lines.find((line) => line.lineNumber === path.lineNumber);
      if (!wrong) throw refuse('not_found', 'There is no line with this number.');
      const lot = {
        lotNumber: command.lotNumber?.trim() ?? null,
        expiresOn: command.expiresOn ?? null,
      };
      return this.correct(tx, actor, { delivery, wrong, right: command, ...lot, day });
    });
  }

  private async correct(tx: Tx, actor: Actor, the: Correction): Promise<CorrectedDeliveryDto> {
    const { delivery, wrong, right } = the;
    if (wrong.undone) {
      throw refuseStock('already_reversed', 'This line was replaced: correct the one that did it.');
    }
    if (wrong.sample && money(right.packPrice) !== 0n) {
      throw refuse('invalid_request', 'A free sample costs nothing.', [
        { field: 'packPrice', message: 'must be 0: this line is a free sample' },
      ]);
    }
    const anotherLot = the.lotNumber !== wrong.lotNumber || the.expiresOn !== wrong.expiresOn;
    const anotherPrice = priceOf(wrong) !== money(right.packPrice);
    let newLine = wrong.lineNumber;
    if (isOtherLine(the)) {
      newLine = await replaceLine(tx, actor, the, { arrivals: this.arrivals, checks: this.checks });
    } else if (anotherLot || anotherPrice) {
      if (anotherPrice) await this.price(tx, actor, the);
      if (anotherLot) newLine = await relabelLine(tx, actor, the);
    } else throw refuseStock('nothing_to_do', 'This is what is booked already.');
    await this.arrivals.announce(tx, actor, [wrong.consumableId]);
    return {
      ...(await this.reader.get(tx, actor, delivery.id)),
      newLine,
      leftBefore: formatQuantity(quantityFromMicro(wrong.outQuantity)),
    };
  }

  private async price(tx: Tx, actor: Actor, the: Correction): Promise<void> {
    const { delivery, wrong, right } = the;
    if (wrong.continuesId !== null || (wrong.kit !== null && wrong.kit.line !== wrong.lineNumber)) {
      throw refuseStock('cannot_reverse', 'Correct the price on the line at which this began.', [
        { field: 'packPrice', message: 'is that of an earlier line: correct it there' },
      ]);
    }
    const packPrices = new Map([[wrong.lineNumber, money(right.packPrice)]]);
    const { freight, duty, discount } = delivery;
    const extras = { freight, duty, discount };
    const repriced = reprice(delivery, { packPrices, ...extras }, actor);
    const by = { personId: actor.personId, day: the.day, invoiceId: null };
    await writeRevaluations(tx, by, changedLayers(delivery, repriced));
    await writeTotals(tx, delivery.id, { ...extras, ...totalsAfter(delivery, repriced) });
  }
}

async function consumableOf(tx: Tx, presentationId: string): Promise<string[]> {
  const rows = await tx.query<{ consumable_id: string }>(
    'SELECT consumable_id FROM presentations WHERE id = $1',
    [presentationId],
  );
  return rows.map((row) => row.consumable_id);
}

/** Of a part of a kit: what the kit cost. */
function priceOf(line: LineState): Money {
  return line.kit?.packPrice ?? line.packPrice;
}

/** Another product, number of packs or place: more than a lot, an expiry or a price. */
function isOtherLine({ wrong, right }: Correction): boolean {
  return (
    right.presentationId !== wrong.presentationId ||
    right.packs !== wrong.packs ||
    right.locationId !== wrong.locationId
  );
}
