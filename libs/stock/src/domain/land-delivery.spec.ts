import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { formatMoney, money, moneyFromMicro, quantity, quantityFromMicro } from '#lib/measure';
import { type DeliveryInput, type LineToLand, landDelivery, SPREAD_KEYS } from './land-delivery.js';

const CENT = 10_000n;

const line = (packs: number, price: string, grams = '1', sample = false): LineToLand => ({
  ...{ packs, packPrice: money(price), sample },
  ...{ quantity: quantity(String(packs)), weight: quantity(grams) },
});

const delivery = (lines: LineToLand[], change: Partial<DeliveryInput> = {}): DeliveryInput => ({
  ...{ lines, freight: money('0'), duty: money('0'), discount: money('0') },
  ...{ spreadKey: 'value', step: CENT, ...change },
});

const costs = (input: DeliveryInput) => {
  const landed = landDelivery(input);
  return landed.ok ? landed.landed.map((each) => formatMoney(each)) : landed;
};

describe('the landed cost of a delivery', () => {
  // Published: AAT (Association of Accounting Technicians) student forum, worked answer
  // "Freight/Carriage In": carriage of 750 over 20 at 50, 30 at 75 and 40 at 100 comes to 0.10344 of
  // the value; line totals 1,103.45 and 2,482.76, the third is what remains of 8,000.
  it('follows the value of the goods', () => {
    const lines = [line(20, '50'), line(30, '75'), line(40, '100')];
    const input = delivery(lines, { freight: money('750') });
    expect(costs(input)).toEqual(['1103.45', '2482.76', '4413.79']);
    expect(landDelivery(input)).toMatchObject({
      ...{ goodsTotal: money('7250'), landedTotal: money('8000') },
    });
  });

  // Computed: exact parts 3.333, 4.2857/1.4286 and 6.25/3.125/0.625, rounded by largest remainder.
  it.each([
    ['weight', ['103.34', '53.33', '13.33']],
    ['quantity', ['104.29', '54.28', '11.43']],
    ['value', ['106.25', '53.13', '10.62']],
  ] as const)('or by %s, to the cent', (spreadKey, expected) => {
    const all = [line(3, '33.333333'), line(3, '16.666667'), line(1, '10')];
    const exact = all.map((one, i) => ({
      ...one,
      ...{ packs: 1, packPrice: money(['100', '50', '10'][i] ?? '0') },
    }));
    expect(costs(delivery(exact, { spreadKey, freight: money('10') }))).toEqual(expected);
  });

  it('bears duty like freight, each rounded on its own', () => {
    const lines = [line(1, '10', '900'), line(1, '90', '100')];
    const extras = { freight: money('1'), duty: money('2'), spreadKey: 'weight' } as const;
    expect(costs(delivery(lines, extras))).toEqual(['12.70', '90.30']);
  });

  it('leaves samples free, whatever the key', () => {
    const lines = [line(2, '0', '500', true), line(1, '10', '1')];
    for (const spreadKey of SPREAD_KEYS) {
      expect(costs(delivery(lines, { spreadKey, freight: money('3') }))).toEqual(['0.00', '13.00']);
    }
    expect(costs(delivery([line(2, '0', '1', true)], { duty: money('3') }))).toEqual({
      ...{ ok: false, reason: 'nothing bears it', field: 'duty' },
    });
  });

  it('takes no more off than the goods cost', () => {
    const lines = [line(1, '10', '1'), line(1, '90', '1000')];
    expect(costs(delivery(lines, { discount: money('100'), spreadKey: 'weight' }))).toEqual([
      ...['0.00', '0.00'],
    ]);
    expect(costs(delivery(lines, { discount: money('100.01') }))).toEqual({
      ...{ ok: false, reason: 'discount too large', field: 'discount' },
    });
  });

  it('always adds up, is never negative, and nothing is lost on samples', () => {
    const cents = fc.integer({ min: 0, max: 90_000 }).map((n) => moneyFromMicro(BigInt(n) * CENT));
    const anyLine = fc.record({
      packs: fc.integer({ min: 1, max: 9 }),
      packPrice: cents,
      quantity: fc.integer({ min: 1, max: 999 }).map((n) => quantityFromMicro(BigInt(n) * 1_000n)),
      weight: fc.integer({ min: 0, max: 999 }).map((n) => quantityFromMicro(BigInt(n))),
      sample: fc.boolean(),
    });
    const input = fc.record({
      lines: fc
        .array(anyLine, { minLength: 1, maxLength: 6 })
        .map((all) => all.map((one) => (one.sample ? { ...one, packPrice: money('0') } : one))),
      ...{ freight: cents, duty: cents, discount: cents },
      spreadKey: fc.constantFrom(...SPREAD_KEYS),
      step: fc.constant(CENT),
    });
    fc.assert(
      fc.property(input, (the) => {
        const landed = landDelivery(the);
        if (!landed.ok) return;
        const sum = landed.landed.reduce((a, b) => a + b, 0n);
        expect(sum).toBe(landed.landedTotal);
        expect(sum).toBe(landed.goodsTotal + the.freight + the.duty - the.discount);
        landed.landed.forEach((cost, i) => {
          expect(cost).toBeGreaterThanOrEqual(0n);
          if (the.lines[i]?.sample) expect(cost).toBe(0n);
          if (the.discount === 0n && !the.lines[i]?.sample) {
            const goods = BigInt(the.lines[i]?.packs ?? 0) * (the.lines[i]?.packPrice ?? 0n);
            expect(cost).toBeGreaterThanOrEqual(goods);
          }
        });
      }),
      { numRuns: 200 },
    );
  });
});
