import { quantity, subtract } from '#lib/measure';
import { useBooking } from '../../../api/use-booking.js';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { asDecimal } from '../../../ui/decimal-text.js';
import { DateField, DecimalField } from '../../../ui/fields.js';
import { Form, FormActions, SubmitButton } from '../../../ui/form.js';
import { useForm } from '../../../ui/use-form.js';
import { SHELF_CHANGES } from '../api/changes.js';
import { countStock } from '../api/count-stock.js';
import type { Holding } from '../api/list-holdings.js';
import { Difference } from '../count/difference.js';
import { nameOf } from '../parts/what.js';
import { countTrouble } from './checks.js';
import css from './holding.module.css';
import { useBooked } from './use-booked.js';
import { useHoldingChecks } from './use-checks.js';

/** Says what is really there of one holding; the difference is shown before it is booked. */
export function CountForm({ holding }: { readonly holding: Holding }) {
  const { shelves } = useText();
  const format = useFormat();
  const { book } = useBooking({ send: countStock, changes: SHELF_CHANGES });
  const checks = useHoldingChecks(holding);
  const booked = useBooked(holding);
  const { unit } = holding.consumable;
  const form = useForm({
    initial: { counted: '', countedOn: checks.today },
    check: ({ counted, countedOn }) => ({
      counted: checks.counted(counted),
      countedOn: checks.day(countedOn),
    }),
    send: ({ counted, countedOn }) =>
      book({
        lines: [{ holdingId: holding.id, counted: asDecimal(counted) ?? counted }],
        ...(countedOn === checks.today ? {} : { countedOn }),
      }),
    fieldOf: (path) => path.replace(/^lines\[0\]\./, ''),
    onDone: ({ movementIds }) =>
      booked(shelves.done.count(nameOf(holding.consumable)), movementIds[0]),
  });
  const typed = form.values.counted;
  const counted = countTrouble(typed, unit) === undefined ? asDecimal(typed) : undefined;
  return (
    <Form form={form}>
      <DecimalField
        label={shelves.form.counted}
        hint={shelves.form.expected(checks.here)}
        unit={format.unitName('2', unit)}
        data-autofocus
        {...form.field('counted')}
      />
      {counted !== undefined && (
        <p className={css.difference} aria-live="polite">
          <span>{shelves.form.difference}</span>
          <Difference micro={subtract(quantity(counted), quantity(holding.onHand))} unit={unit} />
        </p>
      )}
      <DateField
        label={shelves.form.day}
        min={checks.since}
        max={checks.today}
        {...form.field('countedOn')}
      />
      <FormActions>
        <SubmitButton form={form}>{shelves.submit.count}</SubmitButton>
      </FormActions>
    </Form>
  );
}
