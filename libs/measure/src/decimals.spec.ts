import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  formatMoney,
  formatQuantity,
  MeasureError,
  money,
  moneyFromMicro,
  parseDecimal,
  quantity,
  quantityFromMicro,
  ZERO_MONEY,
  ZERO_QUANTITY,
} from './index.js';

const LARGEST = 999_999_999_999_999_999n;
const anyMicro = fc.bigInt({ min: -LARGEST, max: LARGEST });

function codeOf(read: () => unknown): string {
  try {
    read();
  } catch (error) {
    if (error instanceof MeasureError) return error.code;
    throw error;
  }
  return 'read';
}

describe('reading a decimal', () => {
  it.each([
    ['0', 0n],
    ['-0', 0n],
    ['0.06', 60_000n],
    ['4', 4_000_000n],
    ['-1.5', -1_500_000n],
    ['0.000001', 1n],
    ['-0.000001', -1n],
    ['007', 7_000_000n],
    ['0000000000000.5', 500_000n],
    ['1.000000', 1_000_000n],
    ['999999999999.999999', LARGEST],
    ['-999999999999.999999', -LARGEST],
  ])('takes %s', (text, micro) => {
    expect(quantity(text)).toBe(micro);
    expect(money(text)).toBe(micro);
  });

  it.each([
    '',
    ' ',
    '-',
    '.',
    '.5',
    '5.',
    '+1',
    '--1',
    '1e3',
    '1,5',
    '1 000',
    ' 1',
    '1 ',
    '1\n',
    '0x10',
    '1n',
    'NaN',
    'Infinity',
    '\u0661',
    '1.2.3',
    '1.-2',
  ])('refuses %j as not a decimal', (text) => {
    expect(codeOf(() => quantity(text))).toBe('not_a_decimal');
    expect(parseDecimal(text, 6)).toEqual({ ok: false, code: 'not_a_decimal' });
  });

  it('refuses a seventh digit after the point, even a zero', () => {
    expect(codeOf(() => money('0.0000001'))).toBe('too_precise');
    expect(codeOf(() => money('1.0000000'))).toBe('too_precise');
  });

  it('refuses a thirteenth digit before the point', () => {
    expect(codeOf(() => money('1000000000000'))).toBe('too_large');
    expect(codeOf(() => quantity('-1000000000000'))).toBe('too_large');
  });

  it('says in the error what was written, shortened', () => {
    expect(() => quantity('a'.repeat(1000))).toThrow(
      new MeasureError('not_a_decimal', 'a'.repeat(40)),
    );
    expect(() => quantity('x')).toThrow('not a plain decimal number: "x"');
  });

  it.each([
    ['12', 0, 12n],
    ['12.5', 1, 125n],
    ['-12.5', 3, -12_500n],
  ])('reads %s at scale %i', (text, scale, value) => {
    expect(parseDecimal(text, scale)).toEqual({ ok: true, value });
  });

  it('refuses more digits than the scale', () => {
    expect(parseDecimal('12.5', 0)).toEqual({ ok: false, code: 'too_precise' });
  });
});

describe('writing a decimal', () => {
  it.each([
    [0n, '0'],
    [60_000n, '0.06'],
    [4_000_000n, '4'],
    [-1_500_000n, '-1.5'],
    [-1n, '-0.000001'],
    [100_000_000n, '100'],
    [1_010_000n, '1.01'],
  ])('writes the quantity %s shortest', (micro, text) => {
    expect(formatQuantity(quantityFromMicro(micro))).toBe(text);
  });

  it.each([
    [0n, '0.00'],
    [500_000n, '0.50'],
    [5_000_000n, '5.00'],
    [1_234_500n, '1.2345'],
    [-1n, '-0.000001'],
    [-12_740_000n, '-12.74'],
  ])('writes the amount %s with at least two digits', (micro, text) => {
    expect(formatMoney(moneyFromMicro(micro))).toBe(text);
  });

  it.each([
    ['12.738333', 2, '12.74'],
    ['0.005', 2, '0.01'],
    ['-0.005', 2, '-0.01'],
    ['0.004999', 2, '0.00'],
    ['-0.004999', 2, '0.00'],
    ['999.5', 0, '1000'],
    ['0.5', 0, '1'],
    ['-0.4', 0, '0'],
    ['1.2345', 3, '1.235'],
    ['1.25', 1, '1.3'],
    ['1.5', 6, '1.500000'],
    ['1', 3, '1.000'],
  ])('writes %s with %i digits as %s', (amount, digits, text) => {
    expect(formatMoney(money(amount), digits)).toBe(text);
  });

  it.each([-1, 7, 1.5, Number.NaN])('refuses %d digits', (digits) => {
    expect(() => formatMoney(ZERO_MONEY, digits)).toThrow(RangeError);
  });
});

describe('every decimal', () => {
  it('is read back as it was written', () => {
    fc.assert(
      fc.property(anyMicro, (n) => {
        expect(quantity(formatQuantity(quantityFromMicro(n)))).toBe(n);
        expect(money(formatMoney(moneyFromMicro(n)))).toBe(n);
        expect(money(formatMoney(moneyFromMicro(n), 6))).toBe(n);
      }),
    );
  });

  it('is written without a zero at the end, a bare point or a negative zero', () => {
    fc.assert(
      fc.property(anyMicro, fc.integer({ min: 0, max: 6 }), (n, digits) => {
        expect(formatQuantity(quantityFromMicro(n))).toMatch(/^-?(0|[1-9]\d*)(\.\d{0,5}[1-9])?$/);
        const exact = formatMoney(moneyFromMicro(n), digits);
        expect(exact).toMatch(digits === 0 ? /^-?\d+$/ : new RegExp(`^-?\\d+\\.\\d{${digits}}$`));
        expect(exact).not.toMatch(/^-[0.]+$/);
      }),
    );
  });

  it('either is read or is refused with a code', () => {
    const digits = fc.stringMatching(/^-?\d{0,15}\.?\d{0,8}$/);
    fc.assert(
      fc.property(fc.oneof(fc.string(), digits), (text) => {
        const parsed = parseDecimal(text, 6);
        const expected = parsed.ok ? 'read' : parsed.code;
        expect(codeOf(() => quantity(text))).toBe(expected);
        if (parsed.ok) {
          expect(parsed.value <= LARGEST && parsed.value >= -LARGEST).toBe(true);
          expect(text).toMatch(/^-?\d+(\.\d{1,6})?$/);
        }
      }),
    );
  });
});

describe('nothing', () => {
  it('is zero of either kind', () => {
    expect(ZERO_QUANTITY).toBe(0n);
    expect(ZERO_MONEY).toBe(0n);
  });
});
