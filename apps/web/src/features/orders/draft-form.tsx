import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import {
  DecimalField,
  NoteField,
  SearchSelectField,
  TextField,
  WholeField,
} from '../../ui/fields.js';
import { FieldRow, Form, FormActions, SubmitButton } from '../../ui/form.js';
import { Section } from '../../ui/section.js';
import { useFocusAfter } from '../../ui/use-focus-after.js';
import { useForm } from '../../ui/use-form.js';
import type { Order } from './api/get-order.js';
import { type Pack, packsQuery, suppliersQuery } from './api/list-goods.js';
import { type Draft, type DraftLine, draftErrors } from './draft.js';
import css from './orders.module.css';

interface Options {
  readonly initial: Draft;
  readonly send: (draft: Draft) => Promise<Order>;
  readonly onDone: (order: Order) => void;
}

/** The form of an order, new or written anew. */
export function useDraftForm({ initial, send, onDone }: Options) {
  const t = useText();
  return useForm({
    initial,
    check: (values: Draft) => draftErrors(values, t),
    send,
    fieldOf: (path) => path.replace('.presentationId', '.packs'),
    explain: ({ code }) => (code === 'order_changed_meanwhile' ? t.orders.conflict : undefined),
    onDone,
  });
}

type DraftForm = ReturnType<typeof useDraftForm>;

interface Props {
  readonly form: DraftForm;
  readonly submit: string;
  readonly hint?: string | undefined;
  /** What the terms of the supplier come to, where nobody says otherwise. */
  readonly freight?: string | undefined;
  /** Nothing is typed that had to be saved. */
  readonly untouched?: boolean;
  /** More buttons beside the one that saves. */
  readonly children?: ReactNode;
}

export function DraftFields(props: Props) {
  const { form, submit, hint, freight = '', untouched = false, children } = props;
  const t = useText();
  const w = t.orders.draft;
  const { currency } = useFormat();
  return (
    <Form form={form}>
      <div className={css.supplier}>
        <SupplierField form={form} />
      </div>
      <Section title={t.orders.lines}>
        <Lines form={form} />
      </Section>
      <FieldRow>
        <DecimalField
          label={w.freight}
          hint={w.freightHint}
          placeholder={freight}
          unit={currency}
          {...form.field('freight')}
        />
        <TextField
          label={w.reference}
          hint={t.orders.optional}
          maxLength={80}
          {...form.field('reference')}
        />
      </FieldRow>
      <NoteField label={w.note} hint={t.orders.optional} maxLength={1000} {...form.field('note')} />
      {hint !== undefined && <p className={css.quiet}>{hint}</p>}
      <FormActions>
        <SubmitButton form={form} quiet={untouched}>
          {submit}
        </SubmitButton>
        {children}
      </FormActions>
    </Form>
  );
}

function SupplierField({ form }: { readonly form: DraftForm }) {
  const w = useText().orders.draft;
  const suppliers = useQuery(suppliersQuery);
  return (
    <SearchSelectField
      label={w.chooseSupplier}
      choices={(suppliers.data ?? []).map(({ id, name }) => ({ value: id, label: name }))}
      {...form.field('supplierId')}
    />
  );
}

function useLines(form: DraftForm) {
  const { lines } = form.values;
  /** Errors are named by the places of lines, and these have changed. */
  const set = (next: readonly DraftLine[]) => {
    form.set('lines', next);
    for (const path of Object.keys(form.fieldErrors)) {
      if (path.startsWith('lines') || path === 'add') form.clearAt(path);
    }
  };
  return {
    lines,
    add: (pack: Pack) =>
      set([
        ...lines,
        {
          ...{ id: undefined, presentationId: pack.id, goods: pack.goods, pack: pack.name },
          ...{ packs: '1', packPrice: '' },
        },
      ]),
    remove: (at: number) => set(lines.filter((_, i) => i !== at)),
    change: (at: number, field: 'packs' | 'packPrice', value: string) => {
      form.set(
        'lines',
        lines.map((line, i) => (i === at ? { ...line, [field]: value } : line)),
      );
      form.clearAt(`lines[${at}].${field}`);
    },
  };
}

/** After a line has come or gone, the keyboard stands where the work goes on. */
function Lines({ form }: { readonly form: DraftForm }) {
  const { place, focusAfter } = useFocusAfter();
  return (
    <div ref={place}>
      <DraftLines form={form} focusAfter={focusAfter} />
      <AddGoods form={form} focusAfter={focusAfter} />
    </div>
  );
}

interface LinesProps {
  readonly form: DraftForm;
  readonly focusAfter: (selector: string) => void;
}

function DraftLines({ form, focusAfter }: LinesProps) {
  const w = useText().orders.draft;
  const { currency } = useFormat();
  const { lines, change, remove } = useLines(form);
  const field = (at: number, name: 'packs' | 'packPrice') => ({
    name: `lines[${at}].${name}`,
    value: lines[at]?.[name] ?? '',
    onValue: (value: string) => change(at, name, value),
    error: form.errorAt(`lines[${at}].${name}`),
  });
  return (
    <ol className={css.draftLines}>
      {lines.map((line, at) => (
        <li key={line.presentationId} className={css.draftLine}>
          <div className={css.goods}>
            <strong>{line.goods}</strong>
            <span className={css.quiet}>{line.pack}</span>
          </div>
          <WholeField label={w.packs} {...field(at, 'packs')} />
          <DecimalField
            label={w.price}
            placeholder={w.priceHint}
            unit={currency}
            {...field(at, 'packPrice')}
          />
          <div className={css.remove}>
            <Button
              variant="subtle"
              aria-label={w.remove(line.goods)}
              onClick={() => {
                remove(at);
                // Onto the line that moves up, or the last one, or what adds lines.
                const next = Math.min(at + 1, lines.length - 1);
                focusAfter(next < 1 ? '[role="combobox"]' : `li:nth-child(${next}) input`);
              }}
            >
              {w.removeShort}
            </Button>
          </div>
        </li>
      ))}
    </ol>
  );
}

/** Choosing a pack adds a line of it; what the supplier usually delivers stands first. */
function AddGoods({ form, focusAfter }: LinesProps) {
  const w = useText().orders.draft;
  const packs = useQuery(packsQuery).data ?? [];
  const { lines, add } = useLines(form);
  const { supplierId } = form.values;
  const taken = new Set(lines.map((line) => line.presentationId));
  const free = packs.filter(({ id }) => !taken.has(id));
  const usual = free.filter((pack) => pack.supplierId === supplierId);
  const others = free.filter((pack) => pack.supplierId !== supplierId);
  return (
    <div className={css.add}>
      <SearchSelectField
        key={lines.length}
        label={w.addGoods}
        hint={w.addHint}
        choices={[...usual, ...others].map(({ id, goods, name }) => ({
          ...{ value: id, label: `${goods} · ${name}` },
        }))}
        name="add"
        value=""
        error={form.errorAt('add')}
        onValue={(id) => {
          const pack = packs.find((each) => each.id === id);
          if (!pack) return;
          add(pack);
          focusAfter(`li:nth-child(${lines.length + 1}) input`);
        }}
      />
    </div>
  );
}
