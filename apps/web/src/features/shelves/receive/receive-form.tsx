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
import { moneyOf, totalsOf, type Values } from './lines.js';
import css from './receive.module.css';
import { ReceiveLine } from './receive-line.js';
import { useReceive } from './use-receive.js';

interface Props {
  readonly initial: Values;
  readonly blank: () => Values;
  readonly suppliers: readonly Supplier[];
  readonly places: readonly Place[];
}

type Receiving = ReturnType<typeof useReceive>;

/** The whole form; Ctrl and Enter books it from a line. */
export function ReceiveForm({ initial, blank, suppliers, places }: Props) {
  const { receive } = useText();
  const receiving = useReceive(initial, suppliers);
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
  const enterAt = (index: number) => focusLine(lines[index + 1]?.key ?? add());
  return (
    <FieldGroup title={receive.goods} hint={receive.goodsHint}>
      <div className={css.scan}>
        {scanner.button}
        {scanner.note}
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
            onRemove={lines.length > 1 ? () => remove(line.key) : undefined}
            onEnter={() => enterAt(i)}
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
  const { receive } = useText();
  const { currency } = useFormat();
  return (
    <FieldGroup title={receive.costs}>
      <FieldRow>
        <DecimalField label={receive.freight} unit={currency} {...form.field('freight')} />
        <DecimalField label={receive.discount} unit={currency} {...form.field('discount')} />
        <SelectField
          label={receive.spread}
          choices={(['value', 'quantity'] as const).map((key) => ({
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
  const extras = (moneyOf(values.freight) ?? 0n) !== 0n || (moneyOf(values.discount) ?? 0n) !== 0n;
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
