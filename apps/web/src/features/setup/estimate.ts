import {
  add,
  isZero,
  type Money,
  money,
  moneyFromMicro,
  multiplyRatio,
  type Quantity,
  quantity,
  quantityFromMicro,
  roundTo,
  splitLargestRemainder,
  ZERO_MONEY,
} from '#lib/measure';
import type { PriceBook } from './api/list-prices.js';
import type { PreviewLine } from './api/preview-template.js';
import { packTotal } from './pack-words.js';

/** What some quantity of a consumable costs: `value` for `amount` of it. */
interface Price {
  readonly value: Money;
  readonly amount: Quantity;
  /** What one dose holds, when it only comes in single doses. */
  readonly dose: Quantity | undefined;
}

export type Prices = ReadonlyMap<string, Price>;

/** At what the stock on hand cost; at the list price where nothing is on hand. */
export function pricesOf({ stock, presentations }: PriceBook): Prices {
  const prices = new Map<string, Price>();
  const doses = dosesOf(presentations);
  for (const { consumableId, listPrice, containersPerPack, contentPerContainer } of presentations) {
    const amount = packTotal(String(containersPerPack), contentPerContainer);
    if (listPrice === null || amount === undefined || prices.has(consumableId)) continue;
    prices.set(consumableId, { value: money(listPrice), amount, dose: doses.get(consumableId) });
  }
  for (const { consumable, usable, blocked, value } of stock) {
    const amount = add(quantity(usable), quantity(blocked));
    if (isZero(amount) || isZero(money(value))) continue;
    prices.set(consumable.id, { value: money(value), amount, dose: doses.get(consumable.id) });
  }
  return prices;
}

/** The dose of each consumable that comes in single doses and in nothing else. */
function dosesOf(presentations: PriceBook['presentations']): ReadonlyMap<string, Quantity> {
  const doses = new Map<string, Quantity | undefined>();
  for (const { consumableId, dispensing, contentPerContainer } of presentations) {
    const content = quantity(contentPerContainer);
    const known = doses.has(consumableId);
    const single = dispensing === 'single-dose' && (!known || doses.get(consumableId) === content);
    doses.set(consumableId, single ? content : undefined);
  }
  return new Map([...doses].flatMap(([id, dose]) => (dose === undefined ? [] : [[id, dose]])));
}

/** What planned lines cost, one by one; undefined when nobody knows a price. */
export function costsOf(lines: readonly PreviewLine[], prices: Prices): (Money | undefined)[] {
  return lines.map((line) => {
    const price = prices.get(line.consumableId);
    if (!price || isZero(price.amount)) return undefined;
    const charged = chargedFor(line, lines, price.dose);
    return moneyFromMicro(multiplyRatio(price.value, charged, price.amount, 'half-up'));
  });
}

/** Whole doses; of those that lines share its part, by what it takes out of them. */
function chargedFor(
  line: PreviewLine,
  lines: readonly PreviewLine[],
  dose: Quantity | undefined,
): Quantity {
  const out = quantity(line.dispensed);
  if (dose === undefined) return out;
  const sharing = line.sharesDose
    ? lines.filter((each) => each.sharesDose && each.consumableId === line.consumableId)
    : [line];
  const all = sharing.reduce((sum, each) => sum + quantity(each.dispensed), 0n);
  const whole = roundTo(quantityFromMicro(all), dose, 'up');
  const parts = splitLargestRemainder(
    whole,
    sharing.map((each) => quantity(each.dispensed)),
  );
  return quantityFromMicro(parts[sharing.indexOf(line)] ?? 0n);
}

export interface Estimate {
  readonly total: Money;
  /** How many lines have no price. */
  readonly unknown: number;
}

export function estimateOf(lines: readonly PreviewLine[], prices: Prices): Estimate {
  const costs = costsOf(lines, prices);
  return {
    total: costs.reduce<Money>(
      (sum, cost) => (cost === undefined ? sum : add(sum, cost)),
      ZERO_MONEY,
    ),
    unknown: costs.filter((cost) => cost === undefined).length,
  };
}
