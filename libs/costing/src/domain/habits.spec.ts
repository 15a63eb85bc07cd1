import { describe, expect, it } from '@jest/globals';
import { costliest, savedPerYear } from './habits.js';

describe('habits', () => {
  it('are ranked by their cost, what costs nothing left out', () => {
    const habits = [1n, 0n, 5n, 3n, 3n].map((cost, i) => ({ cost, i }));
    expect(costliest(habits, 3).map(({ i }) => i)).toEqual([2, 3, 4]);
    expect(costliest(habits, 10)).toHaveLength(4);
  });

  it('are saved for a year as in the period', () => {
    expect(savedPerYear(730n, 73)).toBe(3650n);
    expect(savedPerYear(10n, 365)).toBe(10n);
    expect(savedPerYear(10n, 0)).toBe(0n);
  });
});
