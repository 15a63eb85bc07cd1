import { money, quantity } from '#lib/measure';
import { lumpyDemand, poissonDemand } from './example-demand.js';
import type { ItemFacts } from './item-facts.js';
import type { SupplyOffer } from './offer.js';

// Invented items for the tests of this folder.

/** A box of 20 single-dose capsules at 46.00, 540 days usable, four to nine days away. */
export function capsuleOffer(change: Partial<SupplyOffer> = {}): SupplyOffer {
  return {
    offerId: 'box-20',
    supplierId: 'supplier-a',
    packContent: quantity('20'),
    tiers: [{ fromPacks: 1n, packPrice: money('46') }],
    discount: 'all units',
    minimumPacks: 1n,
    usableDaysOnArrival: 540,
    leadTime: [
      { days: 4, probability: 0.7 },
      { days: 9, probability: 0.3 },
    ],
    ...change,
  };
}

/** Two capsules a day on average, in lumps; 31 there, nothing on its way. */
export function capsules(change: Partial<ItemFacts> = {}): ItemFacts {
  return {
    itemId: 'capsule-body-2',
    countSize: quantity('1'),
    demand: lumpyDemand(2, 2.5),
    reviewDays: 7,
    lots: [
      { quantity: quantity('11'), usableDays: 60 },
      { quantity: quantity('20'), usableDays: 400 },
    ],
    openOrders: [],
    openShortfall: quantity('0'),
    offers: [capsuleOffer()],
    orderCost: money('12'),
    carryingRate: 0.2,
    target: { measure: 'cycle service', level: 0.95 },
    override: null,
    limits: { shelfRoom: null, budget: null, expiryCertainty: 0.9 },
    ...change,
  };
}

/** A rare shade: a syringe of 4 g used in steps of 0.05 g, one use in nine days. */
export function rareShade(change: Partial<ItemFacts> = {}): ItemFacts {
  return capsules({
    itemId: 'paste-enamel-light',
    countSize: quantity('0.05'),
    demand: lumpyDemand(0.5, 6),
    lots: [{ quantity: quantity('0.85'), usableDays: 45 }],
    offers: [
      capsuleOffer({
        offerId: 'syringe-4g',
        packContent: quantity('4'),
        tiers: [
          { fromPacks: 1n, packPrice: money('58.40') },
          { fromPacks: 3n, packPrice: money('52.00') },
        ],
        usableDaysOnArrival: 300,
      }),
    ],
    ...change,
  });
}

/** A steady item that is used singly. */
export function steadyItem(perDay: number, change: Partial<ItemFacts> = {}): ItemFacts {
  return capsules({ itemId: 'strip', demand: poissonDemand(perDay), ...change });
}
