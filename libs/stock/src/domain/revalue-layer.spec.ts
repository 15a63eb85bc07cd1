import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type Money, money, type Quantity, quantity } from '#lib/measure';
import type { LayerState } from './candidate.js';
import { findAgain, takeFromLayer } from './holding-change.js';
import { revalueLayer, takeBackRevalued } from './revalue-layer.js';

const layer = (received: string, landed: string): LayerState => ({
  ...{ layerId: 'l', received: quantity(received), landedCost: money(landed) },
  ...{ outQuantity: quantity('0'), outCost: money('0') },
});

/** A layer with what its entries say: what they took and brought back, and the variance booked. */
class Book {
  moved = 0n;
  variance = 0n;
  paid: bigint;
  revalued = false;
  readonly taken: { quantity: Quantity; cost: Money }[] = [];

  constructor(public state: LayerState) {
    this.paid = state.landedCost;
  }

  take(wanted: bigint): void {
    const left = this.state.received - this.state.outQuantity;
    const amount = (wanted < left ? wanted : left) as Quantity;
    if (amount === 0n) return;
    const { layer, cost } = takeFromLayer(this.state, amount);
    this.state = layer;
    this.moved += cost;
    this.taken.push({ quantity: amount, cost });
  }

  invoice(difference: bigint): void {
    const change = revalueLayer(this.state, difference);
    expect(change === undefined).toBe(this.paid + difference < 0n);
    if (!change) return;
    expect(change.variance + change.toStock).toBe(difference);
    if (this.state.outQuantity === 0n) expect(change.variance).toBe(0n);
    if (this.state.outQuantity === this.state.received) expect(change.toStock).toBe(0n);
    this.state = change.layer;
    this.paid += difference;
    this.variance += change.variance;
    this.revalued = true;
  }

  undo(which: number): void {
    const [one] = this.taken.splice(which % Math.max(1, this.taken.length), 1);
    if (!one) return;
    const change = takeBackRevalued(this.state, one.quantity, one.cost, this.revalued);
    if (!change) return;
    // Whoever used it gets back what it had cost; only in a layer never revalued may it be less.
    if (this.revalued) expect(change.cost).toBe(one.cost);
    this.state = change.layer;
    this.moved -= change.cost;
    this.variance += change.variance;
  }

  find(wanted: bigint): void {
    const out = this.state.outQuantity;
    const amount = (wanted < out ? wanted : out) as Quantity;
    if (amount === 0n) return;
    const change = findAgain(this.state, amount);
    if (!change) return;
    this.state = change.layer;
    this.moved -= change.cost;
  }

  check(): void {
    const { landedCost, outCost, outQuantity, received } = this.state;
    expect(landedCost).toBe(this.paid);
    expect(outCost).toBe(this.moved + this.variance);
    expect(outCost >= 0n && outCost <= landedCost).toBe(true);
    if (outQuantity === 0n) expect(outCost).toBe(0n);
    if (outQuantity === received) expect(outCost).toBe(landedCost);
  }
}

describe('an invoice price that comes later', () => {
  // Worked by hand: 10 g for 100.00; 4 g used at 40.00. The invoice says 130.00: 13.00 a gram.
  it('revalues what is left, and books the rest as variance', () => {
    const used = takeFromLayer(layer('10', '100'), quantity('4')).layer;
    const change = revalueLayer(used, money('30'));
    expect(change).toMatchObject({ variance: money('12'), toStock: money('18') });
    const state = change?.layer ?? used;
    expect(takeFromLayer(state, quantity('1')).cost).toBe(money('13'));
    // The visit that had used the 4 g is reversed: it gets its 40.00 back, the goods are worth 52.00.
    const back = takeBackRevalued(state, quantity('4'), money('40'), true);
    expect(back).toMatchObject({ cost: money('40'), variance: -money('12') });
    expect(back?.layer).toMatchObject({ outCost: 0n, landedCost: money('130') });
  });

  it('may be lower, but not below nothing', () => {
    const used = takeFromLayer(layer('10', '100'), quantity('10')).layer;
    expect(revalueLayer(used, -money('100'))).toMatchObject({ variance: -money('100') });
    expect(revalueLayer(used, -money('100.01'))).toBeUndefined();
  });

  it('never loses or invents money, whatever happens before and after', () => {
    const amount = fc.bigInt({ min: 1n, max: 12_000_000n });
    const act = fc.oneof(
      amount.map((of) => (book: Book) => book.take(of)),
      fc
        .bigInt({ min: -60_000_000n, max: 90_000_000n })
        .map((by) => (book: Book) => book.invoice(by)),
      fc.nat().map((which) => (book: Book) => book.undo(which)),
      amount.map((of) => (book: Book) => book.find(of)),
    );
    const start = [
      fc.bigInt({ min: 1n, max: 20_000_000n }),
      fc.bigInt({ min: 0n, max: 10n ** 8n }),
    ];
    fc.assert(
      fc.property(
        ...(start as [fc.Arbitrary<bigint>, fc.Arbitrary<bigint>]),
        fc.array(act, { maxLength: 12 }),
        (received, landed, acts) => {
          const book = new Book({
            ...layer('1', '0'),
            received: received as Quantity,
            landedCost: landed as Money,
          });
          for (const each of acts) {
            each(book);
            book.check();
          }
          book.take(book.state.received);
          book.check();
          expect(book.moved + book.variance).toBe(book.paid);
        },
      ),
      { numRuns: 500 },
    );
  });
});
