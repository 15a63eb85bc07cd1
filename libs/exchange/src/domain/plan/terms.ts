import {
  DISCOUNTS,
  PLAIN_PRESENTATION,
  PLAIN_TERMS,
  type PresentationTerms,
  type SupplyTerms,
  WEEKDAYS,
} from '#lib/purchasing';
import { SEVERAL, shortest } from '../read-rows.js';
import type { Values } from './merge.js';

/** The columns of suppliers that are about ordering, of one whose terms nobody stated. */
export const NO_TERMS: Values = {
  leadDays: null,
  orderCost: null,
  minimumOrder: null,
  freight: null,
  freeFreightFrom: null,
  workingDays: null,
};

/** Terms under the keys of the columns. */
export function termValues(terms: SupplyTerms | undefined): Values {
  if (!terms) return NO_TERMS;
  const short = (text: string | null) => (text === null ? null : shortest(text));
  return {
    leadDays: terms.leadDays === null ? null : String(terms.leadDays),
    orderCost: short(terms.orderCost),
    minimumOrder: short(terms.minimumOrder),
    freight: short(terms.freight),
    freeFreightFrom: short(terms.freeFreightFrom),
    workingDays: WEEKDAYS.filter((day) => terms.workingDays.includes(day)).join(SEVERAL),
  };
}

/** The terms that columns say; what they leave open is as usual. */
export function termsOf(values: Values, closures: SupplyTerms['closures']): SupplyTerms {
  const { leadDays, workingDays } = values;
  return {
    leadDays: leadDays == null ? null : Number(leadDays),
    orderCost: values.orderCost ?? null,
    minimumOrder: values.minimumOrder ?? null,
    freight: values.freight ?? PLAIN_TERMS.freight,
    freeFreightFrom: values.freeFreightFrom ?? null,
    workingDays: workingDays
      ? WEEKDAYS.filter((day) => workingDays.split(SEVERAL).includes(day))
      : PLAIN_TERMS.workingDays,
    closures,
  };
}

/** The columns of packs that are about ordering, of one whose terms nobody stated. */
export const NO_PACK_TERMS: Values = { minimumPacks: null, discount: null };

export function packTermValues(terms: PresentationTerms | undefined): Values {
  if (!terms) return NO_PACK_TERMS;
  return { minimumPacks: String(terms.minimumPacks), discount: terms.discount };
}

/** How a pack is sold; what the columns leave open is as usual. */
export function packTermsOf(
  { minimumPacks, discount }: Values,
  prices: PresentationTerms['prices'],
): PresentationTerms {
  return {
    minimumPacks: minimumPacks == null ? PLAIN_PRESENTATION.minimumPacks : Number(minimumPacks),
    discount: DISCOUNTS.find((each) => each === discount) ?? PLAIN_PRESENTATION.discount,
    prices,
  };
}
