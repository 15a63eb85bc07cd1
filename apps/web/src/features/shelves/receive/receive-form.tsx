import { Button } from '@mantine/core';
import { useEffect, useRef, useState } from 'react';
import { useSession } from '../../../app/session.js';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { Caution } from '../../../ui/caution.js';
import { DateField, DecimalField, SelectField, TextField } from '../../../ui/fields.js';
import { FieldGroup, FieldRow, Form, SubmitButton } from '../../../ui/form.js';
import { Money } from '../../../ui/values.js';
import type { Place } from '../api/list-places.js';
import type { Supplier } from '../api/list-suppliers.js';
import { pathOf } from './check.js';
import { type Line, moneyOf, totalsOf, type Values } from './lines.js';
import css from './receive.module.css';
import { ReceiveLine } from './receive-line.js';
import { useArrivalCheck } from './use-arrival-check.js';
import { useReceive } from './use-receive.js';

interface Props {
  /** Under which name it is kept in this tab. */
  readonly kept: string;
  readonly initial: Values;
  readonly blank: () => Values;
  readonly suppliers: readonly Supplier[];
  readonly places: readonly Place[];
}

type Receiving = ReturnType<typeof useReceive>;

/** The whole form; Ctrl and Enter books it from a line. */
export function ReceiveForm({ kept, initial, blank, suppliers, places }: Props) {
  const { receive } = useText();
  const receiving = useReceive(kept, initial, suppliers);
  const { form, touched } = receiving;
  return (
    <>
      <Form form={form}>
        <Paper form={form} suppliers={suppliers} />
        <Goods receiving={receiving} places={places} />
        <Extras form={form} />
        <div className={css.bar}>
          <Totals values={form.values} />
          {touched && (
            <Button variant="default" onClick={() => form.reset(blank())}>
              {receive.discard}
            </Button>
          )}
          <SubmitButton form={form}>{receive.submit}</SubmitButton>
        </div>
      </Form>
      <Caution />
    </>
  );
}

interface FormProps {
  readonly form: Receiving['form'];
}

function Paper({ form, suppliers }: FormProps & { readonly suppliers: readonly Supplier[] }) {
  const { receive, ui } = useText();
  const { today } = useSession();
  return (
    <FieldGroup title={receive.paper}>
      <FieldRow>
        <SelectField
          label={receive.supplier}
          empty={ui.choose}
          choices={suppliers.map(({ id, name }) => ({ value: id, label: name }))}
          {...form.field('supplierId')}
        />
        <DateField label={receive.receivedOn} max={today} {...form.field('receivedOn')} />
        <TextField label={receive.reference} maxLength={80} {...form.field('reference')} />
      </FieldRow>
    </FieldGroup>
  );
}

interface GoodsProps {
  readonly receiving: Receiving;
  readonly places: readonly Place[];
}

function Goods({ receiving, places }: GoodsProps) {
  const { receive } = useText();
  const { form, change, add, remove, scanner } = receiving;
  const { lines, supplierId, receivedOn } = form.values;
  const { place, focusLine } = useLineFocus();
  const { today } = useSession();
  const news = useArrivalCheck(form.values, today);
  const removeAt = (index: number) => {
    remove(lines[index]?.key ?? '');
    focusLine((lines[index + 1] ?? lines[index - 1])?.key);
  };
  const enterAt = (index: number) => focusLine(lines[index + 1]?.key ?? add());
  return (
    <FieldGroup title={receive.goods} hint={receive.goodsHint}>
      <div className={css.scan}>
        {scanner.button}
        {scanner.note}
        <AllCame receiving={receiving} />
      </div>
      <div ref={place} className={css.lines}>
        {lines.map((line, i) => (
          <ReceiveLine
            key={line.key}
            line={line}
            number={i + 1}
            supplierId={supplierId}
            receivedOn={receivedOn}
            places={places}
            errorAt={(field) => form.errorAt(pathOf(line.key, field))}
            onChange={(part) => change(line.key, part)}
            onRemove={lines.length > 1 ? () => removeAt(i) : undefined}
            onEnter={() => enterAt(i)}
            spreadKey={form.values.spreadKey}
            news={news.get(line.key)}
          />
        ))}
      </div>
      <div>
        <Button variant="default" onClick={() => focusLine(add())}>
          {receive.add}
        </Button>
      </div>
    </FieldGroup>
  );
}

/** Of an order: fills in what is still to come, for who has counted it. */
function AllCame({ receiving: { form } }: Pick<GoodsProps, 'receiving'>) {
  const { receiveMore: words } = useText();
  const { lines } = form.values;
  const isOpen = (line: Line) => line.ordered !== null && line.packs === '';
  if (!lines.some(isOpen)) return null;
  const fill = () =>
    form.set(
      'lines',
      lines.map((line) => (isOpen(line) ? { ...line, packs: String(line.ordered) } : line)),
    );
  return (
    <Button variant="default" onClick={fill}>
      {words.allCame}
    </Button>
  );
}

/** Puts the keyboard on the product of a line, also of one that is only just being added. */
function useLineFocus() {
  const place = useRef<HTMLDivElement>(null);
  const [wanted, setWanted] = useState<string>();
  useEffect(() => {
    if (wanted === undefined) return;
    const line = place.current?.querySelector(`[data-line="${wanted}"]`);
    line?.querySelector('input')?.focus();
    setWanted(undefined);
  }, [wanted]);
  return { place, focusLine: setWanted };
}

function Extras({ form }: FormProps) {
  const { receive, receiveMore: more } = useText();
  const { currency } = useFormat();
  return (
    <FieldGroup title={receive.costs}>
      <FieldRow>
        <DecimalField label={receive.freight} unit={currency} {...form.field('freight')} />
        <DecimalField label={more.duty} unit={currency} {...form.field('duty')} />
        <DecimalField label={receive.discount} unit={currency} {...form.field('discount')} />
        <SelectField
          label={receive.spread}
          choices={(['value', 'quantity', 'weight'] as const).map((key) => ({
            ...{ value: key, label: receive.spreads[key] },
          }))}
          {...form.field('spreadKey')}
        />
      </FieldRow>
    </FieldGroup>
  );
}

function Totals({ values }: { readonly values: Values }) {
  const { totals: words } = useText().receive;
  const totals = totalsOf(values);
  const format = useFormat();
  const extras = [values.freight, values.duty, values.discount].some(
    (typed) => (moneyOf(typed) ?? 0n) !== 0n,
  );
  return (
    <dl className={css.totals} aria-live="polite">
      <div>
        <dt>{words.goods}</dt>
        <dd>{format.money(totals.goods)}</dd>
      </div>
      <div data-main={extras || undefined}>
        <dt>{words.landed}</dt>
        <dd>
          <Money value={totals.landed} />
        </dd>
      </div>
    </dl>
  );
}
