import type { ReactNode } from 'react';
import css from './empty-state.module.css';

interface Props {
  readonly title: string;
  readonly hint?: string;
  /** What one can do about it. */
  readonly children?: ReactNode;
}

/** Where there is nothing to show: an empty tray, a sentence, perhaps a way on. */
export function EmptyState({ title, hint, children }: Props) {
  return (
    <div className={css.empty}>
      <svg className={css.tray} viewBox="0 0 96 32" aria-hidden="true">
        <path d="M6 10c0 9 5 14 14 14h56c9 0 14-5 14-14" />
        <path d="M30 24v-4h36v4" />
      </svg>
      <p className={css.title}>{title}</p>
      {hint !== undefined && <p className={css.hint}>{hint}</p>}
      {children !== undefined && <div className={css.ways}>{children}</div>}
    </div>
  );
}
