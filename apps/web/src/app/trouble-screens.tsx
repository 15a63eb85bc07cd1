import { Button } from '@mantine/core';
import { type ErrorComponentProps, Link } from '@tanstack/react-router';
import { ProblemError } from '../api/problem.js';
import { useText } from '../text/text-provider.js';
import { EmptyState } from '../ui/empty-state.js';
import { problemWords } from '../ui/problem-words.js';

export function NotFoundScreen() {
  const t = useText();
  return (
    <EmptyState title={t.problems.notFound} hint={t.problems.notFoundHint}>
      <Link to="/">{t.problems.home}</Link>
    </EmptyState>
  );
}

export function NotAllowedScreen() {
  const t = useText();
  return (
    <EmptyState title={t.problems.notAllowed} hint={t.problems.notAllowedHint}>
      <Link to="/">{t.problems.home}</Link>
    </EmptyState>
  );
}

export function CrashScreen({ error }: Pick<ErrorComponentProps, 'error'>) {
  const t = useText();
  const known = problemWords(t, error);
  const id = error instanceof ProblemError ? error.problem.requestId : '';
  return (
    <EmptyState
      title={known === undefined ? t.problems.crash : t.problems.title}
      hint={known ?? t.problems.crashHint}
    >
      <Button onClick={() => window.location.reload()}>{t.ui.retry}</Button>
      {id !== '' && <small>{t.problems.requestId(id)}</small>}
    </EmptyState>
  );
}
