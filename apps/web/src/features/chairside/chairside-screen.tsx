import { useQueryClient } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useEffect, useMemo, useState } from 'react';
import type { ToothNotation } from '#lib/dentition';
import { useSession } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { notify } from '../../ui/notice-store.js';
import { Booked } from './booked.js';
import { type Chairside, ChairsideContext } from './chairside-context.js';
import { checkDraft } from './draft/check-draft.js';
import { isBlank, type VisitDraft } from './draft/draft.js';
import { freshDraft } from './draft/draft-store.js';
import { placeProblem, type Trouble } from './draft/trouble.js';
import { keepShell } from './offline/keep-shell.js';
import { remove, type Waiting } from './offline/outbox.js';
import { onSettled, startRunner } from './offline/runner.js';
import { focusControl } from './parts/focus-control.js';
import { useDraft } from './use-draft.js';
import { useAsksForShades, usePlan } from './use-plan.js';
import { CHANGED, usePost } from './use-post.js';
import { VisitForm } from './visit-form.js';
import { fieldSentence } from './words.js';

const route = getRouteApi('/in/chairside');
const NO_TROUBLE: Trouble = {};

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
  const { chartReference } = entry.chairside.draft;
  useEffect(() => {
    if (search.booked === undefined && (search.chart ?? '') !== chartReference.trim()) {
      const chart = chartReference.trim() || undefined;
      void navigate({ search: (old) => ({ ...old, chart }), replace: true, resetScroll: false });
    }
  }, [search.booked, search.chart, chartReference, navigate]);
  return (
    <ChairsideContext value={entry.chairside}>
      {search.booked === undefined ? (
        <VisitForm
          primary={search.teeth === 'primary'}
          onPrimary={(primary) => go({ teeth: primary ? 'primary' : undefined })}
          onNotation={(chosen) =>
            go({ numbers: chosen === practice.toothNotation ? undefined : chosen })
          }
          isPosting={entry.isPosting}
          problems={entry.problems}
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

/** The visit that is being entered, what is wrong with it, and what can be done with it. */
function useEntry(
  chart: string | undefined,
  notation: ToothNotation,
  onBooked: (visitId: string) => void,
) {
  const t = useText();
  const { today } = useSession();
  const { draft, change, replace, handOver } = useDraft(chart);
  const [said, setSaid] = useState(NO_TROUBLE);
  const [problems, setProblems] = useState<readonly string[]>([]);
  const asks = useAsksForShades(draft);
  const planning = usePlan(draft, today, asks, change);
  const begin = (next: VisitDraft) => {
    replace(next);
    setSaid(NO_TROUBLE);
    setProblems([]);
  };
  const show = (trouble: Trouble, rest: readonly string[]) => {
    setSaid(trouble);
    const [first] = Object.keys(trouble);
    setProblems(first === undefined ? rest : [t.chairside.check.look, ...rest]);
    if (first !== undefined) focusControl(first);
  };
  const { post, isPosting } = usePost({
    onBooked: (visitId, visit) => {
      if (!visit) notify({ tone: 'done', text: t.chairside.booked.before });
      begin(freshDraft());
      onBooked(visitId);
    },
    onKept: () => {
      notify({ tone: 'done', text: t.chairside.offline.kept });
      begin(freshDraft());
    },
    onLeft: () => begin(freshDraft()),
    onRefused: (error, sent) => {
      replace(draft);
      const placed = placeProblem(error.problem, sent, (words) => fieldSentence(t, words));
      show(placed.trouble, placed.rest);
    },
  });
  const tryToPost = () => {
    if (isPosting) return;
    const words = { ...t.chairside.check };
    const wrong = checkDraft(draft, { today, words, asksForShades: asks });
    show(wrong, []);
    if (Object.keys(wrong).length > 0) return;
    handOver();
    post(draft);
  };
  const correct = (entry: Waiting) => {
    if (!isBlank(draft)) {
      notify({ tone: 'problem', text: t.chairside.offline.unfinished });
      return;
    }
    remove(entry.id);
    begin(entry.draft);
  };
  const chairside = useMemo(
    (): Chairside => ({
      draft,
      change,
      trouble: { ...planning.trouble, ...said },
      settle: (...controls) =>
        setSaid((old) =>
          Object.fromEntries(Object.entries(old).filter(([name]) => !controls.includes(name))),
        ),
      notation,
      today,
      plan: planning.plan,
    }),
    [draft, change, planning.trouble, planning.plan, said, notation, today],
  );
  const clear = () => {
    begin(freshDraft());
    focusControl('chartReference');
  };
  return { chairside, isPosting, problems, post: tryToPost, clear, correct };
}
