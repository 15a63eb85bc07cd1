import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useId } from 'react';
import { useBooking } from '../../api/use-booking.js';
import { useSession } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import {
  CheckField,
  DateField,
  DecimalField,
  SearchSelectField,
  SelectField,
  TextField,
} from '../../ui/fields.js';
import { FieldRow, Form, FormActions, SubmitButton } from '../../ui/form.js';
import { notify } from '../../ui/notice-store.js';
import { SuggestField } from '../../ui/suggest-field.js';
import { useForm } from '../../ui/use-form.js';
import { allFeesQuery, type Fee } from './api/list-fees.js';
import type { Plan } from './api/plans.js';
import { addPlanTerms } from './api/save-plan.js';
import css from './fees.module.css';
import { meaningOfTerm } from './meaning.js';
import { ShareSentence } from './share-sentence.js';
import { draftTerm, type TermValues, termBody, termErrors, termValues } from './term-values.js';
import { REASONS } from './terms.js';
import { useCoin } from './use-coin.js';

interface Props {
  readonly plan: Plan;
  readonly about: 'fee' | 'class';
  readonly onClose: () => void;
}

function useTermForm({ plan, about, onClose }: Props, fees: readonly Fee[]) {
  const t = useText();
  const { day } = useFormat();
  const coin = useCoin();
  const { today } = useSession();
  const { book } = useBooking({
    send: (values: TermValues, key) => addPlanTerms(plan.id, termBody(values), key),
    changes: [['fee-plans'], ['quotes']],
  });
  return useForm({
    initial: termValues(about, today),
    check: (values) => termErrors(values, coin, t),
    send: book,
    fieldOf: (path) => path,
    onDone: (_, { feeId, feeClass, validFrom }) => {
      const what = fees.find(({ id }) => id === feeId)?.code ?? feeClass.trim();
      notify({ tone: 'done', text: t.plans.termSaved(what, day(validFrom)) });
      onClose();
    },
  });
}

type Fields = {
  readonly form: ReturnType<typeof useTermForm>;
  readonly fees: readonly Fee[];
};

/** What a plan says about a fee or a class from a day on; earlier terms stay as they are. */
export function TermForm(props: Props) {
  const t = useText();
  const w = t.plans;
  const fees = useQuery(allFeesQuery()).data?.items ?? [];
  const form = useTermForm(props, fees);
  return (
    <Form form={form}>
      <SubjectFields form={form} fees={fees} />
      <PayFields form={form} fees={fees} />
      <Preview plan={props.plan} form={form} fees={fees} />
      <FormActions>
        <SubmitButton form={form}>{w.addTerm}</SubmitButton>
        <Button variant="default" onClick={props.onClose}>
          {t.ui.cancel}
        </Button>
      </FormActions>
    </Form>
  );
}

function SubjectFields({ form, fees }: Fields) {
  const w = useText().plans;
  const { currency } = useFormat();
  const ofFee = form.values.about === 'fee';
  const classes = [...new Set(fees.flatMap(({ feeClass }) => feeClass ?? []))].sort();
  return (
    <>
      <FieldRow>
        <SelectField
          label={w.about}
          choices={(['fee', 'class'] as const).map((about) => ({
            value: about,
            label: w.abouts[about],
          }))}
          {...form.field('about')}
        />
        {ofFee ? (
          <SearchSelectField
            label={w.fee}
            choices={fees
              .filter(({ active }) => active)
              .map(({ id, code, name }) => ({ value: id, label: `${code} · ${name}` }))}
            {...form.field('feeId')}
          />
        ) : (
          <SuggestField
            label={w.feeClass}
            hint={w.feeClassHint}
            suggestions={classes}
            {...form.field('feeClass')}
          />
        )}
        <DateField label={w.from} {...form.field('validFrom')} />
      </FieldRow>
      {ofFee && (
        <FieldRow>
          <DecimalField
            label={w.allowed}
            hint={w.allowedHint}
            unit={currency}
            {...form.field('allowedFee')}
          />
          <DecimalField
            label={w.alternate}
            hint={w.alternateHint}
            unit={currency}
            {...form.field('alternateFee')}
          />
        </FieldRow>
      )}
    </>
  );
}

function PayFields({ form }: Fields) {
  const w = useText().plans;
  const { about, cosmetic } = form.values;
  return (
    <>
      <FieldRow>
        <DecimalField
          label={w.coverage}
          hint={w.coverageHint}
          unit="%"
          {...form.field('coverage')}
        />
      </FieldRow>
      <CheckField label={w.deductibleApplies} {...form.flag('deductibleApplies')} />
      <ReasonChecks form={form} />
      {about === 'fee' && cosmetic && (
        <TextField
          label={w.cosmeticNote}
          hint={w.cosmeticHint}
          {...form.field('cosmeticNote')}
          maxLength={500}
        />
      )}
    </>
  );
}

function ReasonChecks({ form }: Pick<Fields, 'form'>) {
  const t = useText();
  const error = form.errorAt('reasons');
  const errorId = useId();
  return (
    <fieldset
      className={css.checks}
      {...(error === undefined ? {} : { 'aria-describedby': errorId })}
    >
      <legend>{t.plans.coveredFor}</legend>
      <div>
        {REASONS.map((reason) => {
          const flag = form.flag(reason);
          const change = (checked: boolean) => {
            flag.onChecked(checked);
            form.clearAt('reasons');
          };
          return (
            <CheckField key={reason} label={t.fees.reasons[reason]} {...flag} onChecked={change} />
          );
        })}
      </div>
      {error !== undefined && (
        <p id={errorId} className={css.wrong} role="alert" tabIndex={-1}>
          {error}
        </p>
      )}
    </fieldset>
  );
}

/** What is typed, in money, before it is written down. */
function Preview({ plan, form, fees }: Fields & Pick<Props, 'plan'>) {
  const t = useText();
  const { today } = useSession();
  const coin = useCoin();
  const draft = draftTerm(form.values, coin, t);
  const terms = draft ? [...plan.terms, draft] : [];
  const meaning =
    draft && meaningOfTerm({ ...plan, terms }, draft, fees, { today, step: coin.step });
  return (
    <div className={css.words} aria-live="polite">
      <p className={css.quiet}>{t.plans.preview}</p>
      <p>
        {meaning === undefined ? t.plans.previewNone : <ShareSentence meaning={meaning} named />}
      </p>
    </div>
  );
}
