import { useQuery } from '@tanstack/react-query';
import { useBooking } from '../../api/use-booking.js';
import { useSession } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { SearchSelectField, SelectField, TextField, WholeField } from '../../ui/fields.js';
import { FieldGroup, FieldRow, Form, FormActions, SubmitButton } from '../../ui/form.js';
import { Loaded } from '../../ui/loaded.js';
import { notify } from '../../ui/notice-store.js';
import { PageHead } from '../../ui/page-head.js';
import { useForm } from '../../ui/use-form.js';
import { changePractice, type Practice, practiceQuery } from './api/practice.js';
import css from './parts.module.css';
import { SharingExample } from './sharing-example.js';

export function PracticeScreen() {
  const w = useText().setupPractice;
  const practice = useQuery(practiceQuery);
  return (
    <>
      <PageHead title={w.title} lead={w.lead(useSession().practice.currency)} />
      <Loaded query={practice}>{(data) => <PracticeForm practice={data} />}</Loaded>
    </>
  );
}

type Values = Pick<Practice, 'name' | 'timeZone' | 'toothNotation' | 'costShareKey'> & {
  readonly expiryWarningDays: string;
};

function usePracticeForm(practice: Practice) {
  const t = useText();
  const { book } = useBooking({
    send: (values: Values) =>
      changePractice({
        ...values,
        name: values.name.trim(),
        expiryWarningDays: Number(values.expiryWarningDays),
      }),
    changes: [['practice'], ['session'], ['alerts'], ['visits']],
  });
  const { name, timeZone, toothNotation, costShareKey, expiryWarningDays } = practice;
  const initial: Values = {
    name,
    timeZone,
    toothNotation,
    costShareKey,
    expiryWarningDays: String(expiryWarningDays),
  };
  return useForm({
    initial,
    check: (values) => {
      const days = values.expiryWarningDays.trim();
      const fits = /^\d{1,4}$/.test(days) && Number(days) <= 3650;
      return {
        name: values.name.trim() === '' ? t.ui.required : undefined,
        timeZone: values.timeZone === '' ? t.ui.choose : undefined,
        expiryWarningDays: fits ? undefined : t.setup.wholeBetween(0, 3650),
      };
    },
    send: book,
    onDone: () => notify({ tone: 'done', text: t.setupPractice.saved }),
  });
}

/** Every zone the browser knows, and the practice's own even if it goes by an older name. */
function timeZones(own: string) {
  const names = new Set([...Intl.supportedValuesOf('timeZone'), own]);
  return [...names].sort().map((name) => ({ value: name, label: name.replaceAll('_', ' ') }));
}

function PracticeForm({ practice }: { readonly practice: Practice }) {
  const t = useText();
  const w = t.setupPractice;
  const form = usePracticeForm(practice);
  return (
    <div className={css.narrow}>
      <Form form={form}>
        <TextField label={w.name} {...form.field('name')} maxLength={200} />
        <FieldRow>
          <SearchSelectField
            label={w.timeZone}
            choices={timeZones(practice.timeZone)}
            {...form.field('timeZone')}
          />
          <SelectField
            label={w.notation}
            choices={[
              { value: 'iso', label: w.notations.iso },
              { value: 'universal', label: w.notations.universal },
            ]}
            {...form.field('toothNotation')}
          />
        </FieldRow>
        <WholeField label={w.warning} hint={w.warningHint} {...form.field('expiryWarningDays')} />
        <FieldGroup title={w.sharing} hint={w.sharingHint}>
          <SelectField
            label={w.sharedBy}
            choices={(['equal', 'minutes', 'surfaces'] as const).map((key) => ({
              value: key,
              label: w.keys[key],
            }))}
            {...form.field('costShareKey')}
          />
          <SharingExample chosen={form.values.costShareKey} />
        </FieldGroup>
        <FormActions>
          <SubmitButton form={form}>{w.save}</SubmitButton>
        </FormActions>
      </Form>
    </div>
  );
}
