import { describe, expect, it } from '@jest/globals';
import { daysAfter, weekOf } from './week.js';

describe('the week of a day', () => {
  it('goes from Monday to Sunday', () => {
    const week = ['05-04', '05-05', '05-06', '05-07', '05-08', '05-09', '05-10'];
    const days = week.map((day) => `2026-${day}`);
    for (const day of days) expect(weekOf(day)).toEqual(days);
  });

  it('crosses months, years and clock changes', () => {
    expect(weekOf('2027-01-01')[0]).toBe('2026-12-28');
    expect(daysAfter('2026-03-28', 2)).toBe('2026-03-30');
    expect(daysAfter('2028-02-28', 1)).toBe('2028-02-29');
  });
});
