import { useQuery } from '@tanstack/react-query';
import { useBooking } from '../../../api/use-booking.js';
import { useMay } from '../../../app/session.js';
import { useText } from '../../../text/text-provider.js';
import { CheckField, WholeField } from '../../../ui/fields.js';
import { Form, FormActions, SubmitButton } from '../../../ui/form.js';
import { Loaded } from '../../../ui/loaded.js';
import { More } from '../../../ui/more.js';
import { notify } from '../../../ui/notice-store.js';
import { useForm } from '../../../ui/use-form.js';
import {
  type BookedPlanning,
  bookedPlanningQuery,
  setBookedPlanning,
} from '../api/booked-planning.js';
import css from './booked.module.css';

/** How much the days that are booked say about the whole day. */
export function DiarySection() {
  const t = useText();
  const may = useMay();
  const query = useQuery({ ...bookedPlanningQuery, enabled: may('ordering.manage') });
  if (!may('ordering.manage')) return null;
  return (
    <div className={`${css.diary ?? ''} tb-screen-only`}>
      <More summary={t.booked.diary.title}>
        <p className={css.quiet}>{t.booked.diary.hint}</p>
        <Loaded query={query}>{(planning) => <DiaryForm planning={planning} />}</Loaded>
      </More>
    </div>
  );
}

const MOST_DAYS = 60;

function DiaryForm({ planning }: { readonly planning: BookedPlanning }) {
  const t = useText();
  const words = t.booked.diary;
  const { book } = useBooking({ send: setBookedPlanning, changes: [['reorder'], ['alerts']] });
  const form = useForm({
    initial: { wholeDay: planning.wholeDay, fullDays: String(planning.fullDays) },
    check: ({ fullDays }) =>
      /^\d{1,2}$/.test(fullDays.trim()) && Number(fullDays) <= MOST_DAYS
        ? {}
        : { fullDays: words.days },
    send: ({ wholeDay, fullDays }) => book({ wholeDay, fullDays: Number(fullDays) }),
    onDone: () => notify({ tone: 'done', text: words.done }),
  });
  return (
    <Form form={form}>
      <CheckField label={words.wholeDay} hint={words.wholeDayHint} {...form.flag('wholeDay')} />
      {form.values.wholeDay && (
        <WholeField label={words.fullDays} hint={words.fullDaysHint} {...form.field('fullDays')} />
      )}
      <FormActions>
        <SubmitButton form={form}>{words.save}</SubmitButton>
      </FormActions>
    </Form>
  );
}
