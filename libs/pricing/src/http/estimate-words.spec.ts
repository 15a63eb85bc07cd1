import { describe, expect, it } from '@jest/globals';
import { amountText, dayText } from './estimate-words.js';

describe('the words of an estimate', () => {
  it('write the day as the language does', () => {
    expect([dayText('2026-11-25', 'en'), dayText('2026-11-25', 'de')]).toEqual([
      '25 November 2026',
      '25. November 2026',
    ]);
  });

  it('write amounts as the language does, to the last digit', () => {
    expect(amountText('1234567890123.45', 2, 'en')).toBe('1,234,567,890,123.45');
    expect(amountText('1000.00', 2, 'de')).toBe('1.000,00');
    expect(amountText('3119', 0, 'en')).toBe('3,119');
  });
});
