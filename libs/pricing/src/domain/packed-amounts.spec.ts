import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type Pack, percentilesOf } from './packed-amounts.js';

function pack(width: Pack['width'], amounts: readonly bigint[]): Pack {
  const bytes = Buffer.alloc(3 + width * amounts.length);
  amounts.forEach((amount, i) => {
    const at = 3 + width * i;
    if (width === 8) bytes.writeBigInt64BE(amount, at);
    else bytes.writeIntBE(Number(amount), at, width);
  });
  return { width, bytes: bytes.subarray(3) }; // as a driver gives it: not at the start of its buffer
}

describe('percentiles', () => {
  it('of nothing there are none', () => {
    expect(percentilesOf([])).toBeNull();
    expect(percentilesOf([pack(2, [])])).toBeNull();
  });

  // The worked example of the nearest-rank method in the Wikipedia article "Percentile" (from memory):
  // of 15, 20, 35, 40 and 50 the median is 35.
  it('are amounts that occurred', () => {
    const amounts = [50n, 15n, 40n, 20n, 35n];
    expect(percentilesOf([pack(2, amounts)])).toEqual({
      p10: 150_000n,
      p50: 350_000n,
      p90: 500_000n,
    });
  });

  it('are those of all packs in order, losses before gains, counted or compared', () => {
    const list = (min: bigint, max: bigint) => fc.array(fc.bigInt({ min, max }), { maxLength: 40 });
    const small = list(-0x8000n, 0x7fffn);
    const middle = list(-0x8000_0000n, 0x7fff_ffffn);
    const large = list(-(2n ** 63n), 2n ** 63n - 1n);
    const property = fc.property(
      small,
      middle,
      large,
      fc.integer({ min: 0, max: 200 }),
      (...of) => {
        const [twos, fours, eights, times] = of;
        // Many of the same make it worth counting.
        const many = Array.from({ length: times }, () => twos).flat();
        const packs = [pack(2, many), pack(4, fours), pack(8, eights)];
        const micro = [...many, ...fours].map((amount) => amount * 10_000n).concat(eights);
        const sorted = micro.sort((a, b) => (a < b ? -1 : Number(a > b)));
        const rank = (percent: number) => sorted[Math.ceil((percent * sorted.length) / 100) - 1];
        const expected = sorted.length > 0 ? { p10: rank(10), p50: rank(50), p90: rank(90) } : null;
        expect(percentilesOf(packs)).toEqual(expected);
      },
    );
    fc.assert(property);
  });
});
