import { Link, type LinkProps } from '@tanstack/react-router';
import css from './sub-nav.module.css';

interface Props {
  readonly label: string;
  readonly links: readonly { readonly to: LinkProps['to']; readonly label: string }[];
}

/** A row of links between the screens of one area. */
export function SubNav({ label, links }: Props) {
  return (
    <nav aria-label={label} className={`${css.row ?? ''} tb-screen-only`}>
      {links.map((link) => (
        <Link key={link.label} to={link.to} activeOptions={{ includeSearch: false }}>
          {link.label}
        </Link>
      ))}
    </nav>
  );
}
