import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { formatMoney, formatQuantity, money, quantity, quantityFromMicro } from '#lib/measure';
import type { Take } from '#lib/stock';
import { divide } from './share-dose.js';

const take = (amount: string, cost: string, lotId = 'K-1'): Take => ({
  need: 0,
  holdingId: 'h',
  locationId: 'l',
  layerId: 'y',
  lotId,
  lotNumber: lotId,
  quantity: quantity(amount),
  cost: money(cost),
  sureness: 'assumed',
  outOfOrder: false,
  occurredOn: '2026-05-04',
});

const sharer = (amount: string, placed: string) => ({
  amount: quantity(amount),
  placed: quantity(placed),
});

const shown = (parts: ReturnType<typeof divide>) =>
  parts.map(({ takes, missing }) => [
    ...takes.map((t) => `${t.lotId} ${formatQuantity(t.quantity)} for ${formatMoney(t.cost)}`),
    ...(missing > 0n ? [`${formatQuantity(missing)} missing`] : []),
  ]);

describe('a dose that several share', () => {
  it('is charged whole once, and its rest is borne by what each placed', () => {
    const parts = divide(
      [sharer('0.06', '0.04'), sharer('0.12', '0.08')],
      [take('0.25', '5.50')],
      quantity('0'),
    );
    // 0.07 g stay in the dose: a third and two thirds of it.
    expect(shown(parts)).toEqual([['K-1 0.083333 for 1.833326'], ['K-1 0.166667 for 3.666674']]);
  });

  it('is borne by what each took where nothing was placed', () => {
    const parts = divide(
      [sharer('0.03', '0'), sharer('0.01', '0')],
      [take('0.1', '4')],
      quantity('0'),
    );
    expect(shown(parts)).toEqual([['K-1 0.075 for 3.00'], ['K-1 0.025 for 1.00']]);
  });

  it('is traced from every lot to everybody, also where the book had too little', () => {
    const parts = divide(
      [sharer('0.2', '0.2'), sharer('0.2', '0.2')],
      [take('0.25', '5', 'K-1')],
      quantity('0.25'),
    );
    expect(shown(parts)).toEqual([
      ['K-1 0.125 for 2.50', '0.125 missing'],
      ['K-1 0.125 for 2.50', '0.125 missing'],
    ]);
  });

  it('adds up for any amounts, and nobody bears less than was taken', () => {
    const micro = (max: bigint) => fc.bigInt({ min: 1n, max });
    const anySharer = micro(3_000_000n).chain((amount) =>
      fc.bigInt({ min: 0n, max: amount }).map((placed) => ({
        amount: quantityFromMicro(amount),
        placed: quantityFromMicro(placed),
      })),
    );
    fc.assert(
      fc.property(
        fc.array(anySharer, { minLength: 1, maxLength: 6 }),
        fc.array(fc.tuple(micro(1_000_000n), micro(9_000_000n)), { maxLength: 5 }),
        fc.bigInt({ min: 0n, max: 500_000n }),
        (sharers, taken, rest) => {
          const takes = taken.map(([q, c]) => ({
            ...take('1', '1'),
            quantity: quantityFromMicro(q),
            cost: c as ReturnType<typeof money>,
          }));
          const there = takes.reduce((sum, t) => sum + t.quantity, 0n);
          const used = sharers.reduce((sum, s) => sum + s.amount, 0n);
          const missing = quantityFromMicro((used > there ? used - there : 0n) + rest);
          const parts = divide(sharers, takes, missing);
          const all = parts.flatMap((part) => part.takes);
          const sum = (of: readonly bigint[]) => of.reduce((a, b) => a + b, 0n);
          expect(sum(all.map((t) => t.quantity))).toBe(there);
          expect(sum(all.map((t) => t.cost))).toBe(sum(takes.map((t) => t.cost)));
          expect(sum(parts.map((part) => part.missing))).toBe(missing);
          expect(all.every((t) => t.quantity > 0n && t.cost >= 0n)).toBe(true);
          parts.forEach((part, i) => {
            const borne = sum(part.takes.map((t) => t.quantity)) + part.missing;
            expect(borne >= (sharers[i]?.amount ?? 0n)).toBe(true);
          });
        },
      ),
      { numRuns: 1000 },
    );
  });
});
