import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { quantity } from '#lib/measure';
import type { ComputedLevel } from './computed-level.js';
import { reorderAlert, type SupplyFacts } from './reorder-alert.js';
import type { KnownLevels, Position } from './reorder-level.js';
import type { Offer } from './suggest-order.js';

const offer = (id: string, content: string, price: string | null): Offer => ({
  presentationId: id,
  name: `Pack ${id}`,
  supplierName: null,
  packContent: quantity(content),
  packPrice: price === null ? null : quantity(price),
});

const computed: ComputedLevel = {
  consumableId: 'c1',
  computedOn: '2026-05-04',
  reason: 'at or below the reorder point',
  reorderPoint: quantity('6'),
  orderUpTo: quantity('16'),
  position: quantity('4'),
  expiringFirst: 0n,
  expectedUse: quantity('3.5'),
  leadDays: 4.2,
  reviewDays: 7,
  serviceMeasure: 'cycle service',
  serviceLevel: 0.95,
  hardlyUsed: false,
  presentationId: 'b',
  packs: 2n,
  total: quantity('150'),
};

const nothing = { at: null, upTo: null };
const typedIn = { at: quantity('5'), upTo: quantity('15') };
const asTyped: KnownLevels = { planning: nothing, typedIn, computed: null };
const asComputed: KnownLevels = { planning: nothing, typedIn: nothing, computed };

const facts = (change: Partial<Position> = {}, levels = asTyped): SupplyFacts => ({
  consumable: {
    id: 'c1',
    name: 'Adhesive',
    category: 'adhesive',
    shade: null,
    size: null,
    grit: null,
    unit: 'mL',
  },
  stock: { usable: quantity('4'), onOrder: 0n, owed: 0n, ...change },
  levels,
  offers: [offer('a', '5', '80'), offer('b', '5', '85')],
});
const alert = (change: Partial<Position> = {}, levels = asTyped) =>
  reorderAlert(facts(change, levels), 'EUR');
const values = (of: ReturnType<typeof reorderAlert>) =>
  of?.figures.map(({ name, value }) => [name, value]);

describe('the reorder alert', () => {
  it('counts what is on order as if it were there', () => {
    expect(alert({ onOrder: quantity('2') })).toBeUndefined();
    const still = alert({ onOrder: quantity('0.5') });
    expect(still?.sentence).toContain('4 mL of Adhesive usable, and 0.5 mL on order, is not more');
    expect(values(still)?.slice(0, 4)).toEqual([
      ['usable', '4'],
      ['on order', '0.5'],
      ['open shortfall', '0'],
      ['position', '4.5'],
    ]);
  });

  it('explains itself with its numbers', () => {
    expect(alert({ owed: quantity('0.5') })).toMatchObject({
      id: 'below-reorder-point:c1',
      sentence:
        '4 mL of Adhesive usable, less 0.5 mL owed to visits, is not more than the reorder point ' +
        'of 5 mL, typed in at the consumable. Order 3 packs of Pack a.',
      level: { kind: 'typed in', at: '5', computed: null },
      figures: [
        { name: 'usable', value: '4', unit: 'mL' },
        { name: 'open shortfall', value: '0.5', unit: 'mL' },
        { name: 'position', value: '3.5', unit: 'mL' },
        { name: 'reorder at', value: '5', unit: 'mL' },
        { name: 'reorder up to', value: '15', unit: 'mL' },
        { name: 'suggested packs', value: '3', unit: 'packs' },
        { name: 'last price', value: '80.00', unit: 'EUR' },
        { name: 'order cost', value: '240.00', unit: 'EUR' },
      ],
    });
  });

  it('is silent above the reorder point, and without any', () => {
    expect(alert({ usable: quantity('5.1') })).toBeUndefined();
    expect(alert({ usable: 0n }, { ...asTyped, typedIn: nothing })).toBeUndefined();
  });

  it('says so when nobody knows how it is bought', () => {
    const none = reorderAlert({ ...facts(), offers: [] }, 'EUR');
    expect(none?.sentence).toContain('No presentation');
  });

  it('puts what has run out before what runs low', () => {
    const [low, out] = [alert(), alert({ usable: 0n })];
    expect(out && low && out.urgency < low.urgency).toBe(true);
  });
});

describe('the level that an alert goes by', () => {
  const kindOf = (levels: KnownLevels) => alert({ usable: 0n }, levels)?.level?.kind;
  const planning = { at: quantity('2'), upTo: null };

  it('is what was set in planning, else what was typed in, else what was computed', () => {
    expect(kindOf({ planning, typedIn, computed })).toBe('set in planning');
    expect(kindOf({ planning: nothing, typedIn, computed })).toBe('typed in');
    expect(kindOf(asComputed)).toBe('computed');
    // And no other: 4 mL are below two of them, and above the one that holds.
    expect(alert({}, { planning, typedIn, computed })).toBeUndefined();
    // But a level typed in does not silence what planning orders.
    const less = alert(
      {},
      { planning: nothing, typedIn: { at: quantity('3'), upTo: null }, computed },
    );
    expect([less?.level?.kind, less?.level?.at]).toEqual(['computed', '6']);
    expect(less?.sentence).toMatch(
      /Order 2 packs of Pack b[.] The 3 mL typed in are not reached yet[.]$/,
    );
    const enough = { ...computed, reorderPoint: quantity('3.5') };
    const both = {
      planning: nothing,
      typedIn: { at: quantity('3'), upTo: null },
      computed: enough,
    };
    expect(alert({}, both)).toBeUndefined();
  });

  it('says of a computed one what it rests on, and orders what planning orders', () => {
    const found = alert({}, asComputed);
    expect(found?.sentence).toBe(
      '4 mL of Adhesive usable is not more than the reorder point of 6 mL, computed on 2026-05-04 ' +
        'for a cycle service of 95 % with 3.5 mL expected to be used in 11 days. ' +
        'Order 2 packs of Pack b.',
    );
    expect(values(found)?.slice(3)).toEqual([
      ['reorder at', '6'],
      ['reorder up to', '16'],
      ['use in days covered', '3.5'],
      ['days covered', '11'],
      ['suggested packs', '2'],
      ['order cost', '150.00'],
    ]);
    expect(found?.action.href).toBe('/api/reorder/items/c1');
  });

  it('is compared with what is left when some expires before goods can be here', () => {
    const soon = { ...computed, reorderPoint: quantity('3'), expiringFirst: quantity('1') };
    const found = alert({}, { ...asComputed, computed: soon });
    expect(found?.sentence).toContain(
      '4 mL of Adhesive usable, less about 1 mL that should expire first,',
    );
    const nearly = { ...soon, expiringFirst: quantity('0.999999') };
    expect(alert({}, { ...asComputed, computed: nearly })).toBeUndefined();
    // What a person typed in at the consumable knows nothing of that.
    const typed = { at: quantity('3'), upTo: null };
    const alone = { ...asTyped, typedIn: typed };
    expect(alert({}, alone)).toBeUndefined();
    expect(alert({}, { ...alone, computed: soon })?.level?.kind).toBe('computed');
  });

  it('tells expectations with three digits', () => {
    const use = (text: string) => {
      const levels = { ...asComputed, computed: { ...computed, expectedUse: quantity(text) } };
      return alert({}, levels)?.level?.computed?.expectedUse;
    };
    expect(['3.456789', '0.728849', '1234.5', '999.6', '0'].map(use)).toEqual([
      ...['3.46', '0.729', '1230', '1000', '0'],
    ]);
  });

  it('asks for other packs once the shelf is another than it was computed from', () => {
    const found = alert({ usable: quantity('1') }, asComputed);
    // From 1 up to 16 by fives, of the presentation that planning chose.
    expect(found?.sentence).toContain('Order 3 packs of Pack b.');
  });

  it('is told beside what planning makes of it, where it was typed in', () => {
    const beside = (change: Partial<ComputedLevel>) => {
      const levels = { ...asTyped, computed: { ...computed, ...change } };
      const found = alert({}, levels);
      return [found?.sentence.split('. ').at(-1), found?.level?.computed?.orders];
    };
    const point = 'Planning computed a reorder point of';
    expect(beside({})).toEqual([`${point} 6 mL and orders as well.`, true]);
    const low = { reorderPoint: quantity('3') };
    expect(beside(low)).toEqual([`${point} 3 mL and orders nothing yet.`, false]);
  });

  it('orders nothing that is hardly used, but for what is owed', () => {
    const hardly = { ...asComputed, computed: { ...computed, hardlyUsed: true } };
    expect(alert({ usable: 0n }, hardly)).toBeUndefined();
    expect(alert({ usable: 0n, owed: quantity('0.1') }, hardly)).toBeDefined();
    // A level of zero set by hand is no wish to keep any.
    const zero = { ...hardly, planning: { at: 0n, upTo: null } };
    expect(alert({ usable: 0n }, zero)).toBeUndefined();
    expect(alert({ usable: 0n }, { ...zero, computed })).toBeDefined();
  });

  it('says so when a limit set in planning allows no pack', () => {
    const held: ComputedLevel = {
      ...computed,
      ...{ reason: 'stopped by a limit', packs: 0n, total: null },
    };
    const found = alert({}, { ...asComputed, computed: held });
    expect(found?.sentence).toContain('A limit set in planning holds the order back.');
    expect(found?.level?.heldBack).toBe(true);
    expect(values(found)?.map(([name]) => name)).not.toContain('suggested packs');
  });

  it('falls silent as stock rises and never speaks up for it', () => {
    const micro = fc.bigInt({ min: 0n, max: 20_000_000n });
    const some = fc.option(micro, { nil: null });
    const law = fc.property(
      fc.record({ planned: some, typed: some, point: some, expiring: micro, usable: micro }),
      fc.record({ more: micro, owed: micro, hardlyUsed: fc.boolean() }),
      ({ planned, typed, point, expiring: expiringFirst, usable }, { more, owed, hardlyUsed }) => {
        const known = {
          planning: { at: planned, upTo: null },
          typedIn: { at: typed, upTo: null },
          computed:
            point === null ? null : { ...computed, reorderPoint: point, expiringFirst, hardlyUsed },
        };
        const now = alert({ usable, owed }, known);
        const fuller = alert({ usable: usable + more, owed }, known);
        expect(now === undefined && fuller !== undefined).toBe(false);
        const levels: (bigint | null)[] = planned === null ? [typed, point] : [planned];
        if (now) expect(levels).toContain(quantity(now.level?.at ?? ''));
        if (levels.every((at) => at === null)) expect(now).toBeUndefined();
        // Whoever typed a level in is told when it is reached, whatever planning makes of it.
        if (planned === null && typed !== null && usable - owed <= typed) expect(now).toBeDefined();
      },
    );
    fc.assert(law);
  });
});
