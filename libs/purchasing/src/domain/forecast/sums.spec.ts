import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { binomial, countWith, negativeBinomial, poisson } from './counts.js';
import { addIndependent, asLattice, onLattice, timesIndependent } from './lattice.js';
import { compound } from './panjer.js';

const mean = fc.double({ min: 0.01, max: 300, noNaN: true });
const ratio = fc.double({ min: 0.05, max: 20, noNaN: true });

describe('sums of independent amounts', () => {
  it('add means and variances', () => {
    fc.assert(
      fc.property(mean, ratio, mean, ratio, (a, r, b, s) => {
        const [one, other] = [countWith(a, a * r), countWith(b, b * s)];
        const sum = addIndependent(asLattice(one), asLattice(other));
        expect(sum.mean).toBeCloseTo(one.mean + other.mean, 6);
        expect(sum.variance / (one.variance + other.variance)).toBeCloseTo(1, 6);
      }),
      { numRuns: 25 },
    );
  });

  it('of Poisson counts are Poisson counts, of equal-ratio negative binomials one of them', () => {
    const sum = addIndependent(asLattice(poisson(2.5)), asLattice(poisson(4)));
    for (const k of [0, 3, 6, 20]) expect(sum.pmf(k)).toBeCloseTo(poisson(6.5).pmf(k), 13);
    const seven = timesIndependent(asLattice(negativeBinomial(1.2, 3)), 7);
    const whole = negativeBinomial(8.4, 21);
    for (const k of [0, 3, 9, 40]) expect(seven.pmf(k)).toBeCloseTo(whole.pmf(k), 13);
  });

  it('keep mean and variance in a compound (Wald and its variance)', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 40, noNaN: true }),
        fc.double({ min: 1.05, max: 4, noNaN: true }),
        fc.array(fc.double({ min: 0.2, max: 9, noNaN: true }), { minLength: 1, maxLength: 9 }),
        (rate, r, amounts) => {
          const sizes = onLattice(amounts);
          for (const number of [poisson(rate), negativeBinomial(rate, rate * r)]) {
            const sum = compound(number, sizes);
            const variance = number.mean * sizes.variance + number.variance * sizes.mean ** 2;
            expect(sum.mean / (number.mean * sizes.mean)).toBeCloseTo(1, 8);
            expect(sum.variance / variance).toBeCloseTo(1, 6);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it('start a compound count whose chance of zero underflows from its halves', () => {
    const sum = compound(poisson(1500), onLattice([1, 2]));
    expect(sum.mean).toBeCloseTo(2250, 6);
    expect(sum.variance).toBeCloseTo(3750, 4);
    expect(sum.quantile(0.99)).toBeGreaterThan(2250 + 2.3 * Math.sqrt(3750) - 2);
  });

  it('refuse a binomial number of amounts', () => {
    expect(() => compound(binomial(5, 0.5), onLattice([1]))).toThrow(/unstable/);
  });
});

describe('counts by mean and variance', () => {
  it('keep the mean exactly and never have less variance than asked', () => {
    fc.assert(
      fc.property(mean, ratio, (m, r) => {
        const of = countWith(m, m * r);
        expect(of.mean).toBeCloseTo(m, 9);
        expect(of.variance).toBeGreaterThanOrEqual(m * r * (1 - 1e-8) - 1e-9);
      }),
    );
  });

  it('are what their recursion says', () => {
    fc.assert(
      fc.property(mean, ratio, fc.integer({ min: 1, max: 200 }), (m, r, k) => {
        const of = countWith(m, m * r);
        const before = of.pmf(k - 1);
        fc.pre(before > 1e-200 && of.variance > 0);
        expect(of.pmf(k)).toBeCloseTo((of.a + of.b / k) * before, 12);
      }),
    );
  });

  it('refuse what is no moment', () => {
    expect(() => countWith(-1, 2)).toThrow(/mean/);
    expect(() => countWith(1, Number.NaN)).toThrow(/variance/);
    expect(() => negativeBinomial(3, 3)).toThrow(/above the mean/);
    expect(countWith(0, 0).quantile(0.99)).toBe(0);
  });
});
