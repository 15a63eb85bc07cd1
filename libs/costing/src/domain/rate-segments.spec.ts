import { describe, expect, it } from '@jest/globals';
import { segmentsOf } from './rate-segments.js';

const rate = (validFrom: string) => ({ validFrom });
const shown = (rates: readonly { validFrom: string }[], from: string, to: string) =>
  segmentsOf(rates, from, to).map((s) => [s.first, s.last, s.days, s.rate?.validFrom ?? null]);

describe('a period by its rates', () => {
  it('is one segment where nothing changes', () => {
    expect(shown([rate('2025-01-01')], '2026-01-01', '2026-01-31')).toEqual([
      ['2026-01-01', '2026-01-31', 31n, '2025-01-01'],
    ]);
    expect(shown([], '2026-01-01', '2026-01-01')).toEqual([['2026-01-01', '2026-01-01', 1n, null]]);
  });

  it('begins another where a rate begins', () => {
    const rates = [rate('2026-01-10'), rate('2026-01-20'), rate('2026-02-01')];
    expect(shown(rates, '2026-01-01', '2026-01-31')).toEqual([
      ['2026-01-01', '2026-01-09', 9n, null],
      ['2026-01-10', '2026-01-19', 10n, '2026-01-10'],
      ['2026-01-20', '2026-01-31', 12n, '2026-01-20'],
    ]);
  });

  it('has none when it ends before it begins', () => {
    expect(shown([rate('2026-01-10')], '2026-02-01', '2026-01-01')).toEqual([]);
  });
});
