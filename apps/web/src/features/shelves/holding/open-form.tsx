import { useBooking } from '../../../api/use-booking.js';
import { useText } from '../../../text/text-provider.js';
import { DateField } from '../../../ui/fields.js';
import { Form, FormActions, SubmitButton } from '../../../ui/form.js';
import { useForm } from '../../../ui/use-form.js';
import { SHELF_CHANGES } from '../api/changes.js';
import type { Holding } from '../api/list-holdings.js';
import { openContainer } from '../api/open-container.js';
import { nameOf } from '../parts/what.js';
import css from './holding.module.css';
import { useBooked } from './use-booked.js';
import { useHoldingChecks } from './use-checks.js';

/** Opens one sealed container where it lies. */
export function OpenForm({ holding }: { readonly holding: Holding }) {
  const { shelves } = useText();
  const { book } = useBooking({ send: openContainer, changes: SHELF_CHANGES });
  const checks = useHoldingChecks(holding);
  const booked = useBooked(holding);
  const form = useForm({
    initial: { openedOn: checks.today },
    check: ({ openedOn }) => ({ openedOn: checks.day(openedOn) }),
    send: ({ openedOn }) =>
      book({ holdingId: holding.id, ...(openedOn === checks.today ? {} : { openedOn }) }),
    onDone: ({ movementIds }) =>
      booked(shelves.done.open(nameOf(holding.consumable), holding.location.name), movementIds[0]),
  });
  return (
    <Form form={form}>
      <p className={css.explain}>{shelves.form.lifeNote}</p>
      <DateField
        label={shelves.facts.openedOn}
        min={checks.since}
        max={checks.today}
        {...form.field('openedOn')}
      />
      <FormActions>
        <SubmitButton form={form}>{shelves.submit.open}</SubmitButton>
      </FormActions>
    </Form>
  );
}
