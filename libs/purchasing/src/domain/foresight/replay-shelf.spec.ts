import { describe, expect, it } from '@jest/globals';
import { moneyFromMicro } from '#lib/measure';
import { epochDay, seededRandom, seedFrom } from '../forecast/index.js';
import { NOTHING_OWN, PLAIN_SETTINGS, PLAIN_TERMS } from '../planning/planning-settings.js';
import { lifeOn, offersOn, type PastItem, type PastShelf, usualPurchase } from './past-shelf.js';
import type { ReplayedShelf } from './replay-report.js';
import { replayShelf } from './replay-shelf.js';

const END = epochDay('2026-05-04');
const BEFORE = 200;
const REPLAYED = 140;
const FIRST = END - REPLAYED;
const ONE = 1_000_000n;

const openDays = Array.from({ length: BEFORE + REPLAYED }, (_, i) => FIRST - BEFORE + i).filter(
  (day) => ((day + 3) % 7) + 1 <= 5,
);

/** An invented item, bought in tens for 12.00, usable for so many days. */
function item(id: string, change: Partial<PastItem> = {}, chance = 0.5): PastItem {
  const random = seededRandom(seedFrom(id));
  const delivery = (day: number, life: number | null) => ({
    ...{ presentationId: 'ten', day, packs: 3, packPrice: 12n * ONE, usableDays: life },
    ...{ supplierId: 'north', supplierName: 'Northgate Supply' },
  });
  return {
    consumableId: id,
    uses: openDays
      .filter(() => random() < chance)
      .map((day) => ({ day, issued: BigInt(1 + Math.floor(random() * 4)) * ONE })),
    oneOffs: [],
    stockedSince: FIRST - BEFORE,
    deliveries: [delivery(FIRST - BEFORE, 300), delivery(FIRST - 40, 400)],
    presentations: [
      {
        ...{ presentationId: 'ten', name: 'Ten', supplierId: 'north', supplierName: 'Northgate' },
        ...{ packContent: 10n * ONE, listPrice: 15n * ONE, minimumPacks: 1n },
        ...{ discount: 'all units', priceList: [] },
      },
    ],
    startLots: [{ quantity: 15n * ONE, lastDay: FIRST + 120 }],
    typedIn: { reorderAt: 4n * ONE, reorderUpTo: 10n * ONE },
    ...change,
  };
}

function shelf(items: readonly PastItem[], change: Partial<PastShelf> = {}): PastShelf {
  return {
    ...{ firstDay: FIRST, endDay: END, visitDays: openDays, sent: new Map(), horizonDays: 12 },
    rules: { settings: PLAIN_SETTINGS, ownOf: () => NOTHING_OWN, termsOf: () => PLAIN_TERMS },
    items,
    ...change,
  };
}

function replayed(facts: PastShelf): ReplayedShelf & { readonly steps: number } {
  const run = replayShelf(facts);
  let steps = 0;
  for (;;) {
    const step = run.next();
    if (step.done === true) return { ...step.value, steps };
    expect(step.value.done).toBeLessThanOrEqual(step.value.total);
    steps += 1;
  }
}

describe('a practice replayed', () => {
  const facts = shelf([
    item('bib'),
    item('strip', { typedIn: { reorderAt: null, reorderUpTo: null } }),
    item('never used', { uses: [], startLots: [] }),
    item('not bought', { presentations: [], deliveries: [] }),
  ]);
  const found = replayed(facts);

  it('runs out less by the computed policy than by levels that are too low', () => {
    const [bib, strip] = found.items;
    expect([bib?.oldRule, strip?.oldRule]).toEqual(['typed-in levels', 'when empty']);
    // About six are used in lead time: a minimum of four runs out, and so does waiting for none.
    for (const each of [bib, strip]) {
      expect(each?.old.stockOutDays ?? 0).toBeGreaterThan(3);
      expect(each?.computed.stockOutDays ?? 99).toBeLessThan((each?.old.stockOutDays ?? 0) / 2);
      expect(each?.computed.averageValue ?? 0n).toBeGreaterThan(each?.old.averageValue ?? 0n);
    }
    expect(found.computed.stockOutDays).toBeLessThan(found.old.stockOutDays);
    expect([found.notUsed, found.notBought, found.withoutPrice]).toEqual([1, 1, 0]);
  });

  it('adds up, item by item, in exact money', () => {
    for (const side of ['computed', 'old'] as const) {
      const sum = (of: 'averageValue' | 'wastedValue') =>
        found.items.reduce((total, each) => total + (each[side][of] ?? 0n), 0n);
      expect(found[side].averageValue).toBe(sum('averageValue'));
      expect(found[side].wastedValue).toBe(sum('wastedValue'));
      const orders = found.items.reduce((total, each) => total + each[side].orders, 0);
      expect(found[side].orders).toBe(orders);
      // 1.20 a piece, as paid last.
      for (const each of found.items) {
        const worth = (each[side].averageStock * 12n) / 10n;
        const off = Number((each[side].averageValue ?? 0n) - worth);
        expect(Math.abs(off)).toBeLessThanOrEqual(1);
      }
    }
    expect(found.weeks).toHaveLength(REPLAYED / 7);
  });

  it('is the same each time, and comes in small steps', () => {
    expect(replayed(facts)).toEqual(found);
    expect(found.steps).toBeGreaterThan(2 * 2 * 5);
  });

  it('knows nothing of what comes: another future leaves the past as it was', () => {
    const change = FIRST + 70;
    const other = shelf(
      facts.items.map((each) => ({
        ...each,
        uses: each.uses.map((use) =>
          use.day < change ? use : { ...use, issued: use.issued * 9n + ONE },
        ),
        deliveries: each.deliveries.map((d) => ({ ...d })),
      })),
      { visitDays: [...openDays.filter((day) => day < change), change, change + 5] },
    );
    const then = replayed(other);
    const until = (weeks: ReplayedShelf['weeks']) => weeks.filter((w) => w.lastDay < change);
    expect(until(then.weeks)).toHaveLength(10);
    expect(until(then.weeks)).toEqual(until(found.weeks));
    expect(then.weeks).not.toEqual(found.weeks);
  });
});

describe('what a supplier asks for', () => {
  const both = [item('bib'), item('clip')];
  const under = (terms: Partial<typeof PLAIN_TERMS>, items = both, ownOf = () => NOTHING_OWN) =>
    replayed(
      shelf(items, {
        rules: { settings: PLAIN_SETTINGS, ownOf, termsOf: () => ({ ...PLAIN_TERMS, ...terms }) },
      }),
    );

  const free = under({ freight: '6.50' });

  it('is one order a day with all its lines, and its freight', () => {
    for (const side of [free.computed, free.old]) {
      expect(side.sent).toBeGreaterThanOrEqual(3);
      expect(side.sent).toBeLessThanOrEqual(side.orders);
      expect(side.freight).toBe(BigInt(side.sent) * 6_500_000n);
    }
    // Looked at on the same day once a week: some orders hold both.
    expect(free.computed.sent).toBeLessThan(free.computed.orders);
    expect(free.computed.sent).toBeLessThanOrEqual(REPLAYED / 7);
  });

  it('is a minimum that orders are filled up to: fewer orders, and more on the shelf', () => {
    const bound = under({ minimumOrder: '300', freight: '6.50', freeFreightFrom: '40' });
    expect(bound.computed.sent).toBeLessThan(free.computed.sent);
    expect(bound.computed.sent).toBeGreaterThan(0);
    expect(bound.computed.freight).toBe(0n);
    expect(bound.computed.averageValue).toBeGreaterThan(free.computed.averageValue);
    // Nobody kept the old rule to a minimum; its small orders pay freight.
    expect(bound.old).toEqual({ ...free.old, freight: bound.old.freight });
    expect(bound.old.freight).toBeGreaterThan(0n);
  });

  it('is a minimum that cannot be reached: nothing is sent, and the shelf runs empty', () => {
    const room = { ...NOTHING_OWN, shelfRoom: '40' };
    const found = under({ minimumOrder: '5000' }, both, () => room);
    expect([found.computed.sent, found.computed.orders, found.computed.freight]).toEqual([
      ...[0, 0, 0n],
    ]);
    expect(found.computed.stockOutDays).toBeGreaterThan(found.old.stockOutDays);
  });

  it('is a price list: from four packs on at half the price, so more is bought at a time', () => {
    const list = [
      { fromPacks: 1n, packPrice: moneyFromMicro(12n * ONE) },
      { fromPacks: 4n, packPrice: moneyFromMicro(6n * ONE) },
    ];
    const listed = both.map((each) => ({
      ...each,
      presentations: each.presentations.map((p) => ({ ...p, priceList: list })),
    }));
    expect(under({}, listed).computed.orders).toBeLessThan(free.computed.orders);
    expect(offersOn(listed[0] ?? both[0] ?? item('none'), FIRST)[0]).toMatchObject({
      ...{ packPrice: 12n * ONE, priceList: list, discount: 'all units' },
    });
  });
});

describe('goods that expire', () => {
  it('are bought with care by the policy, and thrown away by a high level', () => {
    const life = { usableDays: 30, ...{ presentationId: 'ten', packs: 3, packPrice: 12n * ONE } };
    const supplier = { supplierId: 'north', supplierName: 'Northgate Supply' };
    const rare = item(
      'rare shade',
      {
        deliveries: [{ ...life, ...supplier, day: FIRST - 90 }],
        startLots: [],
        typedIn: { reorderAt: 20n * ONE, reorderUpTo: 40n * ONE },
      },
      0.06,
    );
    const found = replayed(shelf([rare]));
    const [only] = found.items;
    expect(only?.old.wasted ?? 0n).toBeGreaterThan(60n * ONE);
    expect(only?.computed.wasted ?? 0n).toBeLessThan((only?.old.wasted ?? 0n) / 3n);
    expect(found.computed.wastedValue).toBeLessThan(found.old.wastedValue);
  });
});

describe('what was known on a day', () => {
  const one = item('bib');

  it('is the price paid until then, and how long goods had lasted', () => {
    expect(offersOn(one, FIRST - BEFORE)[0]).toMatchObject({
      ...{ packPrice: 15n * ONE, usableDays: null, supplierName: 'Northgate' },
    });
    expect(offersOn(one, FIRST - BEFORE + 1)[0]).toMatchObject({
      ...{ packPrice: 12n * ONE, usableDays: 300 },
    });
    expect(usualPurchase(one, FIRST - BEFORE)).toBeNull();
    expect(usualPurchase(one, FIRST)).toEqual({ presentationId: 'ten', packs: 3 });
  });

  it('leaves how long goods really lasted to the deliveries nearest to the day', () => {
    expect([lifeOn(one, FIRST - BEFORE), lifeOn(one, FIRST)]).toEqual([300, 400]);
    expect(lifeOn(item('none', { deliveries: [] }), FIRST)).toBeNull();
  });
});
