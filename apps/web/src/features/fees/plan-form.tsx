import { Button } from '@mantine/core';
import { useBooking } from '../../api/use-booking.js';
import { useSession } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { CheckField, DateField, DecimalField, SelectField, TextField } from '../../ui/fields.js';
import { FieldGroup, FieldRow, Form, FormActions, SubmitButton } from '../../ui/form.js';
import { notify } from '../../ui/notice-store.js';
import { useForm } from '../../ui/use-form.js';
import { useTyped } from '../../ui/use-typed.js';
import type { Plan } from './api/plans.js';
import { changePlan, createPlan } from './api/save-plan.js';
import css from './fees.module.css';
import { type PlanValues, planBody, planErrors, planValues } from './plan-values.js';
import { FEE_CEILINGS } from './terms.js';
import { useCoin } from './use-coin.js';

interface Props {
  readonly plan?: Plan;
  readonly onClose: () => void;
  readonly onSaved: (saved: Plan) => void;
}

function usePlanForm({ plan, onSaved }: Props) {
  const t = useText();
  const coin = useCoin();
  const typed = useTyped();
  const { today } = useSession();
  const { book } = useBooking({
    send: (values: PlanValues, key) =>
      plan
        ? changePlan(plan.id, { ...planBody(values), active: values.active })
        : createPlan(planBody(values), key),
    changes: [['fee-plans'], ['plan-balances'], ['quotes']],
  });
  return useForm({
    initial: planValues(plan, typed),
    check: (values) => planErrors(values, { plan, today, coin }, t),
    send: book,
    onDone: (saved) => {
      notify({ tone: 'done', text: t.setup.saved(saved.name) });
      onSaved(saved);
    },
  });
}

type Fields = Props & { readonly form: ReturnType<typeof usePlanForm> };

export function PlanForm(props: Props) {
  const t = useText();
  const w = t.plans;
  const { currency } = useFormat();
  const form = usePlanForm(props);
  return (
    <Form form={form}>
      <FieldGroup title={w.groups.what}>
        <TextField label={w.name} {...form.field('name')} maxLength={200} data-autofocus />
        <FieldRow>
          <DecimalField
            label={w.deductible}
            hint={w.deductibleHint}
            unit={currency}
            {...form.field('deductible')}
          />
          <DecimalField
            label={w.maximum}
            hint={w.maximumHint}
            unit={currency}
            {...form.field('yearlyMaximum')}
          />
        </FieldRow>
        <CheckField label={w.inNetwork} hint={w.inNetworkHint} {...form.flag('inNetwork')} />
        <CheckField label={w.downgrade} hint={w.downgradeHint} {...form.flag('downgradeBilled')} />
      </FieldGroup>
      <CeilingFields {...props} form={form} />
      {props.plan && (
        <CheckField label={t.setup.inUse} hint={t.setup.inUseHint} {...form.flag('active')} />
      )}
      <FormActions>
        <SubmitButton form={form}>{t.ui.save}</SubmitButton>
        <Button variant="default" onClick={props.onClose}>
          {t.ui.cancel}
        </Button>
      </FormActions>
    </Form>
  );
}

/** Another ceiling needs its own source: the old note says nothing about it and is taken away. */
function CeilingFields({ plan, form }: Fields) {
  const w = useText().plans;
  const { feeCeiling, inNetwork } = form.values;
  const { today } = useSession();
  const ceiling = form.field('feeCeiling');
  const choose = (value: string) => {
    ceiling.onValue(value);
    if (plan && value === plan.feeCeiling) {
      form.set('ceilingSource', plan.ceilingSource);
      form.set('ceilingCheckedOn', plan.ceilingCheckedOn);
    } else if (plan && feeCeiling === plan.feeCeiling) {
      form.set('ceilingSource', '');
      form.set('ceilingCheckedOn', '');
    }
  };
  return (
    <FieldGroup title={w.groups.ceiling} hint={w.ceilingHint}>
      <SelectField
        label={w.ceiling}
        choices={FEE_CEILINGS.map((each) => ({ value: each, label: w.ceilings[each] }))}
        {...ceiling}
        onValue={choose}
      />
      <p className={css.words} aria-live="polite">
        {inNetwork ? w.ceilingMeans[feeCeiling] : w.ceilingOutside}
      </p>
      <FieldRow>
        <TextField
          label={w.source}
          hint={w.sourceHint}
          placeholder={w.sourcePlaceholder}
          {...form.field('ceilingSource')}
          maxLength={500}
        />
        <DateField
          label={w.checkedOn}
          hint={'\u00a0'}
          max={today}
          {...form.field('ceilingCheckedOn')}
        />
      </FieldRow>
    </FieldGroup>
  );
}
