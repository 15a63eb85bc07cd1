import { Button } from '@mantine/core';
import { formatMoney, money, moneyFromMicro, multiplyRatio } from '#lib/measure';
import type { Shape } from '../../api/client.js';
import { useBooking } from '../../api/use-booking.js';
import { useSession } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import type { Text } from '../../text/text.js';
import { useText } from '../../text/text-provider.js';
import { asDecimal } from '../../ui/decimal-text.js';
import { DateField, DecimalField, NoteField } from '../../ui/fields.js';
import { FieldRow, Form, FormActions, SubmitButton } from '../../ui/form.js';
import { notify } from '../../ui/notice-store.js';
import { type FieldErrors, useForm } from '../../ui/use-form.js';
import { createRate } from './api/rates.js';
import css from './fees.module.css';
import { minutesOf, rateOf } from './rate.js';
import { usePrecise } from './use-precise.js';

type Values = {
  validFrom: string;
  yearlyCost: string;
  practicalMinutes: string;
  assistantRate: string;
  assistantPracticalMinutes: string;
  note: string;
};

/** As in the service: so many minutes at most. */
const MOST_MINUTES = 100_000_000n;

function minutesTyped(hours: string): bigint | undefined {
  const minutes = minutesOf(asDecimal(hours) ?? '');
  return minutes === undefined || minutes > MOST_MINUTES ? undefined : minutes;
}

function isAmount(typed: string): boolean {
  const amount = asDecimal(typed);
  return amount !== undefined && !amount.startsWith('-');
}

const isBlank = (text: string) => text.trim() === '';

function rateErrors(values: Values, t: Text): FieldErrors {
  const { validFrom, yearlyCost, assistantRate, assistantPracticalMinutes } = values;
  const hours = (typed: string) =>
    minutesTyped(typed) === undefined ? t.rates.hoursWrong : undefined;
  const rateMissing = isBlank(assistantPracticalMinutes) ? undefined : t.rates.assistantRateNeeded;
  const rateWrong = isAmount(assistantRate) ? undefined : t.ui.decimal;
  return {
    validFrom: validFrom === '' ? t.ui.required : undefined,
    yearlyCost: isAmount(yearlyCost) ? undefined : t.ui.decimal,
    practicalMinutes: hours(values.practicalMinutes),
    assistantRate: isBlank(assistantRate) ? rateMissing : rateWrong,
    assistantPracticalMinutes: isBlank(assistantPracticalMinutes)
      ? undefined
      : hours(assistantPracticalMinutes),
  };
}

/** Minutes go as a whole number; only of hours with which nothing is wrong. */
function rateBody(values: Values, id: string): Shape<'NewCostRateDto'> {
  const { assistantRate, assistantPracticalMinutes: assistantHours } = values;
  return {
    id,
    validFrom: values.validFrom,
    yearlyCost: asDecimal(values.yearlyCost) ?? '',
    practicalMinutes: Number(minutesTyped(values.practicalMinutes)),
    assistantRate: isBlank(assistantRate) ? null : (asDecimal(assistantRate) ?? null),
    assistantPracticalMinutes: isBlank(assistantHours)
      ? null
      : Number(minutesTyped(assistantHours)),
    note: values.note.trim() || null,
  };
}

interface Props {
  readonly onClose: () => void;
}

function useRateForm({ onClose }: Props) {
  const t = useText();
  const { day } = useFormat();
  const { today } = useSession();
  const { book } = useBooking({
    send: (values: Values, key) => createRate(rateBody(values, key)),
    changes: [['cost-rates'], ['reports'], ['quotes']],
  });
  return useForm({
    initial: {
      ...{ validFrom: today, yearlyCost: '', practicalMinutes: '' },
      ...{ assistantRate: '', assistantPracticalMinutes: '', note: '' },
    },
    check: (values) => rateErrors(values, t),
    send: book,
    onDone: ({ validFrom }) => {
      notify({ tone: 'done', text: t.rates.saved(day(validFrom)) });
      onClose();
    },
  });
}

export function RateForm(props: Props) {
  const t = useText();
  const w = t.rates;
  const { currency } = useFormat();
  const form = useRateForm(props);
  return (
    <Form form={form}>
      <FieldRow>
        <DateField label={w.from} {...form.field('validFrom')} />
        <DecimalField label={w.yearlyCost} unit={currency} {...form.field('yearlyCost')} />
      </FieldRow>
      <p className={css.quiet}>{w.yearlyHint}</p>
      <DecimalField label={w.hoursLabel} hint={w.hoursHint} {...form.field('practicalMinutes')} />
      <Said values={form.values} />
      <FieldRow>
        <DecimalField
          label={w.assistantLabel}
          hint={w.assistantHint}
          unit={currency}
          {...form.field('assistantRate')}
        />
        <DecimalField
          label={w.assistantHours}
          hint={w.assistantHoursHint}
          {...form.field('assistantPracticalMinutes')}
        />
      </FieldRow>
      <NoteField
        label={w.note}
        placeholder={w.notePlaceholder}
        {...form.field('note')}
        maxLength={500}
      />
      <FormActions>
        <SubmitButton form={form}>{t.ui.save}</SubmitButton>
        <Button variant="default" onClick={props.onClose}>
          {t.ui.cancel}
        </Button>
      </FormActions>
    </Form>
  );
}

const EXAMPLE_MINUTES = 40n;

/** The rate while it is typed, and what it makes of forty minutes. */
function Said({ values }: { readonly values: Values }) {
  const w = useText().rates;
  const format = useFormat();
  const precise = usePrecise();
  const minutes = minutesTyped(values.practicalMinutes);
  const yearly = isAmount(values.yearlyCost) ? asDecimal(values.yearlyCost) : undefined;
  const rate = minutes && yearly ? rateOf(yearly, minutes) : undefined;
  if (!rate || yearly === undefined) return null;
  const cost = multiplyRatio(money(yearly), EXAMPLE_MINUTES, rate.minutes, 'half-up');
  return (
    <div className={css.words} aria-live="polite">
      <p>
        {w.sentence(
          format.money(yearly),
          format.number(asDecimal(values.practicalMinutes) ?? ''),
          precise.money(formatMoney(rate.perMinute)),
          precise.money(formatMoney(rate.perHour)),
        )}
      </p>
      <p>{w.example(String(EXAMPLE_MINUTES), format.money(formatMoney(moneyFromMicro(cost))))}</p>
      <p className={css.quiet}>{`${w.idleTitle}.`}</p>
    </div>
  );
}
