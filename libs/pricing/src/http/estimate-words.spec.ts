import { describe, expect, it } from '@jest/globals';
import { dayText, printable } from './estimate-words.js';

describe('the words of an estimate', () => {
  it('are made printable with the letters that standard fonts have', () => {
    expect(printable('Zahnärzte Łódź, Café “Nord”')).toBe('Zahnärzte Lódz, Café “Nord”');
    expect(printable('歯 😀')).toBe('? ?');
  });

  it('write the day as the language does', () => {
    expect([dayText('2026-11-25', 'en'), dayText('2026-11-25', 'de')]).toEqual([
      '2026-11-25',
      '25.11.2026',
    ]);
  });
});
