import { useDebouncedValue } from '@mantine/hooks';
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { useText } from '../../text/text-provider.js';
import type { Template } from './api/get-template.js';
import { draftPreviewQuery, type Usage, versionPreviewQuery } from './api/preview-template.js';
import { type Draft, draftErrors, SHADES, versionBody } from './template-draft.js';
import type { Example } from './use-example.js';

export interface UsageAnswer {
  /** What the lines on the screen would use. */
  readonly usage: Usage | undefined;
  /** What the saved version would use, while it is being changed. */
  readonly before: Usage | undefined;
  readonly state: 'fresh' | 'stale' | 'waiting' | 'needs shades' | 'no shades' | 'no lines';
  readonly error: Error | null;
}

interface Source {
  readonly template: Template | undefined;
  /** What is on the screen and not saved. */
  readonly draft: Draft | undefined;
}

/** Asks the service what the example would use, a moment after the last change. */
export function useUsage({ template, draft }: Source, example: Example): UsageAnswer {
  const t = useText();
  const [settled] = useDebouncedValue(draft, 350);
  const { facts, staffCount } = example;
  const ready = example.isReady;
  const question = { restorations: facts, staffCount };
  const lacksShades = asksForShades({ template, draft }, example) && example.shades.length === 0;
  const saved = useQuery({
    ...versionPreviewQuery(template?.id ?? '', { ...question, version: template?.version ?? 1 }),
    enabled: template !== undefined && ready && !lacksShades,
    placeholderData: keepPreviousData,
  });
  const isRight =
    settled !== undefined && Object.values(draftErrors(settled, t)).every((each) => !each);
  const body = settled && isRight ? { ...versionBody(settled), note: null } : EMPTY_BODY;
  const drafted = useQuery({
    ...draftPreviewQuery({ ...body, ...question }),
    enabled: isRight && draft !== undefined && ready && !lacksShades,
    placeholderData: keepPreviousData,
  });
  const shown = draft ? drafted : saved;
  const state = lacksShades
    ? example.palette?.length === 0
      ? 'no shades'
      : 'needs shades'
    : draft?.lines.length === 0
      ? 'no lines'
      : draft && !isRight
        ? 'waiting'
        : shown.isPlaceholderData || settled !== draft
          ? 'stale'
          : 'fresh';
  return {
    usage: shown.data ?? saved.data,
    before: draft ? saved.data : undefined,
    state,
    error: shown.error,
  };
}

const EMPTY_BODY = { minutes: 0, lines: [] };

/** Whether a line takes the chosen shades for one of the reasons of the example. */
function asksForShades({ template, draft }: Source, { teeth }: Example): boolean {
  const reasons: readonly string[] = teeth.map(({ reason }) => reason);
  const counts = (of: readonly string[] | null) =>
    of === null || of.length === 0 || of.some((reason) => reasons.includes(reason));
  if (draft) return draft.lines.some((line) => line.what === SHADES && counts(line.reasons));
  const lines = template?.lines ?? [];
  return lines.some((line) => line.consumableId === null && counts(line.reasons));
}
