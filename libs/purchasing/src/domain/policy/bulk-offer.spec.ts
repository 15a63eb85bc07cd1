import { describe, expect, it } from '@jest/globals';
import { money, quantity } from '#lib/measure';
import { poisson } from '../forecast/counts.js';
import { compareBulk } from './bulk-offer.js';
import { lumpyDemand, poissonDemand } from './example-demand.js';
import { capsuleOffer, capsules } from './example-items.js';
import { perishableFigures } from './perishable-chain.js';

describe('a bulk offer', () => {
  const bulkBox = capsuleOffer({
    offerId: 'case-400',
    packContent: quantity('400'),
    tiers: [{ fromPacks: 1n, packPrice: money('720') }],
  });
  const bulk = { offer: bulkBox, packs: 1n };

  it('saves what the list says where all of it is used', () => {
    // 400 at 2.30 are 920.00; two a day use 400 long before 540 days.
    const found = compareBulk(capsules({ lots: [] }), capsuleOffer(), bulk);
    expect(found).toMatchObject({
      quantity: quantity('400'),
      total: money('720'),
      usualTotal: money('920'),
      paperSaving: money('200'),
      worthIt: true,
    });
    expect(found?.chanceUsedUp ?? 0).toBeGreaterThan(0.999);
    expect(found?.expectedWaste ?? 1n).toBeLessThan(quantity('0.1'));
    expect(found?.savedOrders ?? 0n).toBeGreaterThan(0n);
    expect(found?.realSaving ?? 0n).toBeLessThan(money('200') + (found?.savedOrders ?? 0n));
  });

  it('saves nothing where most of it expires', () => {
    // One use in three days: about 180 of 400 are used in 540 days.
    const slow = capsules({ demand: lumpyDemand(1 / 3, 2), lots: [] });
    const found = compareBulk(slow, capsuleOffer(), bulk);
    expect(found?.paperSaving).toBe(money('200'));
    expect(found?.worthIt).toBe(false);
    expect(found?.realSaving ?? 0n).toBeLessThan(money('-200'));
    const wasted = Number(found?.expectedWaste ?? 0n) / 1e6;
    expect(Math.abs(wasted - (400 - 545 / 3))).toBeLessThan(3);
    // What is used really costs 720 / 182, far above the usual 2.30.
    expect(Number(found?.costPerUsedUnit ?? 0n) / 1e6).toBeCloseTo(720 / (400 - wasted), 4);
    expect((found?.expectedUsed ?? 0n) + (found?.expectedWaste ?? 0n)).toBe(quantity('400'));
  });

  it('counts the lots that go first', () => {
    const steady = (lots: Parameters<typeof compareBulk>[0]['lots']) =>
      compareBulk(capsules({ lots }), capsuleOffer(), bulk)?.expectedWaste ?? 0n;
    const full = [{ quantity: quantity('800'), usableDays: 540 }];
    expect(steady(full)).toBeGreaterThan(steady([]) + quantity('90'));
  });

  it('cannot be judged without prices', () => {
    const unknown = capsuleOffer({ tiers: [] });
    expect(compareBulk(capsules(), unknown, bulk)).toBeNull();
    expect(compareBulk(capsules(), capsuleOffer(), { offer: unknown, packs: 5n })).toBeNull();
    expect(() => compareBulk(capsules(), capsuleOffer(), { offer: bulkBox, packs: 0n })).toThrow(
      'packs',
    );
  });

  it('says how unsure the saving is, and how long it lasts', () => {
    // Two a day: 400 last 200 days; behind 31, which last 15 or 16.
    const plenty = compareBulk(capsules(), capsuleOffer(), bulk);
    expect(plenty).toMatchObject({ coverDays: 200, coverAheadDays: 16, usableDays: 544 });
    const slow = capsules({ demand: lumpyDemand(0.7, 2), lots: [] });
    const found = compareBulk(slow, capsuleOffer(), bulk);
    const { p10, p50, p90 } = found?.savingRange ?? { p10: 0n, p50: 0n, p90: 0n };
    expect(p10).toBeLessThan(p50);
    expect(p50).toBeLessThan(p90);
    expect(found?.realSaving ?? 0n).toBeGreaterThan(p10);
    expect(found?.realSaving ?? 0n).toBeLessThan(p90);
    const forever = capsuleOffer({ usableDaysOnArrival: null });
    const sure = compareBulk(capsules(), forever, { ...bulk, offer: { ...bulkBox, ...LASTS } });
    expect(sure?.usableDays).toBeNull();
    expect(sure?.savingRange).toEqual({
      ...{ p10: sure?.realSaving, p50: sure?.realSaving, p90: sure?.realSaving },
    });
  });
});

const LASTS = { usableDaysOnArrival: null };

describe('a purchase of what never expires', () => {
  const asUsual = capsuleOffer(LASTS);
  const tiers = [{ fromPacks: 1n, packPrice: money('720') }];
  const large = { offerId: 'case-400', packContent: quantity('400'), tiers, ...LASTS };
  const bulk = { offer: capsuleOffer(large), packs: 2n };

  it('is a loss all the same where nobody uses it', () => {
    const unused = { use: () => poisson(0) };
    const found = compareBulk(capsules({ demand: unused, lots: [] }), asUsual, bulk);
    expect(found?.paperSaving).toBe(money('400'));
    expect(found).toMatchObject({ usableDays: null, worthIt: false, savedOrders: 0n });
    expect([found?.expectedUsed, found?.costPerUsedUnit]).toEqual([0n, null]);
    expect(found?.realSaving ?? 0n).toBeLessThanOrEqual(-money('1440'));
  });

  it('saves less, the less of it is used in five years', () => {
    const savings = [3, 0.3, 0.1].map((perDay) => {
      const facts = capsules({ demand: poissonDemand(perDay), lots: [] });
      return compareBulk(facts, asUsual, bulk)?.realSaving ?? 0n;
    });
    expect([...savings].sort((a, b) => (a > b ? -1 : 1))).toEqual(savings);
  });
});

describe('a purchase of perishables', () => {
  // Exact long-run means of the age-state Markov chain (model of Nahmias 1975 and of Pierskalla &
  // Roach 1972; stationary distribution worked out with NumPy): rate, life, level, outdated.
  it.each([
    [4, 2, 8, 0.68458409],
    [3, 2, 6, 0.59111403],
  ])(
    'rate %d, life %d, level %d: what is bought behind old goods',
    (rate, life, level, outdated) => {
      const waste = (old: number) => {
        if (old === level) return 0;
        const lots = [{ quantity: quantity(String(old)), usableDays: 1 }];
        const offer = capsuleOffer({
          packContent: quantity(String(level - old)),
          usableDaysOnArrival: life,
          leadTime: [{ days: 0, probability: 1 }],
        });
        const facts = capsules({ demand: poissonDemand(rate), lots: old === 0 ? [] : lots });
        return Number(compareBulk(facts, offer, { offer, packs: 1n })?.expectedWaste ?? -1n) / 1e6;
      };
      // How often so much is left of the last purchase, by repeated steps of the chain.
      const use = poisson(rate);
      const chances = Array.from({ length: 60 }, (_, k) => use.pmf(k));
      let often = new Array<number>(level + 1).fill(1 / (level + 1));
      for (let round = 0; round < 400; round += 1) {
        const next = new Array<number>(level + 1).fill(0);
        for (const [old, p] of often.entries()) {
          for (const [k, chance] of chances.entries()) {
            const left = Math.max(Math.min(level - old, level - k), 0);
            next[left] = (next[left] ?? 0) + p * chance;
          }
        }
        often = next;
      }
      const longRun = often.reduce((sum, p, old) => sum + p * waste(old), 0);
      // Expected waste is told in millionths.
      expect(Math.abs(longRun - outdated)).toBeLessThan(2e-6);
    },
  );

  it('lives one period: the chain and the purchase lose the same', () => {
    const offer = capsuleOffer({
      packContent: quantity('9'),
      usableDaysOnArrival: 5,
      leadTime: [{ days: 0, probability: 1 }],
    });
    const facts = capsules({ demand: poissonDemand(1.4), lots: [] });
    const found = compareBulk(facts, offer, { offer, packs: 1n });
    const chain = perishableFigures({
      ...{ use: poisson(7), life: 1, orderUpTo: 9, issue: 'oldest first' },
    });
    expect(Number(found?.expectedWaste ?? 0n) / 1e6).toBeCloseTo(chain.outdate, 5);
  });
});
