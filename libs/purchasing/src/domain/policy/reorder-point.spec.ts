import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { poisson } from '../forecast/counts.js';
import { demandOverLeadMoments } from '../forecast/lead-time-demand.js';
import { lumpyDemand, poissonDemand } from './example-demand.js';
import { exactLotPolicy, expectedShortAt, impliedService } from './implied-service.js';
import { normal, normalLoss } from './normal.js';
import { fillRate, normalSafetyStock, protectionUse, reorderPoint } from './reorder-point.js';

const cycle = (level: number) => ({ measure: 'cycle service', level }) as const;
const fill = (level: number) => ({ measure: 'fill rate', level }) as const;

function moments(daily: number, dailySd: number, lead: number, leadSd: number) {
  const { mean, variance } = demandOverLeadMoments(
    { mean: daily, variance: dailySd ** 2 },
    { mean: lead, variance: leadSd ** 2 },
  );
  return { mean, sd: Math.sqrt(variance) };
}

describe('safety stock', () => {
  it('covers use and lead time that both vary', () => {
    // Chopra & Meindl, 3rd ed., ch. 11, Impact of Supply Uncertainty (slide 11-23).
    const found = moments(2500, 500, 7, 7);
    expect(found.mean).toBe(17_500);
    expect(found.sd).toBeCloseTo(17549.928774784243, 6);
    const stock = normalSafetyStock(cycle(0.9), found.sd, 1);
    expect(stock).toBeCloseTo(22491.138696520975, 6);
    expect(Math.abs(stock - 22_491)).toBeLessThan(1);
  });

  it('covers a steady lead time', () => {
    // Krajewski, Ritzman & Malhotra, Wood County Hospital (inputs; answers computed).
    const lead = moments(1000, 100, 2, 0);
    const stock = normalSafetyStock(cycle(0.97), lead.sd, 1);
    expect(stock).toBeCloseTo(265.9843828672128, 8);
    expect(lead.mean + stock).toBeCloseTo(2265.984382867213, 8);
  });

  it('needs far less for a fill rate of 98 % than for a cycle service of 98 %', () => {
    const byFill = normalSafetyStock(fill(0.98), 258, 228);
    expect(byFill).toBeLessThan(normalSafetyStock(cycle(0.98), 258, 228));
    expect(
      impliedService({ leadMean: 500, leadSd: 258, orderSize: 228, reorderPoint: 500 + byFill }),
    ).toMatchObject({ fillRate: expect.closeTo(0.98, 10) });
  });

  it('finds the stock for a fill rate', () => {
    // Chopra & Meindl, 3rd ed., ch. 11 (from memory): lots of 10,000, spread 707 in the lead time,
    // a fill rate of 97.5 % lets 250 be missing in a cycle; the safety stock is 67.
    const stock = normalSafetyStock(fill(0.975), 707.1067811865476, 10_000);
    expect(expectedShortAt(stock / 707.1067811865476, 707.1067811865476)).toBeCloseTo(250, 8);
    expect(Math.round(stock)).toBe(67);
  });

  it('is nothing without spread, and negative for a promise below the middle', () => {
    expect(normalSafetyStock(cycle(0.99), 0, 1)).toBe(0);
    expect(normalSafetyStock(cycle(0.2), 10, 1)).toBeLessThan(0);
    expect(() => normalSafetyStock(cycle(1), 10, 1)).toThrow('service');
    expect(() => normalSafetyStock(fill(0.9), 10, 0)).toThrow('orderSize');
  });
});

describe('what a policy implies', () => {
  it('gives the service of a given reorder point', () => {
    // Chopra & Meindl, 3rd ed., example 11.1 (5th/6th ed. 12-1); shortage and fill rate computed.
    const lead = moments(2500, 500, 2, 0);
    expect(lead.sd).toBeCloseTo(707.1067811865476, 9);
    const implied = impliedService({
      leadMean: lead.mean,
      leadSd: lead.sd,
      orderSize: 10_000,
      reorderPoint: 6000,
    });
    expect(implied.safetyStock).toBe(1000);
    expect(implied.averageStock).toBe(6000);
    expect(implied.averageStock / 2500).toBe(2.4);
    expect(implied.cycleService).toBeCloseTo(0.9213503964748575, 9);
    expect(implied.expectedShort).toBeCloseTo(25.127270830006175, 9);
    expect(implied.fillRate).toBeCloseTo(0.9974872729169993, 9);
  });

  it('gives the fill rate behind a cycle service', () => {
    // C. Caplice, MIT ESD.260J, fall 2006, lecture 12: q 228, sigma 258, mean 500; 95 %.
    const q = Math.sqrt((2 * 50 * 13_000) / (250 * 0.1));
    const sd = 1316 * Math.sqrt(2 / 52);
    expect([Math.round(q), Math.round(sd)]).toEqual([228, 258]);
    const stock = normalSafetyStock(cycle(0.95), 258, 228);
    const implied = impliedService({
      leadMean: 500,
      leadSd: 258,
      orderSize: 228,
      reorderPoint: 500 + stock,
    });
    expect(implied.safetyFactor).toBeCloseTo(1.6448536269514722, 9);
    expect(normalLoss(implied.safetyFactor)).toBeCloseTo(0.02089295902779771, 9);
    expect(implied.expectedShort).toBeCloseTo(5.390383429171809, 8);
    expect(expectedShortAt(implied.safetyFactor, 258)).toBeCloseTo(5.390383429171809, 8);
    expect(implied.fillRate).toBeCloseTo(0.9763579674159131, 9);
  });

  it('is exact for lots and use that comes singly', () => {
    // Hopp & Spearman, Factory Physics, ch. 2, Jack's Maintenance Shop (recomputed exactly).
    const use = poisson(1.726027397260274);
    const figures = exactLotPolicy(use, 4, 2);
    expect(figures.fillRate).toBeCloseTo(0.9033352, 6);
    expect(figures.backorders).toBeCloseTo(0.0489262, 6);
    expect(figures.onHand).toBeCloseTo(2.8228988, 6);
    for (const [k, p] of [0.178, 0.307, 0.265, 0.153, 0.066, 0.023].entries()) {
      expect(Math.abs(use.cdf(k) - use.cdf(k - 1) - p)).toBeLessThan(0.0005);
    }
    expect(fillRate(use, 2, 4)).toBeCloseTo(figures.fillRate, 12);
    expect(() => exactLotPolicy(use, 0, 2)).toThrow('orderSize');
    expect(() => exactLotPolicy(use, 1, 2.5)).toThrow('reorderPoint');
  });
});

describe('reorder point', () => {
  it('is the smallest count that keeps the promise for slow movers', () => {
    // scipy 1.10.1: smallest s with P(D <= s) >= target for a Poisson mean.
    const cases = [
      [0.3, 0.95, 1],
      [0.8, 0.95, 2],
      [2, 0.98, 5],
      [5, 0.9, 8],
      [11, 0.99, 19],
    ];
    for (const [mean = 0, level = 0, s = 0] of cases) {
      expect(reorderPoint(cycle(level), poisson(mean), 1)).toBe(s);
      expect(poisson(mean).quantile(level)).toBe(s);
    }
  });

  it('mixes the lead times exactly', () => {
    const demand = poissonDemand(0.5);
    const lead = [
      { days: 2, probability: 0.8 },
      { days: 20, probability: 0.2 },
    ];
    const use = protectionUse(demand, lead, 1);
    expect(use.mean).toBeCloseTo(0.8 * 1.5 + 0.2 * 10.5, 12);
    expect(use.variance).toBeCloseTo(0.8 * 1.5 + 0.2 * 10.5 + 0.16 * 81, 10);
    expect(use.cdf(8)).toBeCloseTo(0.8 * poisson(1.5).cdf(8) + 0.2 * poisson(10.5).cdf(8), 14);
    // A normal approximation with the same moments would promise 95 % at another level.
    const s = reorderPoint(cycle(0.95), use, 1);
    expect(use.cdf(s) >= 0.95 && use.cdf(s - 1) < 0.95).toBe(true);
    expect(use.quantile(0.95)).toBe(s);
  });

  it('rises with the promise, keeps it, and is the smallest that does', () => {
    const level = fc.integer({ min: 1, max: 999 }).map((n) => n / 1000);
    const promise = fc.constantFrom('cycle service' as const, 'fill rate' as const);
    fc.assert(
      fc.property(
        promise,
        level,
        level,
        fc.integer({ min: 0, max: 40 }),
        fc.integer({ min: 1, max: 30 }),
        (measure, a, b, rate, q) => {
          const use = protectionUse(lumpyDemand(rate / 20, 3), [{ days: 7, probability: 1 }], 3);
          const [low, high] = [Math.min(a, b), Math.max(a, b)];
          const s = reorderPoint({ measure, level: low }, use, q);
          expect(s).toBeLessThanOrEqual(reorderPoint({ measure, level: high }, use, q));
          expect(s).toBeGreaterThanOrEqual(0);
          const kept = (at: number) =>
            measure === 'cycle service' ? use.cdf(at) : fillRate(use, at, q);
          expect(kept(s)).toBeGreaterThanOrEqual(low - 1e-11);
          if (s > 0) expect(kept(s - 1)).toBeLessThan(low);
        },
      ),
    );
  });

  it('is nothing for use of nothing or a lead time of nothing', () => {
    expect(reorderPoint(cycle(0.99), poisson(0), 1)).toBe(0);
    expect(reorderPoint(fill(0.99), poisson(0), 5)).toBe(0);
    const now = protectionUse(poissonDemand(3), [{ days: 0, probability: 1 }], 0);
    expect(reorderPoint(cycle(0.99), now, 1)).toBe(0);
  });

  it('refuses a lead time that is none', () => {
    const demand = poissonDemand(1);
    expect(() => protectionUse(demand, [], 0)).toThrow('leadTime');
    expect(() => protectionUse(demand, [{ days: 1.5, probability: 1 }], 0)).toThrow('leadTime');
    expect(() => protectionUse(demand, [{ days: 1, probability: -1 }], 0)).toThrow('leadTime');
    expect(() => protectionUse(demand, [{ days: 1, probability: 1 }], -1)).toThrow('reviewDays');
  });
});

describe('normal distribution', () => {
  it('has the tabled loss', () => {
    // scipy 1.10.1 pdf(k) - k (1 - cdf(k)); the standard table of Silver, Pyke & Thomas, appendix.
    const table = [0.398942, 0.197797, 0.083315, 0.029307, 0.008491, 0.002004, 0.000382];
    for (const [i, g] of table.entries()) expect(normalLoss(i / 2)).toBeCloseTo(g, 6);
    expect(normalLoss(5)).toBeCloseTo(5.346165533833156e-8, 17);
    expect(normalLoss(-3)).toBeCloseTo(3 + normalLoss(3), 14);
  });

  it('has the quantiles of scipy 1.10.1', () => {
    const known: readonly (readonly [number, number])[] = [
      [0.8, 0.8416212335729143],
      [0.9, 1.2815515655446004],
      [0.95, 1.6448536269514722],
      [0.975, 1.959963984540054],
      [0.98, 2.0537489106318225],
      [0.99, 2.3263478740408408],
      [0.995, 2.5758293035489004],
    ];
    for (const [p, z] of known) {
      expect(normal(0, 1).quantile(p)).toBeCloseTo(z, 10);
      expect(normal(0, 1).quantile(1 - p)).toBeCloseTo(-z, 10);
      expect(normal(0, 1).cdf(z)).toBeCloseTo(p, 13);
    }
    expect(() => normal(0, 1).quantile(0)).toThrow(RangeError);
    expect(() => normal(0, -1)).toThrow(RangeError);
    expect(normal(4, 0).quantile(0.9)).toBe(4);
  });
});
