import { useMemo } from 'react';
import type { ToothNotation } from '#lib/dentition';
import { useSession } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { notify } from '../../ui/notice-store.js';
import type { Chairside } from './chairside-context.js';
import { checkDraft } from './draft/check-draft.js';
import { isBlank, type VisitDraft } from './draft/draft.js';
import { freshDraft } from './draft/draft-store.js';
import { placeProblem } from './draft/trouble.js';
import { remove, type Waiting } from './offline/outbox.js';
import { focusControl } from './parts/focus-control.js';
import { useDraft } from './use-draft.js';
import { useAsksForShades, usePlan } from './use-plan.js';
import { usePost } from './use-post.js';
import { useTrouble } from './use-trouble.js';
import { fieldSentence } from './words.js';

/** The visit that is being entered, what is wrong with it, and what can be done with it. */
export function useEntry(
  chart: string | undefined,
  notation: ToothNotation,
  onBooked: (visitId: string) => void,
) {
  const t = useText();
  const { today } = useSession();
  const { draft, change, replace, handOver } = useDraft(chart);
  const { said, show, settle, sentences } = useTrouble();
  const asks = useAsksForShades(draft);
  const { plan, trouble } = usePlan(draft, today, asks, change);
  const begin = (next: VisitDraft) => {
    replace(next);
    show({});
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
    const wrong = checkDraft(draft, { today, words: t.chairside.check, asksForShades: asks });
    show(wrong);
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
  const clear = () => {
    begin(freshDraft());
    focusControl('chartReference');
  };
  const chairside = useMemo(
    (): Chairside => ({
      ...{ draft, change, settle, notation, today, plan },
      trouble: { ...trouble, ...said },
    }),
    [draft, change, settle, notation, today, plan, trouble, said],
  );
  return { chairside, isPosting, sentences, post: tryToPost, clear, correct, begin };
}
