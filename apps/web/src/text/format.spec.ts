import { describe, expect, it } from '@jest/globals';
import { units as german } from './de/common.js';
import { units as english } from './en/common.js';
import { makeFormat } from './format.js';

const here = { currency: 'EUR', timeZone: 'Europe/Berlin' };
const en = makeFormat({ ...here, locale: 'en-GB', units: english });
const de = makeFormat({ ...here, locale: 'de-DE', units: german });

describe('values in the language of the person', () => {
  it('keeps every digit of a decimal', () => {
    expect(en.number('12345678901234567.123456')).toBe('12,345,678,901,234,567.123456');
    expect(de.number('0.06')).toBe('0,06');
  });

  it('writes amounts with their units', () => {
    expect(en.quantity('1', 'piece')).toBe('1\u00a0piece');
    expect(en.quantity('3', 'piece')).toBe('3\u00a0pieces');
    expect(de.quantity('0.4', 'mL')).toBe('0,4\u00a0ml');
    expect(en.quantity('2', 'unheard-of')).toBe('2\u00a0unheard-of');
  });

  it('writes money, days and moments', () => {
    expect(en.money('1234.5')).toBe('€1,234.50');
    expect(de.money('-0.5')).toBe('-0,50\u00a0€');
    expect(en.day('2026-05-04')).toBe('4 May 2026');
    expect(de.day('2026-05-04')).toBe('04.05.2026');
    expect(de.month('2026-05-04')).toBe('Mai 2026');
    expect(en.instant('2026-05-04T22:30:00Z')).toMatch(/5 May 2026.*00:30/);
    expect(en.percent('0.256')).toBe('25.6%');
  });
});
