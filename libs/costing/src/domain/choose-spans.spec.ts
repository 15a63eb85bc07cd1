import { describe, expect, it } from '@jest/globals';
import { chooseSpans } from './choose-spans.js';

const months = (year: number, count = 12) =>
  Array.from({ length: count }, (_, i) => `${year}-${String(i + 1).padStart(2, '0')}-01`);
const all = { from: null, to: null, byMonth: false };

describe('where the days of a report come from', () => {
  const folded = [...months(2024), ...months(2025), ...months(2026, 3)];

  it('is whole years where nothing changed', () => {
    expect(chooseSpans({ folded, changed: [] }, all)).toEqual({
      years: ['2024-01-01', '2025-01-01', '2026-01-01'],
      months: [],
      live: [],
    });
  });

  it('is the months of a year in which something changed, and that month itself', () => {
    const found = chooseSpans({ folded, changed: ['2025-02-01', '2026-04-01'] }, all);
    expect(found.years).toEqual(['2024-01-01']);
    expect(found.months).toHaveLength(11 + 3);
    expect(found.live).toEqual([
      { first: '2025-02-01', last: '2025-02-28' },
      { first: '2026-04-01', last: '2026-04-30' },
    ]);
  });

  it('is months where the period ends within a year, and days at its edges', () => {
    const asked = { from: '2024-11-15', to: '2026-03-31', byMonth: false };
    expect(chooseSpans({ folded, changed: ['2024-01-01'] }, asked)).toEqual({
      years: ['2025-01-01', '2026-01-01'],
      months: ['2024-12-01'],
      live: [{ first: '2024-11-15', last: '2024-11-30' }],
    });
  });

  it('is months when they are asked for', () => {
    const found = chooseSpans({ folded, changed: [] }, { ...all, byMonth: true });
    expect([found.years, found.months]).toEqual([[], folded]);
  });
});
