import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { newKey } from '../../../api/idempotency.js';
import { useBooking } from '../../../api/use-booking.js';
import { useSession } from '../../../app/session.js';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { Dialog } from '../../../ui/dialog.js';
import { DateField, SelectField, TextField, WholeField } from '../../../ui/fields.js';
import { FieldRow, Form, FormActions, SubmitButton } from '../../../ui/form.js';
import { notify } from '../../../ui/notice-store.js';
import { useFocusAfter } from '../../../ui/use-focus-after.js';
import { useForm } from '../../../ui/use-form.js';
import { bookVisit } from '../api/book-visit.js';
import { changeBookedVisit } from '../api/change-booked-visit.js';
import type { BookedVisit } from '../api/list-booked-visits.js';
import { dentistsQuery } from '../api/list-dentists.js';
import { roomsQuery } from '../api/list-rooms.js';
import css from './booked.module.css';
import {
  type BookingValues,
  bodyOf,
  checkBooking,
  newRestoration,
  newValues,
  valuesOf,
} from './booking-values.js';
import { bookingWords } from './booking-words.js';
import { RestorationFields } from './restoration-fields.js';
import { useSeenBooking } from './use-seen-booking.js';

interface Props {
  /** The one to change; undefined: a new one. */
  readonly visit: BookedVisit | undefined;
  readonly opened: boolean;
  /** The day that a new one begins with. */
  readonly day: string;
  readonly onClose: () => void;
}

/** Books a visit, or changes what is booked. */
export function BookingDialog({ visit, opened, day, onClose }: Props) {
  const t = useText();
  const title = visit ? t.booked.form.change : t.booked.form.add;
  return (
    <Dialog title={title} opened={opened} onClose={onClose} size="lg">
      {opened && <BookingForm visit={visit} day={day} onClose={onClose} />}
    </Dialog>
  );
}

function BookingForm({ visit, day, onClose }: Omit<Props, 'opened'>) {
  const t = useText();
  const format = useFormat();
  const words = t.booked.form;
  const form = useBookingForm(visit, day, onClose);
  const dentists = useQuery(dentistsQuery).data?.items ?? [];
  const rooms = useQuery(roomsQuery).data?.items ?? [];
  return (
    <Form form={form}>
      <FieldRow>
        <DateField label={words.day} {...form.field('day')} />
        <WholeField label={words.alike} hint={words.alikeHint} {...form.field('alike')} />
        <TextField
          label={words.chart}
          hint={words.chartHint}
          maxLength={60}
          {...form.field('chartReference')}
        />
      </FieldRow>
      <Restorations form={form} />
      <FieldRow>
        <SelectField
          label={words.dentist}
          empty={words.open}
          choices={dentists
            .filter(({ active }) => active)
            .map(({ id, displayName }) => ({ value: id, label: displayName }))}
          {...form.field('dentistId')}
        />
        <SelectField
          label={words.room}
          empty={words.open}
          choices={rooms.map(({ id, name }) => ({ value: id, label: name }))}
          {...form.field('locationId')}
        />
      </FieldRow>
      {visit && (
        <p>
          {bookingWords(visit, t)}, {format.day(visit.day)}
        </p>
      )}
      <FormActions>
        <SubmitButton form={form}>{visit ? words.save : words.add}</SubmitButton>
        <Button variant="default" onClick={onClose}>
          {words.cancel}
        </Button>
      </FormActions>
    </Form>
  );
}

/** After one has come or gone, the keyboard stands on the one to go on with. */
function Restorations({ form }: { readonly form: ReturnType<typeof useBookingForm> }) {
  const words = useText().booked.form;
  const { place, focusAfter } = useFocusAfter();
  const { restorations } = form.values;
  const set = (next: BookingValues['restorations'], at: number) => {
    form.set('restorations', next);
    focusAfter(`fieldset:nth-of-type(${at + 1}) input`);
  };
  return (
    <div ref={place} className={css.restorations}>
      {restorations.map((each, i) => (
        <RestorationFields
          key={each.key}
          index={i}
          values={each}
          errorAt={form.errorAt}
          onChange={(next) => {
            form.set('restorations', restorations.with(i, next));
            for (const field of ['templateId', 'tooth', 'surfaces']) {
              form.clearAt(`restorations[${i}].${field}`);
            }
          }}
          {...(restorations.length > 1
            ? { onRemove: () => set(restorations.toSpliced(i, 1), Math.max(0, i - 1)) }
            : {})}
        />
      ))}
      <div>
        <Button
          variant="default"
          onClick={() => set([...restorations, newRestoration(newKey())], restorations.length)}
        >
          {words.more}
        </Button>
      </div>
    </div>
  );
}

const CHANGES = [['booked-visits'], ['alerts'], ['reorder']] as const;

function useBookingForm(visit: BookedVisit | undefined, day: string, onClose: () => void) {
  const t = useText();
  const format = useFormat();
  const words = t.booked.form;
  const { today } = useSession();
  const { version, refreshed } = useSeenBooking(visit);
  const { book } = useBooking({
    send: (values: BookingValues, key) =>
      visit
        ? changeBookedVisit(visit.id, { ...bodyOf(values), version })
        : bookVisit(bodyOf(values), key),
    changes: CHANGES,
  });
  // A day that has passed may stay as it is, but none may be chosen.
  const first = visit && visit.day < today ? visit.day : today;
  return useForm({
    initial: visit ? valuesOf(visit) : newValues(day, newKey()),
    check: (values) =>
      checkBooking(values, first, {
        ...{ required: t.ui.required, past: words.past(format.day(today)), count: words.count },
        ...{ oneChart: words.oneChart, needsTooth: words.needsTooth },
      }),
    send: (values) => refreshed(book(values)),
    fieldOf: (path) => path,
    explain: ({ code }) => (code === 'booking_changed_meanwhile' ? t.booked.conflict : undefined),
    onDone: (saved) => {
      onClose();
      const what = bookingWords(saved, t);
      const text = visit ? words.changed : words.booked(what, format.day(saved.day));
      notify({ tone: 'done', text });
    },
  });
}
