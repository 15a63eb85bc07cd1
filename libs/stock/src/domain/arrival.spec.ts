import { describe, expect, it } from '@jest/globals';
import { formatMoney, money, quantity } from '#lib/measure';
import { type ArrivingGoods, arrivalFlags } from './arrival-flags.js';
import { comparePrice } from './compare-price.js';

const goods = (change: Partial<ArrivingGoods> = {}): ArrivingGoods => ({
  ...{ quantity: quantity('10'), expiresOn: '2026-08-01', daysLeft: 100, warningDays: 60 },
  ...{ waiting: [], used: quantity('0'), usedDays: 90, ...change },
});

const kinds = (change: Partial<ArrivingGoods>) =>
  arrivalFlags(goods(change)).map((flag) => `${flag.kind} ${flag.daysLeft} of ${flag.limitDays}`);

describe('goods on arrival', () => {
  it('are expired when their date has passed, and nothing else is said then', () => {
    expect(kinds({ daysLeft: -1, used: quantity('1') })).toEqual(['expired -1 of 0']);
    expect(kinds({ daysLeft: 0 })).toEqual(['short-dated 0 of 60']);
  });

  it('are short-dated below the days of warning', () => {
    expect(kinds({ daysLeft: 59 })).toEqual(['short-dated 59 of 60']);
    expect(kinds({ daysLeft: 60 })).toEqual([]);
    expect(kinds({ expiresOn: null, daysLeft: 0 })).toEqual([]);
  });

  it('may take longer to use up than they last, behind what expires no later', () => {
    // 9 in 90 days is one in ten days: 10 take 100 days, with 1 before them 110.
    const used = quantity('9');
    expect(kinds({ used })).toEqual([]);
    expect(kinds({ used, daysLeft: 99 })).toEqual(['not used in time 99 of 100']);
    const waiting = [
      { expiresOn: '2026-08-01', quantity: quantity('1') },
      { expiresOn: '2026-08-02', quantity: quantity('50') },
      { expiresOn: null, quantity: quantity('50') },
    ];
    expect(kinds({ used, waiting })).toEqual(['not used in time 100 of 110']);
  });
});

describe('a price against the last one', () => {
  // Worked by hand: 110 for 20 is 5.50 each; 92.40 for 15 is 6.16 each, 12 % more, though the pack
  // costs 16 % less.
  it('is compared per unit too, so that a smaller pack is seen', () => {
    const was = { packPrice: money('110'), content: quantity('20') };
    const now = { packPrice: money('92.40'), content: quantity('15') };
    const compared = comparePrice(now, was);
    expect(compared).toMatchObject({ packChange: -160_000n, unitChange: 120_000n });
    expect(compared.contentChanged).toBe(true);
    expect(formatMoney(compared.unitPrice)).toBe('6.16');
  });

  it('does not show the rounding of unit prices as a change', () => {
    const was = { packPrice: money('10'), content: quantity('3') };
    const twice = { packPrice: money('20'), content: quantity('6') };
    expect(comparePrice(twice, was)).toMatchObject({ packChange: 1_000_000n, unitChange: 0n });
    const free = { packPrice: money('0'), content: quantity('3') };
    expect(comparePrice(was, free)).toMatchObject({ packChange: null, unitChange: null });
  });
});
