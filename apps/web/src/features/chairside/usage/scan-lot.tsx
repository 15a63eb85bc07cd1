import { Button, TextInput } from '@mantine/core';
import { type FormEvent, useState } from 'react';
import { useScanner } from '../../../app/scan/use-scanner.js';
import { useText } from '../../../text/text-provider.js';
import type { Lot } from '../api/find-lots.js';
import { useChairside } from '../chairside-context.js';
import { withoutScanned } from '../draft/change-draft.js';
import { ofLot } from '../draft/trouble.js';
import { consumableName } from '../words.js';
import css from './usage-panel.module.css';
import { useLotSearch } from './use-lot-search.js';

/** The container in the hand: a scanner types its number and presses Enter. */
export function ScanLot() {
  const t = useText();
  const [typed, setTyped] = useState('');
  const search = useLotSearch(() => setTyped(''));
  const words = t.chairside.scan;
  // The book may be behind: a lot is looked for by its number even if its product is not known.
  const scanner = useScanner({
    unknown: 'pass',
    onPlain: (text) => search.look(text),
    onThing: (thing) => {
      if (thing.lotNumber === null) return t.scan.trace.noLot;
      search.look(thing.lotNumber, thing);
      return undefined;
    },
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    search.look(typed);
  };
  return (
    <>
      <form className={css.scan} onSubmit={submit} noValidate>
        <TextInput
          label={words.label}
          value={typed}
          error={search.wrong}
          autoComplete="off"
          spellCheck={false}
          maxLength={60}
          onChange={(event) => {
            setTyped(event.currentTarget.value);
            search.clear();
          }}
        />
        <Button type="submit" variant="default" loading={search.isLooking}>
          {words.button}
        </Button>
      </form>
      <div className={css.camera}>
        {scanner.button}
        {scanner.note}
      </div>
      <AskedLots lots={search.asked} isUsed={search.isUsed} onTake={search.take} />
      <LotsInHand />
    </>
  );
}

interface AskedProps {
  readonly lots: readonly Lot[];
  readonly isUsed: (lot: Lot) => boolean;
  readonly onTake: (lot: Lot) => void;
}

/** Which of several, or whether to take in what the visit does not use yet. */
function AskedLots({ lots, isUsed, onTake }: AskedProps) {
  const words = useText().chairside.scan;
  const [first] = lots;
  if (!first) return null;
  return (
    <div className={css.asked} role="status">
      <p>
        {lots.length === 1 && !isUsed(first)
          ? words.notUsed(consumableName(first.consumable))
          : words.many}
      </p>
      <div className={css.ways}>
        {lots.map((lot) => (
          <Button key={lot.id} variant="subtle" onClick={() => onTake(lot)}>
            {lots.length === 1 ? words.addIt : consumableName(lot.consumable)}
          </Button>
        ))}
      </div>
    </div>
  );
}

function LotsInHand() {
  const t = useText();
  const { draft, trouble, change, settle } = useChairside();
  const words = t.chairside.scan;
  if (draft.scanned.length === 0) return null;
  return (
    <ul className={css.hand} aria-label={words.scanned}>
      {draft.scanned.map(({ lotId, lotNumber, name }) => {
        const lot = lotNumber ?? t.ui.notStated;
        return (
          <li key={lotId}>
            <span>
              {t.chairside.usage.lot(lot)}, {name}
              {trouble[ofLot(lotId)] !== undefined && (
                <span className={css.wrong} role="alert">
                  {' '}
                  {trouble[ofLot(lotId)]}
                </span>
              )}
            </span>
            <Button
              variant="subtle"
              onClick={() => {
                settle(ofLot(lotId));
                change((old) => withoutScanned(old, lotId));
              }}
            >
              {words.remove(lot)}
            </Button>
          </li>
        );
      })}
    </ul>
  );
}
