import { Button } from '@mantine/core';
import type { Shape } from '../../api/client.js';
import { useBooking } from '../../api/use-booking.js';
import { useText } from '../../text/text-provider.js';
import { NoteField, SelectField, TextField } from '../../ui/fields.js';
import { Form, FormActions, SubmitButton } from '../../ui/form.js';
import { notify } from '../../ui/notice-store.js';
import { useForm } from '../../ui/use-form.js';
import { chaseOrder } from './api/act-on-order.js';
import css from './orders.module.css';
import type { StepProps } from './step-props.js';

type Way = Shape<'OrderChasingDto'>['way'];

interface Values {
  readonly way: Way;
  readonly to: string;
  readonly note: string;
}

/** Asks for what is outstanding, or notes that somebody asked. */
export function ChaseForm({ order, onClose }: StepProps) {
  const t = useText();
  const w = t.orders.chase;
  const { book } = useBooking({
    send: ({ way, to, note }: Values, key) =>
      chaseOrder(
        order.id,
        {
          ...{ version: order.version, way, note: note.trim() || null },
          to: way === 'e-mail' ? to.trim() || null : null,
        },
        key,
      ),
    changes: [['orders']],
  });
  const initial: Values = {
    way: order.mailServer ? 'e-mail' : 'by phone',
    ...{ to: order.supplier.email ?? '', note: '' },
  };
  const form = useForm({
    initial,
    check: ({ way, to }) => ({
      to: way === 'e-mail' && to.trim() === '' ? t.ui.required : undefined,
    }),
    send: book,
    onDone: () => {
      notify({ tone: 'done', text: w.done });
      onClose();
    },
  });
  const ways: Way[] = order.mailServer ? ['e-mail', 'by phone'] : ['by phone'];
  const byMail = form.values.way === 'e-mail';
  return (
    <Form form={form}>
      <SelectField
        label={w.way}
        choices={ways.map((way) => ({ value: way, label: t.orders.ways[way] }))}
        {...form.field('way')}
      />
      {!order.mailServer && <p className={css.quiet}>{t.orders.send.noServer}</p>}
      {byMail && (
        <TextField label={t.orders.send.to} type="email" maxLength={254} {...form.field('to')} />
      )}
      <NoteField
        label={t.orders.remark}
        hint={t.orders.optional}
        maxLength={1000}
        {...form.field('note')}
      />
      <FormActions>
        <SubmitButton form={form}>{byMail ? w.confirm : w.confirmByPhone}</SubmitButton>
        <Button variant="default" onClick={onClose}>
          {t.ui.cancel}
        </Button>
      </FormActions>
    </Form>
  );
}
