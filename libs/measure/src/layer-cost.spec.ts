import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  layerCost,
  layerGiveBack,
  money,
  moneyFromMicro,
  multiplyRatio,
  quantity,
  quantityFromMicro,
} from './index.js';

/** A layer that remembers its takes, as the book does, to try sequences of movements. */
class Layer {
  out = 0n;
  outCost = 0n;
  readonly takes: { quantity: bigint; cost: bigint }[] = [];

  constructor(
    readonly landed: bigint,
    readonly received: bigint,
  ) {}

  get left(): bigint {
    return this.received - this.out;
  }

  take(amount: bigint): bigint {
    const cost = layerCost({ ...this.before(), take: quantityFromMicro(amount) });
    this.out += amount;
    this.outCost += cost;
    this.takes.push({ quantity: amount, cost });
    return cost;
  }

  reverse(index: number): void {
    const [taken] = this.takes.splice(index, 1);
    if (taken === undefined) throw new Error('no such take');
    this.out -= taken.quantity;
    this.outCost -= taken.cost;
  }

  before() {
    return {
      landedCost: moneyFromMicro(this.landed),
      received: quantityFromMicro(this.received),
      outBefore: quantityFromMicro(this.out),
      outCostBefore: moneyFromMicro(this.outCost),
    };
  }
}

const landed = fc.oneof(fc.bigInt({ min: 0n, max: 20n }), fc.bigInt({ min: 0n, max: 10n ** 12n }));
const received = fc.oneof(
  fc.bigInt({ min: 1n, max: 20n }),
  fc.bigInt({ min: 1n, max: 10n ** 12n }),
);
const layer = fc.tuple(landed, received);
/** What part of the rest to take (per mille), and whether to reverse an earlier take instead. */
const moves = fc.array(
  fc.record({
    part: fc.oneof(fc.constant(0n), fc.bigInt({ min: 0n, max: 1000n })),
    reverse: fc.boolean(),
    at: fc.nat(),
  }),
  { maxLength: 40 },
);

const partOf = (rest: bigint, part: bigint) => {
  const amount = (rest * part) / 1000n;
  return amount === 0n ? 1n : amount;
};

describe('the cost of a take', () => {
  // Invented prices: a syringe of 4 g for 72.00, 0.06 g for a restoration; a box of 20 for 110.00.
  it('is its part of what was paid', () => {
    expect(new Layer(money('72'), quantity('4')).take(quantity('0.06'))).toBe(money('1.08'));
    expect(new Layer(money('110'), quantity('20')).take(quantity('1'))).toBe(money('5.5'));
  });

  it('hides no rest: three thirds of 100.00 are 100.00', () => {
    const box = new Layer(money('100'), quantity('3'));
    const costs = [1, 2, 3].map(() => box.take(quantity('1')));
    expect(costs).toEqual(['33.333333', '33.333334', '33.333333'].map(money));
  });

  it('is nothing for a free sample', () => {
    expect(new Layer(0n, quantity('10')).take(quantity('3'))).toBe(0n);
  });

  it('is never negative after a reversal out of order', () => {
    const tiny = new Layer(1n, 2n);
    expect([tiny.take(1n), tiny.take(1n)]).toEqual([1n, 0n]);
    tiny.reverse(1);
    expect(tiny.take(1n)).toBe(0n);
    const halves = new Layer(5n, 10n);
    for (let n = 0; n < 10; n += 1) halves.take(1n);
    for (let n = 1; n <= 5; n += 1) halves.reverse(n);
    expect([halves.out, halves.outCost]).toEqual([5n, 5n]);
    expect(halves.take(1n)).toBe(0n);
    expect(halves.take(4n)).toBe(0n);
    const odd = new Layer(10n, 4n);
    expect([odd.take(1n), odd.take(1n), odd.take(1n), odd.take(1n)]).toEqual([3n, 2n, 3n, 2n]);
    odd.reverse(1);
    odd.reverse(2);
    expect([odd.out, odd.outCost]).toEqual([2n, 6n]);
    expect([odd.take(1n), odd.take(1n)]).toEqual([2n, 2n]);
    expect(odd.outCost).toBe(10n);
  });

  it('refuses what no layer can give', () => {
    const box = new Layer(10n, 4n);
    expect(() => box.take(0n)).toThrow(RangeError);
    expect(() => box.take(-1n)).toThrow(RangeError);
    expect(() => box.take(5n)).toThrow(RangeError);
    expect(() => new Layer(10n, 0n).take(1n)).toThrow(RangeError);
    expect(() => new Layer(-1n, 4n).take(1n)).toThrow(RangeError);
    box.out = -1n;
    expect(() => box.take(1n)).toThrow(RangeError);
  });

  it('without reversals is the difference of the rounded costs after and before', () => {
    fc.assert(
      fc.property(layer, moves, ([cost, amount], list) => {
        const l = new Layer(cost, amount);
        for (const { part } of list) {
          if (l.left === 0n) break;
          const before = l.out;
          const taken = l.take(partOf(l.left, part));
          const after = multiplyRatio(cost, l.out, amount, 'half-up');
          expect(taken).toBe(after - multiplyRatio(cost, before, amount, 'half-up'));
        }
      }),
    );
  });

  it('adds up to exactly what was paid once the layer is used up, reversals or not', () => {
    fc.assert(
      fc.property(layer, moves, ([cost, amount], list) => {
        const l = new Layer(cost, amount);
        for (const { part, reverse, at } of list) {
          if (reverse && l.takes.length > 0) l.reverse(at % l.takes.length);
          else if (l.left > 0n) expect(l.take(partOf(l.left, part)) >= 0n).toBe(true);
          expect(l.outCost >= 0n && l.outCost <= cost).toBe(true);
        }
        if (l.left > 0n) expect(l.take(l.left) >= 0n).toBe(true);
        expect(l.outCost).toBe(cost);
        expect(l.takes.reduce((sum, each) => sum + each.cost, 0n)).toBe(cost);
      }),
    );
  });

  it('is nothing left over when every take is reversed, in any order', () => {
    fc.assert(
      fc.property(layer, moves, ([cost, amount], list) => {
        const l = new Layer(cost, amount);
        for (const { part } of list) if (l.left > 0n) l.take(partOf(l.left, part));
        for (const { at } of list) if (l.takes.length > 0) l.reverse(at % l.takes.length);
        while (l.takes.length > 0) l.reverse(0);
        expect([l.out, l.outCost]).toEqual([0n, 0n]);
      }),
    );
  });
});

describe('the value of what is found again', () => {
  const give = (l: Layer, amount: bigint) =>
    layerGiveBack({ ...l.before(), give: quantityFromMicro(amount) });

  it('is what stays out too much', () => {
    const box = new Layer(money('100'), quantity('3'));
    box.take(quantity('2'));
    expect(give(box, quantity('1'))).toBe(money('33.333334'));
    expect(give(box, quantity('2'))).toBe(money('66.666667'));
  });

  it('is nothing when less had left than its part', () => {
    const odd = new Layer(10n, 4n);
    odd.out = 2n;
    odd.outCost = 2n;
    expect(give(odd, 1n)).toBe(0n);
    expect(give(odd, 2n)).toBe(2n);
  });

  it('refuses more than had left, or nothing', () => {
    const box = new Layer(10n, 4n);
    box.take(2n);
    expect(() => give(box, 3n)).toThrow(RangeError);
    expect(() => give(box, 0n)).toThrow(RangeError);
    expect(() => give(box, -1n)).toThrow(RangeError);
  });

  it('is between nothing and what had left, all of it when all is back, and sums up again', () => {
    fc.assert(
      fc.property(layer, moves, ([cost, amount], list) => {
        const l = new Layer(cost, amount);
        for (const { part, reverse } of list) {
          if (reverse && l.out > 0n) {
            const back = partOf(l.out, part);
            const value = give(l, back);
            expect(value >= 0n && value <= l.outCost).toBe(true);
            l.out -= back;
            l.outCost -= value;
            if (l.out === 0n) expect(l.outCost).toBe(0n);
          } else if (l.left > 0n) l.take(partOf(l.left, part));
        }
        if (l.left > 0n) l.take(l.left);
        expect(l.outCost).toBe(cost);
      }),
    );
  });
});
