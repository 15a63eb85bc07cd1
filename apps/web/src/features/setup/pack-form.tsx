import { Button } from '@mantine/core';
import { useBooking } from '../../api/use-booking.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { asDecimal } from '../../ui/decimal-text.js';
import { CheckField, DecimalField, SelectField, TextField, WholeField } from '../../ui/fields.js';
import { FieldRow, Form, FormActions, SubmitButton } from '../../ui/form.js';
import { notify } from '../../ui/notice-store.js';
import { useForm } from '../../ui/use-form.js';
import { useTyped } from '../../ui/use-typed.js';
import type { Consumable } from './api/list-consumables.js';
import type { Presentation } from './api/list-presentations.js';
import type { Supplier } from './api/list-suppliers.js';
import { changePresentation, createPresentation } from './api/save-presentation.js';
import css from './pack.module.css';
import { type PackValues, packBody, packErrors, packValues } from './pack-values.js';
import { packSentence, packTotal, unitPrice } from './pack-words.js';
import { useUnitPrice } from './use-unit-price.js';

const DISPENSINGS = ['multi-use', 'single-dose', 'by-piece'] as const;

interface Props {
  readonly consumable: Consumable;
  readonly suppliers: readonly Supplier[];
  readonly pack?: Presentation;
  readonly onClose: () => void;
}

function usePackForm({ consumable, pack, onClose }: Props) {
  const t = useText();
  const typed = useTyped();
  const { book } = useBooking({
    send: (values: PackValues, key) => {
      const body = packBody(values);
      return pack
        ? changePresentation(pack.id, { ...body, active: values.active })
        : createPresentation({ ...body, consumableId: consumable.id, id: key });
    },
    changes: [['presentations'], ['stock', 'prices']],
  });
  return useForm({
    initial: packValues(pack, consumable.stockUnit, typed),
    check: (values) => packErrors(values, consumable.stockUnit, t),
    send: book,
    explain: ({ code }) => (code === 'presentation_fixed' ? t.setupCatalogue.fixed : undefined),
    onDone: ({ name }) => {
      notify({ tone: 'done', text: t.setup.saved(name) });
      onClose();
    },
  });
}

export function PackForm(props: Props) {
  const { consumable, suppliers, pack, onClose } = props;
  const t = useText();
  const w = t.setupCatalogue;
  const form = usePackForm(props);
  const offered = suppliers.filter(({ id, active }) => active || id === pack?.supplierId);
  return (
    <Form form={form}>
      <TextField
        label={w.packName}
        placeholder={w.packNamePlaceholder}
        {...form.field('name')}
        maxLength={200}
        data-autofocus
      />
      <ContentFields form={form} unit={consumable.stockUnit} />
      <InWords values={form.values} unit={consumable.stockUnit} />
      <FieldRow>
        <DecimalField label={w.price} {...form.field('listPrice')} hint={t.setup.optional} />
        <SelectField
          label={w.supplier}
          hint={t.setup.optional}
          empty={w.noSupplier}
          choices={offered.map(({ id, name }) => ({ value: id, label: name }))}
          {...form.field('supplierId')}
        />
      </FieldRow>
      <FieldRow>
        <TextField
          label={w.article}
          hint={t.setup.optional}
          {...form.field('articleCode')}
          maxLength={60}
        />
        <TextField
          label={w.device}
          hint={w.deviceHint}
          {...form.field('deviceIdentifier')}
          maxLength={100}
        />
      </FieldRow>
      {pack && (
        <CheckField label={t.setup.inUse} hint={t.setup.inUseHint} {...form.flag('active')} />
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

interface ContentProps {
  readonly form: ReturnType<typeof usePackForm>;
  readonly unit: Consumable['stockUnit'];
}

function ContentFields({ form, unit }: ContentProps) {
  const w = useText().setupCatalogue;
  const { unitName } = useFormat();
  const { dispensing } = form.values;
  return (
    <>
      <SelectField
        label={w.dispensing}
        hint={w.dispensingHints[dispensing]}
        choices={DISPENSINGS.map((each) => ({ value: each, label: w.dispensings[each] }))}
        {...form.field('dispensing')}
      />
      <FieldRow>
        <WholeField label={w.containers[dispensing]} {...form.field('containersPerPack')} />
        <DecimalField
          label={w.content[dispensing]}
          unit={unitName('2', unit)}
          {...form.field('contentPerContainer')}
        />
      </FieldRow>
    </>
  );
}

interface WordsProps {
  readonly values: PackValues;
  readonly unit: Consumable['stockUnit'];
}

/** What was typed, read back while it is typed. */
function InWords({ values, unit }: WordsProps) {
  const t = useText();
  const w = t.setupCatalogue;
  const format = useFormat();
  const perUnit = useUnitPrice();
  const containersPerPack = values.containersPerPack.trim();
  const contentPerContainer = asDecimal(values.contentPerContainer) ?? '';
  const pack = { dispensing: values.dispensing, containersPerPack, contentPerContainer };
  const sentence = packSentence(pack, unit, format, t);
  const total = packTotal(containersPerPack, contentPerContainer);
  const each = unitPrice(asDecimal(values.listPrice) ?? null, total);
  return (
    <p className={css.words} aria-live="polite">
      <strong>{w.inWords}:</strong> {sentence ?? '…'}
      {each !== undefined && sentence !== undefined && (
        <>
          {' · '}
          {perUnit(each)} {w.priceEach(format.unitName('1', unit))}
        </>
      )}
    </p>
  );
}
