import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  CAVITY_CLASSES,
  type CavityClass,
  cavityClassFits,
  ISO_TEETH,
  isAnterior,
  parseIsoTooth,
  parseSurfaces,
  REASONS,
  SURFACES,
} from './index.js';

function judged(digits: number, text: string, cls: CavityClass): string {
  const tooth = parseIsoTooth(digits);
  if (tooth === undefined) throw new Error(`${digits} is not a tooth`);
  const parsed = parseSurfaces(tooth, text);
  if (!parsed.ok) throw new Error(`${text}: ${parsed.code}`);
  const result = cavityClassFits(tooth, parsed.surfaces, cls);
  if (result.ok) return 'fits';
  return result.needs === undefined ? result.code : `${result.code}: ${result.needs}`;
}

describe('the class of a cavity', () => {
  it.each<[CavityClass, number, string]>([
    ['I', 16, 'O'],
    ['I', 46, 'OF'],
    ['I', 12, 'L'],
    ['I', 55, 'O'],
    ['II', 16, 'MO'],
    ['II', 24, 'MOD'],
    ['II', 85, 'D'],
    ['III', 11, 'M'],
    ['III', 23, 'DL'],
    ['III', 51, 'MFL'],
    ['IV', 11, 'MI'],
    ['IV', 42, 'MIDFL'],
    ['IV', 63, 'ID'],
    ['V', 11, 'F'],
    ['V', 36, 'L'],
    ['V', 45, 'FD'],
    ['VI', 11, 'I'],
    ['VI', 16, 'O'],
    ['VI', 33, 'IL'],
  ])('%s can be on %i %s', (cls, digits, text) => {
    expect(judged(digits, text, cls)).toBe('fits');
  });

  it.each<[CavityClass, number, string, string]>([
    ['I', 16, 'MO', 'class_needs_surface: neither M nor D'],
    ['I', 11, 'D', 'class_needs_surface: neither M nor D'],
    ['II', 11, 'M', 'class_not_on_tooth'],
    ['II', 16, 'O', 'class_needs_surface: M or D'],
    ['III', 16, 'M', 'class_not_on_tooth'],
    ['III', 14, 'D', 'class_not_on_tooth'],
    ['III', 11, 'F', 'class_needs_surface: M or D, without I'],
    ['III', 11, 'MI', 'class_needs_surface: M or D, without I'],
    ['IV', 36, 'MO', 'class_not_on_tooth'],
    ['IV', 11, 'M', 'class_needs_surface: M or D, and I'],
    ['IV', 11, 'IF', 'class_needs_surface: M or D, and I'],
    ['V', 11, 'MI', 'class_needs_surface: F or L'],
    ['V', 36, 'MOD', 'class_needs_surface: F or L'],
    ['VI', 11, 'MFL', 'class_needs_surface: I'],
    ['VI', 36, 'MDFL', 'class_needs_surface: O'],
  ])('%s cannot be on %i %s', (cls, digits, text, why) => {
    expect(judged(digits, text, cls)).toBe(why);
  });

  it('is one of six', () => {
    expect(CAVITY_CLASSES).toEqual(['I', 'II', 'III', 'IV', 'V', 'VI']);
  });
});

describe('any cavity', () => {
  const cavity = fc
    .tuple(fc.constantFrom(...ISO_TEETH), fc.subarray([...SURFACES], { minLength: 1 }))
    .map(([tooth, list]) => {
      const other = isAnterior(tooth) ? 'O' : 'I';
      return { tooth, surfaces: list.filter((surface) => surface !== other) };
    })
    .filter(({ surfaces }) => surfaces.length > 0);

  it('has exactly one class for its proximal surface, and is class I without one', () => {
    fc.assert(
      fc.property(cavity, ({ tooth, surfaces }) => {
        const proximal = surfaces.includes('M') || surfaces.includes('D');
        const fitting = (['I', 'II', 'III', 'IV'] as const).filter(
          (cls) => cavityClassFits(tooth, surfaces, cls).ok,
        );
        const front = surfaces.includes('I') ? 'IV' : 'III';
        const expected = isAnterior(tooth) ? front : 'II';
        expect(fitting).toEqual([proximal ? expected : 'I']);
      }),
    );
  });

  it('fits or is refused whatever the order of its surfaces, with a need only for surfaces', () => {
    fc.assert(
      fc.property(cavity, fc.constantFrom(...CAVITY_CLASSES), ({ tooth, surfaces }, cls) => {
        const result = cavityClassFits(tooth, surfaces, cls);
        expect(cavityClassFits(tooth, surfaces.toReversed(), cls)).toEqual(result);
        if (!result.ok) {
          expect(result.needs !== undefined).toBe(result.code === 'class_needs_surface');
        }
      }),
    );
  });
});

describe('the reason for a restoration', () => {
  it('is one of four', () => {
    expect(REASONS).toEqual(['decay', 'fracture', 'wear', 'cosmetic']);
  });
});
