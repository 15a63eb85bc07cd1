import { type Money, moneyFromMicro, multiplyRatio, type Quantity } from '#lib/measure';

/**
 * Cost of what was used / average of the opening and closing value. Nothing used: turnover 0 and
 * no number of days (null); no stock: null. RangeError for a negative amount or no days.
 */
export function stockTurnover(input: {
  readonly costOfUse: Money;
  readonly opening: Money;
  readonly closing: Money;
  readonly days: number;
}): { readonly turnover: number | null; readonly days: number | null } {
  const { costOfUse, opening, closing, days } = input;
  if (costOfUse < 0n || opening < 0n || closing < 0n) {
    throw new RangeError('costOfUse, opening, closing: no amount is negative.');
  }
  if (!(days > 0)) throw new RangeError('days: more than zero.');
  const twiceAverage = Number(opening + closing);
  const twiceUse = 2 * Number(costOfUse);
  return {
    turnover: twiceAverage === 0 ? null : twiceUse / twiceAverage,
    days: twiceUse === 0 ? null : (days * twiceAverage) / twiceUse,
  };
}

/** A lot with what it cost and what could still be got for it, per stock unit. */
export interface ValuedLot {
  readonly quantity: Quantity;
  readonly unitCost: Money;
  /** 0 for what has expired, less if throwing it away costs money. */
  readonly netRealisable: Money;
}

/**
 * Lower of cost and net realisable value, lot by lot (IAS 2, paragraphs 9 and 28 to 33). A lot that
 * costs money to throw away is carried at nothing; the cost of disposal is no stock value.
 */
export function carryingValue(lot: ValuedLot): {
  readonly carrying: Money;
  readonly writeDown: Money;
} {
  const one = 1_000_000n;
  const cost = multiplyRatio(lot.unitCost, lot.quantity, one, 'half-up');
  const worth = multiplyRatio(lot.netRealisable, lot.quantity, one, 'half-up');
  const floor = worth > 0n ? worth : 0n;
  const carrying = floor < cost ? floor : cost;
  return { carrying: moneyFromMicro(carrying), writeDown: moneyFromMicro(cost - carrying) };
}
