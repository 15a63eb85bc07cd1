import { useQueryClient } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { lazy, Suspense, useEffect } from 'react';
import type { ToothNotation } from '#lib/dentition';
import { useSession } from '../../app/session.js';
import { Booked } from './booked.js';
import { ChairsideContext } from './chairside-context.js';
import { keepShell } from './offline/keep-shell.js';
import { onSettled, startRunner } from './offline/runner.js';
import { useEntry } from './use-entry.js';
import { CHANGED } from './use-post.js';
import { VisitForm } from './visit-form.js';

// Only who comes from a booking needs it.
const TakeBooking = lazy(async () => ({
  default: (await import('./take-booking.js')).TakeBooking,
}));

const route = getRouteApi('/in/chairside');

/** Records a visit at the chair. */
export function ChairsideScreen() {
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const { practice } = useSession();
  useOutboxOfThisWindow();
  const notation: ToothNotation = search.numbers ?? practice.toothNotation;
  const go = (part: Partial<typeof search>) =>
    void navigate({ search: (old) => ({ ...old, ...part }), replace: true, resetScroll: false });
  const entry = useEntry(
    search.chart,
    notation,
    (booked) => void navigate({ search: (old) => ({ ...old, chart: undefined, booked }) }),
  );
  const { draft } = entry.chairside;
  const { chartReference } = draft;
  useEffect(() => {
    if (search.booked === undefined && (search.chart ?? '') !== chartReference.trim()) {
      const chart = chartReference.trim() || undefined;
      void navigate({ search: (old) => ({ ...old, chart }), replace: true, resetScroll: false });
    }
  }, [search.booked, search.chart, chartReference, navigate]);
  return (
    <ChairsideContext value={entry.chairside}>
      {search.booking !== undefined && (
        <Suspense>
          <TakeBooking
            bookingId={search.booking}
            notation={practice.toothNotation}
            draft={draft}
            begin={entry.begin}
            onTaken={() => go({ booking: undefined })}
          />
        </Suspense>
      )}
      {search.booked === undefined ? (
        <VisitForm
          primary={search.teeth === 'primary'}
          onPrimary={(primary) => go({ teeth: primary ? 'primary' : undefined })}
          onNotation={(chosen) =>
            go({ numbers: chosen === practice.toothNotation ? undefined : chosen })
          }
          isPosting={entry.isPosting}
          problems={entry.sentences}
          onPost={entry.post}
          onClear={entry.clear}
          onCorrect={entry.correct}
        />
      ) : (
        <Booked
          visitId={search.booked}
          onNext={() => void navigate({ search: (old) => ({ ...old, booked: undefined }) })}
        />
      )}
    </ChairsideContext>
  );
}

/** What waits on this device is sent from here on, and this screen can be loaded without a network. */
function useOutboxOfThisWindow(): void {
  const queries = useQueryClient();
  useEffect(() => {
    startRunner();
    // Where the browser does not allow it, the screen works all the same as long as it stays open.
    keepShell().catch(() => undefined);
    return onSettled(() => {
      for (const queryKey of CHANGED) void queries.invalidateQueries({ queryKey });
    });
  }, [queries]);
}
