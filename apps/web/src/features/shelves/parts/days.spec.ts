import { describe, expect, it } from '@jest/globals';
import { daysBetween, nearnessOf } from './days.js';

describe('days', () => {
  it('are counted over the ends of months and years', () => {
    expect(daysBetween('2026-12-30', '2027-01-02')).toBe(3);
    expect(daysBetween('2026-03-01', '2026-02-28')).toBe(-1);
    expect(daysBetween('2026-05-04', '2026-05-04')).toBe(0);
  });

  it('are over only after the last day of use', () => {
    expect(nearnessOf('2026-05-03', '2026-05-04', 60)).toBe('over');
    expect(nearnessOf('2026-05-04', '2026-05-04', 60)).toBe('soon');
    expect(nearnessOf('2026-07-03', '2026-05-04', 60)).toBe('soon');
    expect(nearnessOf('2026-07-04', '2026-05-04', 60)).toBe('later');
  });
});
