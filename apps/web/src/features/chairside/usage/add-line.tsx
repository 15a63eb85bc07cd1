import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { newKey } from '../../../api/idempotency.js';
import { useText } from '../../../text/text-provider.js';
import { asDecimal } from '../../../ui/decimal-text.js';
import { DecimalField, SearchSelectField } from '../../../ui/fields.js';
import { Form, FormActions, SubmitButton } from '../../../ui/form.js';
import { useForm } from '../../../ui/use-form.js';
import { consumablesQuery } from '../api/list-consumables.js';
import { useChairside } from '../chairside-context.js';
import { isSame } from '../draft/amounts.js';
import { consumableName } from '../words.js';
import css from './usage-panel.module.css';

/** Something that no template plans. */
export function AddLine() {
  const words = useText().chairside.usage;
  const [open, setOpen] = useState(false);
  if (open) return <AddForm onClose={() => setOpen(false)} />;
  return (
    <Button variant="subtle" onClick={() => setOpen(true)} mt="xs" ml={-12}>
      {words.add}
    </Button>
  );
}

function AddForm({ onClose }: { readonly onClose: () => void }) {
  const t = useText();
  const { change } = useChairside();
  const consumables = useQuery(consumablesQuery).data?.items ?? [];
  const words = t.chairside.usage;
  const form = useForm({
    initial: { consumableId: '', dispensed: '' },
    check: ({ consumableId, dispensed }) => {
      const amount = asDecimal(dispensed);
      const isAmount = amount !== undefined && !amount.startsWith('-') && !isSame(amount, '0');
      return {
        ...(consumableId === '' ? { consumableId: t.ui.required } : {}),
        ...(isAmount ? {} : { dispensed: words.amountWrong }),
      };
    },
    send: async ({ consumableId, dispensed }) => {
      const found = consumables.find(({ id }) => id === consumableId);
      if (!found) return;
      const line = {
        ...{ key: newKey(), consumableId, name: consumableName(found), unit: found.stockUnit },
        dispensed: asDecimal(dispensed) ?? '0',
      };
      change((draft) => ({ ...draft, added: [...draft.added, line] }));
    },
    onDone: onClose,
  });
  const unit = consumables.find(({ id }) => id === form.values.consumableId)?.stockUnit;
  return (
    <div className={css.add}>
      <Form form={form}>
        <SearchSelectField
          label={words.addWhat}
          choices={consumables.map((each) => ({ value: each.id, label: consumableName(each) }))}
          {...form.field('consumableId')}
        />
        <DecimalField
          label={words.addAmount}
          {...(unit === undefined ? {} : { unit })}
          {...form.field('dispensed')}
        />
        <FormActions>
          <SubmitButton form={form}>{words.addButton}</SubmitButton>
          <Button variant="default" onClick={onClose}>
            {t.ui.cancel}
          </Button>
        </FormActions>
      </Form>
    </div>
  );
}
