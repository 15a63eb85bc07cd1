import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useBooking } from '../../api/use-booking.js';
import { useSession } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { CheckField, SelectField, TextField } from '../../ui/fields.js';
import { FieldGroup, FieldRow, Form, FormActions, SubmitButton } from '../../ui/form.js';
import { notify } from '../../ui/notice-store.js';
import { SuggestField } from '../../ui/suggest-field.js';
import { type FieldProps, useForm } from '../../ui/use-form.js';
import { useTyped } from '../../ui/use-typed.js';
import { allFeesQuery, type FeeHistory } from './api/list-fees.js';
import { templateNamesQuery } from './api/list-templates.js';
import { changeFee, createFee } from './api/save-fee.js';
import { PriceFields } from './price-fields.js';
import { type PriceValues, priceBody, priceErrors, priceValues } from './price-values.js';
import { REASONS, type Reason } from './terms.js';
import { useCoin } from './use-coin.js';

type Details = {
  code: string;
  name: string;
  feeClass: string;
  templateId: string;
  reason: Reason | '';
};

const detailsOf = (fee?: FeeHistory): Details => ({
  code: fee?.code ?? '',
  name: fee?.name ?? '',
  feeClass: fee?.feeClass ?? '',
  templateId: fee?.templateId ?? '',
  reason: fee?.reason ?? '',
});

/** A reason alone charges nothing: it only narrows a template. */
const detailsBody = ({ code, name, feeClass, templateId, reason }: Details) => ({
  code: code.trim(),
  name: name.trim(),
  feeClass: feeClass.trim() || null,
  templateId: templateId || null,
  reason: templateId === '' ? null : reason || null,
});

const CHANGES = [['fees'], ['fee-plans'], ['quotes']] as const;

interface NewProps {
  readonly onClose: () => void;
  readonly onSaved: (saved: FeeHistory) => void;
}

export function NewFeeForm({ onClose, onSaved }: NewProps) {
  const t = useText();
  const coin = useCoin();
  const typed = useTyped();
  const { today } = useSession();
  const { book } = useBooking({
    send: (values: Details & PriceValues, key) =>
      createFee({ ...detailsBody(values), ...priceBody(values) }, key),
    changes: CHANGES,
  });
  const form = useForm({
    initial: { ...detailsOf(), ...priceValues(null, today, typed) },
    check: (values) => ({
      code: values.code.trim() === '' ? t.ui.required : undefined,
      name: values.name.trim() === '' ? t.ui.required : undefined,
      ...priceErrors(values, coin, t),
    }),
    send: book,
    onDone: (saved) => {
      notify({ tone: 'done', text: t.setup.saved(saved.code) });
      onSaved(saved);
    },
  });
  return (
    <Form form={form}>
      <DetailFields values={form.values} field={form.field} />
      <FieldGroup title={t.fees.groups.price}>
        <PriceFields values={form.values} field={form.field} />
      </FieldGroup>
      <FormActions>
        <SubmitButton form={form}>{t.ui.save}</SubmitButton>
        <Button variant="default" onClick={onClose}>
          {t.ui.cancel}
        </Button>
      </FormActions>
    </Form>
  );
}

interface ChangeProps {
  readonly fee: FeeHistory;
  readonly onClose: () => void;
}

/** What is not the price: code, name, class, and when it is charged. */
export function ChangeFeeForm({ fee, onClose }: ChangeProps) {
  const t = useText();
  const { book } = useBooking({
    send: (values: Details & { active: boolean }) =>
      changeFee(fee.id, { ...detailsBody(values), active: values.active }),
    changes: CHANGES,
  });
  const form = useForm({
    initial: { ...detailsOf(fee), active: fee.active },
    check: ({ code, name }) => ({
      code: code.trim() === '' ? t.ui.required : undefined,
      name: name.trim() === '' ? t.ui.required : undefined,
    }),
    send: book,
    onDone: (saved) => {
      notify({ tone: 'done', text: t.setup.saved(saved.code) });
      onClose();
    },
  });
  return (
    <Form form={form}>
      <DetailFields values={form.values} field={form.field} />
      <CheckField label={t.setup.inUse} hint={t.setup.inUseHint} {...form.flag('active')} />
      <FormActions>
        <SubmitButton form={form}>{t.ui.save}</SubmitButton>
        <Button variant="default" onClick={onClose}>
          {t.ui.cancel}
        </Button>
      </FormActions>
    </Form>
  );
}

interface DetailProps {
  readonly values: Details;
  readonly field: (name: keyof Details) => FieldProps;
}

function DetailFields({ values, field }: DetailProps) {
  const w = useText().fees;
  const templates = useQuery(templateNamesQuery).data?.items ?? [];
  const known = useQuery(allFeesQuery()).data?.items ?? [];
  const classes = [...new Set(known.flatMap(({ feeClass }) => feeClass ?? []))].sort();
  const offered = templates.filter(({ id, active }) => active || id === values.templateId);
  return (
    <>
      <FieldGroup title={w.groups.what}>
        <FieldRow>
          <TextField
            label={w.code}
            hint={w.codeHint}
            {...field('code')}
            maxLength={40}
            data-autofocus
          />
          <SuggestField
            label={w.feeClass}
            hint={w.feeClassHint}
            suggestions={classes}
            {...field('feeClass')}
          />
        </FieldRow>
        <TextField label={w.name} {...field('name')} maxLength={200} />
      </FieldGroup>
      <FieldGroup title={w.groups.use}>
        <FieldRow>
          <SelectField
            label={w.template}
            hint={w.templateHint}
            empty={w.noTemplate}
            choices={offered.map(({ id, name }) => ({ value: id, label: name }))}
            {...field('templateId')}
          />
          {values.templateId !== '' && (
            <SelectField
              label={w.reason}
              hint={'\u00a0'}
              empty={w.anyReason}
              choices={REASONS.map((reason) => ({ value: reason, label: w.reasons[reason] }))}
              {...field('reason')}
            />
          )}
        </FieldRow>
      </FieldGroup>
    </>
  );
}
