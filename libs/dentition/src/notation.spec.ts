import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  formatTooth,
  ISO_TEETH,
  isoToUniversal,
  parseIsoTooth,
  parseTooth,
  universalToIso,
} from './index.js';

// HL7 UTG, ADAUniversalToothDesignationSystem v1.0.1: each definition gives both designations.
// Dentist's view; ISO above Universal, typed out by hand.
const ISO_ROWS = `
  18 17 16 15 14 13 12 11   21 22 23 24 25 26 27 28
  48 47 46 45 44 43 42 41   31 32 33 34 35 36 37 38
  55 54 53 52 51   61 62 63 64 65
  85 84 83 82 81   71 72 73 74 75`;
const UNIVERSAL_ROWS = `
   1  2  3  4  5  6  7  8    9 10 11 12 13 14 15 16
  32 31 30 29 28 27 26 25   24 23 22 21 20 19 18 17
   A  B  C  D  E    F  G  H  I  J
   T  S  R  Q  P    O  N  M  L  K`;

const cells = (rows: string) => rows.trim().split(/\s+/);
const isoLabels = cells(ISO_ROWS);
const universalLabels = cells(UNIVERSAL_ROWS);
const table = isoLabels.map((iso, i) => [iso, universalLabels[i] ?? ''] as const);

describe('the table of both notations', () => {
  it('has 32 permanent and 20 primary teeth', () => {
    expect(new Set(isoLabels).size).toBe(52);
    expect(new Set(universalLabels).size).toBe(52);
    expect(universalLabels).toHaveLength(52);
  });

  it.each(table)('ISO %s is Universal %s', (iso, universal) => {
    const tooth = parseIsoTooth(iso);
    expect(tooth).toBe(Number(iso));
    if (tooth === undefined) return;
    expect(isoToUniversal(tooth)).toBe(universal);
    expect(universalToIso(universal)).toBe(tooth);
    expect(universalToIso(universal.toLowerCase())).toBe(tooth);
    expect(formatTooth(tooth, 'iso')).toBe(iso);
    expect(formatTooth(tooth, 'universal')).toBe(universal);
    expect(parseTooth(iso, 'iso')).toBe(tooth);
    expect(parseTooth(` ${universal} `, 'universal')).toBe(tooth);
    expect(parseIsoTooth(Number(iso))).toBe(tooth);
  });

  it('lists every tooth in the order of a chart', () => {
    expect(ISO_TEETH.map(String)).toEqual(isoLabels);
  });
});

describe('what is no tooth', () => {
  it('is no other number, in either notation', () => {
    const numbers = Array.from({ length: 300 }, (_, i) => i - 100);
    const iso = numbers.filter((n) => parseIsoTooth(n) !== undefined);
    expect(iso).toEqual(isoLabels.map(Number).toSorted((a, b) => a - b));
    const universal = numbers.filter((n) => universalToIso(String(n)) !== undefined);
    expect(universal).toEqual(Array.from({ length: 32 }, (_, i) => i + 1));
  });

  it.each(['', ' ', '1', '011', '11.0', '1e1', '+11', 'A', '11 12', '19', '10', '49', '56', '86'])(
    'is not %j in ISO',
    (text) => {
      expect(parseIsoTooth(text)).toBeUndefined();
      expect(parseTooth(text, 'iso')).toBeUndefined();
    },
  );

  // Supernumerary teeth (51 to 82, AS to TS) are not kept.
  it.each(['', '0', '33', '01', 'U', 'Z', 'AA', 'AS', '51', '82', '1.5'])(
    'is not %j in Universal',
    (text) => {
      expect(universalToIso(text)).toBeUndefined();
      expect(parseTooth(text, 'universal')).toBeUndefined();
    },
  );

  it.each([11.5, Number.NaN, Number.POSITIVE_INFINITY, -11, 0])('is not the number %d', (n) => {
    expect(parseIsoTooth(n)).toBeUndefined();
  });
});

describe('any tooth in any notation', () => {
  it('is read back as it was written', () => {
    const tooth = fc.constantFrom(...ISO_TEETH);
    fc.assert(
      fc.property(tooth, fc.constantFrom('iso' as const, 'universal' as const), (t, notation) => {
        expect(parseTooth(formatTooth(t, notation), notation)).toBe(t);
      }),
    );
  });

  it('is never read from other text', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const iso = parseTooth(text, 'iso');
        expect(iso === undefined || String(iso) === text.trim()).toBe(true);
        const other = parseTooth(text, 'universal');
        expect(other === undefined || isoToUniversal(other) === text.trim().toUpperCase()).toBe(
          true,
        );
      }),
    );
  });

  it('is another tooth when the same number is read in the other notation', () => {
    for (const label of universalLabels) {
      const iso = parseTooth(label, 'iso');
      if (iso !== undefined) expect(parseTooth(label, 'universal')).not.toBe(iso);
    }
  });
});
