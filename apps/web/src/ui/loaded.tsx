import { Button } from '@mantine/core';
import type { UseQueryResult } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { useText } from '../text/text-provider.js';
import { Busy } from './busy.js';
import { EmptyState } from './empty-state.js';
import { problemWords } from './problem-words.js';

interface Props<T> {
  readonly query: UseQueryResult<T>;
  readonly children: (data: T) => ReactNode;
}

/** What a query answered; until then that it is busy, or what went wrong and a way to try again. */
export function Loaded<T>({ query, children }: Props<T>) {
  const t = useText();
  if (query.data !== undefined) return <>{children(query.data)}</>;
  if (query.error === null) return <Busy />;
  return (
    <div role="alert">
      <EmptyState
        title={t.problems.title}
        hint={problemWords(t, query.error) ?? t.problems.crashHint}
      >
        <Button variant="default" onClick={() => void query.refetch()}>
          {t.ui.retry}
        </Button>
      </EmptyState>
    </div>
  );
}
