import type { ReactNode } from 'react';
import { useScrollStop } from '../../ui/use-scroll-stop.js';
import css from './answer.module.css';

/** Keeps a wide table on the page: where it does not fit, it scrolls by itself, also with the keys. */
export function Scroller({ children }: { readonly children: ReactNode }) {
  const scroller = useScrollStop();
  return (
    <div ref={scroller} className={css.scroller}>
      {children}
    </div>
  );
}
