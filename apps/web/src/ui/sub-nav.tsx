import { Link, type LinkProps } from '@tanstack/react-router';
import css from './sub-nav.module.css';

/** An address without parts to fill in. */
type PlainAddress = Exclude<NonNullable<LinkProps['to']>, `${string}$${string}`>;

interface Props {
  readonly label: string;
  readonly links: readonly { readonly to: PlainAddress; readonly label: string }[];
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
