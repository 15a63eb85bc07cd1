import { describe, expect, it } from '@jest/globals';
import { isDigestDue, localTime, nextTry } from './notice-times.js';

const AT = new Date('2026-05-04T05:30:00Z');

describe('messages', () => {
  it('are tried again later and later, and given up in the end', () => {
    const waits = [1, 2, 3, 4, 5, 6].map((failed) => {
      const next = nextTry(failed, AT);
      return next && (next.getTime() - AT.getTime()) / 60_000;
    });
    expect(waits).toEqual([1, 5, 30, 120, 720, undefined]);
  });

  it('go by the clock on the wall of the practice', () => {
    expect(localTime('Europe/Berlin', AT)).toEqual({ day: '2026-05-04', hour: 7 });
    expect(localTime('America/Los_Angeles', AT)).toEqual({ day: '2026-05-03', hour: 22 });
    // Midnight is the hour 0 of the new day, not 24 of the old one.
    const midnight = new Date('2026-05-03T22:10:00Z');
    expect(localTime('Europe/Berlin', midnight)).toEqual({ day: '2026-05-04', hour: 0 });
  });

  it.each([
    [6, null, false],
    [7, null, true],
    [23, '2026-05-03', true],
    [7, '2026-05-04', false],
    [12, '2026-05-04', false],
  ])('gather once a day from seven: at %i, last on %s: %s', (hour, last, due) => {
    expect(isDigestDue({ day: '2026-05-04', hour }, 7, last)).toBe(due);
  });
});
