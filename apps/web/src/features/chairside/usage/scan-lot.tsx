import { Button, TextInput } from '@mantine/core';
import { useMutation } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { newKey } from '../../../api/idempotency.js';
import { useText } from '../../../text/text-provider.js';
import { problemWords } from '../../../ui/problem-words.js';
import { findLots, type Lot } from '../api/find-lots.js';
import { useChairside } from '../chairside-context.js';
import { stepOf } from '../draft/amounts.js';
import { withoutScanned, withScanned } from '../draft/change-draft.js';
import { ofLot } from '../draft/trouble.js';
import { useOnline } from '../offline/use-outbox.js';
import { consumableName } from '../words.js';
import css from './usage-panel.module.css';

/** The container in the hand: a scanner types its number and presses Enter. */
export function ScanLot() {
  const t = useText();
  const { draft, plan, change, settle } = useChairside();
  const online = useOnline();
  const [typed, setTyped] = useState('');
  const [wrong, setWrong] = useState<string>();
  const [asked, setAsked] = useState<readonly Lot[]>([]);
  const search = useMutation({ mutationFn: findLots });
  const words = t.chairside.scan;
  const used = new Set(plan.preview?.usage.map(({ consumable }) => consumable.id));
  const isUsed = ({ consumable }: Lot) =>
    used.has(consumable.id) || draft.added.some((each) => each.consumableId === consumable.id);
  const take = (lot: Lot) => {
    const { id: consumableId, unit } = lot.consumable;
    const name = consumableName(lot.consumable);
    const scanned = {
      lotId: lot.id,
      holdingId: null,
      lotNumber: lot.lotNumber,
      consumableId,
      name,
    };
    const line = { key: newKey(), consumableId, name, unit, dispensed: stepOf(unit, '0.1') };
    settle(ofLot(lot.id));
    change((old) => {
      const withLot = withScanned(old, scanned);
      return isUsed(lot) ? withLot : { ...withLot, added: [...old.added, line] };
    });
    setTyped('');
    setAsked([]);
  };
  const find = async () => {
    if (typed.trim() === '') return setWrong(t.ui.required);
    if (!online) return setWrong(words.offline);
    const lots = await search.mutateAsync(typed.trim());
    const fitting = lots.filter(isUsed);
    const [only] = fitting.length > 0 ? fitting : lots;
    if (!only) return setWrong(words.unknown);
    if (fitting.length === 1) take(only);
    else setAsked(fitting.length > 1 ? fitting : lots);
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    find().catch((error: unknown) => {
      const says = problemWords(t, error);
      if (says === undefined) throw error;
      setWrong(says);
    });
  };
  return (
    <>
      <form className={css.scan} onSubmit={submit} noValidate>
        <TextInput
          label={words.label}
          value={typed}
          error={wrong}
          autoComplete="off"
          spellCheck={false}
          maxLength={60}
          onChange={(event) => {
            setTyped(event.currentTarget.value);
            setWrong(undefined);
            setAsked([]);
          }}
        />
        <Button type="submit" variant="default" loading={search.isPending}>
          {words.button}
        </Button>
      </form>
      <AskedLots lots={asked} isUsed={isUsed} onTake={take} />
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
              aria-label={words.remove(lot)}
              onClick={() => {
                settle(ofLot(lotId));
                change((old) => withoutScanned(old, lotId));
              }}
            >
              {t.ui.clear}
            </Button>
          </li>
        );
      })}
    </ul>
  );
}
