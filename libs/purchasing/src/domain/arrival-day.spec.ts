import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { ARRIVED_SHARE, arrivalDay } from './arrival-day.js';
import { addOpenDays, epochDay, isOpen } from './forecast/calendar.js';
import { PLAIN_TERMS, type SupplyTerms } from './planning/planning-settings.js';
import { leadFrom, type SentOrder, supplierLead } from './planning/supplier-lead.js';

// 2026-05-04 is a Monday.
const TODAY = epochDay('2026-05-04');

/** Orders of Mondays, each here after so many days; null: nothing has come yet. */
const orders = (...days: readonly (number | null)[]): SentOrder[] =>
  days.map((after, i) => {
    const orderedOn = TODAY - 7 * (i + 3);
    const parts = after === null ? [] : [{ day: orderedOn + after, quantity: 10n }];
    return { orderedOn, closed: false, lines: [{ ordered: 10n, parts }] };
  });
const lead = (sent: readonly SentOrder[], terms: Partial<SupplyTerms> = {}) =>
  supplierLead({ ...PLAIN_TERMS, leadDays: 2, ...terms }, 3, sent, TODAY);

describe('the day by which goods ordered today are here', () => {
  it('is the stated one until four orders have come', () => {
    const stated = { day: TODAY + 2, ordersSeen: null };
    expect(arrivalDay(lead([]), TODAY)).toEqual(stated);
    expect(arrivalDay(lead(orders(8, 8, 8)), TODAY)).toEqual(stated);
    expect(arrivalDay(lead(orders(8, 8, 8, null, null)), TODAY)).toEqual(stated);
    expect(arrivalDay(lead(orders(8, 8, 8, 8)), TODAY).ordersSeen).toBe(4);
  });

  it('is then that of the slow ones too: the mean is kept in half of the cases only', () => {
    // Of twenty orders five took eleven days, nine working days; the others three.
    const sent = orders(...Array.from({ length: 20 }, (_, i) => (i % 4 === 0 ? 11 : 3)));
    const { day, ordersSeen } = arrivalDay(lead(sent), TODAY);
    expect(ordersSeen).toBe(20);
    expect(day).toBe(TODAY + 11);
    const quick = orders(...Array.from({ length: 20 }, (_, i) => (i % 10 === 0 ? 11 : 3)));
    expect(arrivalDay(lead(quick), TODAY).day).toBe(TODAY + 3);
  });

  it('is a day on which the supplier works, and after its closure', () => {
    const closures = [{ firstDay: '2026-05-05', lastDay: '2026-05-19', note: null }];
    const found = arrivalDay(lead(orders(3, 3, 3, 3, 3, 3, 3, 3), { closures }), TODAY);
    expect(found.day).toBeGreaterThanOrEqual(epochDay('2026-05-20'));
  });

  it('is the first by which so many deliveries are here, as ordering reckons with them', () => {
    const law = fc.property(
      fc.array(fc.option(fc.integer({ min: 1, max: 19 }), { nil: null }), { maxLength: 30 }),
      fc.integer({ min: 0, max: 12 }),
      (days, leadDays) => {
        const known = lead(orders(...days), { leadDays });
        const { day, ordersSeen } = arrivalDay(known, TODAY);
        expect(isOpen(known.calendar, day)).toBe(true);
        if (ordersSeen === null) {
          expect(day).toBe(addOpenDays(known.calendar, TODAY, leadDays));
          return;
        }
        const by = (last: number) =>
          leadFrom(known, TODAY)
            .filter((chance) => TODAY + chance.days <= last)
            .reduce((sum, { probability }) => sum + probability, 0);
        expect(by(day)).toBeGreaterThan(ARRIVED_SHARE - 1e-4);
        expect(by(day - 1)).toBeLessThan(ARRIVED_SHARE + 1e-4);
      },
    );
    fc.assert(law);
  });
});
