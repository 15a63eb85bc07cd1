import { Button, CloseButton, TextInput } from '@mantine/core';
import { newKey } from '../../../api/idempotency.js';
import { useText } from '../../../text/text-provider.js';
import { useFocusKept } from '../../../ui/use-focus-kept.js';
import type { LotLine } from './lines.js';
import css from './receive.module.css';

interface Props {
  readonly lots: readonly LotLine[];
  readonly error: string | undefined;
  readonly onLots: (lots: readonly LotLine[]) => void;
}

export function emptyLot(): LotLine {
  return { key: newKey(), packs: '', lotNumber: '', expiresOn: '' };
}

/** The lots of a line that came with several: how many packs of which. */
export function ReceiveLots({ lots, error, onLots }: Props) {
  const { receiveMore: words } = useText();
  const place = useFocusKept<HTMLFieldSetElement>(lots.length);
  const change = (key: string, part: Partial<LotLine>) =>
    onLots(lots.map((lot) => (lot.key === key ? { ...lot, ...part } : lot)));
  return (
    <fieldset ref={place} className={css.sub}>
      <legend>{words.lots}</legend>
      {lots.map((lot, i) => (
        <div key={lot.key} className={css.lotRow}>
          <TextInput
            label={words.lotPacks}
            inputMode="numeric"
            autoComplete="off"
            value={lot.packs}
            onChange={(event) => change(lot.key, { packs: event.currentTarget.value })}
          />
          <TextInput
            label={words.lotNumber}
            autoComplete="off"
            spellCheck={false}
            maxLength={60}
            value={lot.lotNumber}
            onChange={(event) => change(lot.key, { lotNumber: event.currentTarget.value })}
          />
          <TextInput
            type="date"
            label={words.lotExpires}
            value={lot.expiresOn}
            onChange={(event) => change(lot.key, { expiresOn: event.currentTarget.value })}
          />
          <CloseButton
            size="xl"
            className={css.lotRemove ?? ''}
            aria-label={words.removeLot(i + 1)}
            onClick={() => onLots(lots.filter((one) => one.key !== lot.key))}
          />
        </div>
      ))}
      {error !== undefined && (
        <p className={`${css.error ?? ''} mantine-InputWrapper-error`} role="alert">
          {error}
        </p>
      )}
      <div>
        <Button
          variant="subtle"
          size="compact-md"
          onClick={() => onLots(lots.length === 1 ? [] : [...lots, emptyLot()])}
        >
          {lots.length === 1 ? words.oneLot : words.addLot}
        </Button>
      </div>
    </fieldset>
  );
}
