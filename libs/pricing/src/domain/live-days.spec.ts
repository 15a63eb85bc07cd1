import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays, type IsoDate } from '#lib/platform';
import { liveDays } from './live-days.js';

const shown = (from: IsoDate | null, to: IsoDate | null, changed: IsoDate[] = []) =>
  liveDays({ from, to }, changed).map(({ first, last }) => `${first} ${last}`);

describe('the days read from the restorations', () => {
  it('are none of whole months that did not change', () => {
    expect(shown(null, null)).toEqual([]);
    expect(shown('2026-02-01', '2026-04-30')).toEqual([]);
    expect(shown('2026-05-03', '2026-05-02')).toEqual([]);
  });

  it('are those of months that the period cuts', () => {
    expect(shown('2026-02-03', '2026-04-29')).toEqual([
      '2026-02-03 2026-02-28',
      '2026-04-01 2026-04-29',
    ]);
    expect(shown('2026-02-03', '2026-02-05')).toEqual(['2026-02-03 2026-02-05']);
    expect(shown(null, '2026-02-01')).toEqual(['2026-02-01 2026-02-01']);
  });

  it('are those of changed months, as far as the period goes', () => {
    const changed = ['2026-01-01', '2026-03-01', '2026-04-01'];
    expect(shown('2026-03-10', null, changed)).toEqual([
      '2026-03-10 2026-03-31',
      '2026-04-01 2026-04-30',
    ]);
  });

  it('and whole folded months make up the period, no day twice', () => {
    const day = fc.integer({ min: 0, max: 500 }).map((n) => addDays('2025-01-01', n));
    const month = fc
      .integer({ min: 1, max: 12 })
      .map((n) => `2025-${String(n).padStart(2, '0')}-01`);
    const property = fc.property(
      fc.option(day),
      fc.option(day),
      fc.uniqueArray(month),
      day,
      (from, to, changed, one) => {
        const inside = (from === null || one >= from) && (to === null || one <= to);
        const live = liveDays({ from, to }, changed).filter((d) => d.first <= one && one <= d.last);
        const of = `${one.slice(0, 7)}-01`;
        const end = addDays(addDays(of, 31).slice(0, 7).concat('-01'), -1);
        const whole = (from === null || of >= from) && (to === null || end <= to);
        const folded = whole && !changed.includes(of);
        expect(live.length + Number(folded)).toBe(inside ? 1 : 0);
      },
    );
    fc.assert(property);
  });
});
