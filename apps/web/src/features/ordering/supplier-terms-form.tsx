import { Button, Checkbox } from '@mantine/core';
import { useBooking } from '../../api/use-booking.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { DecimalField, WholeField } from '../../ui/fields.js';
import { FieldGroup, FieldRow, Form, FormActions, SubmitButton } from '../../ui/form.js';
import { notify } from '../../ui/notice-store.js';
import { useForm } from '../../ui/use-form.js';
import { PLANNING_CHANGES, type SupplyTerms, setSupplyTerms } from './api/planning-settings.js';
import { ClosureRows } from './closure-rows.js';
import css from './parts.module.css';
import { type TermsValues, termsBody, termsErrors, termsValues, WEEKDAYS } from './terms-values.js';

interface Props {
  readonly supplier: { readonly id: string; readonly name: string };
  readonly terms: SupplyTerms;
  readonly onClose: () => void;
}

/** Terms, working days and closed days of a supplier. */
export function SupplierTermsForm({ supplier, terms, onClose }: Props) {
  const t = useText();
  const w = t.orderingSettings;
  const { currency } = useFormat();
  const { book } = useBooking({
    send: (values: TermsValues) => setSupplyTerms(supplier.id, termsBody(values)),
    changes: PLANNING_CHANGES,
  });
  const form = useForm({
    initial: termsValues(terms),
    check: (values) => termsErrors(values, t),
    fieldOf: (path) => path,
    send: book,
    onDone: () => {
      notify({ tone: 'done', text: w.termsSaved(supplier.name) });
      onClose();
    },
  });
  const { workingDays, closures } = form.values;
  return (
    <Form form={form}>
      <FieldRow>
        <WholeField label={w.leadDays} hint={w.asPractice} {...form.field('leadDays')} />
        <DecimalField
          label={w.orderCost}
          hint={w.asPractice}
          unit={currency}
          {...form.field('orderCost')}
        />
      </FieldRow>
      <DecimalField label={w.minimum} unit={currency} {...form.field('minimumOrder')} />
      <FieldRow>
        <DecimalField label={w.freight} unit={currency} {...form.field('freight')} />
        <DecimalField label={w.freeFrom} unit={currency} {...form.field('freeFreightFrom')} />
      </FieldRow>
      <FieldGroup title={w.workingDays}>
        <div className={css.checks}>
          {WEEKDAYS.map((day) => (
            <Checkbox
              key={day}
              label={w.weekdays[day]}
              checked={workingDays.includes(day)}
              onChange={({ currentTarget: { checked } }) =>
                form.set(
                  'workingDays',
                  WEEKDAYS.filter((each) => (each === day ? checked : workingDays.includes(each))),
                )
              }
            />
          ))}
        </div>
        {form.errorAt('workingDays') !== undefined && (
          <p role="alert" className={css.wrong}>
            {form.errorAt('workingDays')}
          </p>
        )}
      </FieldGroup>
      <FieldGroup title={w.closures} hint={w.closuresHint}>
        <ClosureRows
          closures={closures}
          errorAt={form.errorAt}
          onChange={(next) => form.set('closures', next)}
        />
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
