import { describe, expect, test } from '@jest/globals';
import { checkCharacter, readLabel } from './index.js';

const GTIN = '09521234543213';

function read(text: string, currentYear = 2026) {
  return readLabel(text, { currentYear });
}

function label(text: string, currentYear = 2026) {
  const result = read(text, currentYear);
  if (!result.ok) throw new Error(result.problem.message);
  return result.label;
}

function problem(text: string) {
  const result = read(text);
  if (result.ok) throw new Error(`was read: ${result.label.canonical}`);
  const { code, position, identifier } = result.problem;
  return [code, position, identifier];
}

describe('one label written in many ways', () => {
  const ways = [
    `]d201${GTIN}1726123110A1`,
    `]C101${GTIN}1726123110A1`,
    `]Q301${GTIN}1726123110A1`,
    `]e001${GTIN}1726123110A1`,
    `]J101${GTIN}1726123110A1`,
    `01${GTIN}1726123110A1`,
    `\u001d01${GTIN}10A1\u001d17261231`,
    `17261231\u001d01${GTIN}10A1\u001d\r\n`,
    `(01)${GTIN}(17)261231(10)A1`,
    `(01) ${GTIN} (17) 261231 (10) A1 `,
    `https://id.gs1.org/01/${GTIN}/10/A1?17=261231`,
    `]Q1https://example.com/x/01/${GTIN}/10/A1?17=261231&from=box#top`,
    `]E0${GTIN.slice(1)}\n]C11726123110A1`,
    `]E0${GTIN.slice(1)}|]e01726123110A1`,
    `01${GTIN}10A1^17261231`,
    `01${GTIN}10A1{GS}17261231`,
    `]d201${GTIN}10A1␝17261231`,
    `]d2\u001d01${GTIN}10A1\u001d17261231`,
    ` ]d201${GTIN}1726123110A1`,
    `]d5\\00002601${GTIN}1726123110A1`,
    `]z001${GTIN}1726123110A1`,
    `]L0(01)${GTIN}(17)261231(10)A1`,
    `01${GTIN}10A1<GS>17261231`,
    `]d201${GTIN}10A1<FNC1>17261231<FNC1>`,
    `[)>\u001e05\u001d01${GTIN}10A1\u001d17261231\u001e\u0004`,
    `]d1[)>\u001e05\u001d01${GTIN}1726123110A1`,
  ];
  test.each(ways)('%j', (text) => {
    expect(label(text)).toMatchObject({
      standard: 'GS1',
      deviceIdentifier: GTIN,
      gtin14: GTIN,
      lot: 'A1',
      expiry: '2026-12-31',
      canonical: `(01)${GTIN}(17)261231(10)A1`,
    });
  });

  test('a plain GTIN of any length', () => {
    expect(label('02345673').gtin14).toBe('00000002345673');
    expect(label('416000336108').gtin14).toBe('00416000336108');
    expect(label(']I112345678901231').gtin14).toBe('12345678901231');
    expect(label(']C09521234543213').form).toBe('gtin');
  });

  test('says when a separator was replaced', () => {
    expect(label(`01${GTIN}10A1|21S1`).notes).toEqual(['separator_replaced']);
    expect(label(`01${GTIN}10A1\u001d21S1`).notes).toEqual([]);
  });
});

describe('the symbols of a HIBC label', () => {
  const PRODUCT = '+J123AQ3451T'; // of the standard's examples, with its two further symbols
  const whole = { lot: 'BC34567', expiry: '2025-11-26', serial: '4012', form: 'symbols' };

  test.each([
    ['in lines', `${PRODUCT}\n+25330BC34567T2\n+S4012TJ`],
    ['in another order', `+S4012TJ\r\n${PRODUCT}\r\n+25330BC34567T2`],
    ['sent without anything between', `${PRODUCT}+25330BC34567T2+S4012TJ`],
    ['with a blank that was copied along', `${PRODUCT} \n+25330BC34567T2 \n+S4012TJ`],
  ])('%s', (_, text) => {
    expect(label(text)).toMatchObject({ ...whole, deviceIdentifier: 'J123AQ3451' });
  });

  test('"+" and a space as link and check characters do not mislead', () => {
    const read = label('+A123BJCMD6E79++$$52001510X3+ ');
    expect(read).toMatchObject({ deviceIdentifier: 'A123BJCMD6E79', lot: '10X3' });
  });

  test('what can be a product is one, unless it stands behind another', () => {
    // Company S401, product 2, unit 1; behind a product with the check character 1, a serial number.
    const alone = `+S40121${checkCharacter('+S40121')}`;
    expect(label(alone).deviceIdentifier).toBe('S40121');
    const product = '+D6582503211';
    expect(checkCharacter(product)).toBe('1');
    const both = label(`${product}1\n${alone}`);
    expect(both).toMatchObject({ deviceIdentifier: 'D6582503211', serial: '4012' });
  });

  test('a lost space and changed capitals are named', () => {
    expect(read('+$$52001510X3+')).toMatchObject({
      problem: { message: expect.stringContaining('a space at the end was lost') },
    });
    expect(read('+a123bjc5d6e71g')).toMatchObject({
      problem: { message: expect.stringContaining('capitals only') },
    });
  });
});

describe('dates', () => {
  test.each([
    // Worked example CV8 of the project's trade facts.
    ['(17)260200', '2026-02-28'],
    ['(17)280200', '2028-02-29'],
    ['(7003)2806301430', '2028-06-30'],
  ])('%s', (text, expiry) => expect(label(`(01)${GTIN}${text}`).expiry).toBe(expiry));

  test('day 00 is the last day of each month (General Specifications, AI 17)', () => {
    const last = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
    last.forEach((days, at) => {
      const month = String(at + 1).padStart(2, '0');
      expect(label(`(17)27${month}00`).expiry).toBe(`2027-${month}-${days}`);
      expect(problem(`(17)27${month}${days + 1}`)).toEqual(['illegal_day', 8, '17']);
    });
    // Divided by 4: leap; by 100: not; by 400: leap again.
    expect(label('(17)280200').expiry).toBe('2028-02-29');
    expect(label('(17)000200', 2040).expiry).toBe('2000-02-29');
    expect(label('(17)000200', 2090).expiry).toBe('2100-02-28');
  });

  test('two digits mean a year at most 50 ahead or 49 back', () => {
    expect(label('(17)760101', 2026).expiry).toBe('2076-01-01');
    expect(label('(17)770101', 2026).expiry).toBe('1977-01-01');
    expect(label('(17)020101', 2060).expiry).toBe('2102-01-01');
  });

  test('a month of a HIBC label ends with its last day', () => {
    const { expiry, notes } = label('+J123AQ3451/$$1125BC34567/S4012L');
    expect([expiry, notes]).toEqual(['2025-11-30', ['day_not_stated']]);
  });
});

describe('what is wrong and where', () => {
  test.each([
    ['', 'empty_value', 0, null],
    [' \r\n', 'empty_value', 1, null],
    ['hello', 'not_a_label', 0, null],
    ['ä', 'not_a_label', 0, null],
    ['(01)09521234543214', 'incorrect_check_digit', 17, '01'],
    [`(01)${GTIN}(17)261301`, 'illegal_month', 24, '17'],
    [`(01)${GTIN}(17)260230`, 'illegal_day', 26, '17'],
    [`]d201${GTIN}10ABCDEFGHIJKLMNOPQRSTU`, 'too_long', 41, '10'],
    [`01${GTIN}7003260101123010A1`, 'too_long', 30, '7003'],
    [`01${GTIN}10\u001d21S1`, 'empty_value', 18, '10'],
    [`01${GTIN}10A 1`, 'invalid_cset82_character', 19, '10'],
    [`01${GTIN}19A1`, 'unknown_ai', 16, '19A1'],
    [`(01)${GTIN}(10)A1(10)A2`, 'repeated_ai_different_value', 28, '10'],
    [`(01)${GTIN}(37)5`, 'excluded_ai_pair', 4, '01'],
    [`]E0${GTIN.slice(1)}\n]C110A1\n]C110A2`, 'repeated_ai_different_value', 30, '10'],
    ['2112345678901', 'incorrect_check_digit', 12, null],
    ['https://id.gs1.org/AQnYUc1gmiCNV4JGLo', 'compressed_link', 19, null],
    ['https://example.com/about', 'no_primary_key', 19, null],
    ['=/A9999XYZ100T0944', 'unsupported_standard', 0, null],
    ['[)>\u001e06\u001d', 'unsupported_standard', 0, null],
    ['+A123BJC5D6E71H', 'check_character', 14, null],
    ['+a123bjc5d6e71g', 'illegal_character', 1, null],
    ['+A123BJC5D6E71G\n+A123BJC5D6E71G', 'malformed', 0, null],
    ['+$$52001510X3+ \n+A123BJC5D6E71G', 'link_character', 13, null],
    [`+A123BJC5D6E71G\n(01)${GTIN}`, 'mixed_standards', 0, null],
    ['+/EO5232013', 'unsupported_standard', 1, null],
    [']X010A1', 'unsupported_symbology_identifier', 1, null],
    // What is written as several characters counts as several: percent signs, escaped brackets.
    [`https://id.gs1.org/01/${GTIN}/10/%2F%2F%20`, 'invalid_cset82_character', 46, '10'],
    ['(10)ab\\(\\( x', 'invalid_cset82_character', 10, '10'],
    [`https://id.gs1.org/01/${GTIN}/lot/A1`, 'no_primary_key', 37, null],
    [`https://id.gs1.org/01/${GTIN}/`, 'no_primary_key', 37, null],
    [']Q1HtTps://a/01/12312312312333', 'malformed_uri', 3, null],
    [`01${GTIN}10A1<GS>xx`, 'ambiguous_separator', 20, null],
    [`(01)${GTIN}(10)A1<gs>(17)260101`, 'ambiguous_separator', 24, null],
    [`]d201${GTIN}10A1\u001d\u001d21S`, 'unknown_ai', 24, '\u001d21S'],
    ['[)>01', 'unsupported_standard', 0, null],
    ['+J123AQ3451T\n+S4012TJ\n+S4013TK', 'repeated_ai_different_value', 28, 'serial'],
    ['+J123AQ3451T+25330BC34567T2+S4012TI', 'check_character', 34, null],
  ])('%j: %s', (text, code, position, identifier) => {
    expect(problem(text)).toEqual([code, position, identifier]);
  });

  test('a lost separator is never guessed', () => {
    // (10) could end before 17261231, or hold it.
    expect(label(`01${GTIN}10A117261231`).lot).toBe('A117261231');
    expect(problem(`01${GTIN}3012345678917261231`)).toEqual(['too_long', 26, '30']);
  });

  test('a sign that could be either is refused', () => {
    expect(problem(`01${GTIN}10A~1`)[0]).toBe('invalid_cset82_character');
    expect(problem(`01${GTIN}10A1~`)[0]).toBe('invalid_cset82_character');
    expect(problem(`]d201${GTIN}10A1^21S`)[0]).toBe('illegal_character');
  });

  test('sentences are plain and name what would be right', () => {
    const result = read('(01)09521234543214');
    expect(result).toMatchObject({
      problem: {
        message: '(01) 09521234543214: The check digit is 4, but the digits before it give 3.',
        expected: '3',
      },
    });
  });
});
