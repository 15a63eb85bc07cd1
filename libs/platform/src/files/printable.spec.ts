import { describe, expect, it } from '@jest/globals';
import { printable } from './printable.js';

describe('a text for the standard fonts of a PDF', () => {
  it('keeps western letters, and takes the marks off others', () => {
    expect(printable('Zahnärzte Łódź, Café “Nord”')).toBe('Zahnärzte Lódz, Café “Nord”');
    expect(printable('歯 😀')).toBe('? ?');
  });
});
