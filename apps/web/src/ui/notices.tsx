import { Button, CloseButton } from '@mantine/core';
import { useEffect, useSyncExternalStore } from 'react';
import { useText } from '../text/text-provider.js';
import { currentNotices, dismiss, type Notice, subscribe } from './notice-store.js';
import css from './notices.module.css';

/** The one place for messages that belong to no field. Good news leaves by itself. */
export function Notices() {
  const notices = useSyncExternalStore(subscribe, currentNotices);
  return (
    <div className={`${css.place ?? ''} tb-screen-only`} aria-live="polite">
      {notices.map((notice) => (
        <NoticeCard key={notice.id} notice={notice} />
      ))}
    </div>
  );
}

function NoticeCard({ notice }: { readonly notice: Notice }) {
  const t = useText();
  const { id, tone, text, action } = notice;
  useEffect(() => {
    if (tone === 'problem') return;
    const timer = window.setTimeout(() => dismiss(id), action ? 15_000 : 6_000);
    return () => window.clearTimeout(timer);
  }, [id, tone, action]);
  const act = () => {
    action?.run();
    dismiss(id);
  };
  return (
    <div className={css.notice} data-tone={tone}>
      <p>{text}</p>
      {action && (
        <Button variant="subtle" size="compact-md" onClick={act}>
          {action.label}
        </Button>
      )}
      <CloseButton size="lg" aria-label={t.problems.dismiss} onClick={() => dismiss(id)} />
    </div>
  );
}
