import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { money, quantity } from '#lib/measure';
import { basketItem } from './basket-item.js';
import { decideOrder } from './decide-order.js';
import { lumpyDemand } from './example-demand.js';
import { capsuleOffer, capsules } from './example-items.js';
import { type BasketItem, fillBasket, type SupplierTerms } from './supplier-basket.js';

const terms: SupplierTerms = {
  supplierId: 'supplier-a',
  minimumOrder: null,
  freight: money('9.50'),
  freeFreightFrom: null,
  budget: null,
  carryingRate: 0.2,
};

function item(id: string, packs: bigint, price: string, change: Partial<BasketItem> = {}) {
  const tiers = [{ fromPacks: 1n, packPrice: money(price) }];
  const extra = (days: number) => ({ packs: 1n, neededInDays: days, expectedWaste: money('0') });
  return {
    itemId: id,
    offer: capsuleOffer({ offerId: `offer-${id}`, tiers }),
    packs,
    runsOutInDays: 10,
    extras: [extra(30), extra(60), extra(90)],
    ...change,
  };
}

describe('a basket', () => {
  it('adds up exactly, freight included', () => {
    const basket = fillBasket([item('a', 2n, '46.10'), item('b', 1n, '12.35')], terms);
    expect(basket).toMatchObject({
      status: 'ready',
      goods: money('104.55'),
      freight: money('9.50'),
      total: money('114.05'),
      choices: [],
    });
    expect(basket.lines.map((line) => [line.itemId, line.packs, line.added])).toEqual([
      ['a', 2n, 0n],
      ['b', 1n, 0n],
    ]);
  });

  it('of nothing is nothing', () => {
    const basket = fillBasket([item('a', 0n, '46')], { ...terms, minimumOrder: money('50') });
    expect(basket).toMatchObject({ status: 'nothing needed', lines: [], total: money('0') });
  });

  it('is filled up to the minimum order with what is needed soonest', () => {
    const late = item('late', 0n, '5', {
      extras: [{ packs: 2n, neededInDays: 80, expectedWaste: money('0') }],
    });
    const soon = item('soon', 0n, '20', {
      extras: [{ packs: 1n, neededInDays: 3, expectedWaste: money('0') }],
    });
    const items = [late, soon, item('a', 1n, '46')];
    const basket = fillBasket(items, { ...terms, minimumOrder: money('60') });
    expect(basket.lines.map((line) => [line.itemId, line.packs, line.added])).toEqual([
      ['a', 1n, 0n],
      ['soon', 1n, 1n],
    ]);
    expect(basket.choices).toEqual([
      { choice: 'filled up to the minimum order', missing: money('14') },
    ]);
    // With 115 asked, the extras of 'a' after 30 days come next, before those after 80.
    const more = fillBasket(items, { ...terms, minimumOrder: money('110') });
    expect(more.lines.map((line) => [line.itemId, line.packs])).toEqual([
      ['a', 2n],
      ['soon', 1n],
    ]);
    expect(fillBasket([...items].reverse(), { ...terms, minimumOrder: money('110') })).toEqual(
      more,
    );
  });

  it('stays below the minimum order when nothing more is used in time, and says so', () => {
    const basket = fillBasket([item('a', 1n, '46', { extras: [] })], {
      ...terms,
      minimumOrder: money('100'),
    });
    expect(basket.status).toBe('below the minimum order');
    expect(basket.choices).toEqual([{ choice: 'minimum order not reached', missing: money('54') }]);
  });

  it('is filled up to free freight only where that is cheaper', () => {
    const free = { ...terms, freeFreightFrom: money('80') };
    // 46.00 bought 30 days early costs 46 * 0.2 * 30 / 365 = 0.76 to keep, against 9.50.
    const filled = fillBasket([item('a', 1n, '46')], free);
    expect(filled).toMatchObject({ goods: money('92'), freight: money('0') });
    expect(filled.choices).toEqual([
      {
        choice: 'filled up to free freight',
        missing: money('34'),
        freight: money('9.50'),
        costOfFilling: money('0.756164'),
      },
    ]);
    const spoils = { packs: 1n, neededInDays: 30, expectedWaste: money('9') };
    const paid = fillBasket([item('a', 1n, '46', { extras: [spoils] })], free);
    expect(paid).toMatchObject({ goods: money('46'), freight: money('9.50') });
    expect(paid.choices).toMatchObject([
      { choice: 'freight is cheaper than filling up', costOfFilling: money('9.756164') },
    ]);
    const far = fillBasket([item('a', 1n, '46')], { ...free, freeFreightFrom: money('900') });
    expect(far.choices).toEqual([
      { choice: 'free freight not within reach', missing: money('854') },
    ]);
    expect(fillBasket([item('a', 2n, '46')], free).choices).toEqual([]);
  });

  it('pays the most urgent first when the budget is short', () => {
    const urgent = item('urgent', 2n, '40', { runsOutInDays: 1 });
    const later = item('later', 3n, '30', { runsOutInDays: 20 });
    const basket = fillBasket([later, urgent], { ...terms, budget: money('120') });
    expect(basket.lines.map((line) => [line.itemId, line.packs])).toEqual([
      ['urgent', 2n],
      ['later', 1n],
    ]);
    expect(basket.total <= money('120')).toBe(true);
    expect(basket.choices).toEqual([
      { choice: 'left out for the budget', itemId: 'later', packs: 2n },
    ]);
  });

  it('refuses an item twice', () => {
    expect(() => fillBasket([item('a', 1n, '1'), item('a', 1n, '1')], terms)).toThrow('items');
  });

  it('keeps to its limits, whatever is in it', () => {
    fc.assert(
      fc.property(baskets(), ({ items, limits }) => {
        const basket = fillBasket(items, limits);
        const sum = basket.lines.reduce((total, line) => total + (line.total ?? 0n), 0n);
        expect(basket.goods).toBe(sum);
        expect(basket.total).toBe(basket.goods + basket.freight);
        if (basket.lines.length > 0 && limits.budget !== null) {
          expect(basket.total <= limits.budget).toBe(true);
        }
        for (const line of basket.lines) {
          const from = items.find((i) => i.itemId === line.itemId);
          const most = from?.extras.reduce((n, e) => n + e.packs, from.packs) ?? 0n;
          expect(line.packs >= 1n && line.packs <= most).toBe(true);
        }
        const reached = limits.minimumOrder === null || basket.goods >= limits.minimumOrder;
        if (basket.status === 'ready') expect(reached).toBe(true);
        expect(fillBasket([...items].reverse(), limits)).toEqual(basket);
      }),
      { numRuns: 200 },
    );
  });
});

describe('an item of a basket', () => {
  it('offers early what is used before it expires', () => {
    const found = basketItem(decideOrder(capsules()));
    expect(found).toMatchObject({ itemId: 'capsule-body-2', runsOutInDays: 15 });
    const days = found?.extras.map((extra) => extra.neededInDays) ?? [];
    expect(days.length).toBeGreaterThan(2);
    // A box of 20 lasts ten days at two a day.
    for (const [i, day] of days.entries()) {
      if (i > 0) expect(day - (days[i - 1] ?? 0)).toBe(10);
    }
    const cap = decideOrder(capsules()).plan?.cap ?? 0;
    const all = (found?.packs ?? 0n) + BigInt(days.length);
    expect(Number(all) * 20).toBeLessThanOrEqual(cap);
  });

  it('starts with the smallest order where it is not its turn yet', () => {
    const lots = [{ quantity: quantity('90'), usableDays: 400 }];
    const offers = [capsuleOffer({ minimumPacks: 2n })];
    const found = basketItem(decideOrder(capsules({ lots, offers })));
    expect(found?.packs).toBe(0n);
    expect(found?.extras[0]?.packs).toBe(2n);
    expect(found?.extras[1]?.packs).toBe(1n);
    expect(basketItem(decideOrder(capsules({ offers: [] })))).toBeNull();
    const rare = capsules({ demand: lumpyDemand(0.00001, 2), lots: [] });
    expect(basketItem(decideOrder(rare))).toBeNull();
  });
});

function baskets() {
  const n = (min: number, max: number) => fc.integer({ min, max });
  const amount = (min: number, max: number) =>
    fc.option(
      n(min, max).map((m) => money(String(m))),
      { nil: null },
    );
  const extras = fc
    .array(fc.record({ gap: n(0, 40), waste: n(0, 5) }), { maxLength: 4 })
    .map((list) => {
      let neededInDays = 0;
      return list.map(({ gap, waste }) => {
        neededInDays += gap;
        return { packs: 1n, neededInDays, expectedWaste: money(String(waste)) };
      });
    });
  const one = fc.record({ packs: n(0, 4), price: n(1, 90), runsOutInDays: n(0, 50), extras });
  return fc
    .record({
      list: fc.array(one, { maxLength: 5 }),
      minimumOrder: amount(1, 300),
      freeFreightFrom: amount(1, 500),
      budget: amount(1, 400),
    })
    .map(({ list, ...limits }) => ({
      items: list.map(({ packs, price, ...rest }, i) =>
        item(`item-${i}`, BigInt(packs), String(price), rest),
      ),
      limits: { ...terms, ...limits },
    }));
}
