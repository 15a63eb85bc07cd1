import { useBooking } from '../../../api/use-booking.js';
import { useText } from '../../../text/text-provider.js';
import { NoteField, SelectField } from '../../../ui/fields.js';
import { Form, FormActions, SubmitButton } from '../../../ui/form.js';
import { useForm } from '../../../ui/use-form.js';
import { SHELF_CHANGES } from '../api/changes.js';
import type { Holding } from '../api/list-holdings.js';
import { setLotStatus } from '../api/set-lot-status.js';
import { useBooked } from './use-booked.js';
import { useHoldingChecks } from './use-checks.js';

const LOT_STATUSES = ['released', 'quarantined', 'recalled'] as const;

/** Quarantines, recalls or releases the lot, in every location at once. */
export function HoldForm({ holding }: { readonly holding: Holding }) {
  const { shelves, ui } = useText();
  const { book } = useBooking({ send: setLotStatus, changes: SHELF_CHANGES });
  const checks = useHoldingChecks(holding);
  const booked = useBooked(holding);
  const { lot } = holding;
  const others = LOT_STATUSES.filter((status) => status !== lot.status);
  const statusOf = (value: string) => others.find((one) => one === value);
  const form = useForm({
    initial: { status: '', note: '' },
    check: ({ status, note }) => ({
      status: statusOf(status) === undefined ? ui.choose : undefined,
      note: checks.note(note),
    }),
    send: ({ status, note }) =>
      book({ id: lot.id, status: statusOf(status) ?? lot.status, note: note.trim() }),
    onDone: (_, { status }) =>
      booked(
        shelves.done.hold(
          lot.lotNumber ?? ui.notStated,
          shelves.lotStatuses[statusOf(status) ?? lot.status],
        ),
      ),
  });
  return (
    <Form form={form}>
      <SelectField
        label={shelves.form.lotStatus}
        empty={ui.choose}
        choices={others.map((one) => ({ value: one, label: shelves.lotStatuses[one] }))}
        {...form.field('status')}
      />
      <NoteField label={shelves.form.reason} maxLength={300} {...form.field('note')} />
      <FormActions>
        <SubmitButton form={form}>{shelves.submit.hold}</SubmitButton>
      </FormActions>
    </Form>
  );
}
