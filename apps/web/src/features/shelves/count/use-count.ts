import { getRouteApi, useNavigate } from '@tanstack/react-router';
import { useEffect } from 'react';
import { useBooking } from '../../../api/use-booking.js';
import { useSession } from '../../../app/session.js';
import { useText } from '../../../text/text-provider.js';
import { notify } from '../../../ui/notice-store.js';
import { useForm } from '../../../ui/use-form.js';
import { SHELF_CHANGES } from '../api/changes.js';
import { countStock } from '../api/count-stock.js';
import type { Holding } from '../api/list-holdings.js';
import { dayTrouble } from '../holding/checks.js';
import { readKept } from '../parts/kept.js';
import { type Draft, MOST_LINES, readDraft } from './draft.js';

const route = getRouteApi('/in/shelves');

function asDraft(kept: unknown): Draft | undefined {
  if (typeof kept !== 'object' || kept === null) return undefined;
  return Object.fromEntries(
    Object.entries(kept).filter((entry): entry is [string, string] => typeof entry[1] === 'string'),
  );
}

/** A count of some holdings: what was typed (kept in this tab), what is wrong, booking it. */
export function useCount(scope: string, holdings: readonly Holding[]) {
  const { counting, shelves, ui } = useText();
  const { today } = useSession();
  const navigate = route.useNavigate();
  const go = useNavigate();
  const kept = `traybook.count ${scope}`;
  const { book } = useBooking({ send: countStock, changes: SHELF_CHANGES });
  const words = {
    decimal: ui.decimal,
    negative: shelves.form.notNegative,
    whole: shelves.form.whole,
  };
  const days = { missing: ui.required, future: shelves.form.notFuture, before: undefined };
  const form = useForm({
    initial: { draft: readKept(kept, asDraft) ?? {}, countedOn: today },
    check: ({ draft, countedOn }) => {
      const { lines, troubles } = readDraft(draft, holdings);
      const wrong = Object.entries(troubles).map(([id, trouble]) => [id, words[trouble]] as const);
      const day = dayTrouble(countedOn, today, '');
      const none = lines.length === 0 && wrong.length === 0;
      return {
        ...Object.fromEntries(wrong),
        countedOn: day && days[day],
        draft: none
          ? counting.nothing
          : lines.length > MOST_LINES
            ? counting.tooMany(MOST_LINES)
            : undefined,
      };
    },
    send: async ({ draft, countedOn }) => {
      const { lines } = readDraft(draft, holdings);
      return book({
        lines: lines.map(({ holding, counted }) => ({ holdingId: holding.id, counted })),
        ...(countedOn === today ? {} : { countedOn }),
      });
    },
    fieldOf: (path) => {
      const line = /^lines\[(\d+)\]/.exec(path)?.[1];
      const { lines } = readDraft(form.values.draft, holdings);
      return line === undefined ? path : (lines[Number(line)]?.holding.id ?? path);
    },
    onDone: ({ lines, movementIds, countedOn }) => {
      form.set('draft', {});
      const text = counting.done(lines.length, movementIds.length);
      const search = { account: 'count' as const, from: countedOn, to: countedOn };
      const run = () => void go({ to: '/shelves/movements', search });
      const action = movementIds.length === 0 ? {} : { action: { label: counting.see, run } };
      notify({ tone: 'done', text, ...action });
      leave();
    },
  });
  const { draft } = form.values;
  useEffect(() => {
    if (Object.keys(draft).length === 0) sessionStorage.removeItem(kept);
    else sessionStorage.setItem(kept, JSON.stringify(draft));
  }, [kept, draft]);
  const leave = () =>
    void navigate({ search: (old) => ({ ...old, do: undefined, step: undefined }) });
  return { form, leave };
}

export type Count = ReturnType<typeof useCount>;
