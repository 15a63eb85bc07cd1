import { describe, expect, it } from '@jest/globals';
import {
  CAVITY_CLASSES,
  CAVITY_SIZES,
  type CavityClass,
  PLANNING_VOLUMES,
  planningVolume,
} from './index.js';

/** Volume of a body in mm3 by its sides and the part of the box that it fills. */
const box = (a: number, b: number, c: number, part = 1) => a * b * c * part;
const HALF_ELLIPSOID = Math.PI / 6;

describe('planning volumes', () => {
  // Dimensions assumed in mm (low confidence). Only the 4 x 5 x 4 cavity is from a study: Braz Oral
  // Res, micro-CT bulk-fill study, abstract.
  it.each<[CavityClass, readonly number[]]>([
    ['I', [box(3, 2, 2), box(4, 3, 2.5), box(4, 5, 4)]],
    ['III', [box(2, 1.5, 1.2), box(3, 2, 2), box(4, 3, 2.5)]],
    ['IV', [box(3, 3, 2.5, 0.5), box(4, 5, 2.5, 0.5), box(8.5, 4, 2.5)]],
    [
      'V',
      [
        box(3, 2, 1, HALF_ELLIPSOID),
        box(4, 2.5, 1.5, HALF_ELLIPSOID),
        box(6, 3.5, 2, HALF_ELLIPSOID),
      ],
    ],
  ])('class %s follow from their dimensions', (cls, computed) => {
    CAVITY_SIZES.forEach((size, i) => {
      const exact = computed[i] ?? 0;
      expect(Math.abs(Number(planningVolume(cls, size)) - exact)).toBeLessThanOrEqual(0.1);
    });
  });

  // Planning values for two surfaces, three surfaces, and a large MOD; no dimensions given.
  it('class II are as listed', () => {
    expect(PLANNING_VOLUMES.II).toEqual({ small: '48', medium: '78', large: '188' });
  });

  // Common practice, no source: 0.02 to 0.04 g at 2.0 g/cm3.
  it('class VI are 0.02 to 0.04 g of paste', () => {
    const grams = CAVITY_SIZES.map((size) => (Number(planningVolume('VI', size)) * 2) / 1000);
    expect(grams).toEqual([0.02, 0.03, 0.04]);
  });

  // 0.85 x width x height x thickness; crown sizes are textbook averages, from memory: upper
  // lateral 6.5 x 9.0 mm, upper central 8.5 x 10.5 mm.
  it('without a class are those of a direct veneer', () => {
    const veneers = [0.85 * 6.5 * 9 * 0.5, 0.85 * 8.5 * 10.5 * 0.5, 0.85 * 8.5 * 10.5 * 0.7];
    expect(CAVITY_SIZES.map((size) => Number(planningVolume(undefined, size)))).toEqual(
      veneers.map(Math.round),
    );
  });

  it('are plain decimals that grow with the size, for every class', () => {
    for (const cls of [...CAVITY_CLASSES, undefined]) {
      const texts = CAVITY_SIZES.map((size) => planningVolume(cls, size));
      for (const text of texts) expect(text).toMatch(/^\d+(\.\d)?$/);
      const numbers = texts.map(Number);
      expect(numbers.toSorted((a, b) => a - b)).toEqual(numbers);
      expect(new Set(numbers).size).toBe(3);
    }
  });
});
