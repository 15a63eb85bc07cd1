import { describe, expect, test } from '@jest/globals';
import bwip from 'bwip-js/node';
import { allIdentifiers, checkDigit, type Identifier, readBracketed } from './index.js';

/**
 * bwip-js writes GS1 symbols by a dictionary and checks of its own (BWIPP), and refuses what is not
 * allowed. Each side must take what the other takes, and refuse what the other refuses.
 */
const YEAR = 2026;

// Of those that differ by their last digit only (3100 to 3105), one: it takes a second or two.
const some = allIdentifiers().filter(({ ai }) => ai.length < 4 || /^(43|7[02]|8)|[03]$/.test(ai));

/** Ones, as many as there may be: a day, a month and a time are among them, a country is not. */
function ones({ parts }: Identifier): string {
  const filled = parts.map(({ max, checks }) => {
    const digits = '1'.repeat(checks.includes('csum') ? max - 1 : max);
    return checks.includes('csum') ? digits + checkDigit(digits) : digits;
  });
  return filled.join('');
}

/** What may happen to a value on the way. */
const SPOILERS: readonly ((value: string) => string)[] = [
  (value) => value.slice(0, -1),
  (value) => `${value}1`,
  (value) => `${value.slice(0, -1)}9`,
  (value) => `9${value.slice(1)}`,
  (value) => `${value.slice(0, -1)}#`,
  (value) => `${value.slice(0, value.length / 2)}~${value.slice(value.length / 2 + 1)}`,
  (value) => `0${value.slice(1)}`,
];

/** Which identifiers others need is not the matter here: it looks at the value first. */
function isTaken(text: string): boolean {
  try {
    bwip.raw('gs1datamatrix', text, '');
    return true;
  } catch (error) {
    return String(error).includes('GS1missingAIs');
  }
}

describe('beside a writer of symbols', () => {
  test('the same values are taken and refused, for every kind of identifier', () => {
    const both = { taken: 0, refused: 0 };
    some.forEach((identifier, at) => {
      const value = ones(identifier);
      for (const spoil of [at % 2 === 0 ? String : SPOILERS[(at + 3) % 7], SPOILERS[at % 7]]) {
        const text = `(${identifier.ai})${spoil?.(value)}`;
        const read = readBracketed(text, YEAR);
        expect({ text, ok: isTaken(text) }).toEqual({ text, ok: read.ok });
        both[read.ok ? 'taken' : 'refused'] += 1;
      }
    });
    expect(Math.min(both.taken, both.refused)).toBeGreaterThan(80);
  });
});
