import type { Text } from '../../text/text.js';
import { asDecimal } from '../../ui/decimal-text.js';
import type { FieldErrors } from '../../ui/use-form.js';
import type { SupplyTerms } from './api/planning-settings.js';

export const WEEKDAYS = [
  'monday',
  'tuesday',
  'wednesday',
  'thursday',
  'friday',
  'saturday',
  'sunday',
] as const satisfies readonly SupplyTerms['workingDays'][number][];

export interface TypedClosure {
  /** Only for the screen. */
  readonly key: number;
  readonly firstDay: string;
  readonly lastDay: string;
  readonly note: string;
}

export type TermsValues = {
  leadDays: string;
  orderCost: string;
  minimumOrder: string;
  freight: string;
  freeFreightFrom: string;
  workingDays: readonly (typeof WEEKDAYS)[number][];
  closures: readonly TypedClosure[];
};

export function termsValues(terms: SupplyTerms): TermsValues {
  const { leadDays } = terms;
  return {
    leadDays: leadDays === null || leadDays === undefined ? '' : String(leadDays),
    orderCost: terms.orderCost ?? '',
    minimumOrder: terms.minimumOrder ?? '',
    freight: terms.freight,
    freeFreightFrom: terms.freeFreightFrom ?? '',
    workingDays: WEEKDAYS.filter((day) => terms.workingDays.includes(day)),
    closures: (terms.closures ?? []).map(({ firstDay, lastDay, note }, key) => ({
      ...{ key, firstDay, lastDay, note: note ?? '' },
    })),
  };
}

const isBlank = (text: string) => text.trim() === '';
const amountOrNull = (text: string) => (isBlank(text) ? null : (asDecimal(text) ?? null));

export function termsBody(values: TermsValues): SupplyTerms {
  return {
    leadDays: isBlank(values.leadDays) ? null : Number(values.leadDays),
    orderCost: amountOrNull(values.orderCost),
    minimumOrder: amountOrNull(values.minimumOrder),
    freight: asDecimal(values.freight) ?? '',
    freeFreightFrom: amountOrNull(values.freeFreightFrom),
    workingDays: [...values.workingDays],
    closures: values.closures.map(({ firstDay, lastDay, note }) => ({
      ...{ firstDay, lastDay, note: note.trim() || null },
    })),
  };
}

export function termsErrors(values: TermsValues, t: Text): FieldErrors {
  const w = t.orderingSettings;
  const isAmount = (text: string) => {
    const amount = asDecimal(text);
    return amount !== undefined && !amount.startsWith('-');
  };
  const optional = (text: string) => (isBlank(text) || isAmount(text) ? undefined : t.ui.decimal);
  const days = values.leadDays.trim();
  const fits = days === '' || (/^\d{1,3}$/.test(days) && Number(days) <= 250);
  return {
    leadDays: fits ? undefined : w.whole(0, 250),
    orderCost: optional(values.orderCost),
    minimumOrder: optional(values.minimumOrder),
    freight: isAmount(values.freight) ? undefined : t.ui.decimal,
    freeFreightFrom: optional(values.freeFreightFrom),
    workingDays: values.workingDays.length === 0 ? w.oneDay : undefined,
    ...Object.fromEntries(
      values.closures.flatMap(({ firstDay, lastDay }, i) => [
        [`closures[${i}].firstDay`, firstDay === '' ? t.ui.required : undefined],
        [`closures[${i}].lastDay`, lastDay < firstDay ? w.order : undefined],
      ]),
    ),
  };
}
