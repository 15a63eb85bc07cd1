import { useCallback, useEffect, useState } from 'react';
import { useSession } from '../../app/session.js';
import type { VisitDraft } from './draft/draft.js';
import { freshDraft, storeDraft, storedDraft } from './draft/draft-store.js';

/** The visit that is being entered; a reload finds it again. */
export function useDraft(chart: string | undefined) {
  const { person } = useSession();
  const [draft, setDraft] = useState<VisitDraft>(() => {
    const stored = storedDraft(person.id);
    if (stored && (chart === undefined || stored.chartReference === chart)) return stored;
    return freshDraft(chart);
  });
  const [isOpen, setOpen] = useState(true);
  useEffect(() => {
    if (isOpen) storeDraft(person.id, draft);
  }, [draft, isOpen, person.id]);
  const change = useCallback(
    (how: (old: VisitDraft) => VisitDraft) => setDraft((old) => how(old)),
    [],
  );
  const replace = useCallback((next: VisitDraft) => {
    setDraft(next);
    setOpen(true);
  }, []);
  /** While it is on its way it belongs to the outbox; `replace` takes up the next one. */
  const handOver = useCallback(() => setOpen(false), []);
  return { draft, change, replace, handOver };
}
