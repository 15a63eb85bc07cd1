import { Checkbox, CloseButton, NativeSelect, TextInput } from '@mantine/core';
import type { KeyboardEvent } from 'react';
import { useSession } from '../../../app/session.js';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { StatusMark } from '../../../ui/status-mark.js';
import type { Place } from '../api/list-places.js';
import { daysBetween, nearnessOf } from '../parts/days.js';
import { LineNewsRow } from './line-news.js';
import { broughtBy, type Line, type SpreadKey } from './lines.js';
import { PriceNote } from './price-note.js';
import { ProductPicker } from './product-picker.js';
import css from './receive.module.css';
import { ReceiveMore } from './receive-more.js';
import type { LineNews } from './use-arrival-check.js';

export interface LineProps {
  readonly line: Line;
  /** 1 for the first. */
  readonly number: number;
  readonly supplierId: string;
  readonly receivedOn: string;
  readonly places: readonly Place[];
  readonly errorAt: (field: string) => string | undefined;
  readonly onChange: (change: Partial<Line>) => void;
  readonly onRemove: (() => void) | undefined;
  /** Enter: to the next line, or a new one. */
  readonly onEnter: () => void;
  readonly spreadKey: SpreadKey;
  readonly news: LineNews | undefined;
}

/** One line of a delivery as it is written. */
export function ReceiveLine(props: LineProps) {
  const { line, number, errorAt, onChange, onRemove, onEnter } = props;
  const { receive } = useText();
  const enter = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key !== 'Enter' || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    onEnter();
  };
  return (
    <fieldset className={css.line} data-line={line.key}>
      <legend className={css.legend}>{receive.line(number)}</legend>
      <div className={css.product}>
        <ProductPicker
          product={line.product}
          supplierId={props.supplierId}
          error={errorAt('presentationId')}
          onProduct={(product) => onChange({ product, parts: {} })}
          onEnter={onEnter}
        />
        <Makes line={line} />
      </div>
      <TextInput
        label={receive.packs}
        inputMode="numeric"
        autoComplete="off"
        value={line.packs}
        error={errorAt('packs')}
        onChange={(event) => onChange({ packs: event.currentTarget.value })}
        onKeyDown={enter}
      />
      <Price {...props} onKeyDown={enter} />
      <NativeSelect
        label={receive.location}
        value={line.locationId}
        error={errorAt('locationId')}
        data={props.places.map(({ id, name }) => ({ value: id, label: name }))}
        onChange={(event) => onChange({ locationId: event.currentTarget.value })}
      />
      {line.lots.length === 0 && <Lot {...props} onKeyDown={enter} />}
      {line.lots.length === 0 && <Expiry {...props} onKeyDown={enter} />}
      <div className={css.remove}>
        {onRemove && (
          <CloseButton size="xl" aria-label={receive.remove(number)} onClick={onRemove} />
        )}
      </div>
      {props.news && <LineNewsRow news={props.news} />}
      <ReceiveMore
        line={line}
        number={number}
        spreadKey={props.spreadKey}
        errorAt={errorAt}
        onChange={onChange}
      />
    </fieldset>
  );
}

function Makes({ line }: { readonly line: Line }) {
  const t = useText();
  const format = useFormat();
  const { product } = line;
  if (!product) return null;
  const amount = broughtBy(line);
  const makes =
    amount === undefined ? '' : t.receive.makes(format.quantity(amount, product.consumable.unit));
  return (
    <span className={css.note}>
      {[product.presentation.name, makes].filter((part) => part !== '').join(', ')}
      {line.ordered !== null && <span>{t.receiveMore.outstanding(line.ordered)}</span>}
    </span>
  );
}

interface FieldProps extends LineProps {
  readonly onKeyDown: (event: KeyboardEvent<HTMLInputElement>) => void;
}

function Price({ line, errorAt, onChange, onKeyDown }: FieldProps) {
  const { receive } = useText();
  return (
    <div>
      <TextInput
        label={receive.price}
        inputMode="decimal"
        autoComplete="off"
        disabled={line.sample}
        value={line.packPrice}
        error={errorAt('packPrice')}
        onChange={(event) => onChange({ packPrice: event.currentTarget.value })}
        onKeyDown={onKeyDown}
      />
      {line.product && !line.sample && (
        <PriceNote
          product={line.product}
          typed={line.packPrice}
          onLast={(packPrice) => onChange({ packPrice })}
        />
      )}
    </div>
  );
}

function Lot({ line, errorAt, onChange, onKeyDown }: FieldProps) {
  const { receive } = useText();
  return (
    <div>
      <TextInput
        label={receive.lot}
        autoComplete="off"
        spellCheck={false}
        maxLength={60}
        disabled={line.noLot}
        value={line.noLot ? '' : line.lotNumber}
        error={errorAt('lotNumber')}
        onChange={(event) => onChange({ lotNumber: event.currentTarget.value })}
        onKeyDown={onKeyDown}
      />
      <Checkbox
        className={css.noLot ?? ''}
        size="sm"
        label={receive.noLot}
        checked={line.noLot}
        onChange={(event) => onChange({ noLot: event.currentTarget.checked })}
      />
    </div>
  );
}

function Expiry({ line, receivedOn, errorAt, onChange, onKeyDown }: FieldProps) {
  const { receive } = useText();
  return (
    <div>
      <TextInput
        type="date"
        label={receive.expires}
        value={line.expiresOn}
        error={errorAt('expiresOn')}
        onChange={(event) => onChange({ expiresOn: event.currentTarget.value })}
        onKeyDown={onKeyDown}
      />
      {line.expiresOn !== '' && receivedOn !== '' && (
        <ExpiryNote expiresOn={line.expiresOn} receivedOn={receivedOn} />
      )}
    </div>
  );
}

/** Says before booking that something came expired, or will be soon. */
function ExpiryNote(props: { readonly expiresOn: string; readonly receivedOn: string }) {
  const { receive } = useText();
  const { expiryWarningDays } = useSession().practice;
  const { expiresOn, receivedOn } = props;
  const nearness = nearnessOf(expiresOn, receivedOn, expiryWarningDays);
  if (nearness === 'later') return null;
  return (
    <span className={css.note} role="status">
      <StatusMark tone={nearness === 'over' ? 'danger' : 'caution'}>
        {nearness === 'over'
          ? receive.expired
          : receive.shortDated(daysBetween(receivedOn, expiresOn))}
      </StatusMark>
    </span>
  );
}
