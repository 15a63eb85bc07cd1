import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { formatQuantity, quantity, quantityFromMicro } from '#lib/measure';
import { useBooking } from '../../../api/use-booking.js';
import { useFormat } from '../../../app/use-format.js';
import type { Text } from '../../../text/text.js';
import { useText } from '../../../text/text-provider.js';
import { asDecimal } from '../../../ui/decimal-text.js';
import { Dialog } from '../../../ui/dialog.js';
import { DateField, DecimalField, SelectField, TextField, WholeField } from '../../../ui/fields.js';
import { FieldRow, Form, FormActions, SubmitButton } from '../../../ui/form.js';
import { notify } from '../../../ui/notice-store.js';
import { type FieldErrors, useForm } from '../../../ui/use-form.js';
import { SHELF_CHANGES } from '../api/changes.js';
import { correctLine } from '../api/correct-line.js';
import type { DeliveryLine } from '../api/get-delivery.js';
import { placesQuery } from '../api/list-places.js';
import { nameOf } from '../parts/what.js';
import css from './delivery.module.css';

interface Values {
  readonly packs: string;
  readonly packPrice: string;
  readonly locationId: string;
  readonly lotNumber: string;
  readonly expiresOn: string;
  readonly note: string;
}

interface Props {
  readonly deliveryId: string;
  readonly line: DeliveryLine;
  readonly onClose: () => void;
}

function check(values: Values, t: Text): FieldErrors {
  const { deliveryMore: words, ui } = t;
  const price = asDecimal(values.packPrice);
  return {
    packs: /^[1-9]\d{0,4}$/.test(values.packs.trim()) ? undefined : words.packsWrong,
    packPrice: price === undefined || price.startsWith('-') ? ui.decimal : undefined,
    note: values.note.trim() === '' ? ui.required : undefined,
  };
}

/** One line as it should have been; the service books the counter-entries. */
export function CorrectDialog({ deliveryId, line, onClose }: Props) {
  const t = useText();
  const { deliveryMore: words } = t;
  const { currency } = useFormat();
  const places = useQuery(placesQuery).data ?? [];
  const { book } = useBooking({ send: correctLine, changes: SHELF_CHANGES });
  const form = useForm({
    initial: {
      packs: String(line.packs),
      packPrice: line.kit?.packPrice ?? line.packPrice,
      locationId: line.location.id,
      lotNumber: line.lot.lotNumber ?? '',
      expiresOn: line.lot.labelExpiry ?? '',
      note: '',
    },
    check: (values: Values) => check(values, t),
    send: (values) => book({ deliveryId, lineNumber: line.lineNumber, ...bodyOf(values, line) }),
    onDone: ({ newLine }) => {
      notify({ tone: 'done', text: words.corrected(newLine) });
      onClose();
    },
  });
  const choices = places.map(({ id, name }) => ({ value: id, label: name }));
  return (
    <Dialog title={words.correctTitle(line.lineNumber)} opened onClose={onClose} size="lg">
      <Form form={form}>
        <p className={css.what}>{nameOf(line.consumable)}</p>
        <p>{words.correctLead}</p>
        <Used line={line} />
        <FieldRow>
          <TextField
            label={words.lot}
            placeholder={words.lotHint}
            maxLength={60}
            {...form.field('lotNumber')}
            data-autofocus
          />
          <DateField label={words.expires} {...form.field('expiresOn')} />
        </FieldRow>
        <FieldRow>
          <WholeField label={words.packs} {...form.field('packs')} />
          <DecimalField label={words.price} unit={currency} {...form.field('packPrice')} />
          <SelectField label={words.location} choices={choices} {...form.field('locationId')} />
        </FieldRow>
        <TextField label={words.why} maxLength={300} {...form.field('note')} />
        <FormActions>
          <SubmitButton form={form}>{words.correct}</SubmitButton>
          <Button variant="default" onClick={onClose}>
            {words.cancel}
          </Button>
        </FormActions>
      </Form>
    </Dialog>
  );
}

function bodyOf({ packs, packPrice, locationId, ...values }: Values, line: DeliveryLine) {
  const lotNumber = values.lotNumber.trim();
  return {
    presentationId: line.presentationId,
    packs: Number(packs.trim()),
    packPrice: asDecimal(packPrice) ?? packPrice,
    locationId,
    ...(lotNumber === '' ? {} : { lotNumber }),
    ...(values.expiresOn === '' ? {} : { expiresOn: values.expiresOn }),
    note: values.note.trim(),
  };
}

function Used({ line }: { readonly line: DeliveryLine }) {
  const { deliveryMore: words } = useText();
  const format = useFormat();
  if (line.remaining === line.quantity) return null;
  const gone = quantityFromMicro(quantity(line.quantity) - quantity(line.remaining));
  return <p>{words.correctUsed(format.quantity(formatQuantity(gone), line.consumable.unit))}</p>;
}
