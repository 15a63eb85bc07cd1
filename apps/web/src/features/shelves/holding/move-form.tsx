import { useQuery } from '@tanstack/react-query';
import { useBooking } from '../../../api/use-booking.js';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { asDecimal } from '../../../ui/decimal-text.js';
import { DateField, SelectField } from '../../../ui/fields.js';
import { Form, FormActions, SubmitButton } from '../../../ui/form.js';
import { useForm } from '../../../ui/use-form.js';
import { SHELF_CHANGES } from '../api/changes.js';
import type { Holding } from '../api/list-holdings.js';
import { placesQuery } from '../api/list-places.js';
import { moveStock } from '../api/move-stock.js';
import { nameOf } from '../parts/what.js';
import { AmountField } from './amount-field.js';
import { dayIfNotToday } from './checks.js';
import css from './holding.module.css';
import { useBooked } from './use-booked.js';
import { useHoldingChecks } from './use-checks.js';

/** Carries goods to another location; an open container goes whole. */
export function MoveForm({ holding }: { readonly holding: Holding }) {
  const { shelves, ui } = useText();
  const format = useFormat();
  const places = (useQuery(placesQuery).data ?? []).filter(
    ({ active, id }) => active && id !== holding.location.id,
  );
  const { book } = useBooking({ send: moveStock, changes: SHELF_CHANGES });
  const checks = useHoldingChecks(holding);
  const booked = useBooked(holding);
  const whole = holding.openedOn !== null;
  const form = useForm({
    initial: { quantity: whole ? holding.onHand : '', toLocationId: '', occurredOn: checks.today },
    check: ({ quantity, toLocationId, occurredOn }) => ({
      quantity: checks.amount(quantity),
      toLocationId: toLocationId === '' ? ui.choose : undefined,
      occurredOn: checks.day(occurredOn),
    }),
    send: ({ quantity, toLocationId, occurredOn }) =>
      book({
        holdingId: holding.id,
        quantity: asDecimal(quantity) ?? quantity,
        toLocationId,
        ...dayIfNotToday(occurredOn, checks.today),
      }),
    onDone: ({ movementIds }, { quantity, toLocationId }) => {
      const amount = format.quantity(asDecimal(quantity) ?? '0', holding.consumable.unit);
      const place = places.find(({ id }) => id === toLocationId)?.name ?? '';
      booked(shelves.done.move(amount, nameOf(holding.consumable), place), movementIds[0]);
    },
  });
  return (
    <Form form={form}>
      {whole ? (
        <p className={css.explain}>{shelves.form.wholeContainer(checks.here)}</p>
      ) : (
        <AmountField holding={holding} {...form.field('quantity')} />
      )}
      <SelectField
        label={shelves.form.to}
        empty={ui.choose}
        choices={places.map(({ id, name }) => ({ value: id, label: name }))}
        {...form.field('toLocationId')}
      />
      <DateField
        label={shelves.form.day}
        min={checks.since}
        max={checks.today}
        {...form.field('occurredOn')}
      />
      <FormActions>
        <SubmitButton form={form}>{shelves.submit.move}</SubmitButton>
      </FormActions>
    </Form>
  );
}
