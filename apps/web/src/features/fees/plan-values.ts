import { formatMoney, money } from '#lib/measure';
import type { Shape } from '../../api/client.js';
import type { Text } from '../../text/text.js';
import { asDecimal } from '../../ui/decimal-text.js';
import type { FieldErrors } from '../../ui/use-form.js';
import type { Plan } from './api/plans.js';
import { moneyError } from './price-values.js';

/** A plan as it is typed. */
export type PlanValues = {
  name: string;
  inNetwork: boolean;
  deductible: string;
  yearlyMaximum: string;
  downgradeBilled: boolean;
  feeCeiling: Plan['feeCeiling'];
  ceilingSource: string;
  ceilingCheckedOn: string;
  active: boolean;
};

export function planValues(plan: Plan | undefined, typed: (text: string) => string): PlanValues {
  return {
    name: plan?.name ?? '',
    inNetwork: plan?.inNetwork ?? true,
    deductible: plan ? typed(plan.deductible) : '',
    yearlyMaximum: plan?.yearlyMaximum == null ? '' : typed(plan.yearlyMaximum),
    downgradeBilled: plan?.downgradeBilled ?? false,
    feeCeiling: plan?.feeCeiling ?? 'never',
    ceilingSource: plan?.ceilingSource ?? '',
    ceilingCheckedOn: plan?.ceilingCheckedOn ?? '',
    active: plan?.active ?? true,
  };
}

interface Facts {
  readonly plan: Plan | undefined;
  readonly today: string;
  readonly coin: { readonly step: bigint; readonly words: string };
}

export function planErrors(values: PlanValues, facts: Facts, t: Text): FieldErrors {
  const { plan, today, coin } = facts;
  const w = t.plans;
  const another = plan !== undefined && plan.feeCeiling !== values.feeCeiling;
  const day = values.ceilingCheckedOn;
  const unchecked = another ? w.newChecked : t.ui.required;
  return {
    name: values.name.trim() === '' ? t.ui.required : undefined,
    deductible: moneyError(values.deductible, coin, t),
    yearlyMaximum:
      values.yearlyMaximum.trim() === '' ? undefined : moneyError(values.yearlyMaximum, coin, t),
    ceilingSource:
      values.ceilingSource.trim() === '' ? (another ? w.newSource : t.ui.required) : undefined,
    ceilingCheckedOn: day === '' ? unchecked : day > today ? w.notLater : undefined,
  };
}

/** Typed money as it is sent; only of what `moneyError` found nothing wrong with. */
export const sentMoney = (typed: string) => formatMoney(money(asDecimal(typed) ?? ''));

export function planBody(values: PlanValues): Shape<'NewPlanDto'> {
  return {
    name: values.name.trim(),
    inNetwork: values.inNetwork,
    deductible: sentMoney(values.deductible),
    yearlyMaximum: values.yearlyMaximum.trim() === '' ? null : sentMoney(values.yearlyMaximum),
    downgradeBilled: values.downgradeBilled,
    feeCeiling: values.feeCeiling,
    ceilingSource: values.ceilingSource.trim(),
    ceilingCheckedOn: values.ceilingCheckedOn,
  };
}
