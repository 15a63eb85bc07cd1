import { readFileSync } from 'node:fs';
import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { gamma, normal } from './continuous.js';
import { binomial, countWith, negativeBinomial, poisson } from './counts.js';
import { type Distribution, mixture, scaled } from './distribution.js';
import { empirical } from './empirical.js';
import { lattice, onLattice } from './lattice.js';
import { compound, geometricSizes, logarithmicSizes } from './panjer.js';
import { logGamma, normalTail } from './special-functions.js';

interface Case {
  readonly topic: string;
  readonly inputs: Record<string, number | number[] | Record<string, number>>;
  readonly expected: number | number[];
  readonly tolerance: number;
}
const { cases } = JSON.parse(
  readFileSync(new URL('./distributions.reference.json', import.meta.url), 'utf8'),
) as { cases: Case[] };

type Inputs = Record<string, number> & { k: number[]; sizes: Record<string, number> };

function sizesOf(sizes: Record<string, number>) {
  const top = Math.max(...Object.keys(sizes).map(Number));
  return lattice(Array.from({ length: top + 1 }, (_, j) => sizes[j] ?? 0));
}

const byShape = (i: Inputs) => {
  const [shape = 0, scale = 0] = [i.shape, i.scale];
  return gamma(shape * scale, shape * scale * scale);
};
const n = (x: number | undefined) => x ?? Number.NaN;
const BY_TOPIC: Record<string, (i: Inputs) => number | number[]> = {
  'gamma quantile': (i) => byShape(i).quantile(n(i.p)),
  'gamma cdf': (i) => byShape(i).cdf(n(i.x)),
  'gamma loss E[(X-x)+]': (i) => gamma(n(i.mean), n(i.variance)).loss(n(i.x)),
  'negative binomial quantile by mean and variance': (i) =>
    negativeBinomial(n(i.mean), n(i.variance)).quantile(n(i.p)),
  'negative binomial pmf': (i) => negativeBinomial(n(i.mean), n(i.variance)).pmf(n(Number(i.k))),
  'Poisson quantile': (i) => poisson(n(i.mean)).quantile(n(i.p)),
  'Poisson cdf': (i) => poisson(n(i.mean)).cdf(n(Number(i.k))),
  'Poisson loss E[(X-x)+]': (i) => poisson(n(i.mean)).loss(n(i.x)),
  'compound Poisson pmf (Panjer)': (i) =>
    i.k.map((k) => compound(poisson(n(i.rate)), sizesOf(i.sizes)).pmf(k)),
  'compound Poisson quantile': (i) =>
    (i.p as unknown as number[]).map((p) =>
      compound(poisson(n(i.rate)), sizesOf(i.sizes)).quantile(p),
    ),
  'compound Poisson, geometric sizes, pmf': (i) =>
    i.k.map((k) => compound(poisson(n(i.rate)), geometricSizes(n(i.success))).pmf(k)),
  'identity: compound Poisson with logarithmic sizes equals negative binomial': (i) =>
    i.k.map((k) => compound(poisson(n(i.rate)), logarithmicSizes(n(i.theta))).pmf(k)),
  'normal quantile': (i) => (i.p as unknown as number[]).map((p) => normal(0, 1).quantile(p)),
};

describe('distributions agree with SciPy 1.10.1 and R 4.2.2', () => {
  it.each(cases.map((c) => [`${c.topic} ${JSON.stringify(c.inputs)}`, c] as const))(
    '%s',
    (_, { topic, inputs, expected, tolerance }) => {
      const own = [BY_TOPIC[topic]?.(inputs as unknown as Inputs)].flat();
      for (const [i, wanted] of [expected].flat().entries()) {
        expect(Math.abs(n(own[i]) - wanted)).toBeLessThanOrEqual(tolerance);
      }
    },
  );
});

/** SciPy 1.17.1: far tails and large means, beyond what the tables in handbooks show. */
describe('far out and large (SciPy 1.17.1)', () => {
  const FAR: [string, () => number, number][] = [
    ['Poisson mean 3, above 40', () => poisson(3).exceed(40), 5.84499880109629e-32],
    ['Poisson mean 1e6, up to 998,000', () => poisson(1e6).cdf(998_000), 0.022750122939677576],
    ['Poisson mean 700, nothing', () => poisson(700).pmf(0), 9.85967654375977e-305],
    [
      'negative binomial 3, 6, above 60',
      () => negativeBinomial(3, 6).exceed(60),
      2.1868357819032624e-16,
    ],
    [
      'negative binomial 5000, 90000, quantile 0.999',
      () => negativeBinomial(5000, 90_000).quantile(0.999),
      5977.0,
    ],
    [
      'negative binomial 0.01, 5, quantile 0.9999',
      () => negativeBinomial(0.01, 5).quantile(0.9999),
      2.0,
    ],
    [
      'negative binomial 20, 60, density at 25',
      () => negativeBinomial(20, 60).pmf(25),
      0.03517724865950201,
    ],
    [
      'gamma shape 0.05, quantile 0.01',
      () => gamma(0.05, 0.05).quantile(0.01),
      5.844632057286578e-41,
    ],
    [
      'gamma shape 400, quantile 0.9999',
      () => gamma(400, 400).quantile(0.9999),
      478.69067836135304,
    ],
    ['gamma shape 2.5, above 100', () => gamma(10, 40).exceed(100), 1.3857973367009573e-9],
    ['binomial 40, 0.3, up to 4', () => binomial(40, 0.3).cdf(4), 0.00256089607090781],
    ['binomial 40, 0.3, above 30', () => binomial(40, 0.3).exceed(30), 7.730549481218749e-10],
    ['normal above 10', () => normalTail(10), 7.61985302416047e-24],
    ['normal above 37', () => normalTail(37), 5.7255712225239266e-300],
    ['normal quantile 1e-12', () => normal(0, 1).quantile(1e-12), -7.034483825301131],
    ['log gamma 0.001', () => logGamma(0.001), 6.907178885383853],
    ['log gamma 12.7', () => logGamma(12.7), 19.233043179570085],
    ['log gamma 1e7', () => logGamma(1e7), 151180949.36947393],
  ];
  it.each(FAR)('%s', (_, own, wanted) => {
    expect(Math.abs(own() / wanted - 1)).toBeLessThan(1e-9);
  });

  it('does not overflow and keeps its identities at a mean of a hundred million', () => {
    const large = negativeBinomial(1e8, 4e8);
    const q = large.quantile(0.99);
    expect(large.cdf(q)).toBeGreaterThanOrEqual(0.99);
    expect(large.cdf(q - 1)).toBeLessThan(0.99);
    expect(q).toBeCloseTo(1e8 + 2.3263478740408408 * 2e4, -2);
    expect(large.loss(q) - large.loss(q + 1)).toBeCloseTo(large.exceed(q), 4);
  });
});

const mean = fc.double({ min: 0.01, max: 300, noNaN: true });
const ratio = fc.double({ min: 0.05, max: 20, noNaN: true });
const level = fc.double({ min: 0.001, max: 0.999, noNaN: true });

const FAMILIES: Record<string, fc.Arbitrary<{ of: Distribution; top: number; whole: boolean }>> = {
  count: fc
    .tuple(mean, ratio)
    .map(([m, r]) => ({ of: countWith(m, m * r), top: 3 * m + 20, whole: true })),
  // Below a shape of 0.05 the low quantiles are smaller than the smallest number.
  gamma: fc
    .tuple(fc.double({ min: 1, max: 300, noNaN: true }), ratio)
    .map(([m, r]) => ({ of: gamma(m, m * r), top: 3 * m + 20, whole: false })),
  normal: fc
    .tuple(mean, ratio)
    .map(([m, r]) => ({ of: normal(m, m * r), top: 3 * m + 20, whole: false })),
  'compound Poisson': fc
    .tuple(
      fc.double({ min: 0.05, max: 20, noNaN: true }),
      fc.array(fc.integer({ min: 1, max: 12 }), { minLength: 1, maxLength: 8 }),
    )
    .map(([m, sizes]) => ({
      of: compound(poisson(m), onLattice(sizes)),
      top: 100,
      whole: true,
    })),
  empirical: fc
    .array(fc.integer({ min: 0, max: 40 }), { minLength: 1, maxLength: 30 })
    .map((amounts) => ({ of: empirical(amounts), top: 45, whole: true })),
  mixture: fc.tuple(mean, mean, level).map(([a, b, w]) => ({
    of: mixture([
      { weight: w, of: poisson(a) },
      { weight: 1 - w, of: countWith(b, 2 * b) },
    ]),
    top: 3 * Math.max(a, b) + 20,
    whole: true,
  })),
};

it.each([[[]], [[1, Number.NaN]], [[Number.POSITIVE_INFINITY]]])(
  'nothing is known from %j',
  (amounts) => {
    expect(() => empirical(amounts)).toThrow(/finite amount/);
  },
);

describe.each(Object.entries(FAMILIES))('every %s distribution', (_, family) => {
  it('has a rising distribution function with a complement', () => {
    fc.assert(
      fc.property(family, fc.array(fc.double({ min: 0, max: 1, noNaN: true })), (f, points) => {
        const xs = points.map((u) => u * f.top).sort((a, b) => a - b);
        const values = xs.map((x) => f.of.cdf(x));
        for (const [i, v] of values.entries()) {
          expect(v).toBeGreaterThanOrEqual((values[i - 1] ?? 0) - 1e-13);
          expect(v + f.of.exceed(xs[i] ?? 0)).toBeCloseTo(1, 11);
        }
      }),
    );
  });

  it('has quantiles that undo the distribution function', () => {
    fc.assert(
      fc.property(family, level, (f, p) => {
        const q = f.of.quantile(p);
        expect(f.of.cdf(q)).toBeGreaterThanOrEqual(p - 1e-11);
        const just = f.whole ? q - 0.5 : q - 1e-6 * (1 + Math.abs(q));
        expect(f.of.cdf(just)).toBeLessThanOrEqual(p + 1e-11);
        if (f.whole) expect(q).toBe(Math.round(q));
      }),
    );
  });

  it('loses what lies above: slope, start and limits of the loss', () => {
    fc.assert(
      fc.property(family, fc.double({ min: 0, max: 1, noNaN: true }), (f, u) => {
        const x = Math.floor(u * f.top);
        const [here, next] = [f.of.loss(x), f.of.loss(x + 1)];
        expect(here).toBeGreaterThanOrEqual(next - 1e-10);
        expect(here).toBeGreaterThanOrEqual(f.of.mean - x - 1e-9 * (1 + f.of.mean));
        if (f.whole) expect(here - next).toBeCloseTo(f.of.exceed(x), 8);
      }),
    );
  });

  it('has the same quantiles in another unit', () => {
    fc.assert(
      fc.property(family, level, fc.integer({ min: 1, max: 1000 }), (f, p, k) => {
        const factor = k / 100;
        const other = scaled(f.of, factor);
        expect(other.quantile(p)).toBeCloseTo(f.of.quantile(p) * factor, 9);
        expect(other.cdf(other.quantile(p))).toBeGreaterThanOrEqual(p - 1e-9);
        expect(other.variance).toBeCloseTo(f.of.variance * factor * factor, 6);
      }),
    );
  });

  it.each([0, 1, -0.1, Number.NaN])('has no quantile at %s', (p) => {
    for (const f of fc.sample(family, 3)) expect(() => f.of.quantile(p)).toThrow(RangeError);
  });
});
