import { Button } from '@mantine/core';
import { getRouteApi } from '@tanstack/react-router';
import { useBooking } from '../../api/use-booking.js';
import { useText } from '../../text/text-provider.js';
import { Dialog } from '../../ui/dialog.js';
import { NoteField } from '../../ui/fields.js';
import { Form, FormActions, SubmitButton } from '../../ui/form.js';
import { notify } from '../../ui/notice-store.js';
import { useForm } from '../../ui/use-form.js';
import { AnswerForm } from './answer-form.js';
import { type PlainStep, stepOrder } from './api/act-on-order.js';
import type { Order } from './api/get-order.js';
import { ChaseForm } from './chase-form.js';
import type { OrderDialog } from './choices.js';
import { SendForm } from './send-form.js';
import type { StepProps } from './step-props.js';

const route = getRouteApi('/in/ordering/orders/$orderId');

/** The dialog that the address opens. */
export function OrderDialogs({ order }: { readonly order: Order }) {
  const w = useText().orders;
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const close = () =>
    void navigate({ search: (old) => ({ ...old, do: undefined }), resetScroll: false });
  const titles: Readonly<Record<OrderDialog, string>> = {
    approve: w.dialogs.approve.title,
    withdraw: w.dialogs.withdraw.title,
    close: w.dialogs.close.title,
    cancel: w.dialogs.cancel.title,
    send: w.send.title,
    chase: w.chase.title,
    answer: w.answer.title,
  };
  const step = search.do;
  return (
    <Dialog title={step ? titles[step] : ''} opened={step !== undefined} onClose={close}>
      {step !== undefined && <StepForm step={step} order={order} onClose={close} />}
    </Dialog>
  );
}

function StepForm({ step, ...props }: StepProps & { readonly step: OrderDialog }) {
  switch (step) {
    case 'send':
      return <SendForm {...props} />;
    case 'chase':
      return <ChaseForm {...props} />;
    case 'answer':
      return <AnswerForm {...props} />;
    default:
      return <PlainForm step={step} {...props} />;
  }
}

function PlainForm({ step, order, onClose }: StepProps & { readonly step: PlainStep }) {
  const t = useText();
  const w = t.orders.dialogs[step];
  const { book } = useBooking({
    send: ({ note }: { note: string }, key) =>
      stepOrder(step, order.id, { version: order.version, note: note.trim() || null }, key),
    changes: [['orders'], ['order-rules'], ['alerts'], ['reorder']],
  });
  const form = useForm({
    initial: { note: '' },
    send: book,
    onDone: () => {
      notify({ tone: 'done', text: t.orders.done });
      onClose();
    },
  });
  return (
    <Form form={form}>
      <p>{w.hint}</p>
      <NoteField
        label={t.orders.remark}
        hint={t.orders.optional}
        maxLength={1000}
        {...form.field('note')}
      />
      <FormActions>
        <SubmitButton form={form}>{w.confirm}</SubmitButton>
        <Button variant="default" onClick={onClose}>
          {t.ui.back}
        </Button>
      </FormActions>
    </Form>
  );
}
