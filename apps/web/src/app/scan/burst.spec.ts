import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { BurstReader, SEPARATOR, type Stroke } from './burst.js';

/** Where a US keyboard has a character, for the few that are needed here. */
function usStroke(key: string, at: number): Stroke {
  const shift = /[A-Z()+]/.test(key);
  const places: Record<string, string> = {
    ...{ ']': 'BracketRight', '(': 'Digit9', ')': 'Digit0', '+': 'Equal', '-': 'Minus' },
    '/': 'Slash',
  };
  const code = /\d/.test(key)
    ? `Digit${key}`
    : /[a-z]/i.test(key)
      ? `Key${key.toUpperCase()}`
      : (places[key] ?? '');
  return { key, code, shift, at };
}

/** The same keys on a computer that is set to German. */
const GERMAN: Record<string, string> = {
  ...{ y: 'z', z: 'y', Y: 'Z', Z: 'Y', '-': 'ß', '/': '-', ']': '+', '(': ')', ')': '=' },
  '+': '`',
};

function press(burst: BurstReader, text: string, start: number, gap: number): void {
  for (const [i, key] of [...text].entries()) burst.press(usStroke(key, start + i * gap));
}

function scan(text: string, gap: number, german = false, inField = false) {
  const burst = new BurstReader();
  const strokes = [...text].map((key, i) => usStroke(key, 1000 + i * gap));
  for (const stroke of strokes) {
    burst.press(german ? { ...stroke, key: GERMAN[stroke.key] ?? stroke.key } : stroke);
  }
  return burst.end(1000 + text.length * gap, inField);
}

const LABEL = `]d20109521234543213172612311${SEPARATOR}`;

describe('what a hand scanner types', () => {
  it('is told from typing by its speed', () => {
    expect(scan(LABEL, 5)).toEqual({ typed: LABEL, byPosition: LABEL });
    expect(scan(LABEL, 39, false, true)?.typed).toBe(LABEL);
    expect(scan(LABEL, 50)).toBeUndefined();
    expect(scan(LABEL, 90)).toBeUndefined();
    expect(scan('P-7', 5)).toBeUndefined();
  });

  it('is in a field only what looks like a label', () => {
    expect(scan('Etchant gel', 5, false, true)).toBeUndefined();
    expect(scan('1234567', 5, false, true)).toBeUndefined();
    expect(scan('(01)09521234543213', 5, false, true)).toBeDefined();
    expect(scan('Etchant gel', 5)?.typed).toBe('Etchant gel');
  });

  it('is read by the place of the keys too, for a computer with another keyboard', () => {
    const text = ']d2(10)XY1-Z/z+';
    expect(scan(text, 5, true)).toEqual({
      ...{ typed: '+d2)10=XZ1ßY-y`', byPosition: text },
    });
  });

  it('begins anew after a pause, and never hands out what came before it', () => {
    fc.assert(
      fc.property(
        fc.stringMatching(/^\d{1,12}$/),
        fc.integer({ min: 121, max: 5000 }),
        (by, rest) => {
          const burst = new BurstReader();
          press(burst, by, 0, 10);
          const start = by.length * 10 + rest;
          press(burst, '09521234543213', start, 10);
          expect(burst.end(start + 140, true)?.typed).toBe('09521234543213');
        },
      ),
    );
  });

  it('is not what waits long for its Enter', () => {
    const burst = new BurstReader();
    press(burst, LABEL, 0, 5);
    expect(burst.end(LABEL.length * 5 + 200, false)).toBeUndefined();
  });
});
