import { describe, expect, it } from '@jest/globals';
import { formatMoney } from '#lib/measure';
import { hoursOf, minutesOf, rateOf } from './rate.js';

const texts = (cost: string, minutes: bigint) => {
  const rate = rateOf(cost, minutes);
  return rate && [formatMoney(rate.perMinute), formatMoney(rate.perHour)];
};

describe('the rate of the chairs, while it is typed', () => {
  // Kaplan & Anderson, Time-Driven Activity-Based Costing (working paper behind Harvard Business
  // Review 82(11), November 2004, pp. 131-138): 560,000 a quarter over 700,000 practical minutes.
  it('is 0.80 a minute for 560,000 over 700,000 minutes', () => {
    expect(texts('560000', 700_000n)).toEqual(['0.80', '48.00']);
  });

  it('rounds each figure once: an hour is not sixty rounded minutes', () => {
    expect(texts('100000', 70_000n)).toEqual(['1.428571', '85.714286']);
  });

  it('takes hours that are whole minutes, and nothing else', () => {
    expect([minutesOf('2534.4'), minutesOf('0.05'), minutesOf('2560')]).toEqual([
      152_064n,
      3n,
      153_600n,
    ]);
    expect(['0', '-1', 'x', '', '1.01', '0.001'].map(minutesOf)).toEqual(Array(6).fill(undefined));
  });

  it('writes minutes as hours again', () => {
    expect([hoursOf(152_064), hoursOf(60), hoursOf(3)]).toEqual(['2534.4', '1', '0.05']);
  });

  it('is nothing without capacity or for what is no amount', () => {
    expect([rateOf('1', 0n), rateOf('much', 60n)]).toEqual([undefined, undefined]);
  });
});
