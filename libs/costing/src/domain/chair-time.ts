import { type Money, moneyFromMicro, multiplyRatio } from '#lib/measure';

/** What a year of the chairs supplied costs, and the minutes that can really be worked at them. */
export interface Capacity {
  readonly yearlyCost: Money;
  readonly practicalMinutes: bigint;
}

/** Cost of the capacity supplied by its practical size: what a minute costs. */
export function capacityRate(capacity: Capacity): Money {
  return costOfMinutes(capacity, 1n);
}

/** What so many minutes cost; rounded once, not already in the rate. */
export function costOfMinutes(capacity: Capacity, minutes: bigint): Money {
  const { yearlyCost, practicalMinutes } = capacity;
  return moneyFromMicro(multiplyRatio(yearlyCost, minutes, practicalMinutes, 'half-up'));
}

export interface CapacityUse {
  readonly rate: Money;
  readonly usedMinutes: bigint;
  readonly usedCost: Money;
  /** Negative where more was worked than the practical capacity. */
  readonly idleMinutes: bigint;
  /** What nobody used. It is shown by itself and never loaded on the work done. */
  readonly idleCost: Money;
}

/** Takes the cost of a capacity apart into what was used and what was not; the two add up to it. */
export function useOfCapacity(capacity: Capacity, usedMinutes: bigint): CapacityUse {
  const usedCost = costOfMinutes(capacity, usedMinutes);
  return {
    rate: capacityRate(capacity),
    usedMinutes,
    usedCost,
    idleMinutes: capacity.practicalMinutes - usedMinutes,
    idleCost: moneyFromMicro(capacity.yearlyCost - usedCost),
  };
}

const DAYS_OF_YEAR = 365n;

/** The part of a year's capacity that so many days have; a year counts 365 days. */
export function capacityOfDays(capacity: Capacity, days: bigint): Capacity {
  return {
    yearlyCost: moneyFromMicro(multiplyRatio(capacity.yearlyCost, days, DAYS_OF_YEAR, 'half-up')),
    practicalMinutes: multiplyRatio(capacity.practicalMinutes, days, DAYS_OF_YEAR, 'half-up'),
  };
}
