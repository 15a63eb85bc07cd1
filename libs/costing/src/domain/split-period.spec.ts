import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays } from '#lib/platform';
import { daysOf, splitPeriod } from './split-period.js';

describe('a period taken apart', () => {
  it('is whole months where it covers them', () => {
    expect(splitPeriod('2026-01-01', '2026-12-31')).toEqual({
      months: { first: '2026-01-01', last: '2026-12-01' },
      edges: [],
    });
    expect(splitPeriod(null, null)).toEqual({ months: { first: null, last: null }, edges: [] });
  });

  it('has days at its two ends otherwise', () => {
    expect(splitPeriod('2026-01-15', '2026-03-20')).toEqual({
      months: { first: '2026-02-01', last: '2026-02-01' },
      edges: [
        { first: '2026-01-15', last: '2026-01-31' },
        { first: '2026-03-01', last: '2026-03-20' },
      ],
    });
    expect(splitPeriod('2026-02-10', '2026-02-28').edges).toEqual([
      { first: '2026-02-10', last: '2026-02-28' },
    ]);
    expect(splitPeriod(null, '2026-02-10')).toEqual({
      months: { first: null, last: '2026-01-01' },
      edges: [{ first: '2026-02-01', last: '2026-02-10' }],
    });
  });

  it('covers every day of the period once and no other', () => {
    const day = fc.integer({ min: 0, max: 500 }).map((n) => addDays('2025-11-20', n));
    const property = fc.property(fc.option(day), fc.option(day), (from, to) => {
      const { months, edges } = splitPeriod(from, to);
      const wrong: string[] = [];
      for (let n = -40; n < 600; n += 1) {
        const each = addDays('2025-11-20', n);
        const wanted = (from === null || each >= from) && (to === null || each <= to);
        const month = `${each.slice(0, 7)}-01`;
        const inMonths =
          (months.first === null || month >= months.first) &&
          (months.last === null || month <= months.last);
        const inEdges = edges.filter(({ first, last }) => first <= each && each <= last).length;
        if ((inMonths ? 1 : 0) + inEdges !== (wanted ? 1 : 0)) wrong.push(each);
      }
      expect(wrong).toEqual([]);
    });
    fc.assert(property, { numRuns: 60 });
  });

  it('knows the days of a month', () => {
    expect(daysOf('2028-02-01')).toEqual({ first: '2028-02-01', last: '2028-02-29' });
  });
});
