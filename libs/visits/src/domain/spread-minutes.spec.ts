import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { spreadMinutes, type Timed } from './spread-minutes.js';

const timed = (planned: number, stated: number | null = null): Timed => ({ planned, stated });

describe('minutes of a visit', () => {
  it('are those of the templates when nobody says more', () => {
    const found = spreadMinutes([timed(40), timed(20, 35)], null);
    expect(found).toEqual({ ok: true, minutes: [40, 35] });
  });

  it('are divided by what the templates plan, and what was said stays', () => {
    expect(spreadMinutes([timed(40), timed(20)], 70)).toEqual({ ok: true, minutes: [47, 23] });
    const found = spreadMinutes([timed(40), timed(20, 30), timed(20)], 60);
    expect(found).toEqual({ ok: true, minutes: [20, 30, 10] });
  });

  it('cannot be less than what the restorations say, nor more when all of them say it', () => {
    const less = spreadMinutes([timed(40, 45), timed(20)], 30);
    expect(less).toEqual({ ok: false, message: 'must be at least what its restorations say, 45' });
    const other = spreadMinutes([timed(40, 45)], 50);
    expect(other).toEqual({ ok: false, message: 'must be what its restorations say, 45' });
  });

  it('add up to the visit', () => {
    const one = fc.record({
      planned: fc.nat({ max: 240 }),
      stated: fc.option(fc.nat({ max: 240 })),
    });
    fc.assert(
      fc.property(fc.array(one, { minLength: 1, maxLength: 8 }), fc.nat(2000), (of, total) => {
        const found = spreadMinutes(of, total);
        const said = of.reduce((sum, { stated }) => sum + (stated ?? 0), 0);
        const fits = of.some((r) => r.stated === null) ? said <= total : said === total;
        expect(found.ok).toBe(fits);
        if (!found.ok) return;
        expect(found.minutes.reduce((a, b) => a + b, 0)).toBe(total);
        for (const [i, r] of of.entries()) {
          if (r.stated !== null) expect(found.minutes[i]).toBe(r.stated);
          expect(found.minutes[i]).toBeGreaterThanOrEqual(0);
        }
      }),
    );
  });
});
