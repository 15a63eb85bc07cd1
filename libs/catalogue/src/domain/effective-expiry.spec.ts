import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { effectiveExpiry, type LifeAfterOpening } from './effective-expiry.js';

const months = (value: number): LifeAfterOpening => ({ value, unit: 'month' });
const days = (value: number): LifeAfterOpening => ({ value, unit: 'day' });

describe('effective expiry', () => {
  // Worked out by hand outside this program: opened on 15 March 2026, six months after opening.
  it.each([
    ['2026-08-31', '2026-03-15', months(6), '2026-08-31'],
    ['2027-01-31', '2026-03-15', months(6), '2026-09-15'],
  ])('label %s, opened %s, six months -> %#', (labelExpiry, openedOn, life, expected) => {
    expect(effectiveExpiry({ labelExpiry, openedOn, life })).toBe(expected);
  });

  it.each([
    ['2026-08-31', months(6), '2027-02-28'],
    ['2027-08-31', months(6), '2028-02-29'],
    ['2026-12-31', months(2), '2027-02-28'],
    ['2026-01-31', months(1), '2026-02-28'],
    ['2026-11-30', months(13), '2027-12-30'],
    ['2026-02-27', days(2), '2026-03-01'],
    ['2028-02-27', days(2), '2028-02-29'],
    ['2026-12-25', days(30), '2027-01-24'],
  ])('opened %s with a life of %o ends on %s', (openedOn, life, expected) => {
    expect(effectiveExpiry({ labelExpiry: null, openedOn, life })).toBe(expected);
  });

  // A label that gives a month only (expiry 260200 or 280200 in a GS1 symbol) means its last day.
  it.each([
    ['2026-02-28', '2025-08-31', '2026-02-28'],
    ['2026-02-28', '2025-08-27', '2026-02-27'],
    ['2028-02-29', '2027-08-31', '2028-02-29'],
    ['2028-02-29', '2027-08-28', '2028-02-28'],
  ])('label %s, opened %s, ends with February at the latest', (labelExpiry, openedOn, expected) => {
    expect(effectiveExpiry({ labelExpiry, openedOn, life: months(6) })).toBe(expected);
  });

  it('is the label while the container is sealed', () => {
    const facts = { labelExpiry: '2026-08-31', openedOn: null, life: days(1) };
    expect(effectiveExpiry(facts)).toBe('2026-08-31');
  });

  it('is the label when opening does not shorten the life', () => {
    const facts = { labelExpiry: '2026-08-31', openedOn: '2026-01-01', life: null };
    expect(effectiveExpiry(facts)).toBe('2026-08-31');
  });

  it('is nothing when nothing limits it', () => {
    expect(effectiveExpiry({ labelExpiry: null, openedOn: null, life: days(9) })).toBeNull();
    expect(effectiveExpiry({ labelExpiry: null, openedOn: '2026-01-01', life: null })).toBeNull();
  });

  it('never outlives the label, and a longer life never ends earlier', () => {
    const limits = {
      min: new Date('2020-01-01'),
      max: new Date('2060-01-01'),
      noInvalidDate: true,
    };
    const day = fc.date(limits).map((d) => d.toISOString().slice(0, 10));
    const life = fc.record({
      value: fc.integer({ min: 1, max: 120 }),
      unit: fc.constantFrom('day' as const, 'month' as const),
    });
    fc.assert(
      fc.property(day, day, life, (labelExpiry, openedOn, shorter) => {
        const longer = { ...shorter, value: shorter.value + 1 };
        const first = effectiveExpiry({ labelExpiry, openedOn, life: shorter }) ?? '';
        const second = effectiveExpiry({ labelExpiry, openedOn, life: longer }) ?? '';
        expect(first <= labelExpiry).toBe(true);
        expect(first <= second).toBe(true);
      }),
    );
  });
});
