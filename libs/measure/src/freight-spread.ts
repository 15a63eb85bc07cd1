import { type Money, moneyFromMicro, type Quantity } from './decimals.js';
import { splitLargestRemainder } from './splitting.js';

interface SpreadLine {
  readonly value: Money;
  readonly quantity: Quantity;
  readonly weight: Quantity;
}

/**
 * Spreads an amount (freight, or a discount when negative) over delivery lines in proportion to one
 * of their figures, by largest remainder, in multiples of `step` (micro currency units). The parts
 * add up to the amount. Throws RangeError like splitLargestRemainder.
 */
export function spreadOverLines(
  amount: Money,
  lines: readonly SpreadLine[],
  key: 'value' | 'quantity' | 'weight',
  step: bigint,
): Money[] {
  const weights = lines.map((line) => line[key]);
  return splitLargestRemainder(amount, weights, step).map(moneyFromMicro);
}
