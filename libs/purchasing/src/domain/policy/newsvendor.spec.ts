import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { logNormal, uniform } from '../forecast/continuous.js';
import { lattice } from '../forecast/lattice.js';
import { bestOneOff, criticalRatio, mismatchCosts, oneOffOutcome } from './newsvendor.js';
import { normal } from './normal.js';

describe('one-off purchase', () => {
  it('orders the critical quantile', () => {
    // Wikipedia, Newsvendor model: price 7, cost 5, mean 50, spread 20; 38.68.
    const costs = mismatchCosts({ price: 7, cost: 5, salvage: 0 });
    expect(criticalRatio(costs)).toBeCloseTo(0.2857142857142857, 12);
    expect(Math.abs(bestOneOff(costs, normal(50, 20)) - 38.68)).toBeLessThan(0.005);
  });

  it('takes any distribution of the use', () => {
    // Wikipedia, Newsvendor model (from memory): the same prices; evenly from 50 to 80: about 59;
    // log-normal with a median of 50 and 0.2 for the logarithm: about 45.
    const prices = { price: 7, cost: 5, salvage: 0 };
    const even = uniform(50, 80);
    expect(bestOneOff(mismatchCosts(prices), even)).toBeCloseTo(58.5714, 4);
    const log = logNormal(50, 0.2);
    expect(Math.abs(bestOneOff(mismatchCosts(prices), log) - 44.65)).toBeLessThan(0.01);
    // What is lost is the area under the upper tail: summed up in small steps.
    for (const use of [even, log]) {
      let tail = 0;
      for (let x = 60; x < 400; x += 0.05) tail += use.exceed(x + 0.025) * 0.05;
      expect(use.loss(60)).toBeCloseTo(tail, 4);
    }
    expect(oneOffOutcome(prices, even, 65)).toMatchObject({ lost: 3.75, left: 3.75, used: 61.25 });
    expect(() => uniform(5, 5)).toThrow('high');
    expect(() => logNormal(0, 1)).toThrow('median');
  });

  it('says how many to take on beyond the chairs', () => {
    // Chase, Jacobs & Aquilano, assignment solution (coursehero 6560409, problem 2): one too few
    // costs 125, one too many 250, those who do not come 25 +- 15. The source uses .333.
    const costs = { underage: 125, overage: 250 };
    expect(criticalRatio(costs)).toBeCloseTo(1 / 3, 12);
    expect(Math.abs(bestOneOff(costs, normal(0, 1)) + 0.43164)).toBeLessThan(0.002);
    expect(Math.abs(bestOneOff(costs, normal(25, 15)) - 18.5254)).toBeLessThan(0.03);
  });

  it('tells what is lost, left and earned', () => {
    // tutorsglobe 52554787 (inputs; answers computed).
    const prices = { price: 140, cost: 100, salvage: 90 };
    const use = normal(1000, 200);
    expect(bestOneOff(mismatchCosts(prices), use)).toBeCloseTo(1168.3242, 3);
    const outcome = oneOffOutcome(prices, use, 1169);
    expect(outcome.lost).toBeCloseTo(22.1927, 3);
    expect(outcome.left).toBeCloseTo(191.1927, 3);
    expect(outcome.profit).toBeCloseTo(37_200.365, 2);
  });

  it('is the most profitable size for use in counts', () => {
    const chances = fc
      .array(fc.integer({ min: 0, max: 20 }), { minLength: 1, maxLength: 15 })
      .filter((list) => list.some((n) => n > 0));
    const amount = fc.integer({ min: 1, max: 50 });
    fc.assert(
      fc.property(chances, amount, amount, amount, (list, margin, loss, salvage) => {
        const prices = { price: salvage + loss + margin, cost: salvage + loss, salvage };
        const use = lattice(list);
        const best = bestOneOff(mismatchCosts(prices), use);
        const profit = oneOffOutcome(prices, use, best).profit;
        for (let q = 0; q <= list.length; q += 1) {
          expect(profit).toBeGreaterThanOrEqual(oneOffOutcome(prices, use, q).profit - 1e-9);
        }
      }),
    );
  });

  it('refuses costs that leave nothing to balance', () => {
    expect(() => criticalRatio({ underage: 0, overage: 1 })).toThrow('underage');
    expect(() => criticalRatio({ underage: 1, overage: 0 })).toThrow('overage');
  });
});
