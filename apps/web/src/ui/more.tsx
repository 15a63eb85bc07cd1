import { type ReactNode, useState } from 'react';
import css from './more.module.css';

interface Props {
  readonly summary: string;
  /** Open from the start, where what is inside matters to everybody. */
  readonly opened?: boolean;
  readonly children: ReactNode;
}

/** What only some want to know, behind a line that says what it is; drawn when it is opened. */
export function More({ summary, opened = false, children }: Props) {
  const [isOpen, setOpen] = useState(opened);
  return (
    <details
      className={css.more}
      open={isOpen}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>{summary}</summary>
      {isOpen && children}
    </details>
  );
}
