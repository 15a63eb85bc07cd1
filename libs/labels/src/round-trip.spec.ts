import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import { SET_82 } from './gs1/character-sets.js';
import type { Part } from './gs1/identifiers.js';
import {
  allIdentifiers,
  checkDigit,
  checkPair,
  type Element,
  type Identifier,
  readBracketed,
  readDigitalLink,
  readElementString,
  readGtin,
  readLabel,
  relationProblem,
  spellingsOfGtin,
  writeBracketed,
  writeDigitalLink,
  writeElementString,
} from './index.js';

const YEAR = 2026;
const options = { currentYear: YEAR };
const identifiers = allIdentifiers();

const DIGITS = [...'0123456789'];
const SETS = {
  N: DIGITS,
  X: [...SET_82],
  Y: [...'#-/0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ'],
  Z: [...'-0123456789=ABCXYZ_abcxyz'],
};

function textOf(characters: readonly string[], min: number, max: number): fc.Arbitrary<string> {
  const one = fc.constantFrom(...characters);
  return fc.array(one, { minLength: min, maxLength: max }).map((all) => all.join(''));
}

const two = (least: number, most: number) =>
  fc.integer({ min: least, max: most }).map((n) => String(n).padStart(2, '0'));

const month = two(1, 12);
const sixDigits = fc.tuple(two(0, 99), month, two(1, 28)).map((all) => all.join(''));
const time = fc.tuple(two(0, 23), two(0, 59)).map((all) => all.join(''));

/** Values for what has a check of its own; everything else is any text of its set. */
const CHECKED: Record<string, (part: Part) => fc.Arbitrary<string>> = {
  csum: ({ max }) => textOf(DIGITS, max - 1, max - 1).map((d) => d + checkDigit(d)),
  csumalpha: () =>
    fc.tuple(textOf(DIGITS, 4, 4), textOf(SETS.X, 1, 19)).map(([d, x]) => d + x + checkPair(d + x)),
  gcp: ({ set }) => fc.tuple(textOf(DIGITS, 4, 4), textOf(SETS[set], 0, 26)).map((a) => a.join('')),
  yymmd0: () =>
    fc.oneof(
      sixDigits,
      fc.tuple(two(0, 99), month).map(([y, m]) => `${y}${m}00`),
    ),
  yymmdd: () => sixDigits,
  yyyymmdd: () => sixDigits.map((date) => `19${date}`),
  hhmi: () => time,
  hh: () => two(0, 23),
  mi: () => two(0, 59),
  ss: () => two(0, 59),
  pcenc: ({ max }) => textOf([...SETS.X.filter((c) => c !== '%'), '%2F'], 1, Math.floor(max / 3)),
  iso3166: () => fc.constantFrom('004', '040', '276', '894'),
  iso3166999: () => fc.constantFrom('040', '999'),
  iso3166alpha2: () => fc.constantFrom('AD', 'AT', 'ZW'),
  iso4217: () => fc.constantFrom('008', '924', '978', '999'),
  iso5218: () => fc.constantFrom('0', '1', '2', '9'),
  yesno: () => fc.constantFrom('0', '1'),
  hyphen: () => fc.constant('-'),
  importeridx: () => fc.constantFrom('-', '_', '0', 'A', 'z'),
  packagetype: () => fc.constantFrom('8', '1A', '200', 'ZZ'),
  mediatype: () => fc.constantFrom('01', '10', '80', '99'),
  posinseqslash: () => fc.constantFrom('1/1', '1/2', '9/9'),
  nonzero: ({ max }) => textOf(DIGITS, max - 1, max - 1).map((d) => `${d}1`),
  winding: () => fc.constantFrom('0', '1', '9'),
  zero: () => fc.constant('0'),
  pieceoftotal: () => fc.constantFrom('0101', '0102', '9899', '9999'),
  iban: () => fc.constantFrom('AT611904300234573201', 'DE89370400440532013000'),
  nozeroprefix: () => fc.constantFrom('0', '1', '123456789012'),
  latitude: () => fc.constantFrom('0000000000', '1800000000'),
  longitude: () => fc.constantFrom('0000000000', '3600000000'),
  couponcode: () =>
    fc.constantFrom(
      '012345612345611110123',
      '01234561234561111012310110123990000',
      '01234561234561111012335006064500601',
    ),
  padding: () => fc.constantFrom('aZ_-09', '12=', '1==', 'abcd'),
  couponposoffer: () => fc.constantFrom('001234561234560123456', '111234567123456212345678'),
};

function partValue(part: Part): fc.Arbitrary<string> {
  const [first] = part.checks;
  const checked = first === undefined ? undefined : CHECKED[first];
  if (first !== undefined && !checked) throw new Error(`no generator for ${first}`);
  return checked ? checked(part) : textOf(SETS[part.set], part.min, part.max);
}

/** A value: parts that may be left out are left out from the end; those before them are full. */
function someValue(identifier: Identifier): fc.Arbitrary<string> {
  const { parts } = identifier;
  const least = parts.filter(({ optional }) => !optional).length;
  return fc
    .integer({ min: least, max: parts.length })
    .chain((count) => fc.tuple(...parts.slice(0, count).map(partValue)))
    .map((values) => values.join(''));
}

function elementOf(identifier: Identifier): fc.Arbitrary<Element> {
  return someValue(identifier).map((value) => ({ identifier, value, at: 0 }));
}

const someElements = fc
  .uniqueArray(fc.constantFrom(...identifiers), { minLength: 1, maxLength: 6 })
  .chain((chosen) => fc.tuple(...chosen.map(elementOf)));

const said = (elements: readonly Element[]) =>
  elements.map(({ identifier, value }) => `${identifier.ai} ${value}`);

function read(result: ReturnType<typeof readElementString>): string[] {
  if (!result.ok) throw new Error(`${result.problem.message} at ${result.problem.position}`);
  return said(result.elements);
}

describe('every identifier', () => {
  test('there are as many as in the dictionary', () => {
    expect(identifiers.length).toBe(new Set(identifiers.map(({ ai }) => ai)).size);
    expect(identifiers.length).toBe(536);
  });

  test.each(identifiers.map((one): [string, Identifier] => [one.ai, one]))(
    '(%s) is read back from a symbol and from brackets',
    (_, identifier) => {
      fc.assert(
        fc.property(elementOf(identifier), (element) => {
          expect(read(readElementString(writeElementString([element]), YEAR))).toEqual(
            said([element]),
          );
          expect(read(readBracketed(writeBracketed([element]), YEAR))).toEqual(said([element]));
        }),
        { numRuns: 10 },
      );
    },
  );
});

describe('elements side by side', () => {
  test('are read back from a symbol', () => {
    fc.assert(
      fc.property(someElements, (elements) => {
        expect(read(readElementString(writeElementString(elements), YEAR))).toEqual(said(elements));
        expect(read(readBracketed(writeBracketed(elements), YEAR))).toEqual(said(elements));
      }),
      { numRuns: 1000 },
    );
  });

  test('give the same label from a symbol, from brackets and from what is canonical', () => {
    fc.assert(
      fc.property(someElements, (elements) => {
        fc.pre(!relationProblem(elements, ['exclusive']));
        const label = readLabel(`]d2${writeElementString(elements)}`, options);
        if (!label.ok) throw new Error(label.problem.message);
        const { carrier: _, form: __, ...facts } = label.label;
        for (const text of [writeBracketed(elements), facts.canonical]) {
          expect(readLabel(text, options)).toMatchObject({ ok: true, label: facts });
        }
      }),
      { numRuns: 500 },
    );
  });

  test('are read back from a link, if one can be written', () => {
    fc.assert(
      fc.property(someElements, (elements) => {
        const written = writeDigitalLink(elements);
        fc.pre(written.ok);
        if (!written.ok) return;
        const link = readDigitalLink(written.uri, YEAR);
        expect(new Set(read(link))).toEqual(new Set(said(elements)));
      }),
      { numRuns: 300 },
    );
  });
});

describe('what is damaged', () => {
  test('a changed digit of a GTIN is found, whatever digit', () => {
    const gtin = textOf(DIGITS, 13, 13).map((digits) => digits + checkDigit(digits));
    const change = fc.tuple(gtin, fc.nat(13), fc.integer({ min: 1, max: 9 }));
    fc.assert(
      fc.property(change, ([right, at, by]) => {
        const digit = (Number(right.charAt(at)) + by) % 10;
        const wrong = right.slice(0, at) + String(digit) + right.slice(at + 1);
        expect(readLabel(`(01)${wrong}`, options)).toMatchObject({
          ok: false,
          problem: { code: 'incorrect_check_digit', identifier: '01', position: 17 },
        });
      }),
    );
  });

  test('a GTIN is read in each of its lengths', () => {
    const anyLength = fc
      .constantFrom(7, 11, 12, 13)
      .chain((length) => textOf(DIGITS, length, length))
      .map((digits) => digits + checkDigit(digits));
    fc.assert(
      fc.property(anyLength, (gtin) => {
        const result = readGtin(gtin);
        if (!result.ok) throw new Error(result.problem.message);
        expect(spellingsOfGtin(result.gtin14)).toContain(gtin.length === 14 ? result.gtin14 : gtin);
      }),
    );
  });
});

describe('whatever comes in', () => {
  const tokens = fc.constantFrom(
    ...[']d2', ']C1', ']Q1', ']E0', '|]e0', '(', ')', '(01)', '01', '10', '17', '\u001d', '+', '/'],
    ...[
      '$$',
      '$$9',
      '16D',
      '14D',
      'https://',
      '?',
      '%',
      '09521234543213',
      '\r\n',
      '\t',
      '\\(',
      '=',
    ],
  );
  const anything = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 60 }),
    fc.uint8Array({ maxLength: 60 }).map((bytes) => String.fromCharCode(...bytes)),
    fc.array(fc.oneof(tokens, fc.string({ maxLength: 6 }))).map((all) => all.join('')),
    someElements.map((elements) => writeElementString(elements)),
    fc.constant('x'.repeat(3000)),
  );

  test('never throws, and a problem lies inside the text', () => {
    fc.assert(
      fc.property(anything, fc.integer({ min: 1900, max: 2199 }), (text, currentYear) => {
        const result = readLabel(text, { currentYear });
        if (result.ok) return;
        const { position, message } = result.problem;
        expect(position).toBeGreaterThanOrEqual(0);
        expect(position).toBeLessThanOrEqual(text.length);
        expect(message).toMatch(/^\S.*[.]$/s);
      }),
      { numRuns: 5000 },
    );
  });

  test('what is read is read again from its canonical form', () => {
    fc.assert(
      fc.property(anything, (text) => {
        const result = readLabel(text, options);
        if (!result.ok) return;
        const { deviceIdentifier, lot, serial, expiry, canonical } = result.label;
        expect(readLabel(canonical, options)).toMatchObject({
          ok: true,
          label: { deviceIdentifier, lot, serial, expiry, canonical },
        });
      }),
      { numRuns: 2000 },
    );
  });
});
