import { describe, expect, it } from '@jest/globals';
import { money, quantity, quantityFromMicro } from '#lib/measure';
import { certain } from '../forecast/distribution.js';
import { seededRandom } from '../forecast/seeded-random.js';
import { decideOrder } from './decide-order.js';
import { lumpyDemand, poissonDemand, steady } from './example-demand.js';
import { capsuleOffer, capsules, rareShade, steadyItem } from './example-items.js';
import type { ItemFacts } from './item-facts.js';
import { proposeOrder } from './propose-order.js';
import { protectionUse } from './reorder-point.js';

const propose = (facts: ItemFacts) => proposeOrder(facts, { random: seededRandom(11), runs: 200 });
const figure = (facts: ItemFacts, name: string) =>
  propose(facts).figures.find((f) => f.name === name)?.value;

describe('a proposal', () => {
  it('tells what to order, when and why, with every number', () => {
    const facts = capsules();
    const proposal = propose(facts);
    // Lead 4 or 9 days + 7: the 95 % point of the mixture, looked up in the mixture itself.
    const use = protectionUse(facts.demand, facts.offers[0]?.leadTime ?? [], 7);
    const s = [...Array(200).keys()].find((k) => use.cdf(k) >= 0.95) ?? -1;
    expect(proposal.reorderPoint).toBe(quantityFromMicro(BigInt(s) * 1_000_000n));
    expect(proposal.reason).toBe('at or below the reorder point');
    expect(proposal.position).toBe(quantity('31'));
    expect(proposal.quantity).toBe(quantityFromMicro(proposal.packs * 20_000_000n));
    expect(proposal.total).toBe(money(String(46n * proposal.packs)));
    const named = Object.fromEntries(proposal.figures.map((f) => [f.name, f.value]));
    expect(named).toMatchObject({
      'usable on hand': '31',
      'on order': '0',
      position: '31',
      'mean lead time': '5.5',
      'mean use in lead time and review': '25',
      'service level': '0.95',
      'reorder point': String(s),
      'safety stock': String(s - 25),
      'use in a year': '730',
      'content of a pack': '20',
      'packs ordered': String(proposal.packs),
      total: `${46n * proposal.packs}.00`,
    });
    // Harris: sqrt(2 * 12 * 730 / (0.2 * 2.30)).
    expect(Number(named['economic order'])).toBeCloseTo(Math.sqrt((2 * 12 * 730) / 0.46), 5);
    // 31 last fifteen days at two a day.
    expect(proposal).toMatchObject({ runsOutInDays: 15, neededInDays: 0 });
    expect(proposal.after.stockOutChance).toBeLessThan(proposal.before.stockOutChance);
    expect(proposal.after.short).toBeLessThan(proposal.before.short);
  });

  it('leaves alone what is above its reorder point', () => {
    const lots = [{ quantity: quantity('300'), usableDays: 400 }];
    const proposal = propose(capsules({ lots }));
    expect(proposal).toMatchObject({
      reason: 'above the reorder point',
      packs: 0n,
      total: null,
      bounds: [],
    });
    expect(proposal.after).toEqual(proposal.before);
  });

  it('counts what is on its way and what is owed', () => {
    const openOrders = [
      {
        quantity: quantity('60'),
        arrival: [{ days: 2, probability: 1 }],
        usableDaysOnArrival: 500,
      },
    ];
    expect(propose(capsules({ openOrders })).reason).toBe('above the reorder point');
    const owed = capsules({ openOrders, openShortfall: quantity('70') });
    expect(propose(owed)).toMatchObject({
      reason: 'at or below the reorder point',
      position: quantity('21'),
    });
  });

  it('orders earlier when a lot will expire before new goods can come', () => {
    const lots = (usableDays: number) => [
      { quantity: quantity('25'), usableDays },
      { quantity: quantity('30'), usableDays: 400 },
    ];
    expect(propose(capsules({ lots: lots(300) })).reason).toBe('above the reorder point');
    const soon = propose(capsules({ lots: lots(2) }));
    expect(soon.reason).toBe('at or below the reorder point');
    expect(Number(figure(capsules({ lots: lots(2) }), 'expected to expire first'))).toBeCloseTo(
      21,
      0,
    );
    expect(soon.wasteBefore).toBeGreaterThan(quantity('20'));
  });

  it('ignores lots that may not be used any more', () => {
    const lots = [{ quantity: quantity('500'), usableDays: 0 }];
    expect(propose(capsules({ lots })).position).toBe(quantity('0'));
  });

  it('says the same to the same question', () => {
    expect(propose(capsules())).toEqual({ ...propose(capsules()), decision: expect.anything() });
  });

  it('takes the levels set by hand', () => {
    const override = { reorderAt: quantity('40'), orderUpTo: quantity('95') };
    const proposal = propose(capsules({ override }));
    expect(proposal).toMatchObject({ reorderPoint: quantity('40'), orderUpTo: quantity('95') });
    // 64 are missing: a fourth box of 20 would pass the maximum, and three lie above the 40.
    expect(proposal.packs).toBe(3n);
    expect(proposal.flags).toContain('levels set by hand');
  });
});

describe('limits', () => {
  it('flag a smallest order that will not be used up', () => {
    // One use in nine days or so; three syringes at least are far more than 300 days need.
    const forced = rareShade({
      demand: lumpyDemand(0.1, 2),
      lots: [],
      offers: [
        capsuleOffer({ packContent: quantity('4'), minimumPacks: 3n, usableDaysOnArrival: 300 }),
      ],
    });
    const proposal = propose(forced);
    expect(proposal.packs).toBe(3n);
    expect(proposal.flags).toContain('smallest order above what is used before it expires');
    expect(proposal.bounds).toEqual(['minimum order', 'expiry']);
    // 240 steps bought, about 30 used before they expire.
    expect(Number(figure(forced, 'expected waste of the order'))).toBeGreaterThan(9);
    expect(proposal.wasteAfter).toBeGreaterThan(quantity('9'));
    expect(proposal.wasteBefore).toBe(quantity('0'));
  });

  it('round down when expiry binds', () => {
    const bulky = capsules({
      demand: lumpyDemand(1, 2),
      lots: [],
      orderCost: money('400'),
      offers: [capsuleOffer({ usableDaysOnArrival: 90, leadTime: [{ days: 5, probability: 1 }] })],
    });
    const proposal = propose(bulky);
    const cap = decideOrder(bulky).plan?.cap ?? 0;
    expect(proposal.bounds).toContain('expiry');
    expect(Number(proposal.packs)).toBe(Math.floor(cap / 20));
    expect(proposal.flags).toEqual(['may run out before it comes']);
  });

  it('keep to room and budget, or order nothing', () => {
    const base = { shelfRoom: null, budget: null, expiryCertainty: 0.9 };
    const room = propose(capsules({ limits: { ...base, shelfRoom: quantity('75') } }));
    expect(room).toMatchObject({ packs: 2n, bounds: ['shelf room'] });
    const budget = propose(capsules({ limits: { ...base, budget: money('140') } }));
    expect(budget).toMatchObject({ packs: 3n, bounds: ['budget'], total: money('138') });
    const none = propose(capsules({ limits: { ...base, budget: money('45.99') } }));
    expect(none).toMatchObject({ packs: 0n, reason: 'stopped by a limit', bounds: ['budget'] });
  });

  it('take one pack more where that costs less in all', () => {
    const offer = capsuleOffer({
      tiers: [
        { fromPacks: 1n, packPrice: money('46') },
        { fromPacks: 11n, packPrice: money('40') },
      ],
    });
    const facts = capsules({
      offers: [offer],
      override: { reorderAt: quantity('40'), orderUpTo: quantity('231') },
    });
    // Ten boxes are 460.00, eleven are 440.00.
    expect(propose(facts)).toMatchObject({
      packs: 11n,
      total: money('440'),
      bounds: ['price break'],
    });
  });
});

describe('the choice of an offer', () => {
  it('takes the one with the cheaper year, expiry counted', () => {
    const small = capsuleOffer({ offerId: 'small', usableDaysOnArrival: 200 });
    const big = capsuleOffer({
      offerId: 'big',
      packContent: quantity('200'),
      tiers: [{ fromPacks: 1n, packPrice: money('380') }],
      usableDaysOnArrival: 200,
    });
    const offers = [small, big];
    expect(propose(capsules({ offers })).offerId).toBe('big');
    // One use in four days: most of 200 would expire, so the dearer small box wins.
    const slow = capsules({ demand: lumpyDemand(0.25, 2), lots: [], offers });
    expect(propose(slow).offerId).toBe('small');
    expect(propose(capsules({ offers: [big, small] })).offerId).toBe('big');
  });

  it('takes an offer without a price only when there is no other', () => {
    const unknown = capsuleOffer({ offerId: 'a-unknown', tiers: [] });
    expect(propose(capsules({ offers: [unknown, capsuleOffer()] })).offerId).toBe('box-20');
    const alone = propose(capsules({ offers: [unknown] }));
    expect(alone).toMatchObject({ offerId: 'a-unknown', total: null });
    expect(alone.packs).toBeGreaterThan(0n);
    expect(alone.flags).toContain('price not known');
    expect(propose(capsules({ offers: [] }))).toMatchObject({ reason: 'no offer', packs: 0n });
  });
});

describe('odd facts', () => {
  const nothing = { use: () => certain(0) };

  it('of no use at all order nothing, unless something is owed', () => {
    const dead = capsules({ demand: nothing, lots: [] });
    expect(propose(dead)).toMatchObject({ reason: 'no use expected', packs: 0n });
    expect(propose(dead).flags).toContain('no use expected');
    const owed = propose({ ...dead, openShortfall: quantity('3') });
    expect(owed).toMatchObject({ reason: 'at or below the reorder point', packs: 1n });
    const offers = [capsuleOffer({ usableDaysOnArrival: null })];
    expect(propose({ ...dead, offers, openShortfall: quantity('3') }).packs).toBe(1n);
  });

  it('of a lead time of zero still cover the review', () => {
    const offers = [capsuleOffer({ leadTime: [{ days: 0, probability: 1 }] })];
    const proposal = propose(capsules({ offers, lots: [] }));
    expect(proposal.flags).toContain('lead time of zero days');
    expect(proposal.packs).toBeGreaterThan(0n);
    expect(Number(figure(capsules({ offers }), 'mean use in lead time and review'))).toBe(14);
  });

  it('of a life shorter than the lead time are said so', () => {
    const offers = [
      capsuleOffer({ usableDaysOnArrival: 5, leadTime: [{ days: 21, probability: 1 }] }),
    ];
    const proposal = propose(capsules({ offers, lots: [] }));
    expect(proposal.flags).toContain('usable life shorter than lead time and review');
    expect(proposal.flags).toContain('reorder point above what is used before it expires');
    expect(proposal.packs).toBeGreaterThan(0n);
    const spoilt = propose(capsules({ offers: [capsuleOffer({ usableDaysOnArrival: 0 })] }));
    expect(spoilt.flags).toContain('comes already expired');
  });

  it('of goods that never expire have no waste', () => {
    const offers = [capsuleOffer({ usableDaysOnArrival: null })];
    const lots = [{ quantity: quantity('5'), usableDays: null }];
    const proposal = propose(capsules({ offers, lots }));
    expect(proposal.wasteAfter).toBe(quantity('0'));
    expect(proposal.figures.some((f) => f.name === 'most used before expiry')).toBe(false);
  });

  it('are refused by name when they cannot be', () => {
    const bad: readonly [Partial<ItemFacts>, string][] = [
      [{ countSize: quantity('0') }, 'countSize'],
      [{ lots: [{ quantity: quantity('-1'), usableDays: 3 }] }, 'quantity'],
      [{ openShortfall: quantity('-1') }, 'openShortfall'],
      [{ orderCost: money('-1') }, 'orderCost'],
      [{ carryingRate: 0 }, 'carryingRate'],
      [{ reviewDays: 1.5 }, 'reviewDays'],
      [{ target: { measure: 'fill rate', level: 1 } }, 'service'],
      [{ override: { reorderAt: quantity('9'), orderUpTo: quantity('8') } }, 'orderUpTo'],
      [{ limits: { shelfRoom: null, budget: null, expiryCertainty: 1 } }, 'expiryCertainty'],
      [{ offers: [capsuleOffer({ packContent: quantity('0') })] }, 'packContent'],
      [{ offers: [capsuleOffer({ minimumPacks: 0n })] }, 'minimumPacks'],
      [{ offers: [capsuleOffer({ leadTime: [] })] }, 'leadTime'],
      [{ offers: [capsuleOffer({ usableDaysOnArrival: -1 })] }, 'usableDaysOnArrival'],
      [{ offers: [capsuleOffer({ tiers: [{ fromPacks: 2n, packPrice: money('1') }] })] }, 'tiers'],
    ];
    for (const [change, name] of bad) expect(() => propose(capsules(change))).toThrow(name);
  });
});

it('proposes singly used goods as well', () => {
  const proposal = propose(steadyItem(0.2, { lots: [], demand: poissonDemand(0.2) }));
  expect(proposal.packs).toBeGreaterThan(0n);
  const large = steady((days) => (days === 0 ? certain(0) : poissonDemand(900).use(0, days)));
  expect(propose(steadyItem(900, { demand: large })).packs).toBeGreaterThan(100n);
});
