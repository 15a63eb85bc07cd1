import { Link, type LinkProps } from '@tanstack/react-router';
import css from './sub-nav.module.css';

/** An address without parts to fill in. */
export type PlainAddress = Exclude<NonNullable<LinkProps['to']>, `${string}$${string}`>;

interface Props {
  readonly label: string;
  readonly links: readonly {
    readonly to: PlainAddress;
    readonly label: string;
    /** The way in to the others: it is where one is only when its address is. */
    readonly exact?: boolean;
  }[];
}

/** A row of links between the screens of one area. */
export function SubNav({ label, links }: Props) {
  return (
    <nav aria-label={label} className={`${css.row ?? ''} tb-screen-only`}>
      {links.map((link) => (
        <Link
          key={link.label}
          to={link.to}
          activeOptions={{ includeSearch: false, exact: link.exact ?? false }}
        >
          {link.label}
        </Link>
      ))}
    </nav>
  );
}
