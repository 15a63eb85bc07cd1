import type { ReactNode } from 'react';
import css from './parts.module.css';

/** The second, quieter line of a cell. */
export function Second({ children }: { readonly children: ReactNode }) {
  return <span className={css.second}>{children}</span>;
}
