import { type ReactNode, useId } from 'react';
import css from './section.module.css';

interface Props {
  readonly title: string;
  readonly hint?: ReactNode;
  readonly aside?: ReactNode;
  readonly children: ReactNode;
}

/** A part of a screen under an h2 and a hairline. */
export function Section({ title, hint, aside, children }: Props) {
  const heading = useId();
  return (
    <section className={css.section} aria-labelledby={heading}>
      <div className={css.top}>
        <h2 id={heading} className={css.title}>
          {title}
        </h2>
        {aside !== undefined && <div className={css.aside}>{aside}</div>}
      </div>
      {hint !== undefined && <p className={css.hint}>{hint}</p>}
      {children}
    </section>
  );
}
