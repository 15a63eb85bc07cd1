import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays, addMonths, dayIn, daysBetween, isIsoDate, isTimeZone } from '../time/clock.js';
import { canonicalJson } from './booking.js';
import { currencyDigits, currencyStep } from './currency.js';
import { isId, newId } from './ids.js';
import { decodeCursor, encodeCursor, toPage } from './paging.js';

describe('ids', () => {
  it('are version 7, different, and sort in the order they were made', () => {
    const ids = Array.from({ length: 20_000 }, newId);
    expect(ids.every(isId)).toBe(true);
    expect(ids.every((id) => id[14] === '7' && /[89ab]/.test(id[19] ?? ''))).toBe(true);
    expect(new Set(ids).size).toBe(ids.length);
    expect([...ids].sort()).toEqual(ids);
    expect(isId(newId().toUpperCase())).toBe(false);
  });
});

describe('days', () => {
  it('are those of the practice, not of the server', () => {
    const instant = new Date('2026-05-04T22:30:00Z');
    expect(dayIn('Europe/Vienna', instant)).toBe('2026-05-05');
    expect(dayIn('America/Chicago', instant)).toBe('2026-05-04');
    expect(isTimeZone('Europe/Nowhere')).toBe(false);
  });

  it('are added in months to the last day where there is no such day', () => {
    expect(addMonths('2026-01-31', 1)).toBe('2026-02-28');
    expect(addMonths('2027-11-30', 3)).toBe('2028-02-29');
    expect(addMonths('2026-03-31', -1)).toBe('2026-02-28');
  });

  it('are counted both ways', () => {
    const day = fc.integer({ min: 0, max: 36_000 }).map((n) => addDays('1950-01-01', n));
    fc.assert(
      fc.property(day, fc.integer({ min: -9000, max: 9000 }), (from, distance) => {
        expect(isIsoDate(from)).toBe(true);
        expect(daysBetween(from, addDays(from, distance))).toBe(distance);
      }),
    );
  });
});

describe('cursors', () => {
  it('bring back what was put in', () => {
    const part = fc.oneof(
      fc.string().filter((s) => !s.includes('\0')),
      fc.integer(),
      fc.constant(null),
    );
    fc.assert(
      fc.property(fc.array(part, { minLength: 1, maxLength: 4 }), (parts) => {
        expect(decodeCursor(encodeCursor(parts), parts.length)).toEqual(parts);
      }),
    );
  });

  it.each(['', 'x', '%%%', encodeCursor(['a', 'b']), encodeCursor(['a\0'])])(
    'that were not given out are refused: %s',
    (cursor) => {
      expect(() => decodeCursor(cursor, 1)).toThrow('not one that this service gave out');
    },
  );

  it('are given only when there is more', () => {
    const page = (rows: number[]) => toPage(rows, 2, String, (row) => [row]);
    expect(page([1, 2])).toEqual({ items: ['1', '2'], nextCursor: null });
    expect(page([1, 2, 3])).toEqual({ items: ['1', '2'], nextCursor: encodeCursor([2]) });
  });
});

describe('bookings and money', () => {
  it('compare bodies without minding the order of their fields', () => {
    const body = { b: [1, { d: null, c: 'x' }], a: undefined };
    expect(canonicalJson(body)).toBe('{"b":[1,{"c":"x","d":null}]}');
    expect(canonicalJson({ a: [1, 2] })).not.toBe(canonicalJson({ a: [2, 1] }));
  });

  it('know the smallest coin of a currency', () => {
    expect(['EUR', 'JPY', 'KWD'].map(currencyDigits)).toEqual([2, 0, 3]);
    expect(currencyStep('EUR')).toBe(10_000n);
  });
});
