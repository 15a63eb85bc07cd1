import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import { checkCharacter, readHibc, readLabel } from './index.js';

const YEAR = 2026;
const options = { currentYear: YEAR };
const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';
const ALPHANUMERIC = `0123456789${LETTERS}`;

function textOf(characters: string, min: number, max: number): fc.Arbitrary<string> {
  const one = fc.constantFrom(...characters);
  return fc.array(one, { minLength: min, maxLength: max }).map((all) => all.join(''));
}

const pad = (number: number, digits: number) => String(number).padStart(digits, '0');
const withCheck = (text: string) => text + checkCharacter(text);

const product = fc
  .tuple(textOf(LETTERS, 1, 1), textOf(ALPHANUMERIC, 3, 3), textOf(ALPHANUMERIC, 1, 18), fc.nat(9))
  .map(([letter, rest, pcn, uom]) => `${letter}${rest}${pcn}${uom}`);

const day = fc
  .date({
    min: new Date('1977-01-01T00:00:00Z'),
    max: new Date('2076-12-31T00:00:00Z'),
    noInvalidDate: true,
  })
  .map((date) => date.toISOString().slice(0, 10));

/** Every way to write a day, with what it is read as. */
function written(iso: string, hour: number): Record<string, [text: string, date: string]> {
  const [yyyy = '', mm = '', dd = ''] = iso.split('-');
  const yy = yyyy.slice(2);
  const midnight = Date.parse(`${iso}T00:00:00Z`);
  const dayOfYear = (midnight - Date.parse(`${yyyy}-01-01T00:00:00Z`)) / 86_400_000 + 1;
  const lastDay = new Date(Date.UTC(Number(yyyy), Number(mm), 0)).toISOString().slice(0, 10);
  return {
    '0': [mm + yy, lastDay],
    '2': [`2${mm}${dd}${yy}`, iso],
    '3': [`3${yy}${mm}${dd}`, iso],
    '4': [`4${yy}${mm}${dd}${pad(hour, 2)}`, iso],
    '5': [`5${yy}${pad(dayOfYear, 3)}`, iso],
    '6': [`6${yy}${pad(dayOfYear, 3)}${pad(hour, 2)}`, iso],
  };
}

const lot = textOf(`${ALPHANUMERIC}-.`, 1, 18);
const form = fc.constantFrom('0', '2', '3', '4', '5', '6');
const counted = fc.oneof(
  fc.constant<[string, number | null]>(['', null]),
  fc.nat(99).map((n): [string, number | null] => [`8${pad(n, 2)}`, n]),
  fc.nat(99_999).map((n): [string, number | null] => [`9${pad(n, 5)}`, n]),
);

function label(text: string) {
  const read = readLabel(text, options);
  if (!read.ok) throw new Error(`${text}: ${read.problem.message}`);
  return read.label;
}

describe('HIBC labels', () => {
  test('a product alone is read back', () => {
    fc.assert(
      fc.property(product, (deviceIdentifier) => {
        const text = withCheck(`+${deviceIdentifier}`);
        expect(label(text)).toMatchObject({
          standard: 'HIBC',
          deviceIdentifier,
          labeler: deviceIdentifier.slice(0, 4),
          lot: null,
          canonical: text,
        });
      }),
    );
  });

  test('every form of date, with and without quantity, joined and as two symbols', () => {
    const all = fc.tuple(product, day, fc.nat(23), form, counted, lot, fc.boolean());
    fc.assert(
      fc.property(all, ([deviceIdentifier, iso, hour, flag, [count, quantity], number, serial]) => {
        const [digits = '', expiry = ''] = written(iso, hour)[flag] ?? [];
        const production = `$$${serial ? '+' : ''}${count}${digits}${number}`;
        const says = {
          deviceIdentifier,
          expiry,
          quantity,
          lot: serial ? null : number,
          serial: serial ? number : null,
        };
        const joined = withCheck(`+${deviceIdentifier}/${production}`);
        const first = withCheck(`+${deviceIdentifier}`);
        const second = withCheck(`+${production}${first.slice(-1)}`);
        const read = label(joined);
        expect(read).toMatchObject(says);
        expect(label(`${first}\r\n${second}`)).toMatchObject(says);
        expect(label(first + second)).toMatchObject(says);
        expect(label(read.canonical)).toEqual({ ...read, form: 'concatenated' });
      }),
      { numRuns: 2000 },
    );
  });

  test('the supplements of edition 2.6', () => {
    const all = fc.tuple(product, lot, lot, day, day, fc.nat(999_999_999));
    fc.assert(
      fc.property(all, ([deviceIdentifier, number, serial, expiry, made, quantity]) => {
        const compact = (iso: string) => iso.replaceAll('-', '');
        const parts = [
          `14D${compact(expiry)}`,
          `16D${compact(made)}`,
          `S${serial}`,
          `Q${quantity}`,
        ];
        const text = withCheck(`+${deviceIdentifier}/$${number}/${parts.join('/')}`);
        expect(label(text)).toMatchObject({
          deviceIdentifier,
          lot: number,
          serial,
          expiry,
          productionDate: made,
          quantity,
          canonical: text,
        });
      }),
    );
  });

  test('a changed character is found, whatever character', () => {
    const HIBC = `${ALPHANUMERIC}-. $/+%`;
    const all = fc.tuple(product, lot, fc.nat(40), fc.constantFrom(...HIBC));
    fc.assert(
      fc.property(all, ([deviceIdentifier, number, place, other]) => {
        const right = withCheck(`+${deviceIdentifier}/$${number}`);
        const at = 1 + (place % (right.length - 1));
        fc.pre(right.charAt(at) !== other);
        const wrong = right.slice(0, at) + other + right.slice(at + 1);
        const read = readHibc(wrong, YEAR);
        expect(read).toMatchObject({ ok: false, problem: { code: 'check_character' } });
      }),
    );
  });
});
