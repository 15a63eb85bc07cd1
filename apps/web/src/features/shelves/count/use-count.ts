import { getRouteApi, useNavigate } from '@tanstack/react-router';
import { useBooking } from '../../../api/use-booking.js';
import { useSession } from '../../../app/session.js';
import { useText } from '../../../text/text-provider.js';
import { notify } from '../../../ui/notice-store.js';
import { type FieldErrors, useForm } from '../../../ui/use-form.js';
import { SHELF_CHANGES } from '../api/changes.js';
import { countStock } from '../api/count-stock.js';
import type { Holding } from '../api/list-holdings.js';
import { dayTrouble } from '../holding/checks.js';
import { readKept, useKeep } from '../parts/kept.js';
import { type Draft, MOST_LINES, readDraft } from './draft.js';

const route = getRouteApi('/in/shelves');

interface Values {
  readonly draft: Draft;
  readonly countedOn: string;
}

function asDraft(kept: unknown): Draft | undefined {
  if (typeof kept !== 'object' || kept === null) return undefined;
  return Object.fromEntries(
    Object.entries(kept).filter((entry): entry is [string, string] => typeof entry[1] === 'string'),
  );
}

function useCheck(holdings: readonly Holding[]) {
  const { counting, shelves, ui } = useText();
  const { today } = useSession();
  const { notNegative, notFuture, whole } = shelves.form;
  const words = { decimal: ui.decimal, negative: notNegative, whole };
  return ({ draft, countedOn }: Values): FieldErrors => {
    const { lines, troubles } = readDraft(draft, holdings);
    const wrong = Object.entries(troubles).map(([id, trouble]) => [id, words[trouble]] as const);
    const none = lines.length === 0 && wrong.length === 0;
    const tooMany = lines.length > MOST_LINES ? counting.tooMany(MOST_LINES) : undefined;
    const day = dayTrouble(countedOn, today, '');
    return {
      ...Object.fromEntries(wrong),
      countedOn: day && (day === 'missing' ? ui.required : notFuture),
      draft: none ? counting.nothing : tooMany,
    };
  };
}

function useDone() {
  const { counting } = useText();
  const go = useNavigate();
  return (lines: number, differences: number, day: string) => {
    const search = { account: 'count' as const, from: day, to: day };
    const run = () => void go({ to: '/shelves/movements', search });
    const action = differences === 0 ? {} : { action: { label: counting.see, run } };
    notify({ tone: 'done', text: counting.done(lines, differences), ...action });
  };
}

/** A count of some holdings: what was typed (kept in this tab), what is wrong, booking it. */
export function useCount(scope: string, holdings: readonly Holding[]) {
  const { today } = useSession();
  const { step } = route.useSearch();
  const navigate = route.useNavigate();
  const kept = `count ${scope}`;
  const { book } = useBooking({ send: countStock, changes: SHELF_CHANGES });
  const done = useDone();
  const leave = () =>
    void navigate({ search: (old) => ({ ...old, do: undefined, step: undefined }) });
  const initial: Values = { draft: readKept(kept, asDraft) ?? {}, countedOn: today };
  const form = useForm({
    initial,
    check: useCheck(holdings),
    /** The first time it leads to the differences; from there it books. */
    send: async ({ draft, countedOn }) => {
      if (step !== 'review') {
        await navigate({ search: (old) => ({ ...old, step: 'review' as const }) });
        return undefined;
      }
      const { lines } = readDraft(draft, holdings);
      return book({
        lines: lines.map(({ holding, counted }) => ({ holdingId: holding.id, counted })),
        ...(countedOn === today ? {} : { countedOn }),
      });
    },
    fieldOf: (path): string => {
      const line = /^lines\[(\d+)\]/.exec(path)?.[1];
      if (line === undefined) return path;
      const { lines } = readDraft(form.values.draft, holdings);
      return lines[Number(line)]?.holding.id ?? path;
    },
    onDone: (result) => {
      if (!result) return;
      form.set('draft', {});
      done(result.lines.length, result.movementIds.length, result.countedOn);
      leave();
    },
  });
  const { draft } = form.values;
  useKeep(kept, Object.keys(draft).length === 0 ? undefined : draft);
  return { form, leave, read: readDraft(draft, holdings), reviewing: step === 'review' };
}

export type Count = ReturnType<typeof useCount>;
