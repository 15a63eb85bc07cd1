import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { money, quantity } from '#lib/measure';
import { poissonDemand } from './example-demand.js';
import { capsuleOffer } from './example-items.js';
import { COVER_DAYS, choosePacks, type LotQuestion, yearlyCost } from './lot-choice.js';
import { inCounts, packsTotal, type SupplyOffer } from './offer.js';
import { behindShelf } from './shelf-queue.js';

const ONE = quantity('1');
const endless = { behind: null, mostPacks: Number.POSITIVE_INFINITY };

describe('price of packs', () => {
  const tiers = [
    { fromPacks: 11n, packPrice: money('9') },
    { fromPacks: 1n, packPrice: money('10') },
  ];

  it('is exact under both ways of discount', () => {
    const all = capsuleOffer({ tiers });
    expect([1n, 10n, 11n].map((n) => packsTotal(all, n))).toEqual(
      ['10', '100', '99'].map((m) => money(m)),
    );
    const beyond = capsuleOffer({ tiers, discount: 'incremental' });
    expect([1n, 10n, 11n, 20n].map((n) => packsTotal(beyond, n))).toEqual(
      ['10', '100', '109', '190'].map((m) => money(m)),
    );
    expect(packsTotal(capsuleOffer({ tiers: [] }), 3n)).toBeNull();
  });
});

describe('the number of packs', () => {
  it('agrees with the published case of all-units prices', () => {
    // Worked answer to a textbook exercise (nursingexpertshelp 2021): 200 is best, 40,080.
    const prices = [
      [1, 53],
      [50, 51.5],
      [100, 49.5],
      [200, 48],
      [500, 47],
    ] as const;
    const offer = capsuleOffer({
      packContent: ONE,
      tiers: prices.map(([from, price]) => ({
        fromPacks: BigInt(from),
        packPrice: money(String(price)),
      })),
    });
    const found = choosePacks({
      ...endless,
      offer: inCounts(offer, ONE),
      yearlyUse: 800,
      orderCost: 60,
      carryingRate: 0.3,
    });
    expect(found.packs).toBe(200);
    expect(found.yearlyCost).toBeCloseTo(40_080, 6);
  });

  it('makes no year cheaper by another number, prices by tier or beyond a break', () => {
    const n = (min: number, max: number) => fc.integer({ min, max });
    fc.assert(
      fc.property(questions(), n(1, 400), (question, other) => {
        const found = choosePacks(question);
        const packs = Math.max(other, question.offer.minimumPacks);
        expect(found.packs).toBeGreaterThanOrEqual(question.offer.minimumPacks);
        expect(found.yearlyCost ?? 0).toBeLessThanOrEqual(yearlyCost(question, packs) * (1 + 1e-9));
      }),
      { numRuns: 300 },
    );
  });

  it('counts expected waste and keeps to what is used in time', () => {
    const behind = behindShelf([], poissonDemand(0.5), 200);
    const offer = inCounts(capsuleOffer({ packContent: quantity('10') }), ONE);
    const question = { offer, yearlyUse: 182.5, orderCost: 300, carryingRate: 0.1 };
    const most = Math.floor(behind.mostUsedUp(0.9) / 10);
    const free = choosePacks({ ...question, behind: null, mostPacks: 99 });
    const capped = choosePacks({ ...question, behind, mostPacks: most });
    expect(free.packs).toBeGreaterThan(most);
    expect(capped.packs).toBeLessThanOrEqual(most);
    for (let packs = 1; packs <= most; packs += 1) {
      const cost = yearlyCost({ ...question, behind, mostPacks: most }, packs);
      expect(capped.yearlyCost ?? 0).toBeLessThanOrEqual(cost + 1e-9);
    }
    // The smallest order is taken even where it is too much.
    const forced = { ...offer, minimumPacks: most + 3 };
    expect(choosePacks({ ...question, offer: forced, behind, mostPacks: most }).packs).toBe(
      most + 3,
    );
  });

  it('covers four weeks where there is no price', () => {
    const offer = inCounts(capsuleOffer({ tiers: [] }), ONE);
    const found = choosePacks({
      ...endless,
      offer,
      yearlyUse: 730,
      orderCost: 10,
      carryingRate: 0.2,
    });
    expect(found).toEqual({
      packs: Math.ceil((2 * COVER_DAYS) / 20),
      yearlyCost: null,
      economicLot: null,
    });
  });
});

function questions(): fc.Arbitrary<LotQuestion> {
  const n = (min: number, max: number) => fc.integer({ min, max });
  return fc
    .record({
      content: n(1, 50),
      minimum: n(1, 5),
      price: n(20, 90),
      breaks: fc.uniqueArray(n(2, 80), { maxLength: 3 }),
      discount: fc.constantFrom<SupplyOffer['discount']>('all units', 'incremental'),
      yearlyUse: n(1, 4000),
      orderCost: n(0, 80),
      carryingRate: n(5, 50).map((r) => r / 100),
    })
    .map(({ content, minimum, price, breaks, discount, ...costs }) => {
      const starts = [1, ...breaks.sort((a, b) => a - b)];
      const tiers = starts.map((from, i) => ({
        fromPacks: BigInt(from),
        packPrice: money(String(price - 4 * i)),
      }));
      const offer = capsuleOffer({
        packContent: quantity(String(content)),
        minimumPacks: BigInt(minimum),
        tiers,
        discount,
      });
      return { ...endless, ...costs, offer: inCounts(offer, ONE) };
    });
}
