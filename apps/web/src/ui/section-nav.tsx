import { Link, type LinkProps } from '@tanstack/react-router';
import { useId } from 'react';
import css from './section-nav.module.css';
import type { PlainAddress } from './sub-nav.js';

export interface NavSection {
  readonly name: string;
  readonly links: readonly {
    readonly to: PlainAddress;
    readonly label: string;
    readonly search?: LinkProps['search'];
    /** The way in to the others: it is where one is only when its address is. */
    readonly exact?: boolean;
  }[];
}

interface Props {
  readonly label: string;
  readonly sections: readonly NavSection[];
}

/** Links between the many screens of one area, by what somebody comes for. */
export function SectionNav({ label, sections }: Props) {
  return (
    <nav aria-label={label} className={`${css.nav ?? ''} tb-screen-only`}>
      {sections
        .filter(({ links }) => links.length > 0)
        .map((section) => (
          <Section key={section.name} section={section} />
        ))}
    </nav>
  );
}

function Section({ section }: { readonly section: NavSection }) {
  const name = useId();
  return (
    <div className={css.part}>
      <p id={name} className={css.name}>
        {section.name}
      </p>
      <ul aria-labelledby={name}>
        {section.links.map(({ to, label, search = {}, exact = false }) => (
          <li key={to}>
            <Link to={to} search={search} activeOptions={{ exact, includeSearch: false }}>
              {label}
            </Link>
          </li>
        ))}
      </ul>
    </div>
  );
}
