import { describe, expect, it } from '@jest/globals';
import { quantity } from '#lib/measure';
import { certain } from '../forecast/distribution.js';
import { seededRandom } from '../forecast/seeded-random.js';
import { lumpyDemand } from './example-demand.js';
import { capsuleOffer, capsules, rareShade } from './example-items.js';
import { CURVE_LEVELS, curveSteps, serviceCurve, shelfCurve, shelfNow } from './service-curve.js';

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

  it('buys nothing for the shelf of what nobody uses any more', () => {
    const unused = capsules({ demand: { use: () => certain(0) }, lots: [] });
    const { points, now } = curveOf(unused);
    for (const point of [...points, now]) {
      expect([point?.averageStock, point?.stockValue, point?.stockOuts]).toEqual([0n, 0n, 0]);
    }
    // What is owed is still bought: thirty capsules are two boxes, of which ten are left.
    const owing = curveOf({ ...unused, openShortfall: quantity('30') });
    expect(owing.now?.averageStock ?? 0n).toBeGreaterThan(9_000_000n);
    expect(owing.now?.averageStock ?? 0n).toBeLessThan(11_000_000n);
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

  it('marks what is in force: its own level, or what was set by hand', () => {
    const { points, now } = curveOf(capsules());
    expect(now).toEqual(points.find((point) => point.level === now?.level));
    const [reorderAt, orderUpTo] = [quantity('400'), quantity('700')];
    const byHand = curveOf(capsules({ override: { reorderAt, orderUpTo } }));
    expect(byHand.points).toEqual(points);
    expect(byHand.now).toMatchObject({ reorderPoint: reorderAt, orderUpTo });
    expect(byHand.now?.stockValue ?? 0n).toBeGreaterThan(now?.stockValue ?? 0n);
    expect(shelfNow([byHand, curveOf(capsules({ offers: [] }))])).toMatchObject({
      stockValue: byHand.now?.stockValue,
      items: 1,
    });
  });

  it('comes in steps that somebody else may go between', () => {
    const options = { random: seededRandom(4), levels: CURVE_LEVELS, runs: 30 };
    const steps = curveSteps(capsules(), options);
    let count = 0;
    let step = steps.next();
    for (; step.done !== true; step = steps.next()) count += 1;
    expect(count).toBeGreaterThan(2 * CURVE_LEVELS.length);
    expect(step.value).toEqual(curveOf(capsules()));
  });
});
