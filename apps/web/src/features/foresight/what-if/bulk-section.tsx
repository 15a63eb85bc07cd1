import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { asDecimal } from '../../../ui/decimal-text.js';
import { DecimalField, SelectField, WholeField } from '../../../ui/fields.js';
import { FieldRow, Form, FormActions, SubmitButton } from '../../../ui/form.js';
import { Section } from '../../../ui/section.js';
import { useForm } from '../../../ui/use-form.js';
import { packsQuery } from '../api/list-items.js';
import { askBulk, type BulkAnswer } from '../api/what-if.js';
import { ItemPicker } from '../item-picker.js';
import { BulkVerdict } from './bulk-verdict.js';
import css from './what-if.module.css';

const WHOLE = /^[1-9]\d{0,5}$/;

/** A bulk offer is typed in, and the answer is one sentence with the figures behind it. */
export function BulkSection({ item }: { readonly item: string | undefined }) {
  const t = useText();
  const format = useFormat();
  const words = t.foresight.bulk;
  const [answer, setAnswer] = useState<BulkAnswer>();
  const form = useForm({
    initial: { consumableId: item ?? '', presentationId: '', packs: '', packPrice: '' },
    check: ({ consumableId, presentationId, packs, packPrice }) => ({
      consumableId: consumableId === '' ? t.ui.required : undefined,
      presentationId: presentationId === '' ? t.ui.required : undefined,
      packs: WHOLE.test(packs.trim()) ? undefined : words.wholePacks,
      packPrice: asDecimal(packPrice) === undefined ? t.ui.decimal : undefined,
    }),
    send: ({ packs, packPrice, ...ids }) =>
      askBulk({ ...ids, packs: Number(packs), packPrice: asDecimal(packPrice) ?? '' }),
    onDone: setAnswer,
  });
  const { consumableId } = form.values;
  const packs = useQuery({ ...packsQuery(consumableId), enabled: consumableId !== '' }).data;
  const forget = () => setAnswer(undefined);
  return (
    <Section title={words.title} hint={words.hint}>
      <div className={css.bulk}>
        <Form form={form}>
          <ItemPicker
            label={words.consumable}
            none={t.ui.choose}
            value={consumableId === '' ? undefined : consumableId}
            error={form.errorAt('consumableId')}
            onPick={(id) => {
              form.set('consumableId', id ?? '');
              form.set('presentationId', '');
              forget();
            }}
          />
          <SelectField
            label={words.pack}
            {...form.field('presentationId')}
            empty={t.ui.choose}
            choices={(packs?.items ?? []).map(({ id, name }) => ({ value: id, label: name }))}
          />
          <FieldRow>
            <WholeField label={words.packs} {...form.field('packs')} />
            <DecimalField
              label={words.packPrice}
              unit={format.currency}
              {...form.field('packPrice')}
            />
          </FieldRow>
          <FormActions>
            <SubmitButton form={form}>{words.ask}</SubmitButton>
          </FormActions>
        </Form>
        {answer && <BulkVerdict answer={answer} />}
      </div>
    </Section>
  );
}
