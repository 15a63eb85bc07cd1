import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { readCosts, spreadOf } from './spread.js';

function pack(costs: readonly bigint[]) {
  const packed = Buffer.alloc(8 * costs.length);
  costs.forEach((cost, i) => {
    packed.writeBigInt64BE(cost, 8 * i);
  });
  return readCosts(packed, 8);
}

/** Hundredths in 2 bytes, or their millionths in 8. */
function packed(hundredths: readonly bigint[], width: 2 | 8) {
  if (width === 8) return pack(hundredths.map((cost) => cost * 10_000n));
  const bytes = Buffer.alloc(2 * hundredths.length);
  hundredths.forEach((cost, i) => {
    bytes.writeInt16BE(Number(cost), 2 * i);
  });
  return readCosts(bytes, 2);
}

/** The nearest rank by its definition. */
function ranked(costs: readonly bigint[], share: number): bigint {
  const sorted = [...costs].sort((a, b) => (a < b ? -1 : a > b ? 1 : 0));
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? 0n;
}

function expected(costs: readonly bigint[]) {
  const [min, p10, p50, p90, max] = [0, 0.1, 0.5, 0.9, 1].map((share) => ranked(costs, share));
  return { min, p10, p50, p90, max };
}

describe('the spread of costs', () => {
  it('of nothing is nothing', () => {
    expect(spreadOf([], 10_000n)).toEqual({ min: 0n, p10: 0n, p50: 0n, p90: 0n, max: 0n });
  });

  it.each([
    ['cents', 10_000n, 3_000_000_000n],
    ['millionths, of any size', 1n, 9_000_000_000_000_000_000n],
  ])('is the nearest rank, whatever the packs, in %s', (_name, unit, most) => {
    const cost = fc.bigInt({ min: 0n, max: most / unit }).map((n) => n * unit);
    const property = fc.property(fc.array(fc.array(cost, { maxLength: 40 })), (lists) => {
      const all = lists.flat();
      const wanted = all.length === 0 ? spreadOf([], 1n) : expected(all);
      expect(spreadOf(lists.map(pack), 10_000n)).toEqual(wanted);
    });
    fc.assert(property, { numRuns: 200 });
  });

  it.each([
    ['whole cents', 10_000n],
    ['something between the cents', 9_999n],
  ])('of many is the same when it counts %s', (_name, unit) => {
    const costs = Array.from({ length: 9000 }, (_, i) => BigInt((i * 7919) % 2003) * unit);
    expect(spreadOf([pack(costs)], 10_000n)).toEqual(expected(costs));
  });

  it.each([
    [2 as const, 32_767n],
    [4 as const, 2_147_483_647n],
  ])('is read from hundredths in %i bytes', (width, most) => {
    const hundredths = [most, 0n, 1234n, 99n];
    const bytes = Buffer.alloc(4 * width);
    hundredths.forEach((cost, i) => {
      if (width === 2) bytes.writeInt16BE(Number(cost), 2 * i);
      else bytes.writeInt32BE(Number(cost), 4 * i);
    });
    const costs = hundredths.map((cost) => cost * 10_000n);
    expect(spreadOf([readCosts(bytes, width)], 10_000n)).toEqual(expected(costs));
  });

  it.each([
    ['in the same unit', 2 as const, 32_767n],
    ['in others', 8 as const, 9_000_000_000_000n],
  ])('leaves out each cost that was taken away, %s', (_name, width, most) => {
    const hundredths = fc.bigInt({ min: 0n, max: 300n });
    const lists = fc.array(fc.tuple(hundredths, fc.boolean()), { minLength: 1, maxLength: 400 });
    const property = fc.property(lists, fc.constantFrom(0n, most), (costs, far) => {
      const all = [...costs.map(([cost]) => cost), far];
      const gone = costs.filter(([, taken]) => taken).map(([cost]) => cost);
      const left = [...costs.filter(([, taken]) => !taken).map(([cost]) => cost), far];
      const found = spreadOf([packed(all, width)], 10_000n, [packed(gone, 2)]);
      expect(found).toEqual(expected(left.map((cost) => cost * 10_000n)));
    });
    fc.assert(property, { numRuns: 300 });
  });

  it('of many that lie far apart is sorted', () => {
    const costs = Array.from({ length: 5000 }, (_, i) => BigInt(i % 7) * 10_000_000_000_000n);
    expect(spreadOf([pack(costs)], 10_000n)).toEqual(expected(costs));
  });
});
