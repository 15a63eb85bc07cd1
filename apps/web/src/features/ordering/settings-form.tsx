import { useBooking } from '../../api/use-booking.js';
import { useFormat } from '../../app/use-format.js';
import type { Text } from '../../text/text.js';
import { useText } from '../../text/text-provider.js';
import { asDecimal } from '../../ui/decimal-text.js';
import { CheckField, DecimalField, SelectField, WholeField } from '../../ui/fields.js';
import { FieldRow, Form, FormActions, SubmitButton } from '../../ui/form.js';
import { notify } from '../../ui/notice-store.js';
import { type FieldErrors, useForm } from '../../ui/use-form.js';
import {
  PLANNING_CHANGES,
  type PlanningSettings,
  setPlanningSettings,
} from './api/planning-settings.js';
import css from './parts.module.css';
import { asPercent, shareTyped } from './percent.js';

type Values = {
  serviceMeasure: string;
  serviceLevel: string;
  reviewDays: string;
  expiryCertainty: string;
  carryingRate: string;
  orderCost: string;
  leadDays: string;
  leaveOutRetakes: boolean;
};

const MEASURES = ['cycle service', 'fill rate'] as const;
const MOST_CARRYING = '500';

function valuesOf(settings: PlanningSettings): Values {
  return {
    serviceMeasure: settings.serviceMeasure,
    serviceLevel: asPercent(settings.serviceLevel),
    reviewDays: String(settings.reviewDays),
    expiryCertainty: asPercent(settings.expiryCertainty),
    carryingRate: asPercent(settings.carryingRate),
    orderCost: settings.orderCost,
    leadDays: String(settings.leadDays),
    leaveOutRetakes: settings.leaveOutRetakes,
  };
}

function bodyOf(values: Values): PlanningSettings {
  return {
    serviceMeasure: MEASURES.find((each) => each === values.serviceMeasure) ?? 'cycle service',
    serviceLevel: shareTyped(values.serviceLevel) ?? '',
    reviewDays: Number(values.reviewDays),
    expiryCertainty: shareTyped(values.expiryCertainty) ?? '',
    carryingRate: shareTyped(values.carryingRate, MOST_CARRYING) ?? '',
    orderCost: asDecimal(values.orderCost) ?? '',
    leadDays: Number(values.leadDays),
    leaveOutRetakes: values.leaveOutRetakes,
  };
}

function errorsOf(values: Values, t: Text): FieldErrors {
  const w = t.orderingSettings;
  const whole = (text: string, most: number) =>
    /^\d{1,3}$/.test(text.trim()) && Number(text) <= most ? undefined : w.whole(0, most);
  const share = (text: string, most: string) =>
    shareTyped(text, most) === undefined ? w.percent(most) : undefined;
  const cost = asDecimal(values.orderCost);
  return {
    serviceLevel: share(values.serviceLevel, '99.99'),
    reviewDays: whole(values.reviewDays, 90),
    expiryCertainty: share(values.expiryCertainty, '99.99'),
    carryingRate: share(values.carryingRate, MOST_CARRYING),
    orderCost: cost === undefined || cost.startsWith('-') ? t.ui.decimal : undefined,
    leadDays: whole(values.leadDays, 250),
  };
}

interface Props {
  readonly settings: PlanningSettings;
  readonly readOnly: boolean;
}

export function SettingsForm({ settings, readOnly }: Props) {
  const t = useText();
  const w = t.orderingSettings;
  const { currency } = useFormat();
  const { book } = useBooking({
    send: (values: Values) => setPlanningSettings(bodyOf(values)),
    changes: PLANNING_CHANGES,
  });
  const form = useForm({
    initial: valuesOf(settings),
    check: (values) => errorsOf(values, t),
    send: book,
    onDone: () => notify({ tone: 'done', text: w.saved }),
  });
  const measure = MEASURES.find((each) => each === form.values.serviceMeasure) ?? MEASURES[0];
  const field = (name: Exclude<keyof Values, 'leaveOutRetakes'>) => ({
    ...form.field(name),
    disabled: readOnly,
  });
  return (
    <div className={css.narrow}>
      <Form form={form}>
        <FieldRow>
          <SelectField
            label={w.measure}
            hint={w.measures[measure].explain}
            choices={MEASURES.map((value) => ({ value, label: w.measures[value].name }))}
            {...field('serviceMeasure')}
          />
          <DecimalField label={w.level} hint={w.levelHint} unit="%" {...field('serviceLevel')} />
        </FieldRow>
        <FieldRow>
          <DecimalField
            label={w.certainty}
            hint={w.certaintyHint}
            unit="%"
            {...field('expiryCertainty')}
          />
          <DecimalField
            label={w.carrying}
            hint={w.carryingHint}
            unit="%"
            {...field('carryingRate')}
          />
        </FieldRow>
        <FieldRow>
          <DecimalField
            label={w.orderCost}
            hint={w.orderCostHint}
            unit={currency}
            {...field('orderCost')}
          />
          <WholeField label={w.leadDays} hint={w.leadDaysHint} {...field('leadDays')} />
        </FieldRow>
        <WholeField label={w.review} {...field('reviewDays')} />
        <CheckField label={w.retakes} {...form.flag('leaveOutRetakes')} />
        {!readOnly && (
          <FormActions>
            <SubmitButton form={form}>{t.ui.save}</SubmitButton>
          </FormActions>
        )}
      </Form>
    </div>
  );
}
