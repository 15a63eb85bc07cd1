import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { SET_82 } from './gs1/character-sets.js';
import { checkDigit } from './gs1/check-digits.js';
import { OWN_SUBJECTS, ownSubject, writeOwnSymbol } from './own-symbol.js';
import { readLabel } from './read-label.js';

const YEAR = { currentYear: 2026 };
const ID = '0192e4a0-7c1d-7f00-8a00-00000000000b';

function labelOf(text: string) {
  const read = readLabel(text, YEAR);
  if (!read.ok) throw new Error(read.problem.message);
  return read.label;
}

const gtin = fc.stringMatching(/^\d{13}$/).map((digits) => `${digits}${checkDigit(digits) ?? ''}`);
const lot = fc.string({ unit: fc.constantFrom(...SET_82), minLength: 1, maxLength: 20 });
const day = fc
  .date({ min: new Date('2020-01-01'), max: new Date('2049-12-31'), noInvalidDate: true })
  .map((date) => date.toISOString().slice(0, 10));

describe("a symbol of the practice's own", () => {
  it('is an element string with (91), and with a GTIN also what is on the pack', () => {
    expect(writeOwnSymbol({ kind: 'location', id: ID }).bracketed).toMatch(/^\(91\)1\d{39}$/);
    const { elementString } = writeOwnSymbol({
      ...{ kind: 'lot', id: ID, gtin14: '09521234543213', lot: 'A1', expiry: '2026-12-31' },
    });
    const visible = elementString.replaceAll('\u001d', '<GS>');
    expect(visible).toMatch(/^01095212345432131726123110A1<GS>912\d{39}$/);
  });

  it('is read back with what it stands for, whatever the id', () => {
    fc.assert(
      fc.property(fc.uuid(), fc.constantFrom(...OWN_SUBJECTS), (id, kind) => {
        const { elementString, bracketed } = writeOwnSymbol({ kind, id });
        for (const text of [elementString, bracketed, `]d2${elementString}\r\n`]) {
          expect(ownSubject(labelOf(text))).toEqual({ kind, id });
        }
      }),
    );
  });

  it('is read back with lot and expiry', () => {
    fc.assert(
      fc.property(fc.uuid(), gtin, lot, day, (id, gtin14, number, expiry) => {
        const written = writeOwnSymbol({ kind: 'lot', id, gtin14, lot: number, expiry });
        const label = labelOf(written.elementString);
        expect(label).toMatchObject({ gtin14, lot: number, expiry });
        expect(ownSubject(label)).toEqual({ kind: 'lot', id });
      }),
    );
  });

  it('leaves out a lot number that GS1 has no room or character for', () => {
    for (const number of ['Ä-1', 'A 1', 'X'.repeat(21)]) {
      const written = writeOwnSymbol({
        kind: 'lot',
        id: ID,
        gtin14: '09521234543213',
        lot: number,
      });
      expect(labelOf(written.elementString)).toMatchObject({ lot: null, gtin14: '09521234543213' });
    }
  });

  it("does not take other companies' (91) for its own", () => {
    const large = `1${'9'.repeat(39)}`;
    for (const value of ['A1', '5'.repeat(40), large, '1'.repeat(39), `0${'1'.repeat(39)}`]) {
      expect(ownSubject(labelOf(`(01)09521234543213(91)${value}`))).toBeUndefined();
    }
    expect(ownSubject(labelOf('+A99912345/$$52001510X33'))).toBeUndefined();
  });
});
