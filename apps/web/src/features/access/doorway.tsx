import type { ReactNode } from 'react';
import { Brand } from '../../app/brand.js';
import { LanguageSwitch, ThemeSwitch } from '../../app/preferences.js';
import { BusyLine } from '../../ui/busy.js';
import { PageHead } from '../../ui/page-head.js';
import css from './doorway.module.css';

interface Props {
  readonly title: string;
  readonly lead?: string | undefined;
  readonly wide?: boolean;
  readonly children: ReactNode;
}

/** What stands around the screens in front of the book: the name, the form, the two switches. */
export function Doorway({ title, lead, wide = false, children }: Props) {
  return (
    <div className={css.door} data-wide={wide || undefined}>
      <header className={css.top}>
        <BusyLine />
        <Brand />
      </header>
      <main className={css.main}>
        <PageHead title={title} {...(lead === undefined ? {} : { lead })} />
        {children}
      </main>
      <footer className={css.foot}>
        <LanguageSwitch />
        <ThemeSwitch />
      </footer>
    </div>
  );
}
