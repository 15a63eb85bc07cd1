import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays } from '#lib/platform';
import { type Span, spansOf, startOf } from './span-days.js';

const DAYS: Record<Span, number> = { year: 366, month: 31, third: 11, day: 1 };

function daysOf(span: Span, first: string): string[] {
  const days = Array.from({ length: DAYS[span] }, (_, n) => addDays(first, n));
  return days.filter((day) => startOf(span, day) === first);
}

describe('the spans of a period', () => {
  it('are whole years, and whole months where months are told apart', () => {
    const period = { from: '2024-01-01', to: '2025-12-31' };
    expect(spansOf({ ...period, byMonth: false })).toEqual([
      { span: 'year', first: '2024-01-01', last: '2025-01-01' },
    ]);
    expect(spansOf({ ...period, byMonth: true })).toEqual([
      { span: 'month', first: '2024-01-01', last: '2025-12-01' },
    ]);
  });

  it('are months, thirds of them and days at its two ends', () => {
    expect(spansOf({ from: '2024-11-09', to: '2026-02-21', byMonth: false })).toEqual([
      { span: 'day', first: '2024-11-09', last: '2024-11-10' },
      { span: 'third', first: '2024-11-11', last: '2024-11-21' },
      { span: 'month', first: '2024-12-01', last: '2024-12-01' },
      { span: 'year', first: '2025-01-01', last: '2025-01-01' },
      { span: 'month', first: '2026-01-01', last: '2026-01-01' },
      { span: 'third', first: '2026-02-01', last: '2026-02-11' },
      { span: 'day', first: '2026-02-21', last: '2026-02-21' },
    ]);
  });

  it('know the last third of a month, however long it is', () => {
    expect(startOf('third', '2028-02-29')).toBe('2028-02-21');
    expect(startOf('third', '2026-01-31')).toBe('2026-01-21');
    expect(spansOf({ from: '2028-02-21', to: '2028-02-29', byMonth: false })).toEqual([
      { span: 'third', first: '2028-02-21', last: '2028-02-21' },
    ]);
  });

  it('reach over all time without an end, and over nothing from a day to one before', () => {
    const [always] = spansOf({ from: null, to: null, byMonth: false });
    expect(always).toMatchObject({ span: 'year' });
    expect(spansOf({ from: '2026-01-02', to: '2026-01-01', byMonth: false })).toEqual([]);
  });

  it('have every day of the period once and no other', () => {
    const day = fc.integer({ min: 0, max: 700 }).map((n) => addDays('2024-11-20', n));
    const property = fc.property(day, day, fc.boolean(), (from, to, byMonth) => {
      const found = spansOf({ from, to, byMonth }).flatMap(({ span, first, last }) =>
        Array.from({ length: 1100 }, (_, n) => addDays('2024-01-01', n))
          .filter((d) => startOf(span, d) === d && first <= d && d <= last)
          .flatMap((start) => daysOf(span, start)),
      );
      const wanted = Array.from({ length: 1100 }, (_, n) => addDays('2024-01-01', n));
      expect(found).toEqual(wanted.filter((d) => from <= d && d <= to));
    });
    fc.assert(property, { numRuns: 25 });
  });
});
