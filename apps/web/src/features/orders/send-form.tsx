import { Button } from '@mantine/core';
import type { Shape } from '../../api/client.js';
import { useBooking } from '../../api/use-booking.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { DateField, SelectField, TextField } from '../../ui/fields.js';
import { Form, FormActions, SubmitButton } from '../../ui/form.js';
import { notify } from '../../ui/notice-store.js';
import { useForm } from '../../ui/use-form.js';
import { sendOrder } from './api/act-on-order.js';
import { paperOf } from './api/get-order.js';
import css from './orders.module.css';
import type { StepProps } from './step-props.js';

type Way = Shape<'OrderSendingDto'>['way'];

interface Values {
  readonly way: Way;
  readonly to: string;
  readonly orderedOn: string;
  readonly expectedOn: string;
}

function useSendForm({ order, onClose }: StepProps) {
  const t = useText();
  const { number } = useFormat();
  const { book } = useBooking({
    send: ({ way, to, orderedOn, expectedOn }: Values, key) =>
      sendOrder(
        order.id,
        {
          ...{ version: order.version, way, expectedOn: expectedOn || null },
          to: way === 'e-mail' ? to.trim() || null : null,
          orderedOn: way === 'e-mail' ? null : orderedOn || null,
        },
        key,
      ),
    changes: [['orders'], ['alerts'], ['reorder']],
  });
  const initial: Values = {
    way: order.mailServer ? 'e-mail' : 'by hand',
    ...{ to: order.supplier.email ?? '', orderedOn: '', expectedOn: '' },
  };
  return useForm({
    initial,
    check: ({ way, to }) => ({
      to: way === 'e-mail' && to.trim() === '' ? t.ui.required : undefined,
    }),
    send: book,
    onDone: () => {
      notify({ tone: 'done', text: t.orders.send.done(number(String(order.number))) });
      onClose();
    },
  });
}

/** Which way the order goes; the paper can be looked at before. */
export function SendForm(props: StepProps) {
  const t = useText();
  const w = t.orders.send;
  const { order, onClose } = props;
  const form = useSendForm(props);
  const ways: Way[] = order.mailServer ? ['e-mail', 'print', 'by hand'] : ['print', 'by hand'];
  const byMail = form.values.way === 'e-mail';
  return (
    <Form form={form}>
      <p>
        <a href={paperOf(order.id, 'pdf')} target="_blank" rel="noreferrer">
          {w.look}
        </a>
      </p>
      <SelectField
        label={w.way}
        choices={ways.map((way) => ({ value: way, label: t.orders.ways[way] }))}
        {...form.field('way')}
      />
      {!order.mailServer && <p className={css.quiet}>{w.noServer}</p>}
      {byMail && <TextField label={w.to} type="email" maxLength={254} {...form.field('to')} />}
      {!byMail && (
        <DateField label={w.orderedOn} hint={w.orderedOnHint} {...form.field('orderedOn')} />
      )}
      <DateField label={w.expected} hint={w.expectedHint} {...form.field('expectedOn')} />
      <FormActions>
        <SubmitButton form={form}>{byMail ? w.confirm : w.confirmByHand}</SubmitButton>
        <Button variant="default" onClick={onClose}>
          {t.ui.cancel}
        </Button>
      </FormActions>
    </Form>
  );
}
