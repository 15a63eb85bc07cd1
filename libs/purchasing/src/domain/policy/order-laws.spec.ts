import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { money, quantity } from '#lib/measure';
import { seededRandom } from '../forecast/seeded-random.js';
import { decideOrder } from './decide-order.js';
import { lumpyDemand } from './example-demand.js';
import { capsuleOffer, capsules } from './example-items.js';
import type { ItemFacts } from './item-facts.js';
import { packsTotal } from './offer.js';
import { adjustedPosition } from './offer-plan.js';
import { proposeOrder } from './propose-order.js';

const propose = (facts: ItemFacts) => proposeOrder(facts, { random: seededRandom(11), runs: 50 });

describe('an order is always', () => {
  it('whole packs, within the limits, at the exact price', () => {
    fc.assert(
      fc.property(items(), (facts) => {
        const decision = decideOrder(facts);
        const { plan, limited } = decision;
        if (!plan || limited.packs === 0) return;
        const packs = BigInt(limited.packs);
        expect(packs).toBeGreaterThanOrEqual(plan.offer.minimumPacks);
        expect(decision.total).toBe(packsTotal(plan.offer, packs));
        const size = limited.packs * plan.counts.pack;
        if (size > plan.cap + 1e-6) {
          expect(limited.aboveCap).toBe(true);
          expect(packs).toBe(plan.offer.minimumPacks);
        }
        const { budget, shelfRoom } = facts.limits;
        if (budget !== null) expect((decision.total ?? 0n) <= budget).toBe(true);
        if (shelfRoom !== null) {
          const after = Math.max(decision.shelf.position, 0) + size;
          expect(after).toBeLessThanOrEqual(Number(shelfRoom) / 1e6 + 1e-6);
        }
      }),
      { numRuns: 150 },
    );
  });

  it('the fewest packs that keep the promise at the cheapest year', () => {
    let seen = 0;
    fc.assert(
      fc.property(items(), (facts) => {
        const limits = { shelfRoom: null, budget: null, expiryCertainty: 0.9 };
        const { plan, limited, shelf } = decideOrder({ ...facts, limits });
        if (!plan || limited.packs === 0 || limited.bounds.length > 0) return;
        if (plan.usualPacks === 0) return;
        seen += 1;
        const { counts, reorderPoint } = plan;
        const reached = (packs: number) => adjustedPosition(shelf, plan) + packs * counts.pack;
        expect(reached(limited.packs)).toBeGreaterThan(reorderPoint);
        expect(reached(limited.packs)).toBeLessThanOrEqual(plan.orderUpTo + 1e-6);
        const year = plan.costOfYear(limited.packs);
        for (let fewer = counts.minimumPacks; fewer < limited.packs; fewer += 1) {
          if (reached(fewer) <= reorderPoint) continue;
          expect([fewer, plan.costOfYear(fewer) > year]).toEqual([fewer, true]);
        }
      }),
      { numRuns: 150 },
    );
    expect(seen).toBeGreaterThan(20);
  });

  it('a reorder point that rises with the service', () => {
    const level = fc.integer({ min: 50, max: 999 }).map((n) => n / 1000);
    fc.assert(
      fc.property(items(), level, level, (facts, a, b) => {
        const at = (l: number) => {
          const target = { measure: 'cycle service', level: l } as const;
          return decideOrder({ ...facts, target }).plan?.reorderPoint ?? 0;
        };
        expect(at(Math.min(a, b))).toBeLessThanOrEqual(at(Math.max(a, b)));
      }),
      { numRuns: 60 },
    );
  });

  it('the same whatever the order of lots, orders and offers', () => {
    fc.assert(
      fc.property(items(), (facts) => {
        const turned = {
          ...facts,
          lots: [...facts.lots].reverse(),
          offers: [...facts.offers].reverse(),
        };
        const [one, other] = [propose(facts), propose(turned)];
        const { decision: _, ...told } = one;
        expect({ ...other, decision: undefined }).toEqual({ ...told, decision: undefined });
      }),
      { numRuns: 40 },
    );
  });
});

function items() {
  const n = (min: number, max: number) => fc.integer({ min, max });
  const lot = fc.record({
    quantity: n(0, 80).map((q) => quantity(String(q / 2))),
    usableDays: fc.option(n(0, 200), { nil: null }),
  });
  const offer = fc
    .tuple(n(1, 40), n(1, 60), n(1, 3), fc.option(n(20, 400), { nil: null }), n(0, 20), n(2, 9))
    .map(([content, price, minimum, life, lead, from]) =>
      capsuleOffer({
        offerId: `offer-${content}-${price}-${minimum}-${life}-${lead}-${from}`,
        packContent: quantity(String(content)),
        minimumPacks: BigInt(minimum),
        tiers: [
          { fromPacks: 1n, packPrice: money(String(price)) },
          { fromPacks: BigInt(from), packPrice: money(String(price * 0.75)) },
        ],
        usableDaysOnArrival: life,
        leadTime: [
          { days: lead, probability: 0.75 },
          { days: lead + 6, probability: 0.25 },
        ],
      }),
    );
  return fc
    .record({
      rate: n(0, 30),
      reviewDays: n(0, 10),
      lots: fc.array(lot, { maxLength: 4 }),
      offers: fc.uniqueArray(offer, { minLength: 1, maxLength: 2, selector: (o) => o.offerId }),
      openShortfall: n(0, 9).map((q) => quantity(String(q))),
      shelfRoom: fc.option(
        n(1, 150).map((q) => quantity(String(q))),
        { nil: null },
      ),
      budget: fc.option(
        n(1, 400).map((m) => money(String(m))),
        { nil: null },
      ),
    })
    .map(({ rate, shelfRoom, budget, ...rest }) =>
      capsules({
        ...rest,
        demand: lumpyDemand(rate / 10, 2),
        limits: { shelfRoom, budget, expiryCertainty: 0.9 },
      }),
    );
}
