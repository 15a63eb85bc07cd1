import { type ReactNode, useEffect, useState } from 'react';
import css from './more.module.css';

interface Props {
  readonly title: string;
  /** What is so while nobody says more. */
  readonly summary: ReactNode;
  /** Something inside is wrong: it opens, and stays open when it is put right. */
  readonly isWrong: boolean;
  readonly className?: string | undefined;
  readonly children: ReactNode;
}

/** What is seldom said, folded away. */
export function More({ title, summary, isWrong, className = '', children }: Props) {
  const [open, setOpen] = useState(isWrong);
  useEffect(() => {
    if (isWrong) setOpen(true);
  }, [isWrong]);
  return (
    <details
      className={`${css.more ?? ''} ${className}`}
      open={open}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>
        {title}
        <span>{summary}</span>
      </summary>
      {children}
    </details>
  );
}
