import { useBooking } from '../../../api/use-booking.js';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { asDecimal } from '../../../ui/decimal-text.js';
import { DateField, NoteField } from '../../../ui/fields.js';
import { Form, FormActions, SubmitButton } from '../../../ui/form.js';
import { useForm } from '../../../ui/use-form.js';
import { SHELF_CHANGES } from '../api/changes.js';
import type { Holding } from '../api/list-holdings.js';
import { returnStock } from '../api/return-stock.js';
import { nameOf } from '../parts/what.js';
import { AmountField } from './amount-field.js';
import { dayIfNotToday } from './checks.js';
import { useBooked } from './use-booked.js';
import { useHoldingChecks } from './use-checks.js';

/** Sends goods back to the supplier. */
export function ReturnForm({ holding }: { readonly holding: Holding }) {
  const { shelves } = useText();
  const format = useFormat();
  const { book } = useBooking({ send: returnStock, changes: SHELF_CHANGES });
  const checks = useHoldingChecks(holding);
  const booked = useBooked(holding);
  const quantity = holding.status === 'recalled' ? holding.onHand : '';
  const form = useForm({
    initial: { quantity, note: '', occurredOn: checks.today },
    check: (values) => ({
      quantity: checks.amount(values.quantity),
      note: checks.note(values.note),
      occurredOn: checks.day(values.occurredOn),
    }),
    send: (values) =>
      book({
        holdingId: holding.id,
        quantity: asDecimal(values.quantity) ?? values.quantity,
        note: values.note.trim(),
        ...dayIfNotToday(values.occurredOn, checks.today),
      }),
    onDone: ({ movementIds }, values) => {
      const amount = format.quantity(asDecimal(values.quantity) ?? '0', holding.consumable.unit);
      booked(shelves.done.return(amount, nameOf(holding.consumable)), movementIds[0]);
    },
  });
  return (
    <Form form={form}>
      <AmountField holding={holding} {...form.field('quantity')} />
      <NoteField label={shelves.form.note} maxLength={300} {...form.field('note')} />
      <DateField
        label={shelves.form.day}
        min={checks.since}
        max={checks.today}
        {...form.field('occurredOn')}
      />
      <FormActions>
        <SubmitButton form={form}>{shelves.submit.return}</SubmitButton>
      </FormActions>
    </Form>
  );
}
