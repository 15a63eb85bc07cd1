import { useQuery } from '@tanstack/react-query';
import { useBooking } from '../../api/use-booking.js';
import { useMay } from '../../app/session.js';
import type { Text } from '../../text/text.js';
import { useText } from '../../text/text-provider.js';
import { asDecimal } from '../../ui/decimal-text.js';
import { micro } from '../../ui/drawn.js';
import { DecimalField, NoteField, SelectField, WholeField } from '../../ui/fields.js';
import { FieldRow, Form, FormActions, SubmitButton } from '../../ui/form.js';
import { Loaded } from '../../ui/loaded.js';
import { More } from '../../ui/more.js';
import { notify } from '../../ui/notice-store.js';
import { Section } from '../../ui/section.js';
import { type FieldErrors, useForm } from '../../ui/use-form.js';
import type { Consumable } from './api/planned-items.js';
import {
  type OwnPlanning,
  ownPlanningQuery,
  PLANNING_CHANGES,
  setOwnPlanning,
} from './api/planning-settings.js';
import css from './parts.module.css';
import { asPercent, shareTyped } from './percent.js';

/** What a consumable has of its own instead of what is reckoned. */
export function OwnSection({ consumable }: { readonly consumable: Consumable }) {
  const w = useText().orderingItem.own;
  const may = useMay();
  const query = useQuery(ownPlanningQuery(consumable.id));
  if (!may('ordering.manage')) return null;
  return (
    <Section title={w.title} hint={w.hint}>
      <Loaded query={query}>
        {({ own }) => (
          <More summary={w.open} opened={Object.values(valuesOf(own)).some((text) => text !== '')}>
            <OwnForm key={JSON.stringify(own)} consumable={consumable} own={own} />
          </More>
        )}
      </Loaded>
    </Section>
  );
}

type Values = {
  reorderAt: string;
  orderUpTo: string;
  shelfRoom: string;
  serviceMeasure: string;
  serviceLevel: string;
  reviewDays: string;
  expiryCertainty: string;
  note: string;
};

function valuesOf(own: OwnPlanning): Values {
  const share = (value: string | null | undefined) => (value ? asPercent(value) : '');
  return {
    reorderAt: own.reorderAt ?? '',
    orderUpTo: own.orderUpTo ?? '',
    shelfRoom: own.shelfRoom ?? '',
    serviceMeasure: own.serviceMeasure ?? '',
    serviceLevel: share(own.serviceLevel),
    reviewDays: own.reviewDays === null ? '' : String(own.reviewDays ?? ''),
    expiryCertainty: share(own.expiryCertainty),
    note: own.note ?? '',
  };
}

const isBlank = (text: string) => text.trim() === '';
const given = (text: string) => (isBlank(text) ? null : (asDecimal(text) ?? null));
const shareOf = (text: string) => (isBlank(text) ? null : (shareTyped(text) ?? null));

const MEASURES = ['cycle service', 'fill rate'] as const;

function bodyOf(values: Values): OwnPlanning {
  return {
    reorderAt: given(values.reorderAt),
    orderUpTo: given(values.orderUpTo),
    shelfRoom: given(values.shelfRoom),
    serviceMeasure: MEASURES.find((measure) => measure === values.serviceMeasure) ?? null,
    serviceLevel: shareOf(values.serviceLevel),
    reviewDays: isBlank(values.reviewDays) ? null : Number(values.reviewDays),
    expiryCertainty: shareOf(values.expiryCertainty),
    note: values.note.trim() || null,
  };
}

function errorsOf(values: Values, t: Text): FieldErrors {
  const w = t.orderingItem.own;
  const decimal = (text: string) =>
    isBlank(text) || asDecimal(text) !== undefined ? undefined : t.ui.decimal;
  const share = (text: string) =>
    isBlank(text) || shareTyped(text) !== undefined ? undefined : w.percent;
  const [point, upTo] = [given(values.reorderAt), given(values.orderUpTo)];
  const crossed = point !== null && upTo !== null && micro(upTo) < micro(point);
  const apart = isBlank(values.serviceMeasure) !== isBlank(values.serviceLevel);
  const days = values.reviewDays.trim();
  return {
    reorderAt: decimal(values.reorderAt),
    orderUpTo: decimal(values.orderUpTo) ?? (crossed ? w.crossed : undefined),
    shelfRoom: decimal(values.shelfRoom),
    serviceLevel: share(values.serviceLevel) ?? (apart ? w.together : undefined),
    reviewDays:
      days === '' || (/^\d{1,2}$/.test(days) && Number(days) <= 90) ? undefined : w.review,
    expiryCertainty: share(values.expiryCertainty),
  };
}

interface FormProps {
  readonly consumable: Consumable;
  readonly own: OwnPlanning;
}

function OwnForm({ consumable, own }: FormProps) {
  const t = useText();
  const w = t.orderingItem.own;
  const measures = t.orderingSettings.measures;
  const { book } = useBooking({
    send: (values: Values) => setOwnPlanning(consumable.id, bodyOf(values)),
    changes: PLANNING_CHANGES,
  });
  const form = useForm({
    initial: valuesOf(own),
    check: (values) => errorsOf(values, t),
    send: book,
    onDone: () => notify({ tone: 'done', text: w.saved }),
  });
  const { unit } = consumable;
  return (
    <div className={`${css.narrow ?? ''} tb-screen-only`}>
      <Form form={form}>
        <FieldRow>
          <DecimalField label={w.reorderAt} unit={unit} {...form.field('reorderAt')} />
          <DecimalField label={w.orderUpTo} unit={unit} {...form.field('orderUpTo')} />
        </FieldRow>
        <DecimalField
          label={w.shelfRoom}
          hint={w.shelfRoomHint}
          unit={unit}
          {...form.field('shelfRoom')}
        />
        <FieldRow>
          <SelectField
            label={w.measure}
            empty={w.asPractice}
            choices={MEASURES.map((value) => ({ value, label: measures[value].name }))}
            {...form.field('serviceMeasure')}
          />
          <DecimalField label={w.level} unit="%" {...form.field('serviceLevel')} />
        </FieldRow>
        <FieldRow>
          <WholeField label={w.reviewDays} {...form.field('reviewDays')} />
          <DecimalField label={w.certainty} unit="%" {...form.field('expiryCertainty')} />
        </FieldRow>
        <NoteField label={w.note} {...form.field('note')} maxLength={500} />
        <FormActions>
          <SubmitButton form={form}>{t.ui.save}</SubmitButton>
        </FormActions>
      </Form>
    </div>
  );
}
