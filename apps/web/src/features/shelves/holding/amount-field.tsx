import { Button } from '@mantine/core';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { DecimalField } from '../../../ui/fields.js';
import type { FieldProps } from '../../../ui/use-form.js';
import type { Holding } from '../api/list-holdings.js';
import css from './holding.module.css';

/** How much of a holding, with the way to take all of it. */
export function AmountField({ holding, ...field }: FieldProps & { readonly holding: Holding }) {
  const { form } = useText().shelves;
  const format = useFormat();
  const { unit } = holding.consumable;
  return (
    <div className={css.amount}>
      <DecimalField
        label={form.quantity}
        hint={form.here(format.quantity(holding.onHand, unit))}
        unit={format.unitName('2', unit)}
        data-autofocus
        {...field}
      />
      <Button variant="subtle" onClick={() => field.onValue(holding.onHand)}>
        {form.all}
      </Button>
    </div>
  );
}
