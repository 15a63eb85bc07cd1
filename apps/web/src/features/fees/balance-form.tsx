import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { money } from '#lib/measure';
import { useBooking } from '../../api/use-booking.js';
import { useSession } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import type { Text } from '../../text/text.js';
import { useText } from '../../text/text-provider.js';
import { asDecimal } from '../../ui/decimal-text.js';
import { DateField, DecimalField, SelectField, TextField } from '../../ui/fields.js';
import { FieldRow, Form, FormActions, SubmitButton } from '../../ui/form.js';
import { Loaded } from '../../ui/loaded.js';
import { notify } from '../../ui/notice-store.js';
import { type FieldErrors, useForm } from '../../ui/use-form.js';
import { type Balance, recordBalance } from './api/balances.js';
import { type PlanSummary, plansQuery } from './api/plans.js';
import { sentMoney } from './plan-values.js';
import { moneyError } from './price-values.js';
import { useCoin } from './use-coin.js';

interface Props {
  readonly chart: string;
  readonly planId: string;
  readonly onClose: () => void;
  readonly onSaved: (saved: Balance) => void;
}

type Values = {
  chartReference: string;
  planId: string;
  asOf: string;
  deductibleLeft: string;
  maximumLeft: string;
};

/** What a patient's plan said is left. */
export function BalanceForm(props: Props) {
  const w = useText().balances;
  const plans = useQuery(plansQuery({ limit: 500 }));
  return (
    <Loaded query={plans}>
      {({ items }) =>
        items.length === 0 ? <p>{w.noPlans}</p> : <Fields {...props} plans={items} />
      }
    </Loaded>
  );
}

type FieldsProps = Props & { readonly plans: readonly PlanSummary[] };

function useBalanceForm({ chart, planId, plans, onSaved }: FieldsProps) {
  const t = useText();
  const format = useFormat();
  const coin = useCoin();
  const { today } = useSession();
  const planOf = (id: string) => plans.find((plan) => plan.id === id);
  const { book } = useBooking({
    send: (values: Values, key) =>
      recordBalance(
        {
          planId: values.planId,
          chartReference: values.chartReference.trim(),
          asOf: values.asOf,
          deductibleLeft: sentMoney(values.deductibleLeft),
          maximumLeft:
            planOf(values.planId)?.yearlyMaximum === null ? null : sentMoney(values.maximumLeft),
        },
        key,
      ),
    changes: [['plan-balances'], ['quotes']],
  });
  return useForm<Values, Balance>({
    initial: {
      chartReference: chart,
      planId: planOf(planId)?.id ?? (plans.length === 1 ? (plans[0]?.id ?? '') : ''),
      asOf: today,
      deductibleLeft: '',
      maximumLeft: '',
    },
    check: (values) =>
      balanceErrors(values, { plan: planOf(values.planId), today, coin, money: format.money }, t),
    send: book,
    onDone: (saved) => {
      notify({ tone: 'done', text: t.balances.saved(saved.chartReference) });
      onSaved(saved);
    },
  });
}

interface Facts {
  readonly plan: PlanSummary | undefined;
  readonly today: string;
  readonly coin: ReturnType<typeof useCoin>;
  readonly money: (amount: string) => string;
}

function balanceErrors(values: Values, facts: Facts, t: Text): FieldErrors {
  const { plan, today } = facts;
  const left = (typed: string, whole: string | null | undefined) => {
    const wrong = moneyError(typed, facts.coin, t);
    if (wrong !== undefined || whole == null) return wrong;
    const tooMuch = money(asDecimal(typed) ?? '') > money(whole);
    return tooMuch ? t.balances.tooMuch(facts.money(whole)) : undefined;
  };
  const { asOf } = values;
  return {
    chartReference: values.chartReference.trim() === '' ? t.ui.required : undefined,
    planId: plan === undefined ? t.ui.choose : undefined,
    asOf: asOf === '' ? t.ui.required : asOf > today ? t.balances.notLater : undefined,
    deductibleLeft: left(values.deductibleLeft, plan?.deductible),
    maximumLeft:
      plan?.yearlyMaximum === null ? undefined : left(values.maximumLeft, plan?.yearlyMaximum),
  };
}

function Fields(props: FieldsProps) {
  const t = useText();
  const w = t.balances;
  const { today } = useSession();
  const form = useBalanceForm(props);
  const plan = props.plans.find(({ id }) => id === form.values.planId);
  return (
    <Form form={form}>
      <TextField
        label={w.chart}
        hint={w.chartHint}
        {...form.field('chartReference')}
        maxLength={60}
        data-autofocus
      />
      <FieldRow>
        <SelectField
          label={w.plan}
          hint={'\u00a0'}
          empty={t.ui.choose}
          choices={props.plans.map(({ id, name }) => ({ value: id, label: name }))}
          {...form.field('planId')}
        />
        <DateField label={w.asOf} hint={w.asOfHint} max={today} {...form.field('asOf')} />
      </FieldRow>
      <LeftFields form={form} plan={plan} />
      <FormActions>
        <SubmitButton form={form}>{t.ui.save}</SubmitButton>
        <Button variant="default" onClick={props.onClose}>
          {t.ui.cancel}
        </Button>
      </FormActions>
    </Form>
  );
}

interface LeftProps {
  readonly form: ReturnType<typeof useBalanceForm>;
  readonly plan: PlanSummary | undefined;
}

function LeftFields({ form, plan }: LeftProps) {
  const w = useText().balances;
  const format = useFormat();
  const whole = (amount: string | null | undefined) =>
    amount == null ? '\u00a0' : w.ofWhole(format.money(amount));
  return (
    <FieldRow>
      <DecimalField
        label={w.deductible}
        hint={whole(plan?.deductible)}
        unit={format.currency}
        {...form.field('deductibleLeft')}
      />
      {plan?.yearlyMaximum === null ? (
        <p>{w.noMaximum}</p>
      ) : (
        <DecimalField
          label={w.maximum}
          hint={whole(plan?.yearlyMaximum)}
          unit={format.currency}
          {...form.field('maximumLeft')}
        />
      )}
    </FieldRow>
  );
}
