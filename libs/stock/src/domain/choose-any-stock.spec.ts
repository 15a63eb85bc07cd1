import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { moneyFromMicro, multiplyRatio, quantityFromMicro } from '#lib/measure';
import { candidate, request } from './candidate.fixture.js';
import { blockedOn, type Candidate } from './candidate.js';
import { chooseStock } from './choose-stock.js';

const amount = fc.bigInt({ min: 1n, max: 20_000_000n });
const arbitraryCandidate = fc.record({
  dispensing: fc.constantFrom('multi-use' as const, 'single-dose' as const, 'by-piece' as const),
  content: amount,
  onHand: amount,
  gone: fc.bigInt({ min: 0n, max: 9_000_000n }),
  cost: fc.bigInt({ min: 0n, max: 900_000_000n }),
  distance: fc.constantFrom(0, 1, 2, null),
  expiry: fc.constantFrom('2026-05-03', '2026-05-04', '2026-08-01', null),
  status: fc.constantFrom('released' as const, 'released' as const, 'recalled' as const),
  opened: fc.boolean(),
  consumableId: fc.constantFrom('paste', 'bond'),
});

type Raw = typeof arbitraryCandidate extends fc.Arbitrary<infer T> ? T : never;

function build(raw: readonly Raw[]): Candidate[] {
  return raw.map((r, i) =>
    candidate({
      holdingId: `h${i}`,
      consumableId: r.consumableId,
      dispensing: r.dispensing,
      content: quantityFromMicro(r.content),
      onHand: quantityFromMicro(r.onHand),
      received: quantityFromMicro(r.onHand + r.gone),
      outQuantity: quantityFromMicro(r.gone),
      landedCost: moneyFromMicro(r.cost),
      outCost: moneyFromMicro(multiplyRatio(r.cost, r.gone, r.onHand + r.gone, 'half-up')),
      distance: r.distance,
      labelExpiry: r.expiry,
      lotStatus: r.status,
      openedOn: r.opened && r.dispensing === 'multi-use' ? '2026-03-01' : null,
      useBy: r.opened && r.dispensing === 'multi-use' ? r.expiry : null,
    }),
  );
}

describe('for any stock and any needs', () => {
  const needs = fc.array(
    fc.record({ consumableId: fc.constantFrom('paste', 'bond'), quantity: amount }),
    { maxLength: 6 },
  );

  it('serves or names as missing all that is needed, and never takes more than is there', () => {
    fc.assert(
      fc.property(fc.array(arbitraryCandidate, { maxLength: 8 }), needs, (raw, wanted) => {
        const stock = build(raw);
        const plan = chooseStock(stock, {
          ...request({ need: '1' }),
          needs: wanted.map((n) => ({ ...n, quantity: quantityFromMicro(n.quantity) })),
        });
        wanted.forEach((need, i) => {
          const missing = plan.missing[i] ?? -1n;
          const got = plan.takes.filter((t) => t.need === i).reduce((s, t) => s + t.quantity, 0n);
          expect(missing >= 0n && missing <= need.quantity).toBe(true);
          expect(got + missing >= need.quantity).toBe(true);
          expect(plan.charged[i]).toBe(got);
        });
        for (const left of plan.holdings.values()) expect(left >= 0n).toBe(true);
        for (const layer of plan.layers.values()) {
          expect(layer.outQuantity <= layer.received).toBe(true);
          expect(layer.outCost >= 0n && layer.outCost <= layer.landedCost).toBe(true);
        }
        const before = stock.reduce((s, c) => s + c.onHand, 0n);
        const opened = new Set(plan.openings.map((o) => o.holdingId));
        const after =
          stock.reduce((s, c) => s + (plan.holdings.get(c.holdingId) ?? c.onHand), 0n) +
          [...opened].reduce((s, id) => s + (plan.holdings.get(id) ?? 0n), 0n);
        expect(before - after).toBe(plan.takes.reduce((s, t) => s + t.quantity, 0n));
      }),
      { numRuns: 2000 },
    );
  });

  it('takes only what is released, unexpired and within reach', () => {
    fc.assert(
      fc.property(fc.array(arbitraryCandidate, { maxLength: 8 }), needs, (raw, wanted) => {
        const stock = build(raw);
        const plan = chooseStock(stock, {
          ...request({ need: '1' }),
          needs: wanted.map((n) => ({ ...n, quantity: quantityFromMicro(n.quantity) })),
        });
        const byLot = new Map(stock.map((c) => [c.lotId, c]));
        for (const take of plan.takes) {
          const from = byLot.get(take.lotId);
          expect(from && blockedOn(from, '2026-05-04')).toBeUndefined();
          expect(from?.distance).not.toBeNull();
          if (from?.dispensing === 'single-dose') expect(take.quantity % from.content).toBe(0n);
        }
      }),
      { numRuns: 2000 },
    );
  });
});
