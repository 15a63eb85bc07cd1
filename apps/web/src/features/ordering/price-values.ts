import type { Text } from '../../text/text.js';
import { asDecimal } from '../../ui/decimal-text.js';
import { micro } from '../../ui/drawn.js';
import type { FieldErrors } from '../../ui/use-form.js';
import type { PresentationTerms } from './api/planning-settings.js';

export const DISCOUNTS = ['all units', 'incremental'] as const;

export interface TypedStep {
  /** Only for the screen. */
  readonly key: number;
  readonly fromPacks: string;
  readonly packPrice: string;
}

export type PriceValues = {
  minimumPacks: string;
  discount: string;
  prices: readonly TypedStep[];
};

export function priceValues({ minimumPacks, discount, prices }: PresentationTerms): PriceValues {
  return {
    minimumPacks: String(minimumPacks),
    discount,
    prices: prices.map(({ fromPacks, packPrice }, key) => ({
      ...{ key, fromPacks: String(fromPacks), packPrice },
    })),
  };
}

export function priceBody({ minimumPacks, discount, prices }: PriceValues): PresentationTerms {
  return {
    minimumPacks: Number(minimumPacks),
    discount: DISCOUNTS.find((each) => each === discount) ?? 'all units',
    prices: prices.map(({ fromPacks, packPrice }) => ({
      ...{ fromPacks: Number(fromPacks), packPrice: asDecimal(packPrice) ?? '' },
    })),
  };
}

const MOST = 100_000;
const isPacks = (text: string) =>
  /^\d{1,6}$/.test(text.trim()) && Number(text) >= 1 && Number(text) <= MOST;

/** A list starts at one pack; every step is for more packs at a lower price. */
export function priceErrors({ minimumPacks, prices }: PriceValues, t: Text): FieldErrors {
  const w = t.orderingSettings;
  const errors: Record<string, string | undefined> = {
    minimumPacks: isPacks(minimumPacks) ? undefined : w.whole(1, MOST),
  };
  for (const [i, { fromPacks, packPrice }] of prices.entries()) {
    const before = prices[i - 1];
    const price = asDecimal(packPrice);
    const wrongPrice = price === undefined || price.startsWith('-');
    const least = asDecimal(before?.packPrice ?? '');
    errors[`prices[${i}].packPrice`] = wrongPrice
      ? t.ui.decimal
      : least !== undefined && micro(price) >= micro(least)
        ? w.lessThanBefore
        : undefined;
    errors[`prices[${i}].fromPacks`] = !isPacks(fromPacks)
      ? w.whole(1, MOST)
      : fromOf(Number(fromPacks), before, w);
  }
  return errors;
}

function fromOf(
  packs: number,
  before: TypedStep | undefined,
  w: Text['orderingSettings'],
): string | undefined {
  if (before === undefined) return packs === 1 ? undefined : w.firstStep;
  return packs > Number(before.fromPacks) ? undefined : w.moreThanBefore;
}
