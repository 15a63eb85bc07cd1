import { VisuallyHidden } from '@mantine/core';
import { useIsFetching, useIsMutating } from '@tanstack/react-query';
import { useRouterState } from '@tanstack/react-router';
import { useEffect, useState } from 'react';
import { useText } from '../text/text-provider.js';
import css from './busy.module.css';

/** True once something has gone on for so long that a person wonders. */
function useLasting(going: boolean, after = 700): boolean {
  const [lasting, setLasting] = useState(false);
  useEffect(() => {
    if (!going) {
      setLasting(false);
      return;
    }
    const timer = window.setTimeout(() => setLasting(true), after);
    return () => window.clearTimeout(timer);
  }, [going, after]);
  return lasting;
}

/** A thin line at the top of the window while anything takes its time. */
export function BusyLine() {
  const t = useText();
  const fetching = useIsFetching() + useIsMutating() > 0;
  const turning = useRouterState({ select: (state) => state.status === 'pending' });
  const lasting = useLasting(fetching || turning);
  return (
    <div role="status" className={`${css.place ?? ''} tb-screen-only`}>
      {lasting && (
        <>
          <span className={css.line} />
          <VisuallyHidden>{t.ui.busy}</VisuallyHidden>
        </>
      )}
    </div>
  );
}

/** In place of something that is not there yet; says so only when it takes its time. */
export function Busy() {
  const t = useText();
  const lasting = useLasting(true, 400);
  return (
    <p className={css.busy} aria-live="polite">
      {lasting ? t.ui.busy : ''}
    </p>
  );
}
