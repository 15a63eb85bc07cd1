import { describe, expect, it } from '@jest/globals';
import {
  archOf,
  ISO_TEETH,
  isAnterior,
  isPrimary,
  quadrantOf,
  regionOf,
  toothKind,
} from './index.js';

const teeth = (from: number, to: number) => ISO_TEETH.filter((t) => t >= from && t <= to);

describe('where a tooth is', () => {
  it.each([
    [11, 18, 1],
    [21, 28, 2],
    [31, 38, 3],
    [41, 48, 4],
    [51, 55, 1],
    [61, 65, 2],
    [71, 75, 3],
    [81, 85, 4],
  ])('%i to %i are in quadrant %i', (from, to, quadrant) => {
    const found = teeth(from, to);
    expect(found).toHaveLength(to - from + 1);
    for (const tooth of found) {
      expect(quadrantOf(tooth)).toBe(quadrant);
      expect(archOf(tooth)).toBe(quadrant <= 2 ? 'upper' : 'lower');
      expect(isPrimary(tooth)).toBe(from > 50);
      expect(isAnterior(tooth)).toBe([1, 2, 3].includes(tooth % 10));
    }
  });

  it('puts canine to canine in the front, and the others in their quadrant', () => {
    const members = new Map<string, number[]>();
    for (const tooth of ISO_TEETH) {
      const region = regionOf(tooth);
      members.set(region, [...(members.get(region) ?? []), tooth]);
    }
    expect(Object.fromEntries(members)).toEqual({
      'upper front': [13, 12, 11, 21, 22, 23, 53, 52, 51, 61, 62, 63],
      'lower front': [43, 42, 41, 31, 32, 33, 83, 82, 81, 71, 72, 73],
      'quadrant 1': [18, 17, 16, 15, 14, 55, 54],
      'quadrant 2': [24, 25, 26, 27, 28, 64, 65],
      'quadrant 3': [34, 35, 36, 37, 38, 74, 75],
      'quadrant 4': [48, 47, 46, 45, 44, 85, 84],
    });
  });
});

describe('the kind of a tooth', () => {
  it.each([
    ['central incisor', [11, 41, 21, 31, 51, 61, 81, 71]],
    ['lateral incisor', [12, 22, 42, 32, 52, 62, 82, 72]],
    ['canine', [13, 23, 43, 33, 53, 63, 83, 73]],
    ['first premolar', [14, 24, 44, 34]],
    ['second premolar', [15, 25, 45, 35]],
    ['first molar', [16, 26, 46, 36, 54, 64, 84, 74]],
    ['second molar', [17, 27, 47, 37, 55, 65, 85, 75]],
    ['third molar', [18, 28, 48, 38]],
  ])('%s', (kind, members) => {
    const found = ISO_TEETH.filter((tooth) => toothKind(tooth) === kind);
    expect(found.toSorted()).toEqual(members.toSorted());
  });

  it('is an incisor or canine exactly for an anterior tooth', () => {
    for (const tooth of ISO_TEETH) {
      expect(/incisor|canine/.test(toothKind(tooth))).toBe(isAnterior(tooth));
    }
  });
});
