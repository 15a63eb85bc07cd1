import { Button } from '@mantine/core';
import { useBooking } from '../../../api/use-booking.js';
import { useFormat } from '../../../app/use-format.js';
import type { Text } from '../../../text/text.js';
import { useText } from '../../../text/text-provider.js';
import { asDecimal } from '../../../ui/decimal-text.js';
import { Dialog } from '../../../ui/dialog.js';
import { DecimalField, TextField } from '../../../ui/fields.js';
import { FieldRow, Form, FormActions, SubmitButton } from '../../../ui/form.js';
import { notify } from '../../../ui/notice-store.js';
import { type FieldErrors, useForm } from '../../../ui/use-form.js';
import { SHELF_CHANGES } from '../api/changes.js';
import type { Delivery, DeliveryLine } from '../api/get-delivery.js';
import { invoiceDelivery } from '../api/invoice-delivery.js';
import { nameOf } from '../parts/what.js';
import { type InvoiceValues, invoiceBody, invoicedLines, priceKey } from './invoice.js';

interface Props {
  readonly delivery: Delivery;
  readonly onClose: () => void;
}

function check(values: InvoiceValues, t: Text): FieldErrors {
  const { reference: _, ...amounts } = values;
  return Object.fromEntries(
    Object.entries(amounts).map(([name, typed]) => {
      const amount = asDecimal(typed);
      const isWrong = amount === undefined || amount.startsWith('-');
      return [name, isWrong ? t.ui.decimal : undefined];
    }),
  );
}

/** The prices of an invoice that came after the goods; only what differs is sent. */
export function InvoiceDialog({ delivery, onClose }: Props) {
  const t = useText();
  const { deliveryMore: words, deliveries } = t;
  const format = useFormat();
  const { book } = useBooking({ send: invoiceDelivery, changes: SHELF_CHANGES });
  const lines = invoicedLines(delivery);
  const { freight, duty, discount } = delivery;
  const initial: InvoiceValues = {
    ...Object.fromEntries(lines.map((line) => [priceKey(line), priceOf(line)])),
    ...{ freight, duty, discount, reference: '' },
  };
  const form = useForm({
    initial,
    check: (values: InvoiceValues) => check(values, t),
    send: (values) => book({ deliveryId: delivery.id, ...invoiceBody(values, delivery) }),
    onDone: ({ toStock, priceVariance }) => {
      const text = words.invoiced(format.money(toStock), format.money(priceVariance));
      notify({ tone: 'done', text });
      onClose();
    },
  });
  return (
    <Dialog title={words.invoiceTitle} opened onClose={onClose} size="lg">
      <Form form={form}>
        <p>{words.invoiceLead}</p>
        <TextField
          label={words.invoiceReference}
          maxLength={80}
          {...form.field('reference')}
          data-autofocus
        />
        {lines.map((line) => (
          <DecimalField
            key={line.layerId}
            label={words.packPriceOf(nameOf(line.consumable))}
            unit={format.currency}
            {...form.field(priceKey(line))}
          />
        ))}
        <FieldRow>
          <DecimalField
            label={deliveries.figures.freight}
            unit={format.currency}
            {...form.field('freight')}
          />
          <DecimalField label={words.duty} unit={format.currency} {...form.field('duty')} />
          <DecimalField
            label={deliveries.figures.discount}
            unit={format.currency}
            {...form.field('discount')}
          />
        </FieldRow>
        <FormActions>
          <SubmitButton form={form}>{words.book}</SubmitButton>
          <Button variant="default" onClick={onClose}>
            {words.cancel}
          </Button>
        </FormActions>
      </Form>
    </Dialog>
  );
}

const priceOf = (line: DeliveryLine) => line.kit?.packPrice ?? line.packPrice;
