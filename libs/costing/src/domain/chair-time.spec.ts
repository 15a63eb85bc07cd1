import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { formatMoney, money, moneyFromMicro } from '#lib/measure';
import {
  type Capacity,
  capacityOfDays,
  capacityRate,
  costOfMinutes,
  useOfCapacity,
} from './chair-time.js';

const capacity = (cost: string, minutes: number): Capacity => ({
  yearlyCost: money(cost),
  practicalMinutes: BigInt(minutes),
});

describe('time-driven costing', () => {
  // Kaplan & Anderson, Time-Driven Activity-Based Costing (working paper behind Harvard Business
  // Review 82(11), November 2004, pp. 131-138): 560,000 a quarter over 700,000 practical minutes.
  const department = capacity('560000', 700_000);
  const work = [
    { minutes: 40n, count: 9800n, unit: '32.00', assigned: '313600.00' },
    { minutes: 220n, count: 280n, unit: '176.00', assigned: '49280.00' },
    { minutes: 250n, count: 500n, unit: '200.00', assigned: '100000.00' },
  ];

  it('costs 0.80 a minute, and each kind of work by its minutes', () => {
    expect(formatMoney(capacityRate(department))).toBe('0.80');
    for (const { minutes, count, unit, assigned } of work) {
      expect(formatMoney(costOfMinutes(department, minutes))).toBe(unit);
      expect(formatMoney(costOfMinutes(department, minutes * count))).toBe(assigned);
    }
  });

  it('leaves 97,120 for the 121,400 minutes that nobody used', () => {
    const used = work.reduce((sum, { minutes, count }) => sum + minutes * count, 0n);
    expect(used).toBe(578_600n);
    const use = useOfCapacity(department, used);
    expect(formatMoney(use.usedCost)).toBe('462880.00');
    expect([use.idleMinutes, formatMoney(use.idleCost)]).toEqual([121_400n, '97120.00']);
  });

  // OpenStax, Principles of Accounting, Volume 2 (2019), ch. 6.3: five pools by their drivers.
  it('costs by several pools, each by its own driver', () => {
    const pools = [200_000, 500_000, 300_000, 600_000, 900_000];
    const drivers = [5000, 10_000, 20_000, 30_000, 150_000];
    const rates = pools.map((pool, i) => capacity(String(pool), drivers[i] ?? 0));
    expect(rates.map((each) => formatMoney(capacityRate(each)))).toEqual([
      '40.00',
      '50.00',
      '15.00',
      '20.00',
      '6.00',
    ]);
    const total = (use: readonly number[]) =>
      rates.reduce((sum, each, i) => sum + costOfMinutes(each, BigInt(use[i] ?? 0)), 0n);
    const all = [
      total([2000, 5000, 10_000, 15_000, 80_000]),
      total([1500, 4000, 9000, 3000, 60_000]),
      total([1500, 1000, 1000, 12_000, 10_000]),
    ];
    expect(all.map((cost) => formatMoney(moneyFromMicro(cost)))).toEqual([
      '1260000.00',
      '815000.00',
      '425000.00',
    ]);
  });

  // OpenStax, Principles of Accounting, Volume 2 (2019), ch. 4.8: part 42, three hours at 25 and as
  // much overhead again.
  it('adds material and time to the cost of one job', () => {
    const [labour, overhead] = [capacity('25', 60), capacity('25', 60)];
    const hours = costOfMinutes(labour, 180n) + costOfMinutes(overhead, 180n);
    expect(formatMoney(moneyFromMicro(money('42') + hours))).toBe('192.00');
  });
});

describe('capacity', () => {
  const any = fc.record({
    yearlyCost: fc.bigInt({ min: 0n, max: 10n ** 15n }).map(moneyFromMicro),
    practicalMinutes: fc.bigInt({ min: 1n, max: 10n ** 7n }),
  });

  it('is what was used and what was idle, whatever the numbers', () => {
    const property = fc.property(any, fc.bigInt({ min: 0n, max: 10n ** 8n }), (of, minutes) => {
      const use = useOfCapacity(of, minutes);
      expect(use.usedCost + use.idleCost).toBe(of.yearlyCost);
      expect(use.usedMinutes + use.idleMinutes).toBe(of.practicalMinutes);
      expect(use.idleCost < 0n && use.idleMinutes > 0n).toBe(false);
    });
    fc.assert(property);
  });

  it('costs the work done the same however much is idle beside it', () => {
    const property = fc.property(any, fc.bigInt({ min: 0n, max: 500n }), (of, minutes) => {
      const before = costOfMinutes(of, minutes);
      expect(useOfCapacity(of, minutes * 2n).usedCost - 2n * before).toBeLessThanOrEqual(1n);
      expect(costOfMinutes(of, minutes)).toBe(before);
    });
    fc.assert(property);
  });

  it('of a year is that of 365 days', () => {
    expect(capacityOfDays(capacity('365', 36_500), 365n)).toEqual(capacity('365', 36_500));
    expect(capacityOfDays(capacity('365', 36_500), 31n)).toEqual(capacity('31', 3100));
  });
});
