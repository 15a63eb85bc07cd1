import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { newKey } from '../../../api/idempotency.js';
import type { ScannedThing } from '../../../app/scan/thing.js';
import { useText } from '../../../text/text-provider.js';
import { problemWords } from '../../../ui/problem-words.js';
import { findLots, type Lot } from '../api/find-lots.js';
import { useChairside } from '../chairside-context.js';
import { stepOf } from '../draft/amounts.js';
import { withScanned } from '../draft/change-draft.js';
import { ofLot } from '../draft/trouble.js';
import { useOnline } from '../offline/use-outbox.js';
import { consumableName } from '../words.js';

/** What a label says besides the number of the lot. */
type Known = Pick<ScannedThing, 'consumableId' | 'lotId' | 'holdingId'>;

const NOTHING_KNOWN: Known = { consumableId: null, lotId: null, holdingId: null };

function isKnown({ id, consumable }: Lot, { lotId, consumableId }: Known): boolean {
  return lotId === null ? consumableId === null || consumable.id === consumableId : id === lotId;
}

/** Finds the lot with a number and takes it for the visit; asks where that is not plain. */
export function useLotSearch(onTaken: () => void) {
  const t = useText();
  const { draft, plan, change, settle } = useChairside();
  const online = useOnline();
  const [wrong, setWrong] = useState<string>();
  const [asked, setAsked] = useState<readonly Lot[]>([]);
  const search = useMutation({ mutationFn: findLots });
  const used = new Set(plan.preview?.usage.map(({ consumable }) => consumable.id));
  const isUsed = ({ consumable }: Lot) =>
    used.has(consumable.id) || draft.added.some((each) => each.consumableId === consumable.id);
  const clear = () => {
    setWrong(undefined);
    setAsked([]);
  };
  const take = (lot: Lot, holdingId: string | null = null) => {
    const { id: consumableId, unit } = lot.consumable;
    const { id: lotId, lotNumber } = lot;
    const name = consumableName(lot.consumable);
    const line = { key: newKey(), consumableId, name, unit, dispensed: stepOf(unit, '0.1') };
    settle(ofLot(lotId));
    change((old) => {
      const withLot = withScanned(old, { lotId, holdingId, lotNumber, consumableId, name });
      return isUsed(lot) ? withLot : { ...withLot, added: [...old.added, line] };
    });
    clear();
    onTaken();
  };
  const find = async (number: string, known = NOTHING_KNOWN) => {
    if (number === '') return setWrong(t.ui.required);
    if (!online) return setWrong(t.chairside.scan.offline);
    const lots = (await search.mutateAsync(number)).filter((lot) => isKnown(lot, known));
    const fitting = lots.filter(isUsed);
    const [only] = fitting;
    if (lots.length === 0) setWrong(t.chairside.scan.unknown);
    else if (only && fitting.length === 1) take(only, known.holdingId);
    else setAsked(fitting.length > 1 ? fitting : lots);
  };
  const look = (number: string, known?: Known) => {
    clear();
    find(number.trim(), known).catch((error: unknown) => {
      const says = problemWords(t, error);
      if (says === undefined) throw error;
      setWrong(says);
    });
  };
  return { look, take, clear, isUsed, asked, wrong, isLooking: search.isPending };
}
