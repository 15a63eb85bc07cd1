import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  add,
  compare,
  type Decimal6,
  isZero,
  max,
  min,
  money,
  moneyFromMicro,
  negate,
  quantity,
  subtract,
  sum,
  ZERO_MONEY,
} from './index.js';

const amount = fc.bigInt({ min: -(10n ** 17n), max: 10n ** 17n }).map(moneyFromMicro);

describe('reckoning', () => {
  it('adds and subtracts exactly where a floating-point number would not', () => {
    expect(add(money('0.1'), money('0.2'))).toBe(money('0.3'));
    expect(subtract(money('0.3'), money('0.1'))).toBe(money('0.2'));
    expect(subtract(quantity('1'), quantity('1.000001'))).toBe(quantity('-0.000001'));
  });

  it('sums a list, and an empty one to nothing', () => {
    expect(sum([quantity('0.1'), quantity('0.2'), quantity('-0.3')])).toBe(0n);
    expect(sum([])).toBe(0n);
  });

  // Invented prices; the total was worked out by hand.
  it('adds up the part of a visit that is used once', () => {
    const each = ['0.09', '0.9', '0.14', '0.54', '0.32', '0.045', '0.05', '0.09', '0.12', '0.5'];
    const rest = ['0.12', '0.18', '0.07'];
    expect(sum([...each, ...rest].map(money))).toBe(money('3.165'));
  });

  it('compares, and takes the smaller and the larger', () => {
    const [small, large] = [money('-2'), money('1')];
    expect([compare(small, large), compare(large, small), compare(small, small)]).toEqual([
      -1, 1, 0,
    ]);
    expect([min(small, large), min(large, small)]).toEqual([small, small]);
    expect([max(small, large), max(large, small)]).toEqual([large, large]);
    expect([money('10'), money('9'), money('-1')].toSorted(compare)).toEqual(
      ['-1', '9', '10'].map(money),
    );
  });

  it('knows nothing from something', () => {
    expect(isZero(money('-0.00'))).toBe(true);
    expect(isZero(money('0.000001'))).toBe(false);
  });

  it('keeps money and quantities apart', () => {
    // @ts-expect-error the compiler refuses to add a quantity to money
    const mixed: Decimal6 = add(money('1'), quantity('1'));
    // @ts-expect-error nor does it take a plain bigint for money
    const plain: Decimal6 = add(money('1'), 1n);
    expect([mixed, plain]).toHaveLength(2);
  });
});

describe('reckoning with any amounts', () => {
  it('does not care for the order of a sum', () => {
    const listAndOrder = fc
      .array(amount)
      .chain((list) =>
        fc.tuple(
          fc.constant(list),
          fc.shuffledSubarray(list, { minLength: list.length, maxLength: list.length }),
        ),
      );
    fc.assert(
      fc.property(listAndOrder, ([list, shuffled]) => {
        expect(sum(shuffled)).toBe(sum(list));
        expect(sum(list)).toBe(list.reduce((a, b) => add(a, b), ZERO_MONEY));
      }),
    );
  });

  it('undoes what it did', () => {
    fc.assert(
      fc.property(amount, amount, (a, b) => {
        expect(subtract(add(a, b), b)).toBe(a);
        expect(negate(negate(a))).toBe(a);
        expect(add(a, negate(a))).toBe(0n);
        expect(subtract(a, b)).toBe(negate(subtract(b, a)));
      }),
    );
  });

  it('orders like the numbers', () => {
    fc.assert(
      fc.property(amount, amount, (a, b) => {
        expect(compare(a, b) + compare(b, a)).toBe(0);
        expect(compare(min(a, b), max(a, b))).not.toBe(1);
        expect(add(min(a, b), max(a, b))).toBe(add(a, b));
      }),
    );
  });
});
