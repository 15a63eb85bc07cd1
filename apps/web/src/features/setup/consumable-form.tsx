import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useBooking } from '../../api/use-booking.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { CheckField, DecimalField, SelectField, TextField, WholeField } from '../../ui/fields.js';
import { FieldGroup, FieldRow, Form, FormActions, SubmitButton } from '../../ui/form.js';
import { notify } from '../../ui/notice-store.js';
import { SuggestField } from '../../ui/suggest-field.js';
import { useForm } from '../../ui/use-form.js';
import { useTyped } from '../../ui/use-typed.js';
import { categoriesQuery } from './api/list-categories.js';
import type { Consumable } from './api/list-consumables.js';
import { changeConsumable, createConsumable } from './api/save-consumable.js';
import {
  type ConsumableValues,
  consumableBody,
  consumableErrors,
  consumableValues,
  STOCK_UNITS,
} from './consumable-values.js';

interface Props {
  readonly consumable?: Consumable;
  /** For a new one: the category of the list it is added from. */
  readonly category?: string;
  readonly onClose: () => void;
  readonly onSaved: (saved: Consumable) => void;
}

function useConsumableForm({ consumable, category = '', onSaved }: Props) {
  const t = useText();
  const typed = useTyped();
  const { book } = useBooking({
    send: (values: ConsumableValues, key) => {
      const body = consumableBody(values);
      return consumable
        ? changeConsumable(consumable.id, { ...body, active: values.active })
        : createConsumable({ ...body, id: key });
    },
    changes: [['consumables'], ['categories'], ['stock'], ['alerts']],
  });
  return useForm({
    initial: consumableValues(consumable, category, typed),
    check: (values) => consumableErrors(values, t),
    send: book,
    fieldOf: (path) => (path === 'lifeAfterOpening' ? 'lifeAfterOpening.value' : path),
    onDone: (saved) => {
      notify({ tone: 'done', text: t.setup.saved(saved.name) });
      onSaved(saved);
    },
  });
}

type Fields = { readonly form: ReturnType<typeof useConsumableForm> };

export function ConsumableForm(props: Props) {
  const t = useText();
  const form = useConsumableForm(props);
  return (
    <Form form={form}>
      <WhatFields form={form} />
      <LooksFields form={form} />
      <RuleFields form={form} />
      {props.consumable && (
        <CheckField label={t.setup.inUse} hint={t.setup.inUseHint} {...form.flag('active')} />
      )}
      <FormActions>
        <SubmitButton form={form}>{t.ui.save}</SubmitButton>
        <Button variant="default" onClick={props.onClose}>
          {t.ui.cancel}
        </Button>
      </FormActions>
    </Form>
  );
}

function WhatFields({ form }: Fields) {
  const t = useText();
  const w = t.setupCatalogue;
  const categories = useQuery(categoriesQuery).data?.items ?? [];
  return (
    <FieldGroup title={w.groups.what}>
      <TextField label={t.setup.name} {...form.field('name')} maxLength={200} data-autofocus />
      <FieldRow>
        <SuggestField
          label={w.category}
          hint={w.categoryHint}
          suggestions={categories.map(({ name }) => name)}
          {...form.field('category')}
        />
        <SelectField
          label={w.unit}
          hint={w.unitHint}
          choices={STOCK_UNITS.map((unit) => ({ value: unit, label: w.units[unit] }))}
          {...form.field('stockUnit')}
        />
      </FieldRow>
    </FieldGroup>
  );
}

const LOOKS = ['shade', 'opacity', 'viscosity', 'size', 'grit'] as const;

function LooksFields({ form }: Fields) {
  const w = useText().setupCatalogue;
  return (
    <FieldGroup title={w.groups.looks} hint={w.groups.looksHint}>
      <FieldRow>
        {LOOKS.map((name) => (
          <TextField key={name} label={w[name]} {...form.field(name)} maxLength={80} />
        ))}
      </FieldRow>
    </FieldGroup>
  );
}

function RuleFields({ form }: Fields) {
  const w = useText().setupCatalogue;
  const { unitName } = useFormat();
  const unit = unitName('2', form.values.stockUnit);
  return (
    <FieldGroup title={w.groups.rules}>
      <FieldRow>
        <WholeField label={w.life} hint={w.lifeHint} {...form.field('lifeAfterOpening.value')} />
        <SelectField
          label={w.lifeUnit}
          hint={'\u00a0'}
          choices={(['day', 'month'] as const).map((each) => ({
            value: each,
            label: w.lifeUnits[each],
          }))}
          {...form.field('lifeAfterOpening.unit')}
        />
      </FieldRow>
      <FieldRow>
        <DecimalField label={w.reorderAt} unit={unit} {...form.field('reorderAt')} />
        <DecimalField label={w.reorderUpTo} unit={unit} {...form.field('reorderUpTo')} />
      </FieldRow>
      <DecimalField label={w.density} hint={w.densityHint} {...form.field('densityGPerCm3')} />
    </FieldGroup>
  );
}
