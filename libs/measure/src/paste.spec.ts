import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  formatQuantity,
  layersForDepth,
  pastePlacedGrams,
  quantity,
  quantityFromMicro,
  subtract,
} from './index.js';

const placed = (volume: string, shrinkage: string, density: string) =>
  pastePlacedGrams({
    volumeMm3: quantity(volume),
    shrinkagePercent: quantity(shrinkage),
    densityGramsPerCm3: quantity(density),
  });

describe('paste for a cavity', () => {
  // Volume: the 4 x 5 x 4 mm study cavity (Braz Oral Res, micro-CT bulk-fill study, abstract).
  // Capsule of 0.25 g: Dental Materials 2023;39(1):13-24. Density 2.0 is computed from filler
  // content.
  it('fills the study cavity from one capsule, leaving 36 % of it', () => {
    const grams = placed('80', '0', '2');
    expect(formatQuantity(grams)).toBe('0.16');
    const unused = subtract(quantity('0.25'), grams);
    expect(formatQuantity(unused)).toBe('0.09');
    expect((unused * 100n) / quantity('0.25')).toBe(36n);
  });

  // Computed. Shrinkage of universal pastes is below 4 % (open-access review of composite
  // properties).
  it('adds what the paste will shrink by', () => {
    const grams = placed('12', '2.5', '2');
    expect(formatQuantity(grams)).toBe('0.024615');
    expect(formatQuantity(grams).slice(0, 6)).toBe('0.0246');
  });

  it.each([
    ['0', '2.5', '2', '0'],
    ['1000', '0', '1.8', '1.8'],
    ['1', '50', '2', '0.004'],
    ['0.000001', '0', '2', '0'],
    ['0.00025', '0', '2', '0.000001'],
    ['48', '2.5', '2', '0.098462'],
  ])('%s mm3 at %s percent and %s g/cm3 takes %s g', (volume, shrinkage, density, grams) => {
    expect(formatQuantity(placed(volume, shrinkage, density))).toBe(grams);
  });

  it('refuses figures that no paste has', () => {
    expect(() => placed('-1', '0', '2')).toThrow(RangeError);
    expect(() => placed('1', '-0.1', '2')).toThrow(RangeError);
    expect(() => placed('1', '100', '2')).toThrow(RangeError);
    expect(() => placed('1', '0', '-2')).toThrow(RangeError);
  });

  it('takes more for more volume or more shrinkage', () => {
    const volume = fc.bigInt({ min: 0n, max: 10n ** 9n }).map(quantityFromMicro);
    const percent = fc.bigInt({ min: 0n, max: 99_999_999n }).map(quantityFromMicro);
    const densityGramsPerCm3 = quantity('2');
    fc.assert(
      fc.property(volume, volume, percent, percent, (v, more, s, t) => {
        const grams = (volumeMm3: bigint, shrinkagePercent: bigint) =>
          pastePlacedGrams({
            volumeMm3: quantityFromMicro(volumeMm3),
            shrinkagePercent: quantityFromMicro(shrinkagePercent),
            densityGramsPerCm3,
          });
        const [low, high] = s < t ? [s, t] : [t, s];
        expect(grams(v + more, low) >= grams(v, low)).toBe(true);
        expect(grams(v, high) >= grams(v, low)).toBe(true);
      }),
    );
  });
});

describe('layers for a depth', () => {
  // A cavity 4 mm deep takes two layers of 2.0 mm: 4 mm from the study above; 2 mm a layer is
  // common practice, no source. One layer of a bulk paste may be 4-5 mm: Oman Med J
  // 2022;37(1):e339.
  it.each([
    ['4', '2', 2],
    ['4', '4', 1],
    ['4.000001', '2', 3],
    ['3.9', '2', 2],
    ['2', '2', 1],
    ['0.5', '2', 1],
    ['0', '2', 1],
    ['1', '0.3', 4],
  ])('%s mm in layers of %s mm', (depth, thickness, layers) => {
    expect(layersForDepth(quantity(depth), quantity(thickness))).toBe(layers);
  });

  it('refuses a negative depth or a layer without thickness', () => {
    expect(() => layersForDepth(quantity('-1'), quantity('2'))).toThrow(RangeError);
    expect(() => layersForDepth(quantity('1'), quantity('0'))).toThrow(RangeError);
  });
});
