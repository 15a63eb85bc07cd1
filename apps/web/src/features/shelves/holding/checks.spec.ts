import { describe, expect, it } from '@jest/globals';
import { amountTrouble, countTrouble, dayIfNotToday, dayTrouble } from './checks.js';

const held = (onHand: string, unit: string) => ({ onHand, consumable: { unit } });

describe('an amount that leaves a holding', () => {
  it.each([
    ['', 'missing'],
    ['much', 'decimal'],
    ['0', 'positive'],
    ['-1', 'positive'],
    ['4.000001', 'too much'],
    ['4', undefined],
    ['0,06', undefined],
  ] as const)('%s of 4 g: %s', (typed, trouble) => {
    expect(amountTrouble(typed, held('4', 'g'))).toBe(trouble);
  });

  it('is whole where it is counted', () => {
    expect(amountTrouble('1.5', held('4', 'piece'))).toBe('whole');
    expect(amountTrouble('2', held('4', 'piece'))).toBeUndefined();
  });
});

describe('an amount that was counted', () => {
  it('may be nothing, never less', () => {
    expect(countTrouble('0', 'g')).toBeUndefined();
    expect(countTrouble('-1', 'g')).toBe('negative');
    expect(countTrouble('x', 'g')).toBe('decimal');
    expect(countTrouble('0.5', 'use')).toBe('whole');
  });
});

describe('the day of a booking', () => {
  it('is between receipt and today', () => {
    const trouble = (day: string) => dayTrouble(day, '2026-05-04', '2026-02-01');
    expect(trouble('')).toBe('missing');
    expect(trouble('2026-05-05')).toBe('future');
    expect(trouble('2026-01-31')).toBe('before');
    expect(trouble('2026-02-01')).toBeUndefined();
    expect(trouble('2026-05-04')).toBeUndefined();
  });

  it('is said only when it is not today', () => {
    expect(dayIfNotToday('2026-05-04', '2026-05-04')).toEqual({});
    expect(dayIfNotToday('2026-05-03', '2026-05-04')).toEqual({ occurredOn: '2026-05-03' });
  });
});
