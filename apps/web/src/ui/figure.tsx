import type { ReactNode } from 'react';
import css from './figure.module.css';

interface Props {
  readonly label: string;
  /** Already formatted: `<Amount …/>`, `<Money …/>`, text. */
  readonly children: ReactNode;
  readonly tone?: 'danger' | 'caution' | 'good' | undefined;
  readonly large?: boolean;
}

/** One number with what it is. Put several into `<Figures>`. */
export function Figure({ label, children, tone, large = false }: Props) {
  return (
    <div className={css.figure} data-tone={tone} data-large={large || undefined}>
      <dt>{label}</dt>
      <dd>{children}</dd>
    </div>
  );
}

export function Figures({ children }: { readonly children: ReactNode }) {
  return <dl className={css.figures}>{children}</dl>;
}
