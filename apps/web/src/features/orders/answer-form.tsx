import { Button } from '@mantine/core';
import { useBooking } from '../../api/use-booking.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { DateField, NoteField, TextField, WholeField } from '../../ui/fields.js';
import { FieldGroup, FieldRow, Form, FormActions, SubmitButton } from '../../ui/form.js';
import { notify } from '../../ui/notice-store.js';
import { useForm } from '../../ui/use-form.js';
import { answerOrder } from './api/act-on-order.js';
import { goodsName } from './api/list-goods.js';
import type { StepProps } from './step-props.js';
import { wholeProblem } from './typed-values.js';

interface Values {
  readonly expectedOn: string;
  readonly reference: string;
  readonly note: string;
  /** Packs that will not come, by line. */
  readonly missing: Readonly<Record<string, string>>;
}

function useAnswerForm({ order, onClose }: StepProps) {
  const t = useText();
  const waiting = order.lines.filter((line) => line.outstanding > 0);
  const { book } = useBooking({
    send: ({ expectedOn, reference, note, missing }: Values, key) =>
      answerOrder(
        order.id,
        {
          ...{ version: order.version, expectedOn: expectedOn || null },
          ...{ reference: reference.trim() || null, note: note.trim() || null },
          willNotCome: Object.entries(missing)
            .map(([lineId, packs]) => ({ lineId, packs: Number(packs) }))
            .filter(({ packs }) => packs > 0),
        },
        key,
      ),
    changes: [['orders'], ['alerts'], ['reorder']],
  });
  const initial: Values = { ...{ expectedOn: '', reference: '', note: '' }, missing: {} };
  const form = useForm({
    initial,
    check: ({ missing }) =>
      Object.fromEntries(
        waiting.map(({ id, outstanding }) => [
          `missing.${id}`,
          (missing[id] ?? '') === ''
            ? undefined
            : wholeProblem(missing[id] ?? '', [0, outstanding], t),
        ]),
      ),
    send: book,
    onDone: () => {
      notify({ tone: 'done', text: t.orders.answer.done });
      onClose();
    },
  });
  const field = (id: string) => ({
    name: `missing.${id}`,
    value: form.values.missing[id] ?? '',
    onValue: (value: string) => {
      form.set('missing', { ...form.values.missing, [id]: value });
      form.clearAt(`missing.${id}`);
    },
    error: form.errorAt(`missing.${id}`),
  });
  return { form, waiting, field };
}

/** What the supplier said of an order: another day, its own number, what will not come. */
export function AnswerForm(props: StepProps) {
  const t = useText();
  const w = t.orders.answer;
  const { amount } = useFormat();
  const { form, waiting, field } = useAnswerForm(props);
  return (
    <Form form={form}>
      <FieldRow>
        <DateField
          label={w.expected}
          hint={t.orders.optional}
          min={props.order.orderedOn ?? ''}
          {...form.field('expectedOn')}
        />
        <TextField
          label={t.orders.facts.reference}
          hint={t.orders.optional}
          maxLength={80}
          {...form.field('reference')}
        />
      </FieldRow>
      <FieldGroup title={w.willNotCome} hint={t.orders.optional}>
        {waiting.map((line) => (
          <WholeField
            key={line.id}
            label={w.of(goodsName(line.consumable), amount(String(line.outstanding), 'packs'))}
            {...field(line.id)}
          />
        ))}
      </FieldGroup>
      <NoteField
        label={t.orders.remark}
        hint={t.orders.optional}
        maxLength={1000}
        {...form.field('note')}
      />
      <FormActions>
        <SubmitButton form={form}>{w.confirm}</SubmitButton>
        <Button variant="default" onClick={props.onClose}>
          {t.ui.cancel}
        </Button>
      </FormActions>
    </Form>
  );
}
