import { useBooking } from '../../../api/use-booking.js';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { asDecimal } from '../../../ui/decimal-text.js';
import { DateField, NoteField, SelectField } from '../../../ui/fields.js';
import { Form, FormActions, SubmitButton } from '../../../ui/form.js';
import { useForm } from '../../../ui/use-form.js';
import { SHELF_CHANGES } from '../api/changes.js';
import type { Holding } from '../api/list-holdings.js';
import { writeOff } from '../api/write-off.js';
import { nameOf } from '../parts/what.js';
import { AmountField } from './amount-field.js';
import { dayIfNotToday } from './checks.js';
import { likelyReason, WASTE_REASONS, type WasteReason } from './reasons.js';
import { useBooked } from './use-booked.js';
import { useHoldingChecks } from './use-checks.js';

interface Values {
  readonly quantity: string;
  readonly reason: WasteReason | '';
  readonly note: string;
  readonly occurredOn: string;
}

function bodyOf(holding: Holding, values: Values, today: string) {
  const { reason } = values;
  if (reason === '') throw new Error('The form was sent without a reason');
  const note = values.note.trim();
  return {
    holdingId: holding.id,
    quantity: asDecimal(values.quantity) ?? values.quantity,
    reason,
    ...(note === '' ? {} : { note }),
    ...dayIfNotToday(values.occurredOn, today),
  };
}

/** Throws goods away for a stated reason. */
export function WriteOffForm({ holding }: { readonly holding: Holding }) {
  const { shelves, ui } = useText();
  const format = useFormat();
  const { book } = useBooking({ send: writeOff, changes: SHELF_CHANGES });
  const checks = useHoldingChecks(holding);
  const booked = useBooked(holding);
  const reason = likelyReason(holding, checks.today);
  const initial: Values = {
    quantity: reason === '' ? '' : holding.onHand,
    reason,
    note: '',
    occurredOn: checks.today,
  };
  const form = useForm({
    initial,
    check: (values) => ({
      quantity: checks.amount(values.quantity),
      reason: values.reason === '' ? ui.choose : undefined,
      occurredOn: checks.day(values.occurredOn),
    }),
    send: (values) => book(bodyOf(holding, values, checks.today)),
    onDone: ({ movementIds }, { quantity }) => {
      const amount = format.quantity(asDecimal(quantity) ?? '0', holding.consumable.unit);
      booked(shelves.done['write-off'](amount, nameOf(holding.consumable)), movementIds[0]);
    },
  });
  return (
    <Form form={form}>
      <AmountField holding={holding} {...form.field('quantity')} />
      <SelectField
        label={shelves.form.reason}
        empty={ui.choose}
        choices={WASTE_REASONS.map((one) => ({ value: one, label: shelves.reasons[one] }))}
        {...form.field('reason')}
      />
      <NoteField label={shelves.form.noteOptional} maxLength={300} {...form.field('note')} />
      <DateField
        label={shelves.form.day}
        min={checks.since}
        max={checks.today}
        {...form.field('occurredOn')}
      />
      <FormActions>
        <SubmitButton form={form}>{shelves.submit['write-off']}</SubmitButton>
      </FormActions>
    </Form>
  );
}
