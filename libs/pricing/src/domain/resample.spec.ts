import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type Money, money, moneyFromMicro } from '#lib/measure';
import { FEWEST_RECORDED, resample } from './resample.js';

const cost = fc.bigInt({ min: 0n, max: 10n ** 9n }).map(moneyFromMicro);
const recorded = fc.array(cost, { minLength: FEWEST_RECORDED, maxLength: 40 });

describe('a range from what was recorded', () => {
  it('is the same for the same seed, in order, and within what can happen', () => {
    fc.assert(
      fc.property(fc.array(recorded, { minLength: 1, maxLength: 4 }), fc.nat(), (kinds, seed) => {
        const range = resample(kinds, seed, 200);
        expect(range).toEqual(resample(kinds, seed, 200));
        const ends = (pick: (a: Money, b: Money) => boolean) =>
          kinds.reduce((sum, costs) => sum + costs.reduce((a, b) => (pick(a, b) ? a : b)), 0n);
        const list = [ends((a, b) => a < b), range?.p10, range?.p50, range?.p90];
        list.push(ends((a, b) => a > b) as Money);
        expect([...list].sort((a, b) => Number((a ?? 0n) - (b ?? 0n)))).toEqual(list);
      }),
      { numRuns: 50 },
    );
  });

  it('of equal costs is that cost', () => {
    const same = new Array<Money>(FEWEST_RECORDED).fill(money('12.5'));
    const twice = money('25');
    expect(resample([same, same], 1)).toEqual({ p10: twice, p50: twice, p90: twice });
  });

  it('finds the percentiles of an even spread', () => {
    const even = Array.from({ length: 100 }, (_, i) => moneyFromMicro(BigInt(i + 1)));
    const range = resample([even], 7, 20_000);
    for (const [found, wanted] of [
      [range?.p10, 10],
      [range?.p50, 50],
      [range?.p90, 90],
    ] as const) {
      expect(Math.abs(Number(found) - wanted)).toBeLessThanOrEqual(2);
    }
  });

  it('is not made up from too few', () => {
    const few = new Array<Money>(FEWEST_RECORDED - 1).fill(money('12.5'));
    const enough = new Array<Money>(FEWEST_RECORDED).fill(money('12.5'));
    expect(resample([few], 1)).toBeNull();
    expect(resample([enough, few], 1)).toBeNull();
    expect(resample([], 1)).toBeNull();
  });
});
