import { type Money, moneyFromMicro, type Quantity, quantityFromMicro } from '#lib/measure';

// The only place where exact quantities and money become floating-point numbers for the statistics,
// and where what the statistics say becomes an exact number again.

/** How many counts of the forecast a quantity is; not always whole. RangeError for a bad size. */
export function countsOf(quantity: Quantity, countSize: Quantity): number {
  if (countSize <= 0n) throw new RangeError('countSize: a count is more than zero.');
  return Number(quantity) / Number(countSize);
}

/** So many counts as a quantity, to the nearest millionth; null when there is no end to it. */
export function quantityOf(counts: number, countSize: Quantity): Quantity | null {
  if (!Number.isFinite(counts)) return null;
  return quantityFromMicro(BigInt(Math.round(counts * Number(countSize))));
}

/** As `quantityOf`, for counts that are known to have an end. */
export function finiteQuantity(counts: number, countSize: Quantity): Quantity {
  const exact = quantityOf(counts, countSize);
  if (exact === null) throw new RangeError('counts: a finite number.');
  return exact;
}

/** An amount as a plain number of currency units, for reckoning with expectations. */
export function amountOf(money: Money): number {
  return Number(money) / 1e6;
}

/** An expected amount as money, to the nearest millionth. */
export function expectedMoney(amount: number): Money {
  return moneyFromMicro(BigInt(Math.round(amount * 1e6)));
}

/** Packs are small whole numbers on both sides. */
export function packsOf(packs: bigint): number {
  return Number(packs);
}
