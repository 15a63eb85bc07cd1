import { Button } from '@mantine/core';
import { useBooking } from '../../api/use-booking.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { DecimalField, SelectField, WholeField } from '../../ui/fields.js';
import { FieldGroup, Form, FormActions, SubmitButton } from '../../ui/form.js';
import { notify } from '../../ui/notice-store.js';
import { RowButton } from '../../ui/row-button.js';
import { useFocusAfter } from '../../ui/use-focus-after.js';
import { useForm } from '../../ui/use-form.js';
import {
  PLANNING_CHANGES,
  type PresentationTerms,
  setPresentationTerms,
} from './api/planning-settings.js';
import css from './parts.module.css';
import {
  DISCOUNTS,
  type PriceValues,
  priceBody,
  priceErrors,
  priceValues,
  type TypedStep,
} from './price-values.js';

interface Props {
  readonly pack: { readonly id: string; readonly name: string };
  readonly terms: PresentationTerms;
  readonly onClose: () => void;
}

/** The smallest order and the price list of a pack. */
export function PriceListForm({ pack, terms, onClose }: Props) {
  const t = useText();
  const w = t.orderingSettings;
  const { book } = useBooking({
    send: (values: PriceValues) => setPresentationTerms(pack.id, priceBody(values)),
    changes: PLANNING_CHANGES,
  });
  const form = useForm({
    initial: priceValues(terms),
    check: (values) => priceErrors(values, t),
    fieldOf: (path) => path,
    send: book,
    onDone: () => {
      notify({ tone: 'done', text: w.packSaved(pack.name) });
      onClose();
    },
  });
  return (
    <Form form={form}>
      <WholeField label={w.least} {...form.field('minimumPacks')} />
      <FieldGroup title={w.list} hint={w.pricesHint}>
        <Steps
          steps={form.values.prices}
          errorAt={form.errorAt}
          onChange={(prices) => form.set('prices', prices)}
        />
      </FieldGroup>
      {form.values.prices.length > 1 && (
        <SelectField
          label={w.discount}
          choices={DISCOUNTS.map((value) => ({ value, label: w.discounts[value] }))}
          {...form.field('discount')}
        />
      )}
      <FormActions>
        <SubmitButton form={form}>{t.ui.save}</SubmitButton>
        <Button variant="default" onClick={onClose}>
          {t.ui.cancel}
        </Button>
      </FormActions>
    </Form>
  );
}

interface StepsProps {
  readonly steps: readonly TypedStep[];
  readonly errorAt: (path: string) => string | undefined;
  readonly onChange: (steps: readonly TypedStep[]) => void;
}

function Steps({ steps, errorAt, onChange }: StepsProps) {
  const w = useText().orderingSettings;
  const { currency } = useFormat();
  const field = (i: number, name: 'fromPacks' | 'packPrice') => ({
    name: `prices[${i}].${name}`,
    value: steps[i]?.[name] ?? '',
    onValue: (value: string) =>
      onChange(steps.map((each, at) => (at === i ? { ...each, [name]: value } : each))),
    error: errorAt(`prices[${i}].${name}`),
  });
  const { place, focusAfter } = useFocusAfter();
  const key = Math.max(0, ...steps.map((each) => each.key)) + 1;
  const focusOn = (at: number) =>
    focusAfter(at < 0 ? 'button' : `[name="prices[${at}].fromPacks"]`);
  return (
    <div ref={place} className={css.rows}>
      {steps.map((step, i) => (
        <div key={step.key} className={css.triple}>
          <WholeField label={w.fromPacks} {...field(i, 'fromPacks')} />
          <DecimalField label={w.packPrice} unit={currency} {...field(i, 'packPrice')} />
          <RowButton
            label={w.removePrice(String(i + 1))}
            onClick={() => {
              onChange(steps.filter((each) => each !== step));
              focusOn(Math.min(i, steps.length - 2));
            }}
          >
            {w.remove}
          </RowButton>
        </div>
      ))}
      <div>
        <Button
          variant="default"
          onClick={() => {
            const fromPacks = steps.length === 0 ? '1' : '';
            onChange([...steps, { key, fromPacks, packPrice: '' }]);
            focusOn(steps.length);
          }}
        >
          {w.addPrice}
        </Button>
      </div>
    </div>
  );
}
