import { useDebouncedValue } from '@mantine/hooks';
import { useQueries, useQuery } from '@tanstack/react-query';
import { useCallback, useEffect, useMemo, useState } from 'react';
import { ProblemError } from '../../api/problem.js';
import { useText } from '../../text/text-provider.js';
import { templateQuery } from './api/get-template.js';
import { previewQuery } from './api/preview-visit.js';
import type { Chairside, Plan } from './chairside-context.js';
import { asksForShades } from './draft/asks-for-shades.js';
import type { VisitDraft } from './draft/draft.js';
import { planOf } from './draft/request.js';
import { placeProblem, staleLines, type Trouble } from './draft/trouble.js';
import { useOnline } from './offline/use-outbox.js';
import { fieldSentence } from './words.js';

const PAUSE = 300;
const NO_TROUBLE: Trouble = {};

type Asks = (templateId: string, reason: string | null) => boolean;

/** Whether a chosen template asks for shades, as far as that is known here. */
export function useAsksForShades(draft: VisitDraft): Asks {
  const ids = [...new Set(draft.restorations.map((each) => each.templateId))].filter(Boolean);
  return useQueries({
    queries: ids.map(templateQuery),
    combine: useCallback((results: readonly { readonly data?: TemplateData | undefined }[]) => {
      const known = results.flatMap(({ data }) => data ?? []);
      return (templateId: string, reason: string | null) => {
        const template = known.find(({ id }) => id === templateId);
        return template !== undefined && asksForShades(template, reason);
      };
    }, []),
  });
}

type TemplateData = Parameters<typeof asksForShades>[0] & { readonly id: string };

interface Planning {
  readonly plan: Plan;
  /** What the service says about what was entered so far. */
  readonly trouble: Trouble;
}

/** What the visit would use if it were booked now, a moment after the last change. */
export function usePlan(
  draft: VisitDraft,
  today: string,
  asks: Asks,
  change: Chairside['change'],
): Planning {
  const t = useText();
  const online = useOnline();
  const wanted = useMemo(() => planOf(draft, today, asks), [draft, today, asks]);
  const [sent] = useDebouncedValue(wanted, PAUSE);
  const isAsked = (of: typeof sent) => of.keys.length > 0 && of.body.locationId !== '';
  const query = useQuery({ ...previewQuery(sent), enabled: online && isAsked(sent) });
  const { data, error } = query;
  const [last, setLast] = useState(data);
  useEffect(() => {
    if (data) setLast(data);
  }, [data]);
  const problem = error instanceof ProblemError ? error.problem : undefined;
  useEffect(() => {
    const stale = problem ? staleLines(problem, sent) : [];
    if (stale.length > 0) change((old) => withoutAmounts(old, stale));
  }, [problem, sent, change]);
  const state = (): Plan['state'] => {
    if (wanted.keys.length === 0) return 'incomplete';
    if (draft.locationId === '') return 'no room';
    if (wanted !== sent || query.isFetching) return online ? 'working' : 'offline';
    if (problem) return 'wrong';
    return data ? 'ready' : 'offline';
  };
  const shown = isAsked(wanted) ? (data ?? last) : undefined;
  const trouble = useMemo(
    () =>
      problem
        ? placeProblem(problem, sent, (words) => fieldSentence(t, words)).trouble
        : NO_TROUBLE,
    [problem, sent, t],
  );
  return { plan: { preview: shown?.preview, keys: shown?.keys ?? [], state: state() }, trouble };
}

function withoutAmounts(draft: VisitDraft, lines: readonly string[]): VisitDraft {
  const amounts = Object.entries(draft.amounts).filter(([line]) => !lines.includes(line));
  return { ...draft, amounts: Object.fromEntries(amounts) };
}
