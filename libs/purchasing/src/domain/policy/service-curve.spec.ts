import { describe, expect, it } from '@jest/globals';
import { money, quantity } from '#lib/measure';
import { seededRandom } from '../forecast/seeded-random.js';
import { compareBulk } from './bulk-offer.js';
import { lumpyDemand } from './example-demand.js';
import { capsuleOffer, capsules, rareShade } from './example-items.js';
import { CURVE_LEVELS, serviceCurve, shelfCurve } from './service-curve.js';

const curveOf = (facts: Parameters<typeof serviceCurve>[0]) =>
  serviceCurve(facts, { random: seededRandom(4), levels: CURVE_LEVELS, runs: 30 });

describe('service against stock and waste', () => {
  it('needs more stock for more service, and runs out less', () => {
    const { points, horizonDays } = curveOf(capsules());
    expect(horizonDays).toBe(365);
    expect(points.map((p) => p.level)).toEqual(CURVE_LEVELS);
    for (const [i, point] of points.entries()) {
      const before = points[i - 1];
      if (!before) continue;
      expect(point.reorderPoint).toBeGreaterThanOrEqual(before.reorderPoint);
      expect(point.averageStock).toBeGreaterThanOrEqual(before.averageStock);
    }
    const [first, last] = [points[0], points.at(-1)];
    expect(last?.stockOuts ?? 9).toBeLessThan(first?.stockOuts ?? 0);
    expect(last?.fillRate ?? 0).toBeGreaterThan(first?.fillRate ?? 1);
    expect(last?.stockValue ?? 0n).toBeGreaterThan(first?.stockValue ?? 0n);
  });

  it('wastes more of a rare shade at more service', () => {
    const { points } = curveOf(rareShade({ demand: lumpyDemand(0.12, 5) }));
    expect(points.at(-1)?.wasted ?? 0n).toBeGreaterThanOrEqual(points[0]?.wasted ?? 1n);
    expect(points.at(-1)?.wastedValue ?? 0n).toBeGreaterThan(0n);
  });

  it('adds up to the whole shelf, in any order', () => {
    const unpriced = capsules({ offers: [capsuleOffer({ tiers: [] })] });
    const curves = [capsules(), rareShade(), unpriced].map(curveOf);
    const shelf = shelfCurve(curves);
    expect(shelfCurve([...curves].reverse())).toEqual(shelf);
    expect(shelf.map((point) => point.level)).toEqual(CURVE_LEVELS);
    const value = (i: number) => curves[i]?.points[3]?.stockValue ?? 0n;
    expect(shelf[3]).toMatchObject({
      stockValue: value(0) + value(1),
      items: 3,
      itemsWithoutPrice: 1,
    });
    expect(curveOf(capsules({ offers: [] })).points).toEqual([]);
  });

  it('is the same for the same seed', () => {
    expect(curveOf(rareShade())).toEqual(curveOf(rareShade()));
  });
});

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
});
