import { Button } from '@mantine/core';
import { useBooking } from '../../../api/use-booking.js';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { Dialog } from '../../../ui/dialog.js';
import { TextField } from '../../../ui/fields.js';
import { Form, FormActions, SubmitButton } from '../../../ui/form.js';
import { notify } from '../../../ui/notice-store.js';
import { useForm } from '../../../ui/use-form.js';
import { dropBookedVisit } from '../api/drop-booked-visit.js';
import type { BookedVisit } from '../api/list-booked-visits.js';
import { bookingWords } from './booking-words.js';
import { useSeenBooking } from './use-seen-booking.js';

interface Props {
  readonly visit: BookedVisit | undefined;
  readonly onClose: () => void;
}

/** Says that a booking will not take place, and why. */
export function DropDialog({ visit, onClose }: Props) {
  const t = useText();
  return (
    <Dialog title={t.booked.dropping.title} opened={visit !== undefined} onClose={onClose}>
      {visit && <DropForm visit={visit} onClose={onClose} />}
    </Dialog>
  );
}

function DropForm({ visit, onClose }: { readonly visit: BookedVisit; onClose: () => void }) {
  const t = useText();
  const format = useFormat();
  const words = t.booked.dropping;
  const { book } = useBooking({
    send: dropBookedVisit,
    changes: [['booked-visits'], ['alerts'], ['reorder']],
  });
  const { version, refreshed } = useSeenBooking(visit);
  const form = useForm({
    initial: { note: '' },
    check: ({ note }) => (note.trim() === '' ? { note: t.ui.required } : {}),
    send: ({ note }) => refreshed(book({ id: visit.id, version, note: note.trim() })),
    explain: ({ code }) => (code === 'booking_changed_meanwhile' ? t.booked.conflict : undefined),
    onDone: () => {
      onClose();
      notify({ tone: 'done', text: words.done });
    },
  });
  return (
    <Form form={form}>
      <p>{words.what(bookingWords(visit, t), format.day(visit.day))}</p>
      <TextField label={words.note} maxLength={500} {...form.field('note')} data-autofocus />
      <FormActions>
        <SubmitButton form={form}>{words.confirm}</SubmitButton>
        <Button variant="default" onClick={onClose}>
          {words.keep}
        </Button>
      </FormActions>
    </Form>
  );
}
