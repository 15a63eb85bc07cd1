import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { epochDay, type WorkCalendar } from '../forecast/index.js';
import { compareOffers, type PackOffer } from './compare-prices.js';
import { type OrderOutcome, supplierRecord } from './supplier-record.js';

const WEEKDAYS: WorkCalendar = {
  openWeekdays: [true, true, true, true, true, false, false],
  closedDays: new Set(),
};
// A Monday.
const MONDAY = epochDay('2026-05-04');

function order(expected: number | null, ...lines: [packs: number, ...parts: [number, number][]][]) {
  return {
    orderedOn: MONDAY,
    expectedOn: expected === null ? null : MONDAY + expected,
    lines: lines.map(([packs, ...parts]) => ({
      packs,
      parts: parts.map(([day, n]) => ({ day: MONDAY + day, packs: n })),
    })),
  } satisfies OrderOutcome;
}

describe('how a supplier delivers', () => {
  it('is told in its working days until all of an order had come', () => {
    const record = supplierRecord(
      [
        order(3, [2, [3, 2]], [1, [3, 1]]),
        // In two parts, over a weekend: complete on the Monday after, the fifth working day.
        order(3, [4, [2, 1], [7, 3]]),
        order(2, [1, [1, 1]]),
        // Half of it still to come, and late.
        order(4, [2, [2, 1]]),
        // Not due yet.
        order(20, [1]),
        // Nobody said when.
        order(null, [1, [2, 1]]),
        // Nothing is to come any more.
        order(2, [0]),
      ],
      WEEKDAYS,
      MONDAY + 10,
    );
    expect(record).toEqual({
      ...{ orders: 6, open: 2, complete: 4, atOnce: 3, due: 4, inTime: 2 },
      ...{ medianDays: 2, p90Days: 5, fastestDays: 1, slowestDays: 5 },
    });
  });

  it('is not known before anything came', () => {
    expect(supplierRecord([], WEEKDAYS, MONDAY)).toMatchObject({ orders: 0, medianDays: null });
    expect(supplierRecord([order(1, [1])], WEEKDAYS, MONDAY)).toMatchObject({
      ...{ orders: 1, open: 1, due: 0, p90Days: null },
    });
  });

  it('counts from the day on which the supplier works again', () => {
    const saturday = { ...order(null, [1, [7, 1]]), orderedOn: MONDAY + 5 };
    expect(supplierRecord([saturday], WEEKDAYS, MONDAY).medianDays).toBe(0);
  });
});

const offers = fc.array(
  fc.record({
    supplierId: fc.constantFrom('a', 'b', 'c'),
    consumableId: fc.constant('paste'),
    presentationId: fc.constantFrom('p1', 'p2', 'p3'),
    content: fc.bigInt({ min: 1n, max: 10_000_000n }),
    packPrice: fc.bigInt({ min: 0n, max: 900_000_000n }),
    yearAgo: fc.option(fc.bigInt({ min: 1n, max: 900_000_000n })),
  }),
  { maxLength: 9 },
);

describe('prices against each other', () => {
  const offer = (supplierId: string, content: string, price: string, yearAgo: string | null) => ({
    ...{ supplierId, consumableId: 'paste', presentationId: `${supplierId}-${content}` },
    content: BigInt(Number(content) * 1e6),
    packPrice: BigInt(Math.round(Number(price) * 1e6)),
    yearAgo: yearAgo === null ? null : BigInt(Math.round(Number(yearAgo) * 1e6)),
  });

  it('are per stock unit, exact, the best of each supplier', () => {
    const found = compareOffers([
      offer('north', '4', '72', '60'),
      offer('south', '3', '51', null),
      offer('south', '4', '74', '74'),
    ]);
    expect(found.map((each) => [each.offer.presentationId, String(each.unitPrice)])).toEqual([
      ['south-3', '17000000'],
      ['north-4', '18000000'],
    ]);
    expect(found[0]).toMatchObject({ cheapest: true, aboveCheapest: 0, change: null });
    expect(found[1]).toMatchObject({ cheapest: false, aboveCheapest: 0.0588, change: 0.2 });
  });

  it('name a cheapest that nobody undercuts', () => {
    fc.assert(
      fc.property(offers, (list: PackOffer[]) => {
        const found = compareOffers(list);
        expect(new Set(found.map((each) => each.offer.supplierId)).size).toBe(found.length);
        expect(new Set(list.map((each) => each.supplierId)).size).toBe(found.length);
        const cheap = found.filter((each) => each.cheapest);
        expect(cheap.length > 0 || list.length === 0).toBe(true);
        for (const each of list) {
          for (const { offer: best } of cheap) {
            expect(best.packPrice * each.content <= each.packPrice * best.content).toBe(true);
          }
        }
        for (const each of found) expect(each.aboveCheapest).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 100 },
    );
  });
});
