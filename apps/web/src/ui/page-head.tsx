import { type ReactNode, useEffect } from 'react';
import { useText } from '../text/text-provider.js';
import css from './page-head.module.css';

interface Props {
  readonly title: string;
  readonly lead?: ReactNode;
  /** Buttons and links that belong to the whole screen. */
  readonly children?: ReactNode;
}

/** The head of every screen: its one h1, which is also the title of the window. */
export function PageHead({ title, lead, children }: Props) {
  const t = useText();
  useEffect(() => {
    document.title = `${title} · ${t.app.name}`;
  }, [title, t]);
  return (
    <header className={css.head}>
      <div>
        <h1 className={css.title}>{title}</h1>
        {lead !== undefined && <p className={css.lead}>{lead}</p>}
      </div>
      {children !== undefined && (
        <div className={`${css.actions ?? ''} tb-screen-only`}>{children}</div>
      )}
    </header>
  );
}
