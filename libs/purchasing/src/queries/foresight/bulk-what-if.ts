import { Injectable } from '@nestjs/common';
import { formatMoney, formatQuantity, money } from '#lib/measure';
import { type Actor, unknownReference } from '#lib/platform';
import { type BulkComparison, compareBulk } from '../../domain/policy/bulk-offer.js';
import { decideOrder, type SupplyOffer } from '../../domain/policy/index.js';
import type { BulkAnswerDto, BulkQuestionDto } from '../../http/foresight/what-if.dto.js';
import { refusePurchasing } from '../../purchasing.refusals.js';
import { ForesightShelf } from './foresight-shelf.js';

/** What a bulk offer really saves. It books nothing. */
@Injectable()
export class BulkWhatIf {
  constructor(private readonly shelf: ForesightShelf) {}

  async run(actor: Actor, question: BulkQuestionDto): Promise<BulkAnswerDto> {
    const foresight = await this.shelf.run(actor);
    const { consumableId, presentationId } = question;
    const item = foresight.shelf.items.find((each) => each.consumableId === consumableId);
    if (!item) throw unknownReference('consumableId', 'active consumable');
    const facts = foresight.factsOf(item);
    const offered = facts.offers.find((offer) => offer.offerId === presentationId);
    if (!offered) throw unknownReference('presentationId', 'active presentation of the consumable');
    const usual = decideOrder(facts).plan?.offer;
    const bulk: SupplyOffer = {
      ...offered,
      // A pack that never came keeps as long as the usual one.
      usableDaysOnArrival: offered.usableDaysOnArrival ?? usual?.usableDaysOnArrival ?? null,
      tiers: [{ fromPacks: 1n, packPrice: money(question.packPrice) }],
      minimumPacks: 1n,
    };
    const packs = BigInt(question.packs);
    const found = usual ? compareBulk(facts, usual, { offer: bulk, packs }) : null;
    if (!usual || !found) {
      throw refusePurchasing(
        'no_usual_price',
        'Nobody knows what this usually costs: enter a list price or a delivery first.',
      );
    }
    const { consumable } = item;
    const { currency } = actor;
    const told = { asOf: foresight.today, currency, consumable };
    return { ...told, usualPresentationId: usual.offerId, ...bulkDto(found) };
  }
}

function bulkDto(found: BulkComparison) {
  const { costPerUsedUnit, savingRange } = found;
  return {
    quantity: formatQuantity(found.quantity),
    total: formatMoney(found.total),
    usualTotal: formatMoney(found.usualTotal),
    paperSaving: formatMoney(found.paperSaving),
    realSaving: formatMoney(found.realSaving),
    savingRange: {
      p10: formatMoney(savingRange.p10),
      p50: formatMoney(savingRange.p50),
      p90: formatMoney(savingRange.p90),
    },
    expectedWaste: formatQuantity(found.expectedWaste),
    wasteCost: formatMoney(found.wasteCost),
    extraKeeping: formatMoney(found.extraKeeping),
    savedOrders: formatMoney(found.savedOrders),
    costPerUsedUnit: costPerUsedUnit === null ? null : formatMoney(costPerUsedUnit),
    chanceUsedUp: found.chanceUsedUp.toFixed(6),
    coverDays: found.coverDays,
    coverAheadDays: found.coverAheadDays,
    usableDays: found.usableDays,
    worthIt: found.worthIt,
  };
}
