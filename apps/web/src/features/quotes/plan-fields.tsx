import { useQuery } from '@tanstack/react-query';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { DateField, DecimalField, SelectField, TextField, WholeField } from '../../ui/fields.js';
import { FieldRow } from '../../ui/form.js';
import { balancesQuery, plansQuery } from './api/choices.js';
import css from './question-form.module.css';
import type { Question } from './use-question.js';

interface Props {
  readonly question: Question;
}

/** The chart and the plan, both optional, and what is left of the plan's year. */
export function PlanFields({ question: { form } }: Props) {
  const w = useText().quotes;
  const plans = useQuery(plansQuery).data?.items ?? [];
  const plan = plans.find(({ id }) => id === form.values.planId);
  return (
    <div className={css.fields}>
      <FieldRow>
        <TextField
          label={w.chart}
          hint={w.optional}
          maxLength={60}
          {...form.field('chartReference')}
        />
        <SelectField
          label={w.plan}
          hint={w.optional}
          empty={w.noPlan}
          choices={plans.map(({ id, name }) => ({ value: id, label: name }))}
          {...form.field('planId')}
        />
      </FieldRow>
      {form.values.planId !== '' && (
        <>
          <Left planId={form.values.planId} chart={form.values.chartReference} form={form} />
          <FieldRow>
            <Amount label={w.deductibleLeft} field={form.field('balance.deductibleLeft')} />
            {plan?.yearlyMaximum !== null && (
              <Amount label={w.maximumLeft} field={form.field('balance.maximumLeft')} />
            )}
          </FieldRow>
        </>
      )}
    </div>
  );
}

interface AmountProps {
  readonly label: string;
  readonly hint?: string;
  readonly field: ReturnType<Question['form']['field']>;
}

function Amount({ label, hint, field }: AmountProps) {
  const format = useFormat();
  return <DecimalField label={label} hint={hint} unit={format.currency} {...field} />;
}

interface LeftProps {
  readonly planId: string;
  readonly chart: string;
  readonly form: Question['form'];
}

/** What was recorded for this chart and plan; it counts unless something is typed. */
function Left({ planId, chart, form }: LeftProps) {
  const w = useText().quotes;
  const format = useFormat();
  const reference = chart.trim();
  const found = useQuery({ ...balancesQuery(planId, reference), enabled: reference !== '' });
  const day = form.values.quotedOn;
  const latest = found.data?.items.find(({ asOf }) => day === '' || asOf <= day);
  if (latest) {
    const maximum = latest.maximumLeft === null ? null : format.money(latest.maximumLeft);
    const words = w.recorded(format.day(latest.asOf), format.money(latest.deductibleLeft), maximum);
    return <p className={css.left}>{words}</p>;
  }
  if (reference !== '' && found.isPending) return null;
  return <p className={css.left}>{reference === '' ? w.stateLeft : w.nothingRecorded}</p>;
}

/** What an hour shall leave, and the time of a visit that belongs to no restoration. */
export function WishFields({ question: { form } }: Props) {
  const w = useText().quotes;
  return (
    <div className={css.fields}>
      <FieldRow>
        <Amount
          label={w.target}
          hint={w.targetHint}
          field={form.field('targetContributionPerHour')}
        />
        <WholeField
          label={w.setUp}
          hint={w.setUpHint}
          maxLength={3}
          {...form.field('setUpMinutes')}
        />
      </FieldRow>
      <FieldRow>
        <Amount
          label={w.minuteCost}
          hint={w.minuteCostHint}
          field={form.field('chairMinuteCost')}
        />
        <DateField label={w.day} hint={w.dayHint} {...form.field('quotedOn')} />
      </FieldRow>
    </div>
  );
}
