import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useRef } from 'react';
import { newKey } from '../../api/idempotency.js';
import { isNotSignedIn, type ProblemError } from '../../api/problem.js';
import { useSession } from '../../app/session.js';
import type { Visit } from './api/post-visit.js';
import { rememberVisit } from './draft/device-memory.js';
import type { VisitDraft } from './draft/draft.js';
import { storeDraft } from './draft/draft-store.js';
import { postOf } from './draft/request.js';
import { keep, readOutbox, remove } from './offline/outbox.js';
import { sendFromOutbox } from './offline/send.js';

export const CHANGED = [
  ...[['visits'], ['booked-visits'], ['stock'], ['alerts'], ['lots'], ['movements'], ['reports']],
];

interface Reactions {
  readonly onBooked: (visitId: string, visit: Visit | undefined) => void;
  /** No network: it waits on this device. */
  readonly onKept: () => void;
  /** It was refused meanwhile and stands in the list of what is on this device. */
  readonly onLeft: () => void;
  readonly onRefused: (error: ProblemError, sent: ReturnType<typeof postOf>) => void;
}

/** Books the visit once: it goes through the outbox, so that nothing on the way can lose or double it. */
export function usePost({ onBooked, onKept, onLeft, onRefused }: Reactions) {
  const { person, practice, today } = useSession();
  const queries = useQueryClient();
  const busy = useRef(false);
  /** Sent while we waited for our turn: the outbox says how it went. */
  const onElsewhere = (visitId: string) => {
    const entry = readOutbox().find(({ id }) => id === visitId);
    if (entry?.state === 'refused') return onLeft();
    remove(visitId);
    onBooked(visitId, undefined);
  };
  const send = async (draft: VisitDraft): Promise<void> => {
    const sent = postOf(draft, today);
    keep({
      id: draft.visitId,
      idempotencyKey: newKey(),
      practiceId: practice.id,
      personId: person.id,
      personName: person.displayName,
      body: sent.body,
      draft: { ...draft, maybeSent: true },
      state: 'waiting',
    });
    rememberVisit(draft);
    // From here on a reload finds it in the outbox, and nowhere else.
    storeDraft(person.id, undefined);
    const outcome = await sendFromOutbox(draft.visitId, false);
    if (outcome.kind === 'booked before' && !draft.maybeSent) {
      // Another tab has booked a visit under this id, which it shared with a copy of that tab.
      await send({ ...draft, visitId: newKey() });
      return;
    }
    if (outcome.kind === 'booked') {
      queries.setQueryData(['visits', draft.visitId], outcome.visit);
      onBooked(draft.visitId, outcome.visit);
    } else if (outcome.kind === 'refused') onRefused(outcome.error, sent);
    else if (outcome.kind === 'kept') {
      onKept();
      // Leads to the sign-in; the visit waits meanwhile.
      if (isNotSignedIn(outcome.error)) throw outcome.error;
    } else if (outcome.kind === 'gone') onElsewhere(draft.visitId);
    else onBooked(draft.visitId, undefined);
    await Promise.all(CHANGED.map((queryKey) => queries.invalidateQueries({ queryKey })));
  };
  const mutation = useMutation({ mutationFn: send });
  const post = (draft: VisitDraft) => {
    if (busy.current) return;
    busy.current = true;
    mutation
      .mutateAsync(draft)
      .catch((error: unknown) => {
        if (!isNotSignedIn(error)) throw error;
      })
      .finally(() => {
        busy.current = false;
      });
  };
  return { post, isPosting: mutation.isPending };
}
